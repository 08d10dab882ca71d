import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';

/** How far back each animal's pedigree reaches, one figure an individual. */
export interface PedigreeDepth {
  /** n: generations on the longest path to a founder over recorded candidates; 0 for founders. */
  readonly depth: Int32Array;
  /** n: generations back in which every ancestor is known for certain to be a recorded one; 0 as soon as a parent may be unknown. */
  readonly fullDepth: Int32Array;
  /**
   * n: complete generation equivalent, Σ (½)^g over known ancestors g generations back (Maignel, Boichard & Verrier 1996),
   * expected over candidates.
   */
  readonly generationEquivalents: Float64Array;
}

/** Depth, full depth and generation equivalents of every individual, in one pass over the clutches. */
export function pedigreeDepth(pedigree: Pedigree, order: PedigreeOrder): PedigreeDepth {
  const { clutchOf, pairStart, pairSire, pairDam, pairProbability } = pedigree;
  const clutches = order.clutches.length;
  const depth = new Int32Array(clutches);
  const full = new Int32Array(clutches);
  const equivalents = new Float64Array(clutches);
  for (const clutch of order.clutches) {
    let deepest = 0;
    let shallowest = Infinity;
    let sum = 0;
    const see = (parent: number, probability: number): void => {
      if (parent < 0) {
        shallowest = -1;
        return;
      }
      const from = clutchOf[parent] as number;
      deepest = Math.max(deepest, 1 + (from < 0 ? 0 : (depth[from] as number)));
      shallowest = Math.min(shallowest, from < 0 ? 0 : (full[from] as number));
      sum += 0.5 * probability * (1 + (from < 0 ? 0 : (equivalents[from] as number)));
    };
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
      see(pairSire[pair] as number, pairProbability[pair] as number);
      see(pairDam[pair] as number, pairProbability[pair] as number);
    }
    depth[clutch] = deepest;
    full[clutch] = 1 + shallowest;
    equivalents[clutch] = sum;
  }
  const ofClutch =
    (values: ArrayLike<number>) =>
    (clutch: number): number =>
      clutch < 0 ? 0 : (values[clutch] as number);
  return {
    depth: clutchOf.map(ofClutch(depth)),
    fullDepth: clutchOf.map(ofClutch(full)),
    generationEquivalents: Float64Array.from(clutchOf, ofClutch(equivalents)),
  };
}
