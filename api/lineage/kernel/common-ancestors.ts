import { collectAncestry, type Ancestry } from './ancestry.ts';
import type { Pair } from './genome-flow.ts';
import { inbreedingOf, type Inbreeding } from './inbreeding.ts';
import type { Pedigree } from './pedigree.ts';
import { sourceKinship } from './sources.ts';

/** Where the two sides of a loop meet. */
export type Meeting =
  | { readonly kind: 'individual'; readonly individual: number }
  /** A parent of a clutch that nobody knows: clutch-mates share it. */
  | { readonly kind: 'unknown parent'; readonly clutch: number }
  /** Two founders whose sources state a kinship; `a` and `b` are the same for founders of one source. */
  | { readonly kind: 'sources'; readonly a: number; readonly b: number };

/** What F owes to one common ancestor. */
export interface CommonAncestor {
  readonly meeting: Meeting;
  /** Its part of F, above 0; the parts of all common ancestors sum to F. */
  readonly part: number;
  /** How many loops lead through it: pairs of paths, from the two parents up to it, that share no other animal. */
  readonly loops: number;
  /** Least and greatest number of steps from one parent up to it and down to the other. */
  readonly shortest: number;
  readonly longest: number;
}

/** Pairs of ancestors that one question may visit: some tenths of a second, and some hundred megabytes. */
export const ANCESTOR_PAIRS_MOST = 500_000;

/**
 * The common ancestors through which the young of some pairs are inbred, by Wright's (1922) paths, without listing them: a pair of ancestors
 * is led on by the parents of its younger one until both are the same. Paths that come to the same pair are taken together, so the
 * work grows with the square of the number of ancestors and not with the number of loops. Two young of one clutch are led on
 * together, so that an uncertain or unknown parent that they share is one.
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
  const parents = pairs.flatMap(({ a, b }) => [a, b]).filter((parent) => parent >= 0);
  const ancestry = collectAncestry(pedigree, inbreeding.order, parents);
  const walk = new PairWalk(pedigree, inbreeding, ancestry, most);
  for (const { a, b, probability } of pairs) walk.meet(ancestry.find(a), ancestry.find(b), probability, 1, 0, 0);
  if (!walk.run()) return null;
  return walk.found();
}

/** A pair of ancestors that paths have come to: the sum of their weights, how many, and how long they are. */
interface Arrived {
  weight: number;
  loops: number;
  shortest: number;
  longest: number;
}

interface Met extends Arrived {
  readonly meeting: Meeting;
}

class PairWalk {
  readonly #pedigree: Pedigree;
  readonly #inbreeding: Inbreeding;
  readonly #ancestry: Ancestry;
  readonly #most: number;
  #count = 0;
  /** By the younger of two local numbers, then by the elder. */
  readonly #arrived: (Map<number, Arrived> | undefined)[];
  readonly #met = new Map<string, Met>();

  constructor(pedigree: Pedigree, inbreeding: Inbreeding, ancestry: Ancestry, most: number) {
    this.#pedigree = pedigree;
    this.#inbreeding = inbreeding;
    this.#ancestry = ancestry;
    this.#most = most;
    this.#arrived = new Array<Map<number, Arrived> | undefined>(ancestry.animals.length);
  }

