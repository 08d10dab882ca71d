import { emptyFacts, NO_FOUNDER_KINDS, writeFacts } from './clutch-facts.ts';
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
  const { clutchOf } = pedigree;
  const facts = emptyFacts(order.clutches.length);
  writeFacts(pedigree, NO_FOUNDER_KINDS, facts, order.clutches);
  const ofClutch =
    (values: ArrayLike<number>) =>
    (clutch: number): number =>
      clutch < 0 ? 0 : (values[clutch] as number);
  return {
    depth: clutchOf.map(ofClutch(facts.depth)),
    fullDepth: clutchOf.map(ofClutch(facts.fullDepth)),
    generationEquivalents: Float64Array.from(clutchOf, ofClutch(facts.equivalents)),
  };
}
