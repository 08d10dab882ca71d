import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { commonAncestors, type CommonAncestor } from '../../../api/lineage/kernel/common-ancestors.ts';
import { computeInbreeding, inbreedingOf, type Inbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { sourceKinship } from '../../../api/lineage/kernel/sources.ts';
import { pairsOf } from './loop-pedigrees.ts';
import { registers, toPedigree } from './random-registers.ts';
import { layOut, readCases, REFERENCE_FILES, type ReferenceCase } from './reference-cases.ts';

function ofClutch(pedigree: Pedigree, inbreeding: Inbreeding, clutch: number): CommonAncestor[] {
  return commonAncestors(pedigree, inbreeding, pairsOf(pedigree, clutch)) ?? [];
}

function expectSum(pedigree: Pedigree, inbreeding: Inbreeding): void {
  for (let clutch = 0; clutch + 1 < pedigree.pairStart.length; clutch++) {
    const sum = ofClutch(pedigree, inbreeding, clutch).reduce((total, { part }) => total + part, 0);
    expect(Math.abs(sum - (inbreeding.clutchExpected[clutch] ?? NaN))).toBeLessThanOrEqual(1e-12);
  }
}

/** Every loop of a certain pedigree, path by path: what Wright (1922) adds up. */
function loopsByHand(pedigree: Pedigree, inbreeding: Inbreeding, sire: number, dam: number): Map<string, Arrived> {
  const found = new Map<string, Arrived>();
  const upwards = (from: number): number[][] => {
    const clutch = pedigree.clutchOf[from] ?? -1;
    const above = clutch < 0 ? [] : pairsOf(pedigree, clutch).flatMap(({ a, b }) => [a, b].filter((one) => one >= 0));
    return [[from], ...above.flatMap((parent) => upwards(parent).map((path) => [from, ...path]))];
  };
  const note = (key: string, part: number, steps: number): void => {
    const known = found.get(key) ?? { part: 0, loops: 0, shortest: Infinity, longest: 0 };
    found.set(key, {
      part: known.part + part,
      loops: known.loops + 1,
      shortest: Math.min(known.shortest, steps),
      longest: Math.max(known.longest, steps),
    });
  };
  for (const one of upwards(sire))
    for (const other of upwards(dam)) {
      const steps = one.length + other.length - 2;
      const [top, second] = [one.at(-1) ?? -1, other.at(-1) ?? -1];
      const shared = one.filter((animal) => other.includes(animal));
      if (top === second) {
        const self = 0.5 * (1 + inbreedingOf(pedigree, inbreeding, top).expected);
        if (shared.length === 1) note(`${top}`, 0.5 ** steps * self, steps);
      } else if (shared.length === 0 && (pedigree.clutchOf[top] ?? 0) < 0 && (pedigree.clutchOf[second] ?? 0) < 0) {
        const [a, b] = [pedigree.sourceOf[top] ?? -1, pedigree.sourceOf[second] ?? -1];
        const kinship = a < 0 || b < 0 ? 0 : sourceKinship(pedigree, a, b);
        if (kinship > 0) note(`s${Math.min(a, b)} ${Math.max(a, b)}`, 0.5 ** steps * kinship, steps);
      }
    }
  return found;
}

interface Arrived {
  readonly part: number;
  readonly loops: number;
  readonly shortest: number;
  readonly longest: number;
}

const keyOf = ({ meeting }: CommonAncestor): string =>
  meeting.kind === 'individual'
    ? `${meeting.individual}`
    : meeting.kind === 'sources'
      ? `s${meeting.a} ${meeting.b}`
      : `u${meeting.clutch}`;

describe('the common ancestors of an animal', () => {
  describe.each(REFERENCE_FILES)('in %s', (file) => {
    it.each(readCases(file).map((reference): [string, ReferenceCase] => [reference.name, reference]))(
      '%s have parts that sum to F',
      (_, reference) => {
        const { pedigree } = layOut(reference);
        expectSum(pedigree, computeInbreeding(pedigree));
      },
    );
  });

  it('have parts that sum to F in random registers with uncertain and unknown parents and related sources', () => {
    fc.assert(
      fc.property(registers({ clutches: 12, pairs: 3 }), (register) => {
        const pedigree = toPedigree(register);
        expectSum(pedigree, computeInbreeding(pedigree));
      }),
      { numRuns: 300 },
    );
  });

  it('are those of all paths, with their number and their length, where parents are certain', () => {
    let compared = 0;
    fc.assert(
      fc.property(registers({ clutches: 8, pairs: 1, ofAllSizes: true }), (register) => {
        const pedigree = toPedigree(register);
        const inbreeding = computeInbreeding(pedigree);
        for (let clutch = 0; clutch + 1 < pedigree.pairStart.length; clutch++) {
          const [{ a, b } = { a: -1, b: -1 }] = pairsOf(pedigree, clutch);
          if (a < 0 || b < 0 || hasUnknownParents(pedigree)) continue;
          const wanted = loopsByHand(pedigree, inbreeding, a, b);
          const found = new Map(ofClutch(pedigree, inbreeding, clutch).map((ancestor) => [keyOf(ancestor), ancestor]));
          expect([...found.keys()].sort()).toEqual([...wanted.keys()].sort());
          for (const [key, { part, loops, shortest, longest }] of wanted) {
            expect(found.get(key)).toMatchObject({ loops, shortest, longest });
            expect(Math.abs((found.get(key)?.part ?? NaN) - part)).toBeLessThanOrEqual(1e-12);
            compared++;
          }
        }
      }),
      { numRuns: 400 },
    );
    expect(compared).toBeGreaterThan(100);
  });

  it('of young of two clutch-mates are the parents that nobody knows, as one for both', () => {
    // the father of clutch 0 is unknown; two of its young breed with each other: 1/4 in all, half of it through him
    const pedigree: Pedigree = {
      clutchOf: Int32Array.of(-1, 0, 0, 1),
      sourceOf: new Int32Array(4).fill(-1),
      baseKinship: new Float64Array(0),
      pairStart: Int32Array.of(0, 1, 2),
      pairSire: Int32Array.of(-1, 1),
      pairDam: Int32Array.of(0, 2),
      pairProbability: Float64Array.of(1, 1),
    };
    const found = ofClutch(pedigree, computeInbreeding(pedigree), 1);
    expect(found.sort((one, other) => (one.meeting.kind < other.meeting.kind ? -1 : 1))).toEqual([
      { meeting: { kind: 'individual', individual: 0 }, part: 0.125, loops: 1, shortest: 2, longest: 2 },
      { meeting: { kind: 'unknown parent', clutch: 0 }, part: 0.125, loops: 1, shortest: 2, longest: 2 },
    ]);
  });

  it('count a loop once, however many candidate pairs its animals stand in', () => {
    // the dam of clutch 0 is certain, its sire one of two: half siblings through her, one loop; the sires add one each
    const pedigree: Pedigree = {
      clutchOf: Int32Array.of(-1, -1, -1, 0, 0, 1),
      sourceOf: new Int32Array(6).fill(-1),
      baseKinship: new Float64Array(0),
      pairStart: Int32Array.of(0, 2, 3),
      pairSire: Int32Array.of(0, 1, 3),
      pairDam: Int32Array.of(2, 2, 4),
      pairProbability: Float64Array.of(0.25, 0.75, 1),
    };
    const found = ofClutch(pedigree, computeInbreeding(pedigree), 1);
    expect(found.map(({ part, loops }) => ({ part, loops }))).toEqual([
      { part: 0.125, loops: 1 },
      { part: 0.09375, loops: 1 },
      { part: 0.03125, loops: 1 },
    ]);
  });

  it('are not taken apart where there are more pairs of ancestors than may be visited', () => {
    const reference = readCases('habsburg')[0];
    if (!reference) throw new Error('the Habsburg pedigree is gone');
    const { pedigree } = layOut(reference);
    const inbreeding = computeInbreeding(pedigree);
    const inbred = inbreeding.clutchExpected.findIndex((value) => value > 0.2);
    expect(commonAncestors(pedigree, inbreeding, pairsOf(pedigree, inbred), 50)).toBeNull();
    expect(ofClutch(pedigree, inbreeding, inbred).length).toBeGreaterThan(3);
  });
});

function hasUnknownParents({ pairSire, pairDam }: Pedigree): boolean {
  return pairSire.includes(-1) || pairDam.includes(-1);
}
