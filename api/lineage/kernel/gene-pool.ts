import type { Ancestry } from './ancestry.ts';
import type { Pedigree } from './pedigree.ts';

/** The gene pool of a set: what part of it came through each animal and each clutch of its ancestry, and from parents nobody knows. */
export interface GenePool {
  /** Animals of the ancestry: part of the pool that is this animal's own or came down through it; 0 to 1. */
  readonly through: Float64Array;
  /** Clutches of the ancestry: the sum of `through` over the young of the clutch that belong to the ancestry. */
  readonly ofClutch: Float64Array;
  /** Clutches of the ancestry: part that came from the first parent of a pair where nobody knows it. */
  readonly unknownFirst: Float64Array;
  /** Clutches of the ancestry: the same for the second parent. */
  readonly unknownSecond: Float64Array;
}

/**
 * Runs weights of some animals up to their founders: half from each parent, averaged over candidates. One linear pass over the
 * ancestry.
 *
 * @param members individuals of the ancestry, each counting the same; one that stands there twice counts twice
 * @returns parts of the pool; those of founders and of unknown parents together sum to 1, for no members to 0.
 */
export function genePool(pedigree: Pedigree, ancestry: Ancestry, members: Int32Array): GenePool {
  const { clutches, youngStart, parentStart, parents, weights } = ancestry;
  const through = new Float64Array(ancestry.animals.length);
  for (const member of members) {
    const local = ancestry.find(member); // the ancestry was collected for these members
    through[local] = (through[local] as number) + 1 / members.length;
  }
  const ofClutch = new Float64Array(clutches.length);
  const unknownFirst = new Float64Array(clutches.length);
  const unknownSecond = new Float64Array(clutches.length);
  for (let clutch = clutches.length - 1; clutch >= 0; clutch--) {
    let sum = 0;
    for (let young = youngStart[clutch] as number; young < (youngStart[clutch + 1] as number); young++)
      sum += through[young] as number;
    ofClutch[clutch] = sum;
    if (sum === 0) continue;
    for (let link = parentStart[clutch] as number; link < (parentStart[clutch + 1] as number); link++) {
      const parent = parents[link] as number;
      through[parent] = (through[parent] as number) + (weights[link] as number) * sum;
    }
    const unknown = unknownWeights(pedigree, clutches[clutch] as number);
    unknownFirst[clutch] = unknown.first * sum;
    unknownSecond[clutch] = unknown.second * sum;
  }
  return { through, ofClutch, unknownFirst, unknownSecond };
}

/** Expected part, 0 to ½, that each of the two parents of a clutch gives where nobody knows it. */
export function unknownWeights(pedigree: Pedigree, clutch: number): { first: number; second: number } {
  const { pairStart, pairSire, pairDam, pairProbability } = pedigree;
  let first = 0;
  let second = 0;
  for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
    if ((pairSire[pair] as number) < 0) first += 0.5 * (pairProbability[pair] as number);
    if ((pairDam[pair] as number) < 0) second += 0.5 * (pairProbability[pair] as number);
  }
  return { first, second };
}
