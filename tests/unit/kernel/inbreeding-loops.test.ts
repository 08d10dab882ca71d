import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { commonAncestors } from '../../../api/lineage/kernel/common-ancestors.ts';
import { computeInbreeding, type Inbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import {
  inbreedingLoops,
  LOOP_STEPS_MOST,
  type InbreedingLoop,
  type InbreedingLoops,
} from '../../../api/lineage/kernel/inbreeding-loops.ts';
import { keyOfMeeting, type Meeting } from '../../../api/lineage/kernel/pair-steps.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { pairsOf, siblingLine } from './loop-pedigrees.ts';
import { registers, toPedigree } from './random-registers.ts';
import { layOut, readCases, REFERENCE_FILES, type ReferenceCase } from './reference-cases.ts';
import { slowLoops } from './slow-loops.ts';

function loopsOf(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  clutch: number,
  most = 1_000_000,
  through?: Meeting,
): InbreedingLoops {
  const limits = { most, stepsMost: most > 200 ? Infinity : LOOP_STEPS_MOST, ...(through ? { through } : {}) };
  const found = inbreedingLoops(pedigree, inbreeding, pairsOf(pedigree, clutch), limits);
  if (!found) throw new Error('There are too many pairs of ancestors for a test.');
  return found;
}

/** The two ways up as the slow list writes them. */
function keyOf({ paths }: InbreedingLoop): string {
  const words = paths.map((path) =>
    path.map(({ individual, isFirst }) => (individual >= 0 ? individual : isFirst ? -1 : -2)).join(' '),
  );
  return words.join(' | ');
}

const sumOf = (parts: readonly { readonly part: number }[]): number => parts.reduce((sum, { part }) => sum + part, 0);

/** Holds a whole list against every pair of ways up, and its order; gives how many loops there were. */
function expectAll(pedigree: Pedigree, inbreeding: Inbreeding, clutch: number): number {
  const { loops, ancestors } = loopsOf(pedigree, inbreeding, clutch);
  const wanted = new Map(slowLoops(pedigree, inbreeding, clutch).map((loop) => [loop.key, loop]));
  expect(loops.map(keyOf).sort()).toEqual([...wanted.keys()].sort());
  for (const loop of loops) {
    const slow = wanted.get(keyOf(loop));
    expect(loop.steps).toBe(slow?.steps);
    expect(Math.abs(loop.part - (slow?.part ?? NaN))).toBeLessThanOrEqual(1e-15);
    expect(loop.part).toBe(loop.odds * 0.5 ** loop.steps * loop.kinship);
    expect(loop.paths[0].length + loop.paths[1].length - 2).toBe(loop.steps);
    expect(Math.abs(oddsAlong(loop) - loop.odds)).toBeLessThanOrEqual(1e-15);
  }
  expect(loops.every(({ part }, place) => part <= (loops[place - 1]?.part ?? 1))).toBe(true);
  expect(Math.abs(sumOf(loops) - (inbreeding.clutchExpected[clutch] ?? NaN))).toBeLessThanOrEqual(1e-12);
  for (const { part, loops: count, listed, listedPart } of ancestors) {
    expect(listed).toBe(count);
    expect(Math.abs(listedPart - part)).toBeLessThanOrEqual(1e-12);
  }
  return loops.length;
}

/** Odds of the steps multiplied; what both sides lead through together counts once. */
function oddsAlong({ paths: [one, other] }: InbreedingLoop): number {
  const counted = [...one, ...other.filter(({ isTogether }) => !isTogether)];
  return counted.reduce((product, { odds }) => product * odds, 1);
}

describe('the loops of an animal', () => {
  describe.each(REFERENCE_FILES)('in %s', (file) => {
    it.each(readCases(file).map((reference): [string, ReferenceCase] => [reference.name, reference]))(
      '%s and what is left of each common ancestor sum to F',
      (_, reference) => {
        const { pedigree } = layOut(reference);
        const inbreeding = computeInbreeding(pedigree);
        for (let clutch = 0; clutch + 1 < pedigree.pairStart.length; clutch++) {
          const { loops, ancestors } = loopsOf(pedigree, inbreeding, clutch, 15);
          expect(loops.length).toBeLessThanOrEqual(15);
          const left = ancestors.reduce((sum, { part, listedPart }) => sum + (part - listedPart), 0);
          const wanted = inbreeding.clutchExpected[clutch] ?? NaN;
          expect(Math.abs(sumOf(loops) + left - wanted)).toBeLessThanOrEqual(1e-12);
          for (const { loops: count, listed, part, listedPart } of ancestors) {
            expect(listed).toBeLessThanOrEqual(count);
            if (listed === count) expect(Math.abs(part - listedPart)).toBeLessThanOrEqual(1e-12);
          }
        }
      },
    );
  });

  it('are all pairs of ways up, with their parts and in their order, in registers where parents are certain', () => {
    let compared = 0;
    fc.assert(
      fc.property(registers({ clutches: 10, pairs: 1, ofAllSizes: true }), (register) => {
        const pedigree = toPedigree(register);
        const inbreeding = computeInbreeding(pedigree);
        for (let clutch = 0; clutch < register.clutches.length; clutch++)
          compared += expectAll(pedigree, inbreeding, clutch);
      }),
      { numRuns: 400 },
    );
    expect(compared).toBeGreaterThan(300);
  });

  it('are so too where parents are uncertain or unknown, and sources are kin', () => {
    let compared = 0;
    fc.assert(
      fc.property(registers({ clutches: 6, pairs: 3, ofAllSizes: true }), (register) => {
        const pedigree = toPedigree(register);
        const inbreeding = computeInbreeding(pedigree);
        for (let clutch = 0; clutch < register.clutches.length; clutch++)
          compared += expectAll(pedigree, inbreeding, clutch);
      }),
      { numRuns: 400 },
    );
    expect(compared).toBeGreaterThan(300);
  });

  it('are the best ones where only some are asked for, of all or of one common ancestor', () => {
    fc.assert(
      fc.property(
        registers({ clutches: 7, pairs: 2, ofAllSizes: true }),
        fc.integer({ min: 1, max: 12 }),
        (register, most) => {
          const pedigree = toPedigree(register);
          const inbreeding = computeInbreeding(pedigree);
          const clutch = register.clutches.length - 1;
          const { loops: all, ancestors } = loopsOf(pedigree, inbreeding, clutch);
          expectBest(loopsOf(pedigree, inbreeding, clutch, most).loops, all, most);
          for (const { meeting } of ancestors) {
            const own = all.filter((loop) => keyOfMeeting(loop.meeting) === keyOfMeeting(meeting));
            expectBest(loopsOf(pedigree, inbreeding, clutch, most, meeting).loops, own, most);
          }
        },
      ),
      { numRuns: 200 },
    );
  });

  it('are all there where a whole house descends from few, and each is one of its own', () => {
    const { pedigree, inbreeding, clutch } = mostInbredHabsburg();
    const counted = commonAncestors(pedigree, inbreeding, pairsOf(pedigree, clutch)) ?? [];
    const { loops, ancestors } = loopsOf(pedigree, inbreeding, clutch, 10_000);
    expect(ancestors.map(({ loops: count }) => count)).toEqual(counted.map(({ loops: count }) => count));
    expect(ancestors.map(({ meeting }) => meeting)).toEqual(counted.map(({ meeting }) => meeting));
    expect(loops).toHaveLength(10_000);
    expect(new Set(loops.map(keyOf)).size).toBe(loops.length);
    // of a common ancestor with some hundred loops all are listed when asked for
    const some = counted.find(({ loops: count }) => count > 100 && count < 2000);
    if (!some) throw new Error('There is no common ancestor with some hundred loops.');
    const own = loopsOf(pedigree, inbreeding, clutch, 10_000, some.meeting).loops;
    expect(new Set(own.map(keyOf)).size).toBe(some.loops);
    expect(Math.abs(sumOf(own) - some.part)).toBeLessThanOrEqual(1e-12);
  });

  it('are not listed where there are more pairs of ancestors than may be visited', () => {
    const { pedigree, inbreeding, clutch } = mostInbredHabsburg();
    expect(inbreedingLoops(pedigree, inbreeding, pairsOf(pedigree, clutch), { most: 20, pairsMost: 50 })).toBeNull();
  });
});

function mostInbredHabsburg(): { pedigree: Pedigree; inbreeding: Inbreeding; clutch: number } {
  const reference = readCases('habsburg')[0];
  if (!reference) throw new Error('the Habsburg pedigree is gone');
  const { pedigree } = layOut(reference);
  const inbreeding = computeInbreeding(pedigree);
  return { pedigree, inbreeding, clutch: inbreeding.clutchExpected.indexOf(Math.max(...inbreeding.clutchExpected)) };
}

function expectBest(loops: readonly InbreedingLoop[], all: readonly InbreedingLoop[], most: number): void {
  expect(loops).toHaveLength(Math.min(most, all.length));
  const known = new Set(all.map(keyOf));
  loops.forEach((loop, place) => {
    expect(known.has(keyOf(loop))).toBe(true);
    expect(Math.abs(loop.part - (all[place]?.part ?? NaN))).toBeLessThanOrEqual(1e-15);
  });
}

describe('the loops of a very old line', () => {
  it('are listed best first out of more than can be counted', () => {
    const generations = 1200;
    const pedigree = siblingLine(generations);
    const inbreeding = computeInbreeding(pedigree);
    const { loops, ancestors } = loopsOf(pedigree, inbreeding, generations - 1, 200);
    expect(loops).toHaveLength(200);
    expect(loops.slice(0, 2).map(({ steps }) => steps)).toEqual([2, 2]);
    const left = ancestors.reduce((sum, { part, listedPart }) => sum + (part - listedPart), 0);
    expect(Math.abs(sumOf(loops) + left - 1)).toBeLessThanOrEqual(1e-12);
    expect(Math.max(...ancestors.map(({ loops: count }) => count))).toBe(Infinity);
  });

  it('end where their steps would be more than an answer may hold', () => {
    // one pair far above: two lines of descent of 150 generations each, in every one of which either of two brothers may be the father
    const pedigree = twoLongWays(150);
    const inbreeding = computeInbreeding(pedigree);
    const { loops } = loopsOf(pedigree, inbreeding, pedigree.pairStart.length - 2, 200);
    const named = loops.reduce((sum, { steps }) => sum + steps + 2, 0);
    expect(loops.length).toBeGreaterThan(10);
    expect(loops.length).toBeLessThan(200);
    expect(named).toBeLessThan(21_000);
  });
});

/** Two ways down from one mother; the mothers along them are founders, the fathers one of two brothers. */
function twoLongWays(generations: number): Pedigree {
  const clutchOf = [-1];
  const pairs: { sire: number; dam: number; clutch: number }[] = [];
  let clutches = 0;
  const descend = (from: readonly number[]): number[] => {
    const mother = clutchOf.push(-1) - 1;
    for (const sire of from) pairs.push({ sire, dam: mother, clutch: clutches });
    const young = [clutchOf.push(clutches) - 1, clutchOf.push(clutches) - 1];
    clutches++;
    return young;
  };
  const ends = [0, 1].map(() => {
    let young = descend([0]);
    for (let generation = 1; generation < generations; generation++) young = descend(young);
    return young[0] ?? -1;
  });
  pairs.push({ sire: ends[0] ?? -1, dam: ends[1] ?? -1, clutch: clutches++ });
  const of = (clutch: number): number => pairs.filter((pair) => pair.clutch === clutch).length;
  const pairStart = [0];
  for (let clutch = 0; clutch < clutches; clutch++) pairStart.push((pairStart[clutch] ?? 0) + of(clutch));
  return {
    clutchOf: Int32Array.from(clutchOf),
    sourceOf: new Int32Array(clutchOf.length).fill(-1),
    baseKinship: new Float64Array(0),
    pairStart: Int32Array.from(pairStart),
    pairSire: Int32Array.from(pairs, ({ sire }) => sire),
    pairDam: Int32Array.from(pairs, ({ dam }) => dam),
    pairProbability: Float64Array.from(pairs, ({ clutch }) => 1 / of(clutch)),
  };
}
