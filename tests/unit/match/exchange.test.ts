import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeInbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import { meanKinship } from '../../../api/lineage/kernel/mean-kinship.ts';
import type { Inbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { founderShares } from '../../../api/lineage/kernel/shares.ts';
import { exchangeFigures, type ExchangeQuestion } from '../../../api/match/new-blood/exchange-figures.ts';
import { measureHolding } from '../../../api/match/new-blood/holding.ts';
import { compareSwaps, type Swap } from '../../../api/match/new-blood/swaps.ts';
import { registers, toPedigree } from '../kernel/random-registers.ts';

/** A register with two holdings that have no animal in common, each with some that may go. */
const questions = fc
  .record({
    register: registers({ clutches: 12, pairs: 3, ofAllSizes: true }),
    sides: fc.array(fc.constantFrom('one', 'one kept', 'other', 'other kept', ''), { minLength: 60, maxLength: 60 }),
    proposals: fc.integer({ min: 1, max: 6 }),
    bySex: fc.boolean(),
  })
  .map(({ register, sides, proposals, bySex }): ExchangeQuestion => {
    const pedigree = toPedigree(register);
    const of = (...words: string[]): Int32Array =>
      Int32Array.from([...pedigree.clutchOf.keys()].filter((animal) => words.includes(sides[animal] ?? '')));
    return {
      pedigree,
      inbreeding: computeInbreeding(pedigree),
      matrixBytes: undefined,
      one: { animals: of('one', 'one kept'), mayGo: of('one') },
      other: { animals: of('other', 'other kept'), mayGo: of('other') },
      give: new Int32Array(0),
      take: new Int32Array(0),
      proposals,
      sexes: bySex ? Uint8Array.from(pedigree.clutchOf, (_, animal) => animal % 2) : null,
    };
  });

/** Gene diversity by the mean of mean kinships, another way than the measures of a holding take. */
function diversityOf(pedigree: Pedigree, inbreeding: Inbreeding, animals: readonly number[]): number {
  const means = meanKinship(pedigree, inbreeding, Int32Array.from(animals));
  return 1 - animals.reduce((sum, animal) => sum + (means[animal] ?? NaN), 0) / animals.length;
}

/** Every exchange of one for one, measured anew. */
function everySwap({ pedigree, inbreeding, one, other, sexes }: ExchangeQuestion): Swap[] {
  const gain = (animals: Int32Array, goes: number, comes: number): number =>
    diversityOf(pedigree, inbreeding, [...animals].filter((animal) => animal !== goes).concat(comes)) -
    diversityOf(pedigree, inbreeding, [...animals]);
  return [...one.mayGo].flatMap((give) =>
    [...other.mayGo]
      .filter((take) => !sexes || sexes[give] === sexes[take])
      .map((take) => ({
        give,
        take,
        one: gain(one.animals, give, take),
        other: gain(other.animals, take, give),
      })),
  );
}

const leastOf = ({ one, other }: Swap): number => Math.min(one, other);

describe('the exchanges of one animal for one', () => {
  it('are all that help both, ranked as if each had been made and measured', () => {
    let helped = 0;
    fc.assert(
      fc.property(questions, (question) => {
        const found = exchangeFigures(question);
        const all = everySwap(question);
        expect(found.tried).toBe(all.length);
        // sums in another order miss the last digits
        const helping = all.filter((swap) => leastOf(swap) > 1e-12);
        const certain = all.filter((swap) => leastOf(swap) > 1e-11).length;
        expect(found.helping).toBeGreaterThanOrEqual(certain);
        expect(found.helping).toBeLessThanOrEqual(all.filter((swap) => leastOf(swap) > 1e-13).length);
        expect(found.proposals.length).toBe(Math.min(question.proposals, found.helping));
        helped += helping.length;
        const leasts = helping.map(leastOf).sort((first, second) => second - first);
        found.proposals.forEach((swap, place) => {
          expect(leastOf(swap)).toBeCloseTo(leasts[place] ?? NaN, 10);
          const again = all.find(({ give, take }) => give === swap.give && take === swap.take);
          expect(swap.one).toBeCloseTo(again?.one ?? NaN, 12);
          expect(swap.other).toBeCloseTo(again?.other ?? NaN, 12);
          const { before } = found;
          for (const side of ['one', 'other'] as const)
            expect(swap[side]).toBeCloseTo(
              (swap.after[side].diversity?.geneDiversity ?? NaN) - (before[side].diversity?.geneDiversity ?? NaN),
              12,
            );
        });
      }),
      { numRuns: 400 },
    );
    expect(helped).toBeGreaterThan(60); // how many that are is chance
  });

  it('are ordered by the least of both gains, then by their sum, then as the animals stand', () => {
    const swap = (one: number, other: number): Swap => ({ give: 0, take: 1, one, other });
    expect(compareSwaps(swap(0.1, 0.1), swap(0.05, 0.5))).toBeLessThan(0);
    expect(compareSwaps(swap(0.1, 0.1), swap(0.3, 0.1))).toBeGreaterThan(0);
    expect(compareSwaps(swap(0.1, 0.2), swap(0.2, 0.1 + 1e-16))).toBe(0);
    fc.assert(
      fc.property(questions, (question) => {
        const { proposals } = exchangeFigures(question);
        proposals.slice(1).forEach((swapNext, place) => {
          const before = proposals[place];
          if (!before) throw new Error('there is one before the second');
          const order = compareSwaps(before, swapNext);
          expect(order).toBeLessThanOrEqual(0);
          // animals stand in the order of their numbers here
          if (order === 0) expect(1000 * before.give + before.take).toBeLessThan(1000 * swapNext.give + swapNext.take);
        });
      }),
      { numRuns: 50 },
    );
  });

  it('are none where both have the same, and none is made up', () => {
    // two pairs of unrelated founders and nobody else: whatever is exchanged, all stays as it was
    const pedigree = toPedigree({ founders: [-1, -1, -1, -1], sources: [], sourceKinships: [], clutches: [] });
    const found = exchangeFigures({
      pedigree,
      inbreeding: computeInbreeding(pedigree),
      matrixBytes: undefined,
      one: { animals: Int32Array.of(0, 1), mayGo: Int32Array.of(0, 1) },
      other: { animals: Int32Array.of(2, 3), mayGo: Int32Array.of(2, 3) },
      give: new Int32Array(0),
      take: new Int32Array(0),
      proposals: 5,
      sexes: null,
    });
    expect(found).toMatchObject({ tried: 4, helping: 0, proposals: [], after: null });
  });

  it('part full sibs that live together, as one would by hand', () => {
    // two pairs of full sibs, unrelated to each other: mean kinship (½+½+2·¼)/4 = ⅜ before, (½+½)/4 = ¼ after
    const pedigree = toPedigree({
      founders: [-1, -1, -1, -1],
      sources: [],
      sourceKinships: [],
      clutches: [
        { pairs: [{ sire: 0, dam: 1, odds: 1 }], young: 2 },
        { pairs: [{ sire: 2, dam: 3, odds: 1 }], young: 2 },
      ],
    });
    const found = exchangeFigures({
      pedigree,
      inbreeding: computeInbreeding(pedigree),
      matrixBytes: undefined,
      one: { animals: Int32Array.of(4, 5), mayGo: Int32Array.of(4, 5) },
      other: { animals: Int32Array.of(6, 7), mayGo: Int32Array.of(6, 7) },
      give: Int32Array.of(4, 5),
      take: Int32Array.of(6),
      proposals: 1,
      sexes: null,
    });
    expect(found.helping).toBe(4);
    expect(found.proposals[0]).toMatchObject({ give: 4, take: 6, one: 0.125, other: 0.125 });
    expect(found.proposals[0]?.after.one).toMatchObject({
      diversity: { meanKinship: 0.25, geneDiversity: 0.75, founderGenomeEquivalents: 2 },
      founders: Int32Array.of(0, 1, 2, 3),
    });
    // the exchange that was asked about: all of the one for one of the other
    expect(found.after?.one).toMatchObject({ animals: 1, diversity: { meanKinship: 0.5 } });
    expect(found.after?.other.animals).toBe(3);
  });
});

describe('the measures of a holding', () => {
  it('name the founders and the parts that the shares of its animals add up to', () => {
    fc.assert(
      fc.property(questions, ({ pedigree, inbreeding, one }) => {
        const measures = measureHolding(pedigree, inbreeding, one.animals);
        if (one.animals.length === 0) {
          expect(measures).toMatchObject({ animals: 0, diversity: null, unknown: 0 });
          return;
        }
        // each founder of a source of its own, so that shares are told apart
        const alone = { ...pedigree, sourceOf: new Int32Array(pedigree.sourceOf.length).fill(-1) };
        const parts = new Map<number, number>();
        let unknown = 0;
        for (const animal of one.animals)
          for (const origin of founderShares(alone, inbreeding.order, animal))
            if (origin.kind === 'individual')
              parts.set(origin.individual, (parts.get(origin.individual) ?? 0) + origin.share / one.animals.length);
            else unknown += origin.share / one.animals.length;
        expect([...measures.founders]).toEqual([...parts.keys()].sort((first, second) => first - second));
        measures.founders.forEach((founder, place) =>
          expect(measures.parts[place]).toBeCloseTo(parts.get(founder) ?? NaN, 12),
        );
        expect(measures.unknown).toBeCloseTo(unknown, 12);
        expect(measures.diversity?.geneDiversity).toBeCloseTo(diversityOf(pedigree, inbreeding, [...one.animals]), 12);
      }),
      { numRuns: 200 },
    );
  });
});
