import { ANCESTOR_PAIRS_MOST, AncestorPairs } from './ancestor-pairs.ts';
import { ancestorsOf, type CommonAncestor } from './common-ancestors.ts';
import type { Pair } from './genome-flow.ts';
import type { Inbreeding } from './inbreeding.ts';
import { LoopSearch, type FoundLoop } from './loop-search.ts';
import { keyOfMeeting, type Meeting } from './pair-steps.ts';
import type { Pedigree } from './pedigree.ts';

/** One animal on the way up from a parent. */
export interface LoopStep {
  /** −1 for the parent nobody knows in which two clutch-mates meet. */
  readonly individual: number;
  /** The clutch of the animal below, of which this one is a parent; −1 where the animal below is the young asked about. */
  readonly clutch: number;
  /** Probability that it is one; where both sides lead through one clutch, that both are its parents: stated twice, counted once. */
  readonly odds: number;
  /** Whether the other side leads through the same clutch. */
  readonly isTogether: boolean;
  /** Of a parent nobody knows: whether it is the one that the clutch names first (the sire where sexes are known). */
  readonly isFirst: boolean;
}

/** One loop: two paths up from the two parents that share no animal before they meet. */
export interface InbreedingLoop {
  readonly meeting: Meeting;
  /** What it adds to F, above 0: `odds` · ½^`steps` · `kinship` (Wright 1922). */
  readonly part: number;
  /** Probability that all animals on it are the parents that they are taken for. */
  readonly odds: number;
  /** Steps from one parent up and down to the other. */
  readonly steps: number;
  /** How akin two alleles are where it closes: ½(1+F) of the common ancestor, ½ of an unknown one, or what sources state. */
  readonly kinship: number;
  /** From each of the two parents up to where they meet: the common ancestor ends both. */
  readonly paths: readonly [readonly LoopStep[], readonly LoopStep[]];
}

/** The largest loops of one animal, and by common ancestor what all of them are. */
export interface InbreedingLoops {
  /** Largest part first. */
  readonly loops: readonly InbreedingLoop[];
  /** All common ancestors, largest part first, as `commonAncestors` gives them, and what of each is listed. */
  readonly ancestors: readonly (CommonAncestor & { readonly listed: number; readonly listedPart: number })[];
}

/** Animals that the loops of one answer name in all, each as often as it stands on one: so many are a megabyte. */
export const LOOP_STEPS_MOST = 20_000;

/** How much is wanted. */
export interface LoopLimits {
  /** Most loops to list. */
  readonly most: number;
  /** The list ends with the loop that reaches so many animals; `LOOP_STEPS_MOST` if left out. */
  readonly stepsMost?: number;
  /** Lists only loops that meet here. */
  readonly through?: Meeting;
  /** Most pairs of ancestors that may be visited. */
  readonly pairsMost?: number;
}

/**
 * The loops through which the young of some pairs are inbred, step by step, best first; those listed and what is left of each common
 * ancestor sum to F. The work is that of `commonAncestors` once more, and for each loop its length times the candidates on it:
 * how many loops there are does not matter. A loop that is worth less than a number can hold (2⁻¹⁰⁷⁴) is not listed.
 *
 * @param pairs candidate parents of the young
 * @returns null where there are more pairs of ancestors than may be visited
 */
export function inbreedingLoops(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  pairs: readonly Pair[],
  { most, stepsMost = LOOP_STEPS_MOST, through, pairsMost = ANCESTOR_PAIRS_MOST }: LoopLimits,
): InbreedingLoops | null {
  const table = new AncestorPairs(pedigree, inbreeding, pairs, pairsMost);
  const ancestors = ancestorsOf(table);
  if (!ancestors) return null;
  const found = new LoopSearch(table, through ? keyOfMeeting(through) : null).find(most, stepsMost);
  const loops = found.map((loop) => written(pedigree, table, loop));
  loops.sort((one, other) => other.part - one.part || one.steps - other.steps);
  return { loops, ancestors: ancestors.map((ancestor) => ({ ...ancestor, ...listedOf(ancestor, loops) })) };
}

function listedOf(
  { meeting }: CommonAncestor,
  loops: readonly InbreedingLoop[],
): { listed: number; listedPart: number } {
  const key = keyOfMeeting(meeting);
  const own = loops.filter((loop) => keyOfMeeting(loop.meeting) === key);
  return { listed: own.length, listedPart: own.reduce((sum, { part }) => sum + part, 0) };
}

/** Writes the way of a loop out as two paths. */
function written(
  pedigree: Pedigree,
  { ancestry, starts }: AncestorPairs,
  { start, choices }: FoundLoop,
): InbreedingLoop {
  const { animals } = ancestry;
  const first = starts[start] as (typeof starts)[number];
  const paths: [LoopStep[], LoopStep[]] = [[], []];
  let [one, other] = [first.one, first.other];
  let { odds, steps, end } = first;
  const go = (
    side: 0 | 1,
    to: number,
    below: number,
    by: { odds: number; isFirst: boolean },
    isTogether: boolean,
  ): void => {
    const clutch = below < 0 ? -1 : (pedigree.clutchOf[animals[below] as number] as number);
    paths[side].push({
      individual: to < 0 ? -1 : (animals[to] as number),
      clutch,
      odds: by.odds,
      isTogether,
      isFirst: by.isFirst,
    });
  };
  go(0, one, -1, first, true);
  go(1, other, -1, first, true);
  for (const step of choices) {
    const isYounger = one > other;
    const [to, toOther] = isYounger ? [step.one, step.other] : [step.other, step.one];
    if (step.steps === 2 || (step.steps === 1 && isYounger)) go(0, to, one, step, step.steps === 2);
    if (step.steps === 2 || (step.steps === 1 && !isYounger)) go(1, toOther, other, step, step.steps === 2);
    [one, other] = [to, toOther];
    odds *= step.odds;
    steps += step.steps;
    end = step.end;
  }
  if (!end) throw new Error('A loop ended without a meeting.');
  return { meeting: end.meeting, part: odds * 0.5 ** steps * end.kinship, odds, steps, kinship: end.kinship, paths };
}
