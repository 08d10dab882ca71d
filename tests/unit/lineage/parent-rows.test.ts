import { describe, expect, it } from 'vitest';
import { validatePedigree } from '../../../api/lineage/kernel/validate-pedigree.ts';
import { ParentRows } from '../../../api/lineage/parent-rows.ts';

const [first, second] = [0, 1];
const [a, b, c, d] = [0, 1, 2, 3];
const nobody = -1;
const rows = (): ParentRows => new ParentRows(2);

/** The pairs of one clutch, as [sire, dam, probability]. */
function pairsOf(parents: ParentRows, clutch: number): [number, number, number][] {
  const { pairStart, pairSire, pairDam, pairProbability } = parents.multiplyOut();
  const found: [number, number, number][] = [];
  for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
    found.push([pairSire[pair] ?? NaN, pairDam[pair] ?? NaN, pairProbability[pair] ?? NaN]);
  return found;
}

describe('the recorded parents of clutches, multiplied out', () => {
  it('give every sire with every dam the product of their odds', () => {
    const parents = rows();
    parents.addCandidate(second, 'dam', d, 0.25);
    parents.addCandidate(second, 'sire', b, 0.5);
    parents.addCandidate(second, 'dam', c, 0.75);
    parents.addCandidate(second, 'sire', a, 0.5);
    expect(pairsOf(parents, 1)).toEqual([
      [0, 2, 0.375],
      [0, 3, 0.125],
      [1, 2, 0.375],
      [1, 3, 0.125],
    ]);
  });

  it('make a side without rows one unknown parent, and an unknown candidate one of several', () => {
    const parents = rows();
    parents.addCandidate(first, 'sire', a, 0.5);
    parents.addCandidate(first, 'sire', nobody, 0.5);
    expect(pairsOf(parents, 0)).toEqual([
      [-1, -1, 0.5],
      [0, -1, 0.5],
    ]);
    expect(pairsOf(parents, 1)).toEqual([[-1, -1, 1]]);
  });

  it('leave joint pairs as they are, and say so', () => {
    const parents = rows();
    parents.addPair(first, c, a, 0.25);
    parents.addPair(first, a, b, 0.75);
    expect(pairsOf(parents, 0)).toEqual([
      [0, 1, 0.75],
      [2, 0, 0.25],
    ]);
    expect([...parents.multiplyOut().jointPairs]).toEqual([1, 0]);
  });

  it('come out the same in whatever order the table gives them', () => {
    const candidates: readonly (readonly [number, 'sire' | 'dam', number, number])[] = [
      [first, 'sire', a, 0.1],
      [first, 'sire', b, 0.2],
      [first, 'sire', c, 0.7],
      [first, 'dam', d, 1],
    ];
    const forwards = rows();
    const backwards = rows();
    for (const row of candidates) forwards.addCandidate(...row);
    for (const row of [...candidates].reverse()) backwards.addCandidate(...row);
    expect(forwards.multiplyOut()).toEqual(backwards.multiplyOut());
  });

  it('sum to 1 as closely as the kernel asks, where each side misses it by what the database lets pass', () => {
    const parents = rows();
    for (const [side, pair] of [
      ['sire', [a, b]],
      ['dam', [c, d]],
    ] as const)
      for (const animal of pair) parents.addCandidate(first, side, animal, 0.5 + 4.9e-10);
    const pairs = parents.multiplyOut();
    const none = {
      clutchOf: new Int32Array(4).fill(-1),
      sourceOf: new Int32Array(4).fill(-1),
      baseKinship: new Float64Array(0),
    };
    expect(() => validatePedigree({ ...none, ...pairs })).not.toThrow();
  });

  it('drop a pair whose odds are too small for a number', () => {
    const parents = rows();
    parents.addCandidate(first, 'sire', a, 1e-200);
    parents.addCandidate(first, 'sire', b, 1);
    parents.addCandidate(first, 'dam', c, 1e-200);
    parents.addCandidate(first, 'dam', d, 1);
    expect(pairsOf(parents, 0).map(([sire, dam]) => [sire, dam])).toEqual([
      [0, 3],
      [1, 2],
      [1, 3],
    ]);
  });
});
