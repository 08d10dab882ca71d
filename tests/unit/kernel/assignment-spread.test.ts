import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { candidateAncestry } from '../../../api/lineage/candidate-ancestry.ts';
import { planAssignments } from '../../../api/lineage/kernel/assignment-plan.ts';
import {
  assignmentSpread,
  countAssignments,
  type AssignmentSpread,
  type SpreadOptions,
} from '../../../api/lineage/kernel/assignment-spread.ts';
import { GenomeFlow } from '../../../api/lineage/kernel/genome-flow.ts';
import { computeInbreeding, inbreedingOf } from '../../../api/lineage/kernel/inbreeding.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { distributionOf } from '../../../api/lineage/kernel/value-distribution.ts';
import { layOut, fraction, readCases } from './reference-cases.ts';
import { registers, shuffled, toPedigree } from './random-registers.ts';
import { SlowRecursion } from './slow-recursion.ts';

const usual: SpreadOptions = { samples: 2000, seed: 1, exactUpTo: 4096 };
const numbered = (number: number): string => String(number).padStart(6, '0');

/** The spread of an animal; null where nothing is uncertain. Records are called by their numbers unless said otherwise. */
function spreadOf(
  pedigree: Pedigree,
  individual: number,
  options: Partial<SpreadOptions> = {},
  names = { ofClutch: numbered, ofIndividual: numbered },
): AssignmentSpread | null {
  const inbreeding = computeInbreeding(pedigree);
  const places = new Int32Array(pedigree.pairStart.length - 1).fill(-1);
  const { clutches } = new GenomeFlow(pedigree, inbreeding.order, places, individual);
  const plan = planAssignments(pedigree, inbreeding, candidateAncestry(pedigree, clutches, names));
  return plan && assignmentSpread(plan, { ...usual, ...options });
}

/** Every assignment of parents to all clutches of a register, by writing each out and asking the definition. */
function writtenOut(pedigree: Pedigree, individual: number): Map<number, number> {
  const odds = new Map<number, number>();
  const clutches = pedigree.pairStart.length - 1;
  const choose = (chosen: readonly number[], probability: number): void => {
    const clutch = chosen.length;
    if (clutch < clutches) {
      for (let pair = pedigree.pairStart[clutch] ?? 0; pair < (pedigree.pairStart[clutch + 1] ?? 0); pair++)
        choose([...chosen, pair], probability * (pedigree.pairProbability[pair] ?? 0));
      return;
    }
    const certain: Pedigree = {
      ...pedigree,
      pairStart: Int32Array.from({ length: clutches + 1 }, (_, at) => at),
      pairSire: Int32Array.from(chosen, (pair) => pedigree.pairSire[pair] ?? -1),
      pairDam: Int32Array.from(chosen, (pair) => pedigree.pairDam[pair] ?? -1),
      pairProbability: new Float64Array(clutches).fill(1),
    };
    const value = Math.round(new SlowRecursion(certain).inbreeding(individual) * 2 ** 44) / 2 ** 44;
    odds.set(value, (odds.get(value) ?? 0) + probability);
  };
  choose([], 1);
  return odds;
}

const lastYoung = (pedigree: Pedigree): number => pedigree.clutchOf.length - 1;
const uncertain = (pedigree: Pedigree): boolean => (pedigree.clutchOf.at(-1) ?? -1) >= 0;

describe('the spread over few assignments', () => {
  const known = readCases('uncertain-parentage').flatMap((reference) =>
    Object.entries(
      (reference.expected.inbreedingDistribution ?? {}) as Record<string, { value: string; probability: string }[]>,
    ).map(([id, distribution]) => ({ name: `${id} of ${reference.name}`, reference, id, distribution })),
  );

  it.each(known)('is that of $name as it was written out by hand', ({ reference, id, distribution }) => {
    const { pedigree, indexOf } = layOut(reference);
    const found = spreadOf(pedigree, indexOf(id));
    expect(found?.isExact).toBe(true);
    expect(found?.values).toHaveLength(distribution.length);
    distribution.forEach(({ value, probability }, place) => {
      expect(found?.values?.[place]?.value).toBeCloseTo(fraction(value), 12);
      expect(found?.values?.[place]?.share).toBeCloseTo(fraction(probability), 12);
    });
  });

  it.each(known)('is met within its error by drawing, for $name', ({ reference, id, distribution }) => {
    const { pedigree, indexOf } = layOut(reference);
    const drawn = spreadOf(pedigree, indexOf(id), { exactUpTo: 0, samples: 20_000, seed: 7 });
    expect(drawn?.isExact).toBe(false);
    for (const { value, probability } of distribution) {
      const share = drawn?.values?.find((one) => Math.abs(one.value - fraction(value)) < 1e-12)?.share ?? 0;
      const odds = fraction(probability);
      expect(Math.abs(share - odds)).toBeLessThan(4.5 * Math.sqrt((odds * (1 - odds)) / 20_000) + 1e-12);
    }
  });

  it('is the same as every assignment written out, for random registers', () => {
    fc.assert(
      fc.property(registers({ clutches: 6, pairs: 3, ofAllSizes: true }), (register) => {
        const pedigree = toPedigree(register);
        fc.pre(uncertain(pedigree));
        const found = spreadOf(pedigree, lastYoung(pedigree));
        const expected = distributionOf(writtenOut(pedigree, lastYoung(pedigree)), null);
        if (found === null) {
          expect(expected.values).toHaveLength(1);
          return;
        }
        expect(found.values?.map(({ value }) => value)).toEqual(expected.values?.map(({ value }) => value));
        found.values?.forEach(({ share }, place) =>
          expect(share).toBeCloseTo(expected.values?.[place]?.share ?? NaN, 12),
        );
        const { expected: mean } = inbreedingOf(pedigree, computeInbreeding(pedigree), lastYoung(pedigree));
        expect(found.mean).toBeCloseTo(mean, 11);
      }),
      { numRuns: 300 },
    );
  });
});

