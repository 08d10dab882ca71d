import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alleleRetention } from '../../../api/lineage/kernel/allele-retention.ts';
import { collectAncestry } from '../../../api/lineage/kernel/ancestry.ts';
import { genePool } from '../../../api/lineage/kernel/gene-pool.ts';
import { orderPedigree } from '../../../api/lineage/kernel/order.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { founderShares, shareOf } from '../../../api/lineage/kernel/shares.ts';
import {
  compareUrgency,
  EITHER,
  FEMALE,
  LIVES,
  MALE,
  NOT_COUNTED,
  searchAtRisk,
  type AtRisk,
  type AtRiskFound,
} from '../../../api/match/new-blood/at-risk-search.ts';
import { Descendants } from '../../../api/match/new-blood/descendants.ts';
import { geneSurvival } from '../../../api/match/new-blood/gene-survival.ts';
import { registers, toPedigree } from '../kernel/random-registers.ts';

const written = registers({ clutches: 14, pairs: 3, ofAllSizes: true });
const counting = fc.array(fc.constantFrom(NOT_COUNTED, NOT_COUNTED, NOT_COUNTED, LIVES, MALE, FEMALE, EITHER), {
  minLength: 60,
  maxLength: 60,
});

const foundersOf = ({ clutchOf }: Pedigree): number[] =>
  [...clutchOf.keys()].filter((animal) => (clutchOf[animal] ?? -1) < 0);

function search(pedigree: Pedigree, countsAs: number[], mostCarriers: number, limit = 1000): AtRiskFound {
  return searchAtRisk({
    pedigree,
    positionOf: orderPedigree(pedigree).positionOf,
    countsAs: Uint8Array.from(pedigree.clutchOf, (_, animal) => countsAs[animal] ?? 0),
    founders: Int32Array.from(foundersOf(pedigree)),
    lines: [{ line: 0, animals: Int32Array.from(pedigree.clutchOf.keys()) }],
    mostCarriers,
    after: null,
    limit,
    named: 1000,
  });
}

/** Shares of everybody from some founders, by the kernel: expected and least. */
function sharesFrom(pedigree: Pedigree, seeds: readonly number[]): { expected: Float64Array; least: Float64Array } {
  // each founder as a founder of unknown origin, so that it has a weight of its own
  const alone = { ...pedigree, sourceOf: new Int32Array(pedigree.sourceOf.length).fill(-1) };
  const weights = Float64Array.from(pedigree.clutchOf, (_, animal) => (seeds.includes(animal) ? 1 : 0));
  return shareOf(alone, orderPedigree(alone), new Float64Array(pedigree.baseKinship.length), weights, 0);
}

/** What is at risk by the definition, from the shares of everybody. */
function expectedAtRisk(pedigree: Pedigree, countsAs: number[], mostCarriers: number): Map<string, number[]> {
  const found = new Map<string, number[]>();
  const judge = (key: string, seeds: number[] | null, sexMatters: boolean): number | null => {
    const shares = seeds && sharesFrom(pedigree, seeds).expected;
    const living = [...pedigree.clutchOf.keys()].filter(
      (animal) => (countsAs[animal] ?? 0) !== NOT_COUNTED && (shares === null || (shares[animal] ?? 0) > 0),
    );
    const breeders = living.filter((animal) => (countsAs[animal] ?? 0) > LIVES);
    const isOneSex = [MALE, FEMALE].some(
      (sex) => breeders.length > 0 && breeders.every((one) => countsAs[one] === sex),
    );
    if (living.length > 0 && (breeders.length <= mostCarriers || (sexMatters && isOneSex))) found.set(key, living);
    return living.length > 0 && breeders.length <= mostCarriers ? breeders.length : null;
  };
  judge('line 0', null, true);
  const founders = foundersOf(pedigree);
  for (const source of new Set(founders.map((founder) => pedigree.sourceOf[founder] ?? -1))) {
    const own = founders.filter((founder) => pedigree.sourceOf[founder] === source);
    const ofSource = source < 0 ? null : judge(`source ${source}`, own, true);
    if (source >= 0 && own.length === 1) continue;
    for (const founder of own) {
      const breeders = judge(`founder ${founder}`, [founder], false);
      if (breeders !== null && ofSource !== null && breeders >= ofSource) found.delete(`founder ${founder}`);
    }
  }
  return found;
}

const keyOf = ({ kind, number }: AtRisk): string => `${kind} ${number}`;

