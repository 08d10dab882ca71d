import type { Ancestry } from './ancestry.ts';
import { ClutchParents } from './clutch-parents.ts';
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

/** One text for each meeting. */
export function keyOfMeeting(meeting: Meeting): string {
  if (meeting.kind === 'individual') return `i${meeting.individual}`;
  return meeting.kind === 'unknown parent' ? `u${meeting.clutch}` : `s${meeting.a} ${meeting.b}`;
}

/** One way on from two ancestors; its weight is `odds` · ½^`steps`, times `kinship` where it ends in a meeting. */
export interface PairStep {
  /** Where it leads on the side of the younger of the two, and on that of the elder: local numbers, −1 for a frog nobody knows. */
  readonly one: number;
  readonly other: number;
  /** How many parents it goes up: 1 from the younger one, 2 from clutch-mates together, 0 where it ends as it stands. */
  readonly steps: 0 | 1 | 2;
  /** Probability that these are the parents. */
  readonly odds: number;
  /** Of a meeting in an unknown parent: whether it is the one that the clutch names first. */
  readonly isFirst: boolean;
  /** Where both sides meet at the end of this step, and how akin two alleles drawn there are. */
  readonly end: { readonly meeting: Meeting; readonly kinship: number } | null;
}

/** Hears of the ways on from a pair, as the fields of a `PairStep`: nothing is made for each, since there are millions. */
export type StepVisitor = (
  one: number,
  other: number,
  steps: 0 | 1 | 2,
  odds: number,
  end: PairStep['end'],
  isFirst: boolean,
) => void;

/**
 * Leads pairs of ancestors on, by which kinship is defined (Malécot 1948): from the younger of two to its parents, from two young of one
 * clutch to their parents together, so that an uncertain or unknown parent that they share is one.
 */
export class PairSteps {
  readonly #pedigree: Pedigree;
  readonly #inbreeding: Inbreeding;
  readonly #ancestry: Ancestry;
  /** By local number of the animal below; clutch-mates have one. */
  readonly #parents: (ClutchParents | undefined)[];
  readonly #byClutch = new Map<number, ClutchParents>();

  constructor(pedigree: Pedigree, inbreeding: Inbreeding, ancestry: Ancestry) {
    this.#pedigree = pedigree;
    this.#inbreeding = inbreeding;
    this.#ancestry = ancestry;
    this.#parents = new Array<ClutchParents | undefined>(ancestry.animals.length);
  }

  /** Every way on from two different animals, by local number; the same twice means two young of its clutch. A frog nobody knows is kin to nobody else: no way leads to it alone. */
  visit(younger: number, elder: number, visit: StepVisitor): void {
    const { animals } = this.#ancestry;
    const { clutchOf } = this.#pedigree;
    const clutch = clutchOf[animals[younger] as number] as number;
    if (clutch < 0) this.#visitFounders(animals[younger] as number, animals[elder] as number, visit);
    else if (clutchOf[animals[elder] as number] === clutch) this.#visitMates(younger, clutch, visit);
    else
      for (const { parent, odds } of this.#parentsOf(younger, clutch).known)
        visit(parent, elder, 1, odds, parent === elder ? this.meetIn(parent) : null, true);
  }

  /** The same as a list. */
  from(younger: number, elder: number): PairStep[] {
    const found: PairStep[] = [];
    this.visit(younger, elder, (one, other, steps, odds, end, isFirst) =>
      found.push({ one, other, steps, odds, end, isFirst }),
    );
    return found;
  }

  /** Both sides at one animal, by local number: that is where they meet. */
  meetIn(local: number): PairStep['end'] {
    const individual = this.#ancestry.animals[local] as number;
    const kinship = 0.5 * (1 + inbreedingOf(this.#pedigree, this.#inbreeding, individual).expected);
    return { meeting: { kind: 'individual', individual }, kinship };
  }

  #parentsOf(young: number, clutch: number): ClutchParents {
    return (this.#parents[young] ??= this.#parentsOfClutch(clutch));
  }

  #parentsOfClutch(clutch: number): ClutchParents {
    const known = this.#byClutch.get(clutch);
    if (known) return known;
    const localOf = (individual: number): number => (individual < 0 ? -1 : this.#ancestry.find(individual));
    const parents = new ClutchParents(this.#pedigree, clutch, localOf);
    this.#byClutch.set(clutch, parents);
    return parents;
  }

  #visitFounders(one: number, other: number, visit: StepVisitor): void {
    const [first, second] = [this.#pedigree.sourceOf[one] as number, this.#pedigree.sourceOf[other] as number];
    if (first < 0 || second < 0) return;
    const kinship = sourceKinship(this.#pedigree, first, second);
    if (kinship === 0) return;
    const meeting: Meeting = { kind: 'sources', a: Math.min(first, second), b: Math.max(first, second) };
    visit(-1, -1, 0, 1, { meeting, kinship }, true);
  }

  /** Clutch-mates have the same parents, whichever these are: Σ p(s,d) · ¼(φ(s,s)+φ(d,d)+2φ(s,d)). */
  #visitMates(young: number, clutch: number, visit: StepVisitor): void {
    const { known, unknown, couples } = this.#parentsOf(young, clutch);
    for (const { parent, odds } of known) visit(parent, parent, 2, odds, this.meetIn(parent), true);
    for (const { odds, isFirst } of unknown)
      visit(-1, -1, 2, odds, { meeting: { kind: 'unknown parent', clutch }, kinship: 0.5 }, isFirst);
    for (const { one, other, odds } of couples) visit(one, other, 2, odds, null, true);
  }
}
