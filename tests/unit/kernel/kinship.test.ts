import fc from 'fast-check';
import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { forecastYoung } from '../../../api/lineage/kernel/forecast.ts';
import { computeInbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import { kinshipByRows } from '../../../api/lineage/kernel/kinship-by-rows.ts';
import { kinshipMatrix } from '../../../api/lineage/kernel/kinship.ts';
import { meanKinship, meanKinshipOf } from '../../../api/lineage/kernel/mean-kinship.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { buildShape, seededRandom } from '../../bench/kernel-shapes.ts';
import { registers, toPedigree } from './random-registers.ts';
import { SlowRecursion } from './slow-recursion.ts';

const anyRegister = registers({ clutches: 25, pairs: 4 });

function everybody(pedigree: Pedigree): Int32Array {
  return Int32Array.from(pedigree.clutchOf.keys());
}

function close(actual: number, expected: number, what: string): void {
  expect(Math.abs(actual - expected), `${what}: ${actual} instead of ${expected}`).toBeLessThan(1e-12);
}

describe('the kinship matrix', () => {
  it.each(['auto', 'passes', 'sweep'] as const)(
    'agrees with the plain recursion for any set, in any order, also with an animal twice (%s)',
    (method) => {
      fc.assert(
        fc.property(anyRegister, fc.array(fc.nat(), { maxLength: 20 }), (register, picks) => {
          const pedigree = toPedigree(register);
          const slow = new SlowRecursion(pedigree);
          const set = Int32Array.from(picks, (pick) => pick % pedigree.clutchOf.length);
          const matrix = kinshipMatrix(pedigree, computeInbreeding(pedigree), set, { method });
          expect(matrix).toHaveLength(set.length ** 2);
          set.forEach((a, row) =>
            set.forEach((b, column) =>
              close(matrix[row * set.length + column] ?? NaN, slow.kinship(a, b), `kinship ${a} ${b}`),
            ),
          );
        }),
        { numRuns: 400 },
      );
    },
  );

  it.each([
    ['one family', { name: '', lines: 1, animalsPerLine: 1500, breeders: 30, clutchSize: 3, crosses: 0 }],
    ['many families', { name: '', lines: 30, animalsPerLine: 60, breeders: 8, clutchSize: 2, crosses: 0 }],
    ['families that meet', { name: '', lines: 30, animalsPerLine: 60, breeders: 8, clutchSize: 2, crosses: 0.05 }],
  ])('is the same by passes and by sweeps, whatever memory they may take (%s)', (_, shape) => {
    const pedigree = buildShape(shape);
    const inbreeding = computeInbreeding(pedigree);
    const random = seededRandom(3);
    const some = Int32Array.from({ length: 120 }, () => Math.floor(random() * pedigree.clutchOf.length));
    const byPasses = kinshipMatrix(pedigree, inbreeding, some, { method: 'passes' });
    for (const options of [{}, { method: 'sweep' }, { sweepBytes: 20_000 }, { sweepBytes: 0 }] as const)
      kinshipMatrix(pedigree, inbreeding, some, options).forEach((kinship, cell) =>
        close(kinship, byPasses[cell] ?? NaN, `cell ${cell}`),
      );
  });

  it('is symmetric, from 0 to 1, with a diagonal from ½ to 1', () => {
    fc.assert(
      fc.property(anyRegister, (register) => {
        const pedigree = toPedigree(register);
        const size = pedigree.clutchOf.length;
        const matrix = kinshipMatrix(pedigree, computeInbreeding(pedigree), everybody(pedigree));
        for (let row = 0; row < size; row++)
          for (let column = 0; column <= row; column++) {
            const kinship = matrix[row * size + column] ?? NaN;
            expect(matrix[column * size + row]).toBe(kinship);
            expect(kinship).toBeGreaterThanOrEqual(row === column ? 0.5 : -1e-15);
            expect(kinship).toBeLessThanOrEqual(1);
          }
      }),
    );
  });

  it('comes row by row with the same figures', () => {
    fc.assert(
      fc.property(anyRegister, fc.array(fc.nat(), { maxLength: 20 }), (register, picks) => {
        const pedigree = toPedigree(register);
        const inbreeding = computeInbreeding(pedigree);
        const set = Int32Array.from(new Set(picks.map((pick) => pick % pedigree.clutchOf.length)));
        const matrix = kinshipMatrix(pedigree, inbreeding, set);
        let row = 0;
        for (const kinships of kinshipByRows(pedigree, inbreeding, set)) {
          kinships.forEach((kinship, column) =>
            close(kinship, matrix[row * set.length + column] ?? NaN, `row ${row} column ${column}`),
          );
          row++;
        }
        expect(row).toBe(set.length);
      }),
    );
  });

  it('is the mean over every assignment of parents, written out (tiny registers)', () => {
    fc.assert(
      fc.property(registers({ clutches: 4, pairs: 3 }), (register) => {
        const pedigree = toPedigree(register);
        const size = pedigree.clutchOf.length;
        const mean = new Float64Array(size * size);
        for (const { certain, probability } of assignments(pedigree)) {
          const slow = new SlowRecursion(certain);
          mean.forEach((_, cell) => {
            const kinship = slow.kinship(Math.floor(cell / size), cell % size);
            mean[cell] = (mean[cell] ?? NaN) + probability * kinship;
          });
        }
        const matrix = kinshipMatrix(pedigree, computeInbreeding(pedigree), everybody(pedigree));
        matrix.forEach((kinship, cell) => close(kinship, mean[cell] ?? NaN, `cell ${cell}`));
      }),
      { numRuns: 200 },
    );
  });

  it('is half of A = T D Tᵀ from a general matrix library on certain pedigrees (Henderson 1976)', () => {
    const parents = fc.record({ a: fc.nat(999), b: fc.nat(999), unknown: fc.nat(5) });
    fc.assert(
      fc.property(fc.array(parents, { minLength: 3, maxLength: 30 }), (drawn) => {
        const rows = drawn.map(({ a, b, unknown }, animal): [number, number] => {
          if (animal < 2) return [-1, -1];
          const sire = unknown === 0 ? -1 : a % animal;
          const other = b % animal;
          return [sire, unknown === 1 ? -1 : other === sire ? (other + 1) % animal : other];
        });
        const pedigree = ownClutches(rows);
        const inbreeding = computeInbreeding(pedigree);
        const size = rows.length;
        const fromParents = Matrix.zeros(size, size);
        rows.forEach((pair, animal) => pair.forEach((parent) => parent >= 0 && fromParents.set(animal, parent, 0.5)));
        const trace = inverse(Matrix.eye(size).sub(fromParents));
        // D by Henderson's rule from A itself, row by row: 1 − ¼ of the diagonal of A for each known parent.
        const own: number[] = [];
        rows.forEach((pair, animal) => {
          const diagonal = (parent: number): number =>
            own.reduce((sum, part, ancestor) => sum + part * trace.get(parent, ancestor) ** 2, 0);
          own[animal] = pair.reduce((rest, parent) => rest - (parent < 0 ? 0 : 0.25 * diagonal(parent)), 1);
        });
        const relationships = trace.mmul(Matrix.diag(own)).mmul(trace.transpose());
        const matrix = kinshipMatrix(pedigree, inbreeding, everybody(pedigree));
        matrix.forEach((kinship, cell) =>
          close(2 * kinship, relationships.get(Math.floor(cell / size), cell % size), `A ${cell}`),
        );
      }),
      { numRuns: 200 },
    );
  });

  it('refuses an animal that does not exist', () => {
    const pedigree = ownClutches([[-1, -1]]);
    expect(() => kinshipMatrix(pedigree, computeInbreeding(pedigree), Int32Array.from([1]))).toThrow(
      'There is no individual 1',
    );
  });
});

describe('mean kinship', () => {
  it('is the mean of a row of the matrix, for members and for others', () => {
    fc.assert(
      fc.property(anyRegister, fc.uniqueArray(fc.nat(200), { minLength: 1, maxLength: 12 }), (register, picks) => {
        const pedigree = toPedigree(register);
        const inbreeding = computeInbreeding(pedigree);
        const size = pedigree.clutchOf.length;
        const members = Int32Array.from(new Set(picks.map((pick) => pick % size)));
        const matrix = kinshipMatrix(pedigree, inbreeding, everybody(pedigree));
        meanKinship(pedigree, inbreeding, members).forEach((mean, individual) => {
          const sum = members.reduce((total, member) => total + (matrix[individual * size + member] ?? NaN), 0);
          close(mean, sum / members.length, `mean kinship of ${individual}`);
        });
      }),
      { numRuns: 200 },
    );
  });

  it('is the same when only some animals are asked about, members or not, in any order', () => {
    const picked = fc.uniqueArray(fc.nat(200), { maxLength: 12 });
    fc.assert(
      fc.property(anyRegister, picked, fc.array(fc.nat(200), { maxLength: 12 }), (register, picks, askedPicks) => {
        const pedigree = toPedigree(register);
        const inbreeding = computeInbreeding(pedigree);
        const size = pedigree.clutchOf.length;
        const members = Int32Array.from(new Set(picks.map((pick) => pick % size)));
        const targets = Int32Array.from(askedPicks, (pick) => pick % size);
        const ofAll = meanKinship(pedigree, inbreeding, members);
        const asked = meanKinshipOf(pedigree, inbreeding, members, targets);
        expect(asked).toHaveLength(targets.length);
        asked.forEach((mean, place) => {
          const target = targets[place] ?? NaN;
          close(mean, ofAll[target] ?? NaN, `mean kinship of ${target}`);
        });
      }),
      { numRuns: 400 },
    );
  });

  it('refuses an animal that does not exist', () => {
    const pedigree = toPedigree({ founders: [-1, -1], sources: [], sourceKinships: [], clutches: [] });
    const inbreeding = computeInbreeding(pedigree);
    expect(() => meanKinshipOf(pedigree, inbreeding, Int32Array.of(0), Int32Array.of(2))).toThrow(RangeError);
    expect(() => meanKinshipOf(pedigree, inbreeding, Int32Array.of(-1), Int32Array.of(1))).toThrow(RangeError);
  });
});

describe('a forecast', () => {
  it('is what the clutch gets once it is recorded', () => {
    fc.assert(
      fc.property(anyRegister, (register) => {
        const last = register.clutches.length - 1;
        const whole = toPedigree(register);
        const before = toPedigree({ ...register, clutches: register.clutches.slice(0, last) });
        const pairs = new SlowRecursion(whole).pairsOf(last);
        const forecast = forecastYoung(before, computeInbreeding(before), pairs);
        const recorded = computeInbreeding(whole);
        close(forecast.expected, recorded.clutchExpected[last] ?? NaN, 'expected');
        close(forecast.least, recorded.clutchLeast[last] ?? NaN, 'least');
        close(forecast.greatest, recorded.clutchGreatest[last] ?? NaN, 'greatest');
      }),
    );
  });

  it('refuses one animal as both parents, odds that do not sum to 1, and no pair at all', () => {
    const pedigree = ownClutches([
      [-1, -1],
      [-1, -1],
    ]);
    const inbreeding = computeInbreeding(pedigree);
    const forecast = (sire: number, dam: number, probability: number) => () =>
      forecastYoung(pedigree, inbreeding, [{ sire, dam, probability }]);
    expect(forecast(0, 0, 1)).toThrow('cannot be both parents');
    expect(forecast(0, 1, 0.5)).toThrow('sum to 0.5');
    expect(forecast(0, 1, -1)).toThrow('probability -1');
    expect(forecast(0, 2, 1)).toThrow('There is no individual 2');
    expect(() => forecastYoung(pedigree, inbreeding, [])).toThrow('sum to 0');
    expect(forecast(0, 1, 1)()).toEqual({ expected: 0, least: 0, greatest: 0 });
  });
});

/** Every row a clutch of its own with certain parents; a row without parents is a founder. */
function ownClutches(rows: readonly (readonly [number, number])[]): Pedigree {
  const hatched = rows.flatMap(([sire, dam], animal) => (sire < 0 && dam < 0 ? [] : [animal]));
  return {
    clutchOf: Int32Array.from(rows, (_, animal) => hatched.indexOf(animal)),
    sourceOf: new Int32Array(rows.length).fill(-1),
    baseKinship: new Float64Array(0),
    pairStart: Int32Array.from({ length: hatched.length + 1 }, (_, place) => place),
    pairSire: Int32Array.from(hatched, (animal) => rows[animal]?.[0] ?? -1),
    pairDam: Int32Array.from(hatched, (animal) => rows[animal]?.[1] ?? -1),
    pairProbability: new Float64Array(hatched.length).fill(1),
  };
}

/** Every choice of one candidate pair for each clutch, as a certain pedigree with its probability. */
function* assignments(pedigree: Pedigree): Generator<{ certain: Pedigree; probability: number }> {
  const clutches = pedigree.pairStart.length - 1;
  const chosen: number[] = [];
  const choose = function* (probability: number): Generator<{ certain: Pedigree; probability: number }> {
    const clutch = chosen.length;
    if (clutch === clutches) {
      yield {
        probability,
        certain: {
          ...pedigree,
          pairStart: Int32Array.from({ length: clutches + 1 }, (_, place) => place),
          pairSire: Int32Array.from(chosen, (pair) => pedigree.pairSire[pair] ?? NaN),
          pairDam: Int32Array.from(chosen, (pair) => pedigree.pairDam[pair] ?? NaN),
          pairProbability: new Float64Array(clutches).fill(1),
        },
      };
      return;
    }
    for (let pair = pedigree.pairStart[clutch] ?? 0; pair < (pedigree.pairStart[clutch + 1] ?? 0); pair++) {
      chosen.push(pair);
      yield* choose(probability * (pedigree.pairProbability[pair] ?? NaN));
      chosen.pop();
    }
  };
  yield* choose(1);
}
