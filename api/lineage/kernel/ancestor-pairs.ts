import { collectAncestry, type Ancestry } from './ancestry.ts';
import type { Pair } from './genome-flow.ts';
import type { Inbreeding } from './inbreeding.ts';
import { PairSteps, type Meeting, type PairStep, type StepVisitor } from './pair-steps.ts';
import type { Pedigree } from './pedigree.ts';

/** Pairs of ancestors that one question may visit: some tenths of a second, and some hundred megabytes. */
export const ANCESTOR_PAIRS_MOST = 500_000;

/** Ways that have come somewhere: the sum of their weights, how many they are, and the number of parents that they go up. */
export interface Arrived {
  weight: number;
  loops: number;
  shortest: number;
  longest: number;
}

/** A pair that ways have come to, with its place once it is led on. */
interface Visited extends Arrived {
  place: number;
}

/** Counts further ways in. */
export function arrive(known: Arrived, { weight, loops, shortest, longest }: Arrived): void {
  known.weight += weight;
  known.loops += loops;
  known.shortest = Math.min(known.shortest, shortest);
  known.longest = Math.max(known.longest, longest);
}

/** What going up so many parents leaves. */
const HALVED = [1, 0.5, 0.25] as const;

/** What a way is worth by itself: its odds, halved by every parent it goes up, and how akin two alleles are where it ends. */
export function weightOf(steps: 0 | 1 | 2, odds: number, end: PairStep['end']): number {
  return odds * HALVED[steps] * (end?.kinship ?? 1);
}

/** Tells of ways that end in a meeting. */
type OnMeeting = (meeting: Meeting, arrived: Arrived) => void;

/**
 * The pairs of ancestors that the two sides of loops can stand at, each once whatever the number of paths that lead to it: the
 * work grows with the square of the number of ancestors and not with the number of loops. What is above a pair is the same for all young of the
 * younger one's clutch, so the first of them stands for all; two of one clutch are the first one twice.
 */
export class AncestorPairs {
  readonly steps: PairSteps;
  readonly ancestry: Ancestry;
  /** The ways from the young to its candidate pairs. */
  readonly starts: readonly PairStep[];
  /** Local numbers of each pair that ways came to, by its place here; pairs come before those that they lead to. */
  readonly younger: number[] = [];
  readonly elder: number[] = [];
  /** By the younger of the two and then the elder. */
  readonly #pairs: (Map<number, Visited> | undefined)[];
  /** The first young of each animal's clutch, by local number; a founder itself. */
  readonly #first: Int32Array;
  readonly #most: number;
  #count = 0;

  /**
   * @param pairs candidate parents of the young
   * @param most pairs that may be visited
   */
  constructor(pedigree: Pedigree, inbreeding: Inbreeding, pairs: readonly Pair[], most = ANCESTOR_PAIRS_MOST) {
    const parents = pairs.flatMap(({ a, b }) => [a, b]).filter((parent) => parent >= 0);
    this.ancestry = collectAncestry(pedigree, inbreeding.order, parents);
    this.steps = new PairSteps(pedigree, inbreeding, this.ancestry);
    this.starts = this.#startsOf(pairs);
    this.#pairs = new Array<Map<number, Visited> | undefined>(this.ancestry.animals.length);
    this.#first = firstOfClutch(this.ancestry);
    this.#most = most;
  }

  /** The two sides of a loop begin at two parents: each ordered pair of them once, however often it is named. */
  #startsOf(pairs: readonly Pair[]): PairStep[] {
    const odds = new Map<string, { readonly pair: Pair; sum: number }>();
    for (const pair of pairs) {
      if (pair.a < 0 || pair.b < 0) continue;
      const key = `${pair.a} ${pair.b}`;
      const known = odds.get(key);
      if (known) known.sum += pair.probability;
      else odds.set(key, { pair, sum: pair.probability });
    }
    const { ancestry } = this;
    return [...odds.values()].map(({ pair, sum }) => {
      const [one, other] = [ancestry.find(pair.a), ancestry.find(pair.b)];
      return { one, other, steps: 0, odds: sum, isFirst: true, end: one === other ? this.steps.meetIn(one) : null };
    });
  }

  /** Place of a pair of two different animals, in either order; −1 where no way came to it, or it has not been led on yet. */
  placeOf(one: number, other: number): number {
    const younger = this.#first[Math.max(one, other)] as number;
    return this.#pairs[younger]?.get(this.#elderOf(younger, Math.min(one, other)))?.place ?? -1;
  }

  #elderOf(younger: number, elder: number): number {
    return this.#first[elder] === younger ? younger : elder;
  }

  /**
   * Leads all ways on, the youngest animal first: every way to a pair has come there before the pair is led on. Once only.
   *
   * @returns false where there are more pairs than may be visited
   */
  lead(onMeeting: OnMeeting): boolean {
    let from: Arrived = { weight: 1, loops: 1, shortest: 0, longest: 0 };
    const follow: StepVisitor = (one, other, steps, odds, end) => {
      const { loops } = from;
      const weight = from.weight * weightOf(steps, odds, end);
      const shortest = from.shortest + steps;
      const longest = from.longest + steps;
      if (end) onMeeting(end.meeting, { weight, loops, shortest, longest });
      else {
        const younger = this.#first[Math.max(one, other)] as number;
        this.#arriveAt(younger, this.#elderOf(younger, Math.min(one, other)), weight, loops, shortest, longest);
      }
    };
    for (const { one, other, steps, odds, end, isFirst } of this.starts) follow(one, other, steps, odds, end, isFirst);
    for (let younger = this.#pairs.length - 1; younger >= 0; younger--) {
      if (this.#count > this.#most) return false;
      for (const [elder, visited] of this.#pairs[younger] ?? []) {
        visited.place = this.younger.length;
        this.younger.push(younger);
        this.elder.push(elder);
        from = visited;
        this.steps.visit(younger, elder, follow);
      }
    }
    return true;
  }

  #arriveAt(younger: number, elder: number, weight: number, loops: number, shortest: number, longest: number): void {
    const pairs = (this.#pairs[younger] ??= new Map<number, Visited>());
    const known = pairs.get(elder);
    if (!known) {
      this.#count++;
      pairs.set(elder, { weight, loops, shortest, longest, place: -1 });
      return;
    }
    known.weight += weight;
    known.loops += loops;
    known.shortest = Math.min(known.shortest, shortest);
    known.longest = Math.max(known.longest, longest);
  }
}

function firstOfClutch({ animals, youngStart }: Ancestry): Int32Array {
  const first = Int32Array.from(animals.keys());
  for (let clutch = 0; clutch + 1 < youngStart.length; clutch++)
    first.fill(youngStart[clutch] as number, youngStart[clutch], youngStart[clutch + 1]);
  return first;
}