describe('what is about to be lost', () => {
  it('is what few living animals carry, or animals of one sex only, and nothing else', () => {
    fc.assert(
      fc.property(written, counting, fc.integer({ min: 1, max: 3 }), (register, countsAs, mostCarriers) => {
        const pedigree = toPedigree(register);
        const { items, total } = search(pedigree, countsAs, mostCarriers);
        const wanted = expectedAtRisk(pedigree, countsAs, mostCarriers);
        expect(items.map(keyOf).sort()).toEqual([...wanted.keys()].sort());
        expect(total).toBe(items.length);
        for (const item of items)
          expect([keyOf(item), item.carriers.map(({ animal }) => animal).sort((a, b) => a - b)]).toEqual([
            keyOf(item),
            wanted.get(keyOf(item)),
          ]);
      }),
      { numRuns: 400 },
    );
  });

  it('is told with the shares that each carrier has, expected and at least', () => {
    fc.assert(
      fc.property(written, counting, (register, countsAs) => {
        const pedigree = toPedigree(register);
        for (const item of search(pedigree, countsAs, 3).items) {
          if (item.kind === 'line') continue;
          const founders = foundersOf(pedigree);
          const seeds =
            item.kind === 'founder'
              ? [item.number]
              : founders.filter((founder) => pedigree.sourceOf[founder] === item.number);
          const { expected, least } = sharesFrom(pedigree, seeds);
          for (const carrier of item.carriers) {
            expect(carrier.expected).toBeCloseTo(expected[carrier.animal] ?? NaN, 12);
            expect(carrier.least).toBeCloseTo(least[carrier.animal] ?? NaN, 12);
          }
        }
      }),
      { numRuns: 200 },
    );
  });

  it('is told most urgent first, and page by page without loss', () => {
    fc.assert(
      fc.property(written, counting, (register, countsAs) => {
        const pedigree = toPedigree(register);
        const whole = search(pedigree, countsAs, 3);
        const sorted = [...whole.items].sort((one, other) => compareUrgency(one.urgency, other.urgency));
        expect(whole.items).toEqual(sorted);
        expect(whole.items.map(({ breeders }) => breeders)).toEqual(
          whole.items.map(({ breeders }) => breeders).sort((one, other) => one - other),
        );
        const paged: string[] = [];
        let after: AtRiskFound['next'] = null;
        do {
          const page: AtRiskFound = searchAtRisk({
            pedigree,
            positionOf: orderPedigree(pedigree).positionOf,
            countsAs: Uint8Array.from(pedigree.clutchOf, (_, animal) => countsAs[animal] ?? 0),
            founders: Int32Array.from(foundersOf(pedigree)),
            lines: [{ line: 0, animals: Int32Array.from(pedigree.clutchOf.keys()) }],
            mostCarriers: 3,
            after,
            limit: 2,
            named: 3,
          });
          paged.push(...page.items.map(keyOf));
          after = page.next;
        } while (after);
        expect(paged).toEqual(whole.items.map(keyOf));
      }),
      { numRuns: 100 },
    );
  });
});

describe('genes of founders that are still there', () => {
  it('are as many as gene dropping through the whole ancestry keeps', () => {
    let compared = 0;
    fc.assert(
      fc.property(registers({ clutches: 4, pairs: 2, ofAllSizes: true }), fc.array(fc.nat(30)), (register, picks) => {
        const pedigree = toPedigree(register);
        const order = orderPedigree(pedigree);
        const animals = [...new Set(picks.map((pick) => pick % pedigree.clutchOf.length))];
        if (animals.length === 0) return;
        const ancestry = collectAncestry(pedigree, order, animals);
        const members = Int32Array.from(animals);
        const retention = alleleRetention(pedigree, ancestry, genePool(pedigree, ancestry, members), members, {
          samples: 1,
        });
        if (!retention.isExact) return;
        const descendants = new Descendants(pedigree, order.positionOf);
        for (let local = 0; local < ancestry.founders; local++) {
          const founder = ancestry.animals[local] ?? -1;
          const met = new Set<number>();
          const clutches = descendants.walk([founder], (animal) => met.add(animal).size > 0);
          const carriers = animals.filter((animal) => met.has(animal));
          const survival = geneSurvival(pedigree, [founder], clutches ?? new Int32Array(0), carriers);
          const difference = Math.abs(survival.kept - (retention.retained[local] ?? NaN));
          // so many standard errors chance does not reach in some hundred comparisons
          expect(difference).toBeLessThanOrEqual(survival.isExact ? 1e-12 : 6 * survival.standardError);
          if (survival.isExact) compared++;
        }
      }),
      { numRuns: 300 },
    );
    expect(compared).toBeGreaterThan(300);
  });

  it('are half of it for one young, three quarters for two, and all while the founder lives (Lacy 1989)', () => {
    const pedigree = toPedigree({
      founders: [-1, -1],
      sources: [],
      sourceKinships: [],
      clutches: [{ pairs: [{ sire: 0, dam: 1, odds: 1 }], young: 2 }],
    });
    const clutches = Int32Array.of(0);
    expect(geneSurvival(pedigree, [0], clutches, [2]).kept).toBe(0.5);
    expect(geneSurvival(pedigree, [0], clutches, [2, 3]).kept).toBe(0.75);
    expect(geneSurvival(pedigree, [0], clutches, [0, 2]).kept).toBe(1);
    expect(geneSurvival(pedigree, [0, 1], clutches, [2]).kept).toBe(0.5);
    expect(geneSurvival(pedigree, [0], clutches, []).kept).toBe(0);
  });

  it('agree in expectation with the shares of a single carrier without loops', () => {
    const pedigree = toPedigree({
      founders: [-1, -1, -1],
      sources: [],
      sourceKinships: [],
      clutches: [
        { pairs: [{ sire: 0, dam: 1, odds: 1 }], young: 1 },
        { pairs: [{ sire: 3, dam: 2, odds: 1 }], young: 1 },
      ],
    });
    // a grandchild has a quarter of its two genes from a grandparent: a quarter of that grandparent's two
    const share = founderShares(pedigree, orderPedigree(pedigree), 4).find(
      (origin) => origin.kind === 'individual' && origin.individual === 0,
    )?.share;
    expect(geneSurvival(pedigree, [0], Int32Array.of(0, 1), [4]).kept).toBeCloseTo(share ?? NaN, 12);
  });
});
