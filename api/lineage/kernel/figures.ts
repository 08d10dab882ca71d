import type { Pedigree } from './pedigree.ts';
import { sourcesWithKinship } from './sources.ts';

/** What both methods write, one figure a clutch. Positions of clutches not yet visited hold 0. */
export interface ClutchFigures {
  /** m: inbreeding coefficient of the young, Σ p φ(s,d). */
  readonly clutchExpected: Float64Array;
  /** m: least φ(s,d) over the clutch's own candidate pairs. */
  readonly clutchLeast: Float64Array;
  /** m: greatest φ(s,d) over the clutch's own candidate pairs. */
  readonly clutchGreatest: Float64Array;
  /** m: kinship of two different young of the clutch, Σ p ¼(φ(s,s)+φ(d,d)+2φ(s,d)). */
  readonly clutchWithin: Float64Array;
  /**
   * m: the part of `clutchWithin` that does not come through recorded candidates: within − Σ w_k w_l φ(k,l). 0 when the
   * parents are certain and known. With it φ = T D Tᵀ holds over clutches with uncertain parents too.
   */
  readonly clutchResidual: Float64Array;
}

/** Empty figures for m clutches. */
export function emptyFigures(clutches: number): ClutchFigures {
  return {
    clutchExpected: new Float64Array(clutches),
    clutchLeast: new Float64Array(clutches),
    clutchGreatest: new Float64Array(clutches),
    clutchWithin: new Float64Array(clutches),
    clutchResidual: new Float64Array(clutches),
  };
}

/**
 * Where the parents are certain, least and greatest are the expected figure. One even pass writes them for all clutches, since
 * the methods go to and fro, and a place in memory visited once more by them costs more than here.
 */
export function copyCertain({ pairStart }: Pedigree, figures: ClutchFigures): void {
  const { clutchExpected, clutchLeast, clutchGreatest } = figures;
  for (let clutch = 0; clutch < clutchExpected.length; clutch++)
    if ((pairStart[clutch + 1] as number) - (pairStart[clutch] as number) === 1)
      clutchLeast[clutch] = clutchGreatest[clutch] = clutchExpected[clutch] as number;
}

/** Facts about the animals that breed, counted once and used by every pass. */
export interface Breeding {
  /** How many animals breed. */
  readonly count: number;
  /** How many of them are founders. */
  readonly founders: number;
  /** n: position of the last clutch an animal is a candidate parent of, −1 if it is none's. */
  readonly lastPosition: Int32Array;
  /** m: one young of the clutch that breeds, −1 if none does. */
  readonly firstYoung: Int32Array;
  /** n: the next breeding animal of the same clutch, −1 after the last; of no meaning for others. */
  readonly nextYoung: Int32Array;
  /** k: 1 where a source is a node. */
  readonly sourceIsNode: Uint8Array;
}

/** Counts who breeds, in one pass over the pairs in the given order of clutches. */
export function findBreeding(pedigree: Pedigree, clutches: Int32Array): Breeding {
  const { clutchOf, pairStart, pairSire, pairDam } = pedigree;
  const individuals = clutchOf.length;
  const lastPosition = new Int32Array(individuals).fill(-1);
  for (let position = 0; position < clutches.length; position++) {
    const clutch = clutches[position] as number;
    const end = pairStart[clutch + 1] as number;
    for (let pair = pairStart[clutch] as number; pair < end; pair++) {
      const sire = pairSire[pair] as number;
      const dam = pairDam[pair] as number;
      if (sire >= 0) lastPosition[sire] = position;
      if (dam >= 0) lastPosition[dam] = position;
    }
  }
  const firstYoung = new Int32Array(clutches.length).fill(-1);
  const nextYoung = new Int32Array(individuals);
  let count = 0;
  let founders = 0;
  for (let individual = individuals - 1; individual >= 0; individual--) {
    if ((lastPosition[individual] as number) < 0) continue;
    count++;
    const clutch = clutchOf[individual] as number;
    if (clutch < 0) {
      founders++;
      continue;
    }
    nextYoung[individual] = firstYoung[clutch] as number;
    firstYoung[clutch] = individual;
  }
  const sourceIsNode = sourcesWithKinship(pedigree);
  return { count, founders, lastPosition, firstYoung, nextYoung, sourceIsNode };
}
