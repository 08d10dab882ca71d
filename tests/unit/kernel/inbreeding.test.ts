import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeInbreeding, inbreedingOf } from '../../../api/lineage/kernel/inbreeding.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { registers, shuffled, toPedigree, type WrittenRegister } from './random-registers.ts';
import { SlowRecursion } from './slow-recursion.ts';

const METHODS = ['frontier', 'trace', 'auto'] as const;
const anyRegister = registers({ clutches: 25, pairs: 4 });

function expectClose(actual: ArrayLike<number>, expected: ArrayLike<number>, what: string): void {
  expect(actual.length, what).toBe(expected.length);
  for (let index = 0; index < actual.length; index++)
    expect(Math.abs((actual[index] ?? NaN) - (expected[index] ?? NaN)), `${what} ${index}`).toBeLessThan(1e-12);
}

describe('inbreeding of a whole register', () => {
  it.each(METHODS)('agrees with the plain recursion (%s)', (method) => {
    fc.assert(
      fc.property(anyRegister, (register) => {
        const pedigree = toPedigree(register);
        const slow = new SlowRecursion(pedigree);
        const fast = computeInbreeding(pedigree, { method });
        const clutches = register.clutches.map((_, clutch) => clutch);
        expectClose(
          fast.clutchExpected,
          clutches.map((clutch) => slow.young(clutch)),
          'expected',
        );
        expectClose(
          fast.clutchWithin,
          clutches.map((clutch) => slow.within(clutch)),
          'within',
        );
        const kinships = (clutch: number): number[] =>
          slow.pairsOf(clutch).map(({ sire, dam }) => slow.kinship(sire, dam));
        expectClose(
          fast.clutchLeast,
          clutches.map((clutch) => Math.min(...kinships(clutch))),
          'least',
        );
        expectClose(
          fast.clutchGreatest,
          clutches.map((clutch) => Math.max(...kinships(clutch))),
          'greatest',
        );
      }),
      { numRuns: 400 },
    );
  });

  it('gives the same residual part of clutch-mates by both methods', () => {
    fc.assert(
      fc.property(anyRegister, (register) => {
        const pedigree = toPedigree(register);
        const [frontier, trace] = (['frontier', 'trace'] as const).map((method) =>
          computeInbreeding(pedigree, { method }),
        );
        expectClose(frontier?.clutchResidual ?? [], trace?.clutchResidual ?? [NaN], 'residual');
      }),
    );
  });

  it('stays between 0 and 1, the least at most the expected and that at most the greatest', () => {
    fc.assert(
      fc.property(anyRegister, (register) => {
        const pedigree = toPedigree(register);
        const inbreeding = computeInbreeding(pedigree);
        for (let individual = 0; individual < pedigree.clutchOf.length; individual++) {
          const { expected, least, greatest } = inbreedingOf(pedigree, inbreeding, individual);
          expect(least).toBeGreaterThanOrEqual(0);
          expect(expected).toBeGreaterThanOrEqual(least - 1e-12);
          expect(expected).toBeLessThanOrEqual(greatest + 1e-12);
          expect(greatest).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  it('does not depend on the order of rows nor on the numbers that animals and clutches have', () => {
    fc.assert(
      fc.property(
        anyRegister,
        fc.integer({ min: 1, max: 1e6 }),
        fc.constantFrom(...METHODS),
        (register, seed, method) => {
          const pedigree = toPedigree(register);
          const other = shuffled(pedigree, (row) => ((row + 1) * seed) % 7919);
          const before = computeInbreeding(pedigree, { method });
          const after = computeInbreeding(other.pedigree, { method });
          expectClose(
            other.newClutch.map((clutch) => after.clutchExpected[clutch] ?? NaN),
            before.clutchExpected,
            'expected',
          );
          expectClose(
            other.newClutch.map((clutch) => after.clutchWithin[clutch] ?? NaN),
            before.clutchWithin,
            'within',
          );
        },
      ),
      { numRuns: 300 },
    );
  });

  it('does not change when unrelated animals are added', () => {
    fc.assert(
      fc.property(anyRegister, anyRegister, (register, strangers) => {
        const alone = computeInbreeding(toPedigree(register));
        const together = computeInbreeding(sideBySide(register, strangers));
        expectClose(together.clutchExpected.subarray(0, register.clutches.length), alone.clutchExpected, 'expected');
      }),
    );
  });

  it.each(METHODS)('knows a pair that breeds again, in its own family only (%s)', (method) => {
    // A family of four clutches, founders first: a pair of siblings or of unrelated animals breeds twice.
    const family = (firstFounder: number, firstYoung: number, siblings: boolean): WrittenRegister['clutches'] => {
      const clutch = (sire: number, dam: number, young: number): WrittenRegister['clutches'][number] => ({
        pairs: [{ sire, dam, odds: 1 }],
        young,
      });
      const again = [clutch(firstYoung, firstYoung + 1, 1), clutch(firstYoung, firstYoung + 1, 1)];
      return siblings
        ? [clutch(firstFounder, firstFounder + 1, 2), ...again]
        : [clutch(firstFounder, firstFounder + 1, 1), clutch(firstFounder + 2, firstFounder + 3, 1), ...again];
    };
    const register = (...siblings: boolean[]): WrittenRegister => {
      const founders = Array.from({ length: 4 * siblings.length }, () => -1);
      const clutches = siblings.flatMap((of, place) => family(4 * place, founders.length + 4 * place, of));
      return { founders, sources: [], sourceKinships: [], clutches };
    };
    const pedigree = toPedigree(register(true, false, true));
    // As numbered, and with both parents of every pair the other way round.
    for (const turned of [pedigree, { ...pedigree, pairSire: pedigree.pairDam, pairDam: pedigree.pairSire }])
      expect([...computeInbreeding(turned, { method }).clutchExpected]).toEqual(
        // Young of full siblings: ¼ (Wright 1922).
        [0, 0.25, 0.25, 0, 0, 0, 0, 0, 0.25, 0.25],
      );
  });

  it.each(METHODS)(
    'follows a thousand and more generations, where a coefficient becomes too small for a number (%s)',
    (method) => {
      const generations = 1300;
      // Founders 0 .. generations; each animal of the line is mated to a founder of its own, the last one to founder 0.
      const founders = Array.from({ length: generations + 1 }, () => -1);
      const bred = (step: number): number => (step === 0 ? 0 : generations + step);
      const line = founders
        .slice(1)
        .map((_, step) => ({ pairs: [{ sire: bred(step), dam: step + 1, odds: 1 }], young: 1 }));
      const clutches = [...line, { pairs: [{ sire: bred(generations), dam: 0, odds: 1 }], young: 1 }];
      const early = { pairs: [{ sire: bred(10), dam: 0, odds: 1 }], young: 1 };
      const { clutchExpected } = computeInbreeding(
        toPedigree({ founders, sources: [], sourceKinships: [], clutches: [...clutches, early] }),
        { method },
      );
      expect(clutchExpected[generations]).toBeLessThan(1e-300);
      expect(clutchExpected[generations + 1]).toBeCloseTo(0.5 ** 11, 15);
    },
  );

  it('knows founders by their source, and refuses an animal that does not exist', () => {
    const pedigree = toPedigree({
      founders: [-1, 0],
      sources: [{ baseKinship: 0.25, founderInbreeding: 0.125 }],
      sourceKinships: [],
      clutches: [],
    });
    const inbreeding = computeInbreeding(pedigree);
    expect(inbreedingOf(pedigree, inbreeding, 0)).toEqual({ expected: 0, least: 0, greatest: 0 });
    expect(inbreedingOf(pedigree, inbreeding, 1)).toEqual({ expected: 0.125, least: 0.125, greatest: 0.125 });
    expect(() => inbreedingOf(pedigree, inbreeding, 2)).toThrow(RangeError);
  });
});

/** Two registers in one, sharing nothing: the second's animals and sources get higher numbers. */
function sideBySide(first: WrittenRegister, second: WrittenRegister): Pedigree {
  const a = toPedigree(first);
  const b = toPedigree(second);
  const shift = (values: Int32Array, by: number): number[] => [...values].map((value) => (value < 0 ? -1 : value + by));
  const animals = a.clutchOf.length;
  return {
    clutchOf: Int32Array.from([...a.clutchOf, ...shift(b.clutchOf, first.clutches.length)]),
    sourceOf: Int32Array.from([...a.sourceOf, ...shift(b.sourceOf, first.sources.length)]),
    baseKinship: Float64Array.from([...a.baseKinship, ...b.baseKinship]),
    founderInbreeding: Float64Array.from([...(a.founderInbreeding ?? []), ...(b.founderInbreeding ?? [])]),
    sourceKinships: [
      ...first.sourceKinships,
      ...second.sourceKinships.map(({ a: x, b: y, kinship }) => ({
        a: x + first.sources.length,
        b: y + first.sources.length,
        kinship,
      })),
    ],
    pairStart: Int32Array.from([...a.pairStart, ...shift(b.pairStart.subarray(1), a.pairSire.length)]),
    pairSire: Int32Array.from([...a.pairSire, ...shift(b.pairSire, animals)]),
    pairDam: Int32Array.from([...a.pairDam, ...shift(b.pairDam, animals)]),
    pairProbability: Float64Array.from([...a.pairProbability, ...b.pairProbability]),
  };
}
