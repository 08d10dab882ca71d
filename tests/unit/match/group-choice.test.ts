import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseGroup, choices, CHOICES_MOST, type GroupPool } from '../../../api/match/groups/group-choice.ts';

/** All choices of some places. */
function every(count: number, size: number): number[][] {
  if (size === 0) return [[]];
  return Array.from({ length: count }, (_, first) => first).flatMap((first) =>
    every(first, size - 1).map((rest) => [...rest, first]),
  );
}

/** What a group costs, by the definition. */
function costOf(pool: GroupPool, males: readonly number[], females: readonly number[], weight: number): number {
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const pairs = males.flatMap((male) =>
    females.map((female) => pool.kinship[male * pool.femaleMeans.length + female] ?? 0),
  );
  const parents =
    mean(males.map((male) => pool.maleMeans[male] ?? 0)) + mean(females.map((female) => pool.femaleMeans[female] ?? 0));
  return parents / 2 + weight * mean(pairs);
}

const pools = fc
  .record({ males: fc.integer({ min: 1, max: 6 }), females: fc.integer({ min: 1, max: 6 }) })
  .chain(({ males, females }) => {
    const share = fc.constantFrom(0, 0.0625, 0.125, 0.2, 0.25, 0.3);
    const means = (count: number) => fc.array(share, { minLength: count, maxLength: count });
    return fc.record({
      maleMeans: means(males),
      femaleMeans: means(females),
      kinship: means(males * females).map((cells) => Float64Array.from(cells)),
    });
  });

describe('the best group of a size', () => {
  it('is as good as the best of all groups gone through one by one', () => {
    fc.assert(
      fc.property(
        pools,
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 4 }),
        fc.constantFrom(0, 0.5, 1, 10),
        fc.constantFrom(1, 0.25, 0.125, 0),
        (pool, males, females, weight, most) => {
          const isWithin = (sires: readonly number[], dams: readonly number[]): boolean =>
            sires.every((sire) =>
              dams.every((dam) => (pool.kinship[sire * pool.femaleMeans.length + dam] ?? 0) <= most),
            );
          const all = every(pool.maleMeans.length, males).flatMap((sires) =>
            every(pool.femaleMeans.length, females)
              .filter((dams) => isWithin(sires, dams))
              .map((dams) => costOf(pool, sires, dams, weight)),
          );
          const chosen = chooseGroup(pool, males, females, weight, most);
          if (all.length === 0) {
            expect(chosen).toBeNull();
            return;
          }
          expect(chosen?.cost).toBeCloseTo(Math.min(...all), 12);
          expect(costOf(pool, chosen?.males ?? [], chosen?.females ?? [], weight)).toBeCloseTo(chosen?.cost ?? NaN, 12);
          expect([chosen?.males.length, chosen?.females.length]).toEqual([males, females]);
          expect(isWithin(chosen?.males ?? [], chosen?.females ?? [])).toBe(true);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('goes through the side with fewer ways, and refuses where both have too many', () => {
    const pool = (males: number, females: number): GroupPool => ({
      maleMeans: Array.from({ length: males }, () => 0.1),
      femaleMeans: Array.from({ length: females }, () => 0.1),
      kinship: new Float64Array(males * females),
    });
    expect(choices(30, 4)).toBe(27_405);
    expect(chooseGroup(pool(60, 60), 1, 6, 1)?.females).toEqual([0, 1, 2, 3, 4, 5]);
    expect(choices(60, 4)).toBeGreaterThan(CHOICES_MOST);
    expect(() => chooseGroup(pool(60, 60), 4, 4, 1)).toThrow(RangeError);
  });
});