describe('the spread by drawing', () => {
  const vague = registers({ clutches: 30, pairs: 4, ofAllSizes: true });

  it('has the expected coefficient for its mean, within the error it tells', () => {
    let beyondTwo = 0;
    let runs = 0;
    fc.assert(
      fc.property(vague, fc.nat(2 ** 31), (register, seed) => {
        const pedigree = toPedigree(register);
        fc.pre(uncertain(pedigree));
        const found = spreadOf(pedigree, lastYoung(pedigree), { exactUpTo: 0, samples: 1000, seed });
        if (found === null) return;
        const { expected } = inbreedingOf(pedigree, computeInbreeding(pedigree), lastYoung(pedigree));
        const off = Math.abs(found.mean - expected);
        // a mean of a thousand is near normal except where a value is very rare, which then moves it by one draw
        expect(off).toBeLessThan(5 * found.standardError + 5e-3);
        runs++;
        if (off > 2 * found.standardError + 1e-12) beyondTwo++;
      }),
      { numRuns: 200, seed: 42 },
    );
    expect(runs).toBeGreaterThan(100);
    expect(beyondTwo / runs).toBeLessThan(0.12);
  });

  it('is the same to the last bit for a seed, whatever the order of the rows, and another for another seed', () => {
    const differences = new Set<boolean>();
    fc.assert(
      fc.property(vague, fc.nat(), (register, key) => {
        const pedigree = toPedigree(register);
        fc.pre(uncertain(pedigree));
        const other = shuffled(pedigree, (row) => Math.imul(row + 1, key | 1) >>> 0);
        const oldClutch: number[] = [];
        other.newClutch.forEach((place, old) => (oldClutch[place] = old));
        const oldIndividual: number[] = [];
        other.newIndividual.forEach((place, old) => (oldIndividual[place] = old));
        const names = {
          ofClutch: (clutch: number) => numbered(oldClutch[clutch] ?? -1),
          ofIndividual: (individual: number) => numbered(oldIndividual[individual] ?? -1),
        };
        const options = { exactUpTo: 0, samples: 200, seed: 5 };
        const one = spreadOf(pedigree, lastYoung(pedigree), options);
        expect(spreadOf(other.pedigree, other.newIndividual[lastYoung(pedigree)] ?? -1, options, names)).toEqual(one);
        differences.add(one?.mean === spreadOf(pedigree, lastYoung(pedigree), { ...options, seed: 6 })?.mean);
      }),
      { numRuns: 150 },
    );
    expect(differences).toContain(false);
  });

  it('tells how far it has come some fifty times', () => {
    const [first] = readCases('uncertain-parentage');
    if (!first) throw new Error('the reference file is empty');
    const { pedigree, indexOf } = layOut(first);
    const told: [number, number][] = [];
    spreadOf(pedigree, indexOf('y'), { exactUpTo: 0, samples: 5000, tell: (...progress) => told.push(progress) });
    expect(told.length).toBe(51);
    expect(told.at(-1)).toEqual([5000, 5000]);
  });
});

it('nothing is drawn for an animal whose whole ancestry is certain', () => {
  const [certain] = readCases('regular-systems');
  if (!certain) throw new Error('the reference file is empty');
  const { pedigree } = layOut(certain);
  expect(spreadOf(pedigree, pedigree.clutchOf.length - 1)).toBeNull();
});

it('assignments are counted over the uncertain clutches of the ancestry', () => {
  const [first] = readCases('uncertain-parentage');
  if (!first) throw new Error('the reference file is empty');
  const { pedigree, indexOf } = layOut(first);
  const inbreeding = computeInbreeding(pedigree);
  const places = new Int32Array(pedigree.pairStart.length - 1).fill(-1);
  const { clutches } = new GenomeFlow(pedigree, inbreeding.order, places, indexOf('y'));
  const plan = planAssignments(
    pedigree,
    inbreeding,
    candidateAncestry(pedigree, clutches, { ofClutch: numbered, ofIndividual: numbered }),
  );
  expect(plan && countAssignments(plan)).toBe(36);
});

describe('a distribution', () => {
  it('tells few values one by one, with quantiles that are values of it', () => {
    const told = distributionOf(
      new Map([
        [0.25, 1],
        [0, 2],
        [0.125, 1],
      ]),
      null,
    );
    expect(told.values).toEqual([
      { value: 0, share: 0.5 },
      { value: 0.125, share: 0.25 },
      { value: 0.25, share: 0.25 },
    ]);
    expect(told.quantiles.map(({ value }) => value)).toEqual([0, 0, 0, 0.125, 0.25]);
    expect(told).toMatchObject({ mean: 0.09375, standardError: 0, least: 0, greatest: 0.25, bins: null });
  });

  it('puts many values into bins that hold all of them', () => {
    const odds = new Map(Array.from({ length: 100 }, (_, place) => [place / 400, 1]));
    const { bins, values } = distributionOf(odds, 100);
    expect(values).toBeNull();
    expect(bins?.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(bins?.[0]?.from).toBe(0);
    expect(bins?.at(-1)?.to).toBe(99 / 400);
    bins?.slice(1).forEach(({ from }, place) => expect(from).toBe(bins[place]?.to));
  });
});
