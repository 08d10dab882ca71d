import { ANCESTOR_PAIRS_MOST, AncestorPairs, arrive, type Arrived } from './ancestor-pairs.ts';
import type { Pair } from './genome-flow.ts';
import type { Inbreeding } from './inbreeding.ts';
import { keyOfMeeting, type Meeting } from './pair-steps.ts';
import type { Pedigree } from './pedigree.ts';

/** What F owes to one common ancestor. */
export interface CommonAncestor {
  readonly meeting: Meeting;
  /** Its part of F, above 0; the parts of all common ancestors sum to F. */
  readonly part: number;
  /**
   * How many loops lead through it: pairs of paths, from the two parents up to it, that share no other animal. Rounded above 2⁵³, Infinity
   * above 1.8·10³⁰⁸.
   */
  readonly loops: number;
  /** Least and greatest number of steps from one parent up to it and down to the other. */
  readonly shortest: number;
  readonly longest: number;
}

/**
 * The common ancestors through which the young of some pairs are inbred, by Wright's (1922) paths, without listing them: a pair of ancestors
 * is led on by the parents of its younger one until both are the same (`PairSteps`), and paths that come to the same pair are taken together.
 *
 * @param pairs candidate parents of the young
 * @param most pairs of ancestors that may be visited
 * @returns the largest part first; null where there are more pairs of ancestors
 */
export function commonAncestors(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  pairs: readonly Pair[],
  most = ANCESTOR_PAIRS_MOST,
): CommonAncestor[] | null {
  return ancestorsOf(new AncestorPairs(pedigree, inbreeding, pairs, most));
}

/** The same by pairs that have not been led on yet. */
export function ancestorsOf(pairs: AncestorPairs): CommonAncestor[] | null {
  const found = new Map<string, { readonly meeting: Meeting; readonly arrived: Arrived }>();
  const isDone = pairs.lead((meeting, arrived) => {
    if (arrived.weight === 0) return;
    const key = keyOfMeeting(meeting);
    const known = found.get(key);
    if (known) arrive(known.arrived, arrived);
    else found.set(key, { meeting, arrived });
  });
  if (!isDone) return null;
  return [...found.values()]
    .map(({ meeting, arrived: { weight, ...counts } }) => ({ meeting, part: weight, ...counts }))
    .sort((one, other) => other.part - one.part || one.shortest - other.shortest);
}
