import fc from 'fast-check';
import { expect, it } from 'vitest';
import { pedigreeDepth } from '../../../api/lineage/kernel/depth.ts';
import { completenessIndex } from '../../../api/lineage/kernel/completeness.ts';
import { computeInbreeding, inbreedingOf } from '../../../api/lineage/kernel/inbreeding.ts';
import { LoopError } from '../../../api/lineage/kernel/loop-error.ts';
import { meanKinship } from '../../../api/lineage/kernel/mean-kinship.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { founderShares } from '../../../api/lineage/kernel/shares.ts';
import { whatIf } from '../../../api/lineage/kernel/what-if.ts';
import { registers, toPedigree, type WrittenRegister } from './random-registers.ts';

const asked = (pedigree: Pedigree, individual: number, living: Int32Array) => ({
  individual,
  living,
  wild: new Uint8Array(pedigree.baseKinship.length),
  generations: 5,
});

/** The same register with other pairs of one clutch and another base kinship of one source. */
function changed(
  register: WrittenRegister,
  clutch: number,
  source: number,
  baseKinship: number,
  odds: readonly number[],
) {
  return {
    ...register,
    sources: register.sources.map((one, place) =>
      place === source ? { baseKinship, founderInbreeding: one.founderInbreeding } : one,
    ),
    clutches: register.clutches.map((one, place) =>
      place === clutch
        ? { ...one, pairs: one.pairs.map((pair, at) => ({ ...pair, odds: odds[at % odds.length] ?? 1 })) }
        : one,
    ),
  };
}

it('figures under assumptions are those of a register in which it was so recorded', () => {
  let uncertain = 0;
  fc.assert(
    fc.property(
      registers({ clutches: 25, pairs: 4, ofAllSizes: true }),
      fc.record({
        clutch: fc.nat(999),
        source: fc.nat(2),
        animal: fc.nat(999),
        baseKinship: fc.constantFrom(0, 0.1, 0.25, 1),
      }),
      fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 4 }),
      (register, picked, odds) => {
        const pedigree = toPedigree(register);
        const clutch = picked.clutch % register.clutches.length;
        const individual = picked.animal % pedigree.clutchOf.length;
        const other = toPedigree(changed(register, clutch, picked.source, picked.baseKinship, odds));
        const pairs = [];
        for (let pair = other.pairStart[clutch] ?? 0; pair < (other.pairStart[clutch + 1] ?? 0); pair++)
          pairs.push({
            a: other.pairSire[pair] ?? -1,
            b: other.pairDam[pair] ?? -1,
            probability: other.pairProbability[pair] ?? 0,
          });
        if (pairs.length > 1) uncertain++;
        const living = Int32Array.from(
          [...pedigree.clutchOf.keys()].filter((animal) => animal % 3 === 0 || animal === individual),
        );
        const found = whatIf(pedigree, asked(pedigree, individual, living), {
          baseKinships: new Map([[picked.source, picked.baseKinship]]),
          pairs: new Map([[clutch, pairs]]),
        });
        for (const [figures, really] of [
          [found?.recorded, pedigree],
          [found?.assumed, other],
        ] as const) {
          const inbreeding = computeInbreeding(really);
          const { expected, least, greatest } = inbreedingOf(really, inbreeding, individual);
          const depth = pedigreeDepth(really, inbreeding.order);
          const close = (actual: number | null | undefined, value: number | undefined): void =>
            expect(Math.abs((actual ?? NaN) - (value ?? NaN))).toBeLessThan(1e-12);
          close(figures?.inbreeding.expected, expected);
          close(figures?.inbreeding.least, least);
          close(figures?.inbreeding.greatest, greatest);
          close(figures?.meanKinship, meanKinship(really, inbreeding, living)[individual]);
          close(figures?.generationEquivalents, depth.generationEquivalents[individual]);
          close(figures?.completeness, completenessIndex(really, inbreeding.order, individual, 5));
          expect(figures?.depth).toBe(depth.depth[individual]);
          expect(figures?.fullDepth).toBe(depth.fullDepth[individual]);
          const keyed = (shares: readonly object[]) =>
            shares
              .map((one) =>
                JSON.stringify(one, (_, value: unknown) =>
                  typeof value === 'number' ? Number(value.toFixed(12)) : value,
                ),
              )
              .sort();
          expect(keyed(figures?.shares ?? [])).toEqual(keyed(founderShares(really, inbreeding.order, individual)));
        }
      },
    ),
    { numRuns: 400 },
  );
  expect(uncertain).toBeGreaterThan(100);
});

/** A and B have C; C and D have E. */
const family: WrittenRegister = {
  founders: [-1, -1, -1],
  sources: [],
  sourceKinships: [],
  clutches: [
    { pairs: [{ sire: 0, dam: 1, odds: 1 }], young: 1 },
    { pairs: [{ sire: 3, dam: 2, odds: 1 }], young: 1 },
  ],
};

it('a loop that an assumption would close is told by the numbers of the register, also beside the ancestry asked about', () => {
  const pedigree = toPedigree(family);
  // E as a parent of the clutch that C hatched from
  const assumptions = { baseKinships: new Map(), pairs: new Map([[0, [{ a: 4, b: 1, probability: 1 }]]]) };
  for (const individual of [4, 2])
    try {
      whatIf(pedigree, asked(pedigree, individual, new Int32Array(0)), assumptions);
      expect.fail('the loop was not found');
    } catch (error) {
      expect(error).toBeInstanceOf(LoopError);
      expect([...(error as LoopError).individuals].sort()).toEqual([3, 4]);
    }
});

it('an ancestry with more clutches than may be is not computed', () => {
  const pedigree = toPedigree(family);
  const assumptions = { baseKinships: new Map(), pairs: new Map() };
  expect(whatIf(pedigree, asked(pedigree, 4, new Int32Array(0)), assumptions, 1)).toBeNull();
  expect(whatIf(pedigree, asked(pedigree, 4, new Int32Array(0)), assumptions, 2)).not.toBeNull();
});
