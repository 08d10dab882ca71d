import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ClutchFigures } from '../../../api/lineage/kernel/figures.ts';
import { computeInbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import { kinshipMatrix } from '../../../api/lineage/kernel/kinship.ts';
import { meanKinship } from '../../../api/lineage/kernel/mean-kinship.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { buildShape, seededRandom } from '../../bench/kernel-shapes.ts';
import { dropGenes } from './dropped-genes.ts';
import { registers, toPedigree } from './random-registers.ts';
import { SlowRecursion } from './slow-recursion.ts';

/** Few founders and many clutches: generations overlap deeply, and parents are often their own mates' kin. */
const deep = registers({ clutches: 60, pairs: 3, ofAllSizes: true });
const vague = registers({ clutches: 25, pairs: 6, ofAllSizes: true });
/** Milliseconds for the thousands, on a machine that is busy with other tests. */
const LONG = 60_000;
const FIGURES = ['clutchExpected', 'clutchLeast', 'clutchGreatest', 'clutchWithin', 'clutchResidual'] as const;

/** Compares numbers without a promise of the test library for each of them: there are millions. */
function expectClose(actual: ArrayLike<number>, expected: ArrayLike<number>, what: string): void {
  expect(actual.length, what).toBe(expected.length);
  for (let index = 0; index < expected.length; index++) {
    const difference = Math.abs((actual[index] ?? NaN) - (expected[index] ?? NaN));
    if (!(difference < 1e-12)) expect.fail(`${what} ${index}: ${actual[index]} instead of ${expected[index]}`);
  }
}

function expectSameFigures(actual: ClutchFigures, expected: ClutchFigures, how: string): void {
  for (const name of FIGURES) expectClose(actual[name], expected[name], `${name} ${how}`);
}

/** All figures of a register by the definition. */
function slowFigures(
  pedigree: Pedigree,
): Pick<ClutchFigures, 'clutchExpected' | 'clutchWithin'> & { matrix: number[] } {
  const slow = new SlowRecursion(pedigree);
  const clutches = [...Array(pedigree.pairStart.length - 1).keys()];
  const everybody = [...pedigree.clutchOf.keys()];
  return {
    clutchExpected: Float64Array.from(clutches, (clutch) => slow.young(clutch)),
    clutchWithin: Float64Array.from(clutches, (clutch) => slow.within(clutch)),
    matrix: everybody.flatMap((a) => everybody.map((b) => slow.kinship(a, b))),
  };
}

describe('two methods and the definition, one answer', () => {
  it.each([
    ['deep', deep, 2000],
    ['vague', vague, 2000],
  ] as const)(
    'on thousands of random registers (%s)',
    (_, arbitrary, numRuns) => {
      fc.assert(
        fc.property(arbitrary, (register) => {
          const pedigree = toPedigree(register);
          const expected = slowFigures(pedigree);
          const trace = computeInbreeding(pedigree, { method: 'trace' });
          expectClose(trace.clutchExpected, expected.clutchExpected, 'expected');
          expectClose(trace.clutchWithin, expected.clutchWithin, 'within');
          for (const options of [{ method: 'frontier' }, {}, { frontierBytes: 0 }, { frontierBytes: 2000 }] as const)
            expectSameFigures(computeInbreeding(pedigree, options), trace, JSON.stringify(options));
        }),
        { numRuns },
      );
    },
    LONG,
  );

  it(
    'for the kinship of everybody with everybody, and its means',
    () => {
      fc.assert(
        fc.property(vague, (register) => {
          const pedigree = toPedigree(register);
          const inbreeding = computeInbreeding(pedigree);
          const everybody = Int32Array.from(pedigree.clutchOf.keys());
          const { matrix } = slowFigures(pedigree);
          for (const method of ['passes', 'sweep'] as const)
            expectClose(kinshipMatrix(pedigree, inbreeding, everybody, { method }), matrix, method);
          const means = everybody.map(() => 0);
          expectClose(
            meanKinship(pedigree, inbreeding, everybody),
            Float64Array.from(means, (_, row) => {
              const ofRow = matrix.slice(row * everybody.length, (row + 1) * everybody.length);
              return ofRow.reduce((sum, kinship) => sum + kinship, 0) / everybody.length;
            }),
            'mean kinship',
          );
        }),
        { numRuns: 500 },
      );
    },
    LONG,
  );

  it('with as little memory as one likes, on larger registers', () => {
    const shapes = [
      { name: '', lines: 1, animalsPerLine: 4000, breeders: 100, clutchSize: 4, crosses: 0, uncertain: 0.4 },
      { name: '', lines: 60, animalsPerLine: 150, breeders: 20, clutchSize: 3, crosses: 0.03, uncertain: 0.3 },
    ];
    for (const pedigree of shapes.map((shape) => buildShape(shape))) {
      const methods = new Set<string>();
      const free = computeInbreeding(pedigree, { method: 'frontier' });
      for (const frontierBytes of [0, 5000, 50_000, 2 ** 20, 2 ** 30]) {
        const bound = computeInbreeding(pedigree, { frontierBytes });
        expectSameFigures(bound, free, `in ${frontierBytes} bytes`);
        methods.add(JSON.stringify(bound.method));
      }
      expect(methods.size, 'the limit changes the method').toBeGreaterThan(1);
    }
  });
});

describe('genes dropped at random', () => {
  it(
    'meet as often as the coefficients say, within the error of the sample',
    () => {
      const drops = 4000;
      let distance = 0;
      let figures = 0;
      fc.assert(
        fc.property(registers({ clutches: 12, pairs: 3, ofAllSizes: true }), fc.integer(), (register, seed) => {
          // Genes are dropped through founders without kinship of their own; sources are held to the definition above.
          const pedigree = toPedigree({ ...register, founders: register.founders.map(() => -1) });
          const { clutchExpected, clutchWithin } = computeInbreeding(pedigree);
          const met = dropGenes(pedigree, drops, seededRandom(seed));
          for (let clutch = 0; clutch < clutchExpected.length; clutch++)
            for (const [share, value] of [
              [met.inbreeding[clutch] ?? NaN, clutchExpected[clutch] ?? NaN],
              [met.within[clutch] ?? NaN, clutchWithin[clutch] ?? NaN],
            ] as const) {
              const error = Math.sqrt((value * (1 - value)) / drops);
              if (error === 0) expect(share).toBe(value);
              else {
                const away = (share - value) / error;
                expect(Math.abs(away), `clutch ${clutch}: ${share} dropped, ${value} computed`).toBeLessThan(6);
                distance += away ** 2;
                figures++;
              }
            }
        }),
        { numRuns: 40, seed: 7 },
      );
      // The squares of standardised distances have a mean of 1: a computed figure that is a little wrong would raise it.
      expect(distance / figures).toBeGreaterThan(0.7);
      expect(distance / figures).toBeLessThan(1.4);
    },
    LONG,
  );
});
