import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { completenessIndex } from '../../../api/lineage/kernel/completeness.ts';
import { pedigreeDepth } from '../../../api/lineage/kernel/depth.ts';
import { filialGeneration, UNKNOWN_GENERATION } from '../../../api/lineage/kernel/filial-generation.ts';
import { orderPedigree } from '../../../api/lineage/kernel/order.ts';
import { founderShares, shareOf } from '../../../api/lineage/kernel/shares.ts';
import { registers, toPedigree } from './random-registers.ts';
import { SlowRecursion } from './slow-recursion.ts';

const anyRegister = registers({ clutches: 20, pairs: 4 });
const weight = fc.constantFrom(0, 0.25, 1);

describe('founder shares', () => {
  it('are positive, name each founder once and sum to 1', () => {
    fc.assert(
      fc.property(anyRegister, (register) => {
        const pedigree = toPedigree(register);
        const order = orderPedigree(pedigree);
        for (let individual = 0; individual < pedigree.clutchOf.length; individual++) {
          const shares = founderShares(pedigree, order, individual);
          const names = shares.map((share) => JSON.stringify({ ...share, share: 0 }));
          expect(new Set(names).size).toBe(names.length);
          for (const { share } of shares) expect(share).toBeGreaterThan(0);
          expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
        }
      }),
    );
  });

  it('add up to the share of a property, whatever the weights', () => {
    fc.assert(
      fc.property(
        anyRegister,
        fc.array(weight, { minLength: 3, maxLength: 3 }),
        weight,
        (register, ofSource, ofUnknown) => {
          const pedigree = toPedigree(register);
          const order = orderPedigree(pedigree);
          const ofFounders = Float64Array.from(pedigree.clutchOf, (_, individual) => (individual % 3) / 2);
          const { expected, least } = shareOf(pedigree, order, Float64Array.from(ofSource), ofFounders, ofUnknown);
          for (let individual = 0; individual < expected.length; individual++) {
            const sum = founderShares(pedigree, order, individual).reduce((total, part) => {
              if (part.kind === 'source') return total + part.share * (ofSource[part.source] ?? NaN);
              if (part.kind === 'individual') return total + part.share * (ofFounders[part.individual] ?? NaN);
              return total + part.share * ofUnknown;
            }, 0);
            expect(expected[individual]).toBeCloseTo(sum, 12);
            expect(least[individual]).toBeLessThanOrEqual(expected[individual] ?? NaN);
            expect(least[individual]).toBeGreaterThanOrEqual(0);
          }
        },
      ),
    );
  });

  it('have a least that no choice of one pair a clutch goes below', () => {
    fc.assert(
      fc.property(anyRegister, fc.nat(), (register, seed) => {
        const whole = toPedigree(register);
        const chosen = toPedigree({
          ...register,
          clutches: register.clutches.map(({ pairs, young }, clutch) => ({
            pairs: pairs.slice((seed + clutch) % pairs.length).slice(0, 1),
            young,
          })),
        });
        const sources = Float64Array.from([1, 0, 1]);
        const founders = new Float64Array(whole.clutchOf.length);
        const { least } = shareOf(whole, orderPedigree(whole), sources, founders, 0);
        const { expected } = shareOf(chosen, orderPedigree(chosen), sources, founders, 0);
        least.forEach((lowest, individual) =>
          expect(lowest).toBeLessThanOrEqual((expected[individual] ?? NaN) + 1e-12),
        );
      }),
    );
  });
});

describe('pedigree depth', () => {
  it('agrees with following every candidate by hand', () => {
    fc.assert(
      fc.property(anyRegister, (register) => {
        const pedigree = toPedigree(register);
        const { depth, fullDepth, generationEquivalents } = pedigreeDepth(pedigree, orderPedigree(pedigree));
        const { pairsOf } = { pairsOf: (clutch: number) => new SlowRecursion(pedigree).pairsOf(clutch) };
        for (let individual = 0; individual < depth.length; individual++) {
          const clutch = pedigree.clutchOf[individual] ?? -1;
          const pairs = clutch < 0 ? [] : pairsOf(clutch);
          const parents = pairs.flatMap(({ sire, dam }) => [sire, dam]);
          const known = parents.filter((parent) => parent >= 0);
          expect(depth[individual]).toBe(Math.max(0, ...known.map((parent) => 1 + (depth[parent] ?? NaN))));
          const certain = parents.length > 0 && known.length === parents.length;
          const shallowest = Math.min(...known.map((parent) => fullDepth[parent] ?? NaN));
          expect(fullDepth[individual]).toBe(certain ? 1 + shallowest : 0);
          const sum = pairs.reduce((total, { sire, dam, probability }) => {
            const through = [sire, dam].filter((parent) => parent >= 0);
            return through.reduce(
              (t, parent) => t + (probability / 2) * (1 + (generationEquivalents[parent] ?? NaN)),
              total,
            );
          }, 0);
          expect(generationEquivalents[individual]).toBeCloseTo(sum, 12);
        }
      }),
    );
  });

  it('gives a completeness index from 0 to 1 that is 1 where all is known and needs one generation at least', () => {
    const pedigree = toPedigree({
      founders: [-1, -1, -1, -1],
      sources: [],
      sourceKinships: [],
      clutches: [
        { pairs: [{ sire: 0, dam: 1, odds: 1 }], young: 1 },
        { pairs: [{ sire: 2, dam: 3, odds: 1 }], young: 1 },
        {
          pairs: [
            { sire: 4, dam: 5, odds: 1 },
            { sire: 4, dam: -1, odds: 1 },
          ],
          young: 1,
        },
      ],
    });
    const order = orderPedigree(pedigree);
    expect(completenessIndex(pedigree, order, 4, 1)).toBe(1);
    expect(completenessIndex(pedigree, order, 0, 3)).toBe(0);
    // The dam is known with odds ½: S = 1, D = ½ over both generations, 2·1·½/1.5.
    expect(completenessIndex(pedigree, order, 6, 2)).toBeCloseTo(2 / 3, 12);
    expect(() => completenessIndex(pedigree, order, 4, 0)).toThrow(RangeError);
    expect(() => completenessIndex(pedigree, order, 99, 2)).toThrow('There is no individual 99');
  });
});

describe('filial generation', () => {
  it('is unknown when candidate pairs disagree, and known when they do not (CITES Resolution Conf. 10.16)', () => {
    const pedigree = toPedigree({
      founders: [0, 0, 0, -1],
      sources: [{ baseKinship: 0, founderInbreeding: 0 }],
      sourceKinships: [],
      clutches: [
        { pairs: [{ sire: 0, dam: 1, odds: 1 }], young: 2 },
        {
          pairs: [
            { sire: 0, dam: 1, odds: 1 },
            { sire: 2, dam: 1, odds: 1 },
          ],
          young: 1,
        },
        {
          pairs: [
            { sire: 4, dam: 5, odds: 1 },
            { sire: 4, dam: 1, odds: 1 },
          ],
          young: 1,
        },
        { pairs: [{ sire: 4, dam: 3, odds: 1 }], young: 1 },
      ],
    });
    const generations = filialGeneration(pedigree, orderPedigree(pedigree), new Uint8Array([1]));
    expect([...generations]).toEqual([0, 0, 0, UNKNOWN_GENERATION, 1, 1, 1, UNKNOWN_GENERATION, UNKNOWN_GENERATION]);
  });
});
