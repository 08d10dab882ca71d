import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeInbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import { kinshipRangesWith, kinshipWith } from '../../../api/lineage/kernel/kinship-with.ts';
import { registers, toPedigree } from './random-registers.ts';
import { SlowRecursion } from './slow-recursion.ts';

function close(actual: number, expected: number, what: string): void {
  expect(Math.abs(actual - expected), `${what}: ${actual} instead of ${expected}`).toBeLessThan(1e-12);
}

describe('the kinship of one animal with all others', () => {
  it('agrees with the plain recursion, and its range with the candidate pairs of the later of the two', () => {
    fc.assert(
      fc.property(registers({ clutches: 20, pairs: 4 }), fc.nat(), (register, pick) => {
        const pedigree = toPedigree(register);
        const inbreeding = computeInbreeding(pedigree);
        const slow = new SlowRecursion(pedigree);
        const one = pick % pedigree.clutchOf.length;
        const others = Int32Array.from(pedigree.clutchOf.keys()).filter((other) => other !== one);
        const plain = kinshipWith(pedigree, inbreeding, one, others);
        const ranges = kinshipRangesWith(pedigree, inbreeding, one, others);
        const positionOf = (animal: number): number =>
          inbreeding.order.positionOf[pedigree.clutchOf[animal] ?? -1] ?? -1;
        others.forEach((other, place) => {
          const what = `kinship ${one} ${other}`;
          close(plain[place] ?? NaN, slow.kinship(one, other), what);
          const [earlier, later] = positionOf(one) <= positionOf(other) ? [one, other] : [other, one];
          const self = (parent: number): number => (parent < 0 ? 0.5 : slow.kinship(parent, parent));
          const isSibling = positionOf(one) === positionOf(other) && positionOf(one) >= 0;
          const values = slow.pairsOf(pedigree.clutchOf[later] ?? -1).map(({ sire, dam, probability }) => ({
            probability,
            kinship: isSibling
              ? (self(sire) + self(dam) + 2 * slow.kinship(sire, dam)) / 4
              : (slow.kinship(earlier, sire) + slow.kinship(earlier, dam)) / 2,
          }));
          const { expected, least, greatest } = ranges[place] ?? { expected: NaN, least: NaN, greatest: NaN };
          close(expected, slow.kinship(one, other), what);
          if (values.length === 0) return;
          close(
            values.reduce((sum, { probability, kinship }) => sum + probability * kinship, 0),
            expected,
            `${what}, over the pairs`,
          );
          close(least, Math.min(...values.map(({ kinship }) => kinship)), `${what}, least`);
          close(greatest, Math.max(...values.map(({ kinship }) => kinship)), `${what}, greatest`);
        });
      }),
      { numRuns: 300 },
    );
  });
});
