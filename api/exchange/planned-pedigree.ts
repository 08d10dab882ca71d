import type { Pedigree } from '../lineage/kernel/pedigree.ts';
import type { Candidate } from './parent-cells.ts';
import type { ClutchesOfSheet, PlannedClutch } from './planned-clutches.ts';
import type { PlannedSource } from './planned-sources.ts';
import { sourceValues } from './planned-sources.ts';

/** Most candidate pairs in a whole sheet, when lists of candidates are multiplied out. */
export const mostPairs = 5_000_000;

/** How many candidate pairs the clutches of a sheet have when their lists are multiplied out. */
export function countPairs(clutches: readonly PlannedClutch[]): number {
  return clutches.reduce((sum, clutch) => sum + pairsOf(clutch), 0);
}

function pairsOf({ sires, dams, group }: PlannedClutch): number {
  if (group.length > 0) return (group.length * (group.length - 1)) / 2;
  return Math.max(1, sires.length) * Math.max(1, dams.length);
}

/**
 * The animals of a sheet as the kernel sees them, in the order of the file: lists of candidates multiplied out,
 * p(s,d) = p(s)·p(d), a side without candidates as unknown. Animals of the registry count as unknown.
 *
 * @param unusable for each clutch 1 where its parents are left out
 */
export function pedigreeOf(
  { clutches, clutchOf }: ClutchesOfSheet,
  sources: readonly PlannedSource[],
  sourceOf: Int32Array,
  unusable: Uint8Array,
): Pedigree {
  const pairs = new PairWriter(clutches);
  for (const [clutch, planned] of clutches.entries()) {
    if (unusable[clutch] === 1) pairs.add(-1, -1, 1);
    else if (planned.group.length > 0) addGroup(pairs, planned.group);
    else addLists(pairs, planned.sires, planned.dams);
    pairs.endClutch(clutch);
  }
  const baseKinship = Float64Array.from(sources, (source) => sourceValues(source).baseKinship);
  return { clutchOf, sourceOf, baseKinship, ...pairs.arrays() };
}

const unknownSide: readonly Candidate[] = [{ parent: -1, probability: 1 }];

function addLists(pairs: PairWriter, sires: readonly Candidate[], dams: readonly Candidate[]): void {
  for (const sire of sires.length > 0 ? sires : unknownSide)
    for (const dam of dams.length > 0 ? dams : unknownSide)
      pairs.add(sire.parent, dam.parent, sire.probability * dam.probability);
}

function addGroup(pairs: PairWriter, group: readonly Candidate[]): void {
  const count = (group.length * (group.length - 1)) / 2;
  for (const [place, a] of group.entries())
    for (const b of group.slice(place + 1)) pairs.add(a.parent, b.parent, 1 / count);
}

class PairWriter {
  readonly #start: Int32Array;
  readonly #sire: Int32Array;
  readonly #dam: Int32Array;
  readonly #probability: Float64Array;
  #count = 0;

  constructor(clutches: readonly PlannedClutch[]) {
    const pairs = countPairs(clutches);
    this.#start = new Int32Array(clutches.length + 1);
    this.#sire = new Int32Array(pairs);
    this.#dam = new Int32Array(pairs);
    this.#probability = new Float64Array(pairs);
  }

  /** Adds a pair; whoever is no animal of the sheet is unknown here. */
  add(sire: number, dam: number, probability: number): void {
    this.#sire[this.#count] = Math.max(sire, -1);
    this.#dam[this.#count] = Math.max(dam, -1);
    this.#probability[this.#count++] = probability;
  }

  endClutch(clutch: number): void {
    this.#start[clutch + 1] = this.#count;
  }

  arrays(): Pick<Pedigree, 'pairStart' | 'pairSire' | 'pairDam' | 'pairProbability'> {
    return {
      pairStart: this.#start,
      pairSire: this.#sire.subarray(0, this.#count),
      pairDam: this.#dam.subarray(0, this.#count),
      pairProbability: this.#probability.subarray(0, this.#count),
    };
  }
}
