import fc from 'fast-check';
import { expect, it } from 'vitest';
import { PositionSet } from '../../../api/lineage/kernel/position-set.ts';

it('gives positions back from the greatest down, also those added on the way', () => {
  const capacity = 200_000;
  const position = fc.nat(capacity - 1);
  fc.assert(
    fc.property(fc.uniqueArray(position, { minLength: 1, maxLength: 60 }), (positions) => {
      const set = new PositionSet(capacity);
      const [first = 0, ...rest] = [...positions].sort((a, b) => b - a);
      set.add(first);
      // Each one is added only when a greater one is taken, in the way parents come to wait for their young.
      const taken: number[] = [];
      const toAdd = [...rest].sort((a, b) => (a % 7) - (b % 7));
      while (set.size > 0) {
        const greatest = set.takeGreatest();
        taken.push(greatest);
        const ready = toAdd.filter(
          (next) => next < greatest && (taken.length === 1 || next % 2 === 0 || set.size === 0),
        );
        for (const next of ready) {
          set.add(next);
          toAdd.splice(toAdd.indexOf(next), 1);
        }
      }
      expect(new Set(taken).size).toBe(taken.length);
      for (let place = 1; place < taken.length; place++) expect(taken[place]).toBeLessThan(taken[place - 1] ?? NaN);
      expect(taken.length + toAdd.length).toBe(positions.length);
    }),
  );
});
