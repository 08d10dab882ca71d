import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ClutchFigures } from '../../../api/lineage/kernel/figures.ts';
import { computeInbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import { orderPedigree } from '../../../api/lineage/kernel/order.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { descendantClutches, recomputeClutches, recomputeCost } from '../../../api/lineage/kernel/recompute.ts';
import { buildShape, seededRandom, type Shape } from '../../bench/kernel-shapes.ts';
import { registers, toPedigree, type WrittenRegister } from './random-registers.ts';

const anyRegister = registers({ clutches: 40, pairs: 4, ofAllSizes: true });
/** Milliseconds for the thousands, on a machine that is busy with other tests. */
const LONG = 60_000;
const FIGURES = ['clutchExpected', 'clutchLeast', 'clutchGreatest', 'clutchWithin', 'clutchResidual'] as const;

function expectSameFigures(actual: ClutchFigures, expected: ClutchFigures): void {
  for (const name of FIGURES)
    for (let clutch = 0; clutch < expected[name].length; clutch++)
      expect(
        Math.abs((actual[name][clutch] ?? NaN) - (expected[name][clutch] ?? NaN)),
        `${name} of clutch ${clutch}`,
      ).toBeLessThan(1e-12);
}

/** The figures of a register as they were stored, with whatever stood in the clutches that must be recomputed. */
function storedFigures(figures: ClutchFigures, wrong: Iterable<number>): ClutchFigures {
  const stored = Object.fromEntries(FIGURES.map((name) => [name, figures[name].slice()])) as unknown as ClutchFigures;
  for (const clutch of wrong) for (const name of FIGURES) stored[name][clutch] = 0.77;
  return stored;
}

/** The clutches that descend from some, found the long way round. */
function descendantsByHand({ clutchOf, pairStart, pairSire, pairDam }: Pedigree, from: readonly number[]): number[] {
  const found = new Set(from);
  for (let before = -1; before !== found.size;) {
    before = found.size;
    for (let clutch = 0; clutch + 1 < pairStart.length; clutch++)
      for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
        if ([pairSire[pair], pairDam[pair]].some((parent) => found.has(clutchOf[parent ?? -1] ?? -1)))
          found.add(clutch);
  }
  return [...found].sort((a, b) => a - b);
}

/** Recomputes what follows from a correction, and compares it with a computation from nothing. */
function expectCorrected(before: Pedigree, after: Pedigree, corrected: readonly number[]): void {
  const order = orderPedigree(after);
  const clutches = descendantClutches(after, order, Int32Array.from(corrected));
  expect([...clutches].sort((a, b) => a - b)).toEqual(descendantsByHand(after, corrected));
  const stored = storedFigures(computeInbreeding(before), corrected);
  recomputeClutches(after, order, stored, clutches);
  expectSameFigures(stored, computeInbreeding(after));
}

/** Gives a clutch the parents of another place in the register: any animals that were there before it. */
function withOtherParents(register: WrittenRegister, clutch: number, picks: readonly number[]): WrittenRegister {
  const present = register.clutches.slice(0, clutch).reduce((sum, { young }) => sum + young, register.founders.length);
  const pairs = picks.map((pick) => {
    const sire = (pick % (present + 1)) - 1;
    const dam = (Math.floor(pick / 7) % (present + 1)) - 1;
    return { sire, dam: dam === sire ? -1 : dam, odds: 1 + (pick % 3) };
  });
  return { ...register, clutches: register.clutches.map((old, at) => (at === clutch ? { ...old, pairs } : old)) };
}

/** The clutches of which an ancestor, or the clutch itself, has a founder of a source. */
function clutchesWithSources({ clutchOf, sourceOf, pairStart, pairSire, pairDam }: Pedigree): number[] {
  return [...Array(pairStart.length - 1).keys()].filter((clutch) =>
    [
      ...pairSire.slice(pairStart[clutch], pairStart[clutch + 1]),
      ...pairDam.slice(pairStart[clutch], pairStart[clutch + 1]),
    ]
      .filter((parent) => parent >= 0 && clutchOf[parent] === -1)
      .some((founder) => (sourceOf[founder] ?? -1) >= 0),
  );
}

describe('recomputing after a correction', () => {
  it(
    'equals a computation from nothing when any clutches get other parents',
    () => {
      const corrections = fc.array(
        fc.record({ at: fc.nat(999), picks: fc.array(fc.nat(9999), { minLength: 1, maxLength: 4 }) }),
        {
          minLength: 1,
          maxLength: 3,
        },
      );
      fc.assert(
        fc.property(anyRegister, corrections, (register, changes) => {
          let after = register;
          const corrected = changes.map(({ at, picks }) => {
            const clutch = at % register.clutches.length;
            after = withOtherParents(after, clutch, picks);
            return clutch;
          });
          expectCorrected(toPedigree(register), toPedigree(after), corrected);
        }),
        { numRuns: 1000 },
      );
    },
    LONG,
  );

  it(
    'equals a computation from nothing when the base kinship of a source changes',
    () => {
      fc.assert(
        fc.property(anyRegister, fc.constantFrom(0, 0.1, 0.25), (register, baseKinship) => {
          const sources = register.sources.map((source) => ({
            ...source,
            baseKinship,
            founderInbreeding: baseKinship / 2,
          }));
          const after = toPedigree({ ...register, sources });
          expectCorrected(toPedigree(register), after, clutchesWithSources(after));
        }),
        { numRuns: 500 },
      );
    },
    LONG,
  );

  it.each<Shape>([
    { name: 'lines', lines: 6, animalsPerLine: 400, breeders: 20, clutchSize: 5, crosses: 0 },
    {
      name: 'one closed population',
      lines: 1,
      animalsPerLine: 3000,
      breeders: 60,
      clutchSize: 3,
      crosses: 0,
      uncertain: 0.4,
    },
    { name: 'lines with crosses', lines: 20, animalsPerLine: 150, breeders: 20, clutchSize: 2, crosses: 0.1 },
  ])('equals a computation from nothing in larger registers, for few clutches and for many ($name)', (shape) => {
    const before = buildShape(shape);
    const random = seededRandom(5);
    const clutches = before.pairStart.length - 1;
    for (const share of [0.999, 0.9, 0.6, 0.3, 0]) {
      const pairSire = before.pairSire.slice();
      const clutch = Math.floor(share * clutches);
      const earlier = before.clutchOf.findIndex((of) => of >= clutch);
      const pair = before.pairStart[clutch] ?? 0;
      pairSire[pair] = Math.floor(random() * earlier);
      if (pairSire[pair] === before.pairDam[pair]) pairSire[pair] = -1;
      expectCorrected(before, { ...before, pairSire }, [clutch]);
    }
  });

  it('takes nothing for no clutch', () => {
    const pedigree = buildShape({ name: '', lines: 1, animalsPerLine: 100, breeders: 10, clutchSize: 2, crosses: 0 });
    const order = orderPedigree(pedigree);
    const none = descendantClutches(pedigree, order, new Int32Array(0));
    expect(none).toHaveLength(0);
    expect(recomputeCost(pedigree, order, none)).toBe(0);
    const figures = computeInbreeding(pedigree);
    recomputeClutches(pedigree, order, figures, none);
    expectSameFigures(figures, computeInbreeding(pedigree));
  });
});

describe('the counted cost of recomputing', () => {
  const shape = { name: '', lines: 1, animalsPerLine: 20_000, breeders: 100, clutchSize: 5, crosses: 0 };
  const pedigree = buildShape(shape);
  const order = orderPedigree(pedigree);
  const last = order.clutches.length - 1;

  it('is that of one trace for the clutch that came last, and more for all', () => {
    const one = recomputeCost(pedigree, order, Int32Array.of(last));
    expect(one).toBeGreaterThan(100);
    expect(one).toBeLessThanOrEqual(last + 1);
    expect(recomputeCost(pedigree, order, order.clutches)).toBeGreaterThan(10 * one);
  });

  it('is broken off beyond a limit', () => {
    expect(recomputeCost(pedigree, order, order.clutches, 1000)).toBeGreaterThan(1000);
    expect(recomputeCost(pedigree, order, Int32Array.of(last), 50)).toBeGreaterThan(50);
  });
});
