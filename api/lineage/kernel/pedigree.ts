/**
 * A register as the kernel sees it: dense numbers, no records, no strings, no dates.
 *
 * Individuals are 0..n−1, clutches 0..m−1, sources 0..k−1, each in any order; −1 means "none" or "unknown".
 * An individual has a clutch or a source or neither (unknown origin), never both.
 * Every clutch lists its candidate parent pairs with probabilities that sum to 1; separate lists of sires and dams are handed
 * over multiplied out, p(s,d) = p(s)·p(d). A parent −1 is a frog nobody knows: a phantom founder of that clutch alone.
 */
export interface Pedigree {
  /** n: clutch of each individual, or −1. */
  readonly clutchOf: Int32Array;
  /** n: source of each individual, or −1. */
  readonly sourceOf: Int32Array;
  /** k: kinship of two different founders of one source, 0 to 1. */
  readonly baseKinship: Float64Array;
  /**
   * k: inbreeding of the founders of a source, 0 to 1. Left out: the same as baseKinship, the convention of a pool of gametes
   * (metafounders, Legarra et al. 2015).
   */
  readonly founderInbreeding?: Float64Array;
  /** Kinships between different sources where one is recorded; unrelated otherwise. */
  readonly sourceKinships?: readonly { readonly a: number; readonly b: number; readonly kinship: number }[];
  /** m+1: the pairs of clutch c are pairStart[c] .. pairStart[c+1]−1. */
  readonly pairStart: Int32Array;
  /** One parent of each pair (the sire where sexes are known): an individual or −1. */
  readonly pairSire: Int32Array;
  /** The other parent of each pair: an individual or −1. */
  readonly pairDam: Int32Array;
  /** Probability of each pair, above 0, at most 1; they sum to 1 over a clutch. */
  readonly pairProbability: Float64Array;
}