  /** Paths have come to two animals, by local number; −1 is a frog nobody knows, who is kin to nobody else. */
  meet(one: number, other: number, weight: number, loops: number, shortest: number, longest: number): void {
    if (one < 0 || other < 0) return;
    if (one === other) {
      const individual = this.#ancestry.animals[one] as number;
      const self = 0.5 * (1 + inbreedingOf(this.#pedigree, this.#inbreeding, individual).expected);
      this.#end(`i${individual}`, { kind: 'individual', individual }, weight * self, loops, shortest, longest);
      return;
    }
    const younger = Math.max(one, other);
    const elder = Math.min(one, other);
    const pairs = (this.#arrived[younger] ??= new Map<number, Arrived>());
    const known = pairs.get(elder);
    if (known) add(known, weight, loops, shortest, longest);
    else {
      this.#count++;
      pairs.set(elder, { weight, loops, shortest, longest });
    }
  }

  #end(key: string, meeting: Meeting, part: number, loops: number, shortest: number, longest: number): void {
    if (part === 0) return;
    const known = this.#met.get(key);
    if (known) add(known, part, loops, shortest, longest);
    else this.#met.set(key, { meeting, weight: part, loops, shortest, longest });
  }

  /** Leads all pairs on, the youngest first: every path to a pair has come there before the pair is led on. False where they are too many. */
  run(): boolean {
    for (let younger = this.#arrived.length - 1; younger >= 0; younger--) {
      if (this.#count > this.#most) return false;
      const pairs = this.#arrived[younger];
      if (!pairs) continue;
      for (const [elder, arrived] of pairs) this.#leadOn(younger, elder, arrived);
      this.#arrived[younger] = undefined;
    }
    return true;
  }

  #leadOn(younger: number, elder: number, arrived: Arrived): void {
    const { animals } = this.#ancestry;
    const clutch = this.#pedigree.clutchOf[animals[younger] as number] as number;
    if (clutch < 0) this.#meetFounders(animals[younger] as number, animals[elder] as number, arrived);
    else if (this.#pedigree.clutchOf[animals[elder] as number] === clutch) this.#leadMates(clutch, arrived);
    else this.#leadYounger(clutch, elder, arrived);
  }

  #meetFounders(one: number, other: number, { weight, loops, shortest, longest }: Arrived): void {
    const first = this.#pedigree.sourceOf[one] as number;
    const second = this.#pedigree.sourceOf[other] as number;
    if (first < 0 || second < 0) return;
    const kinship = sourceKinship(this.#pedigree, first, second);
    const a = Math.min(first, second);
    const b = Math.max(first, second);
    this.#end(`s${a} ${b}`, { kind: 'sources', a, b }, weight * kinship, loops, shortest, longest);
  }

  #leadYounger(clutch: number, elder: number, { weight, loops, shortest, longest }: Arrived): void {
    const { pairStart, pairSire, pairDam, pairProbability } = this.#pedigree;
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
      const half = 0.5 * weight * (pairProbability[pair] as number);
      for (const parent of [pairSire[pair] as number, pairDam[pair] as number])
        this.meet(this.#local(parent), elder, half, loops, shortest + 1, longest + 1);
    }
  }

  /** Clutch-mates have the same parents, whichever these are: Σ p(s,d) · ¼(φ(s,s)+φ(d,d)+2φ(s,d)). */
  #leadMates(clutch: number, { weight, loops, shortest, longest }: Arrived): void {
    const { pairStart, pairSire, pairDam, pairProbability } = this.#pedigree;
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
      const quarter = 0.25 * weight * (pairProbability[pair] as number);
      const sire = this.#local(pairSire[pair] as number);
      const dam = this.#local(pairDam[pair] as number);
      for (const parent of [sire, dam])
        if (parent >= 0) this.meet(parent, parent, quarter, loops, shortest + 2, longest + 2);
        else
          this.#end(`u${clutch}`, { kind: 'unknown parent', clutch }, 0.5 * quarter, loops, shortest + 2, longest + 2);
      this.meet(sire, dam, 2 * quarter, 2 * loops, shortest + 2, longest + 2);
    }
  }

  #local(individual: number): number {
    return individual < 0 ? -1 : this.#ancestry.find(individual);
  }

  found(): CommonAncestor[] {
    return [...this.#met.values()]
      .map(({ meeting, weight, loops, shortest, longest }) => ({ meeting, part: weight, loops, shortest, longest }))
      .sort((one, other) => other.part - one.part || one.shortest - other.shortest);
  }
}

function add(known: Arrived, weight: number, loops: number, shortest: number, longest: number): void {
  known.weight += weight;
  known.loops += loops;
  known.shortest = Math.min(known.shortest, shortest);
  known.longest = Math.max(known.longest, longest);
}
