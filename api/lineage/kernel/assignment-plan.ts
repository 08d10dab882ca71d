import type { Inbreeding } from './inbreeding.ts';
import { kinshipMatrix } from './kinship.ts';
import type { Pedigree } from './pedigree.ts';

/** The ancestry of one animal as assignments of parents are drawn in it. */
export interface CandidateAncestry {
  /** Clutches of the animal's ancestors, parents first, its own last. */
  readonly clutches: Int32Array;
  /** So many + 1: the candidate pairs of place c are entries start[c] .. start[c+1]−1 of `pairs`. */
  readonly start: Int32Array;
  /** Candidate pairs as numbers of the pedigree's pairs, in the order in which they are drawn. */
  readonly pairs: Int32Array;
}

/**
 * What must be computed anew for every assignment of parents: the clutches below an uncertain one, and the kinships of their parents
 * among each other. Ancestors above them are certain; what they give is computed once.
 */
export interface AssignmentPlan {
  /** Rows and columns of a matrix of kinships; place −1 is a frog nobody knows. */
  readonly width: number;
  /** The first so many places belong to animals with certain ancestors. */
  readonly certain: number;
  /** certain × certain: their kinships, ½(1+F) on the diagonal. */
  readonly kinships: Float64Array;
  /** Clutches that are computed for each assignment, parents first; the last one is the animal's own. */
  readonly count: number;
  /** count + 1: candidate pairs of each. */
  readonly pairStart: Int32Array;
  /** Place of each parent. */
  readonly pairSire: Int32Array;
  readonly pairDam: Int32Array;
  /** Where each parent stands in `young`, −1 for those with certain ancestors. */
  readonly sireYoung: Int32Array;
  readonly damYoung: Int32Array;
  readonly pairProbability: Float64Array;
  /** count + 1: places of the young of each clutch that are parents of later ones. */
  readonly youngStart: Int32Array;
  readonly young: Int32Array;
  /** The clutch of each of them. */
  readonly youngClutch: Int32Array;
}

/** Animals whose kinships are held at once, at most: a matrix of 128 MB. */
const WIDTH_MOST = 4000;

/** More animals would have to be held at once than memory is given to. */
export class TooWideError extends RangeError {
  constructor(widthMost: number) {
    super(`More than ${widthMost} animals are parents of uncertain descent at one time.`);
  }
}

/**
 * Lays out what an assignment changes.
 *
 * @param inbreeding that of the whole pedigree
 * @returns null where no parent of its ancestors, nor its own, is uncertain
 * @param matrixBytes most bytes that the matrix of kinships may take
 * @throws TooWideError where it would take more, or be wider than 4000 animals
 */
export function planAssignments(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  ancestry: CandidateAncestry,
  matrixBytes = Infinity,
): AssignmentPlan | null {
  const touched = touchedClutches(pedigree, ancestry);
  if (touched.size === 0) return null;
  const { certain, lastUse } = findParents(pedigree, ancestry, touched);
  const places = new Places(pedigree, certain, lastUse);
  const parts = new PlanParts(pedigree, places);
  for (const [clutch, at] of touched) parts.add(ancestry, clutch, at);
  const widthMost = Math.min(WIDTH_MOST, Math.floor(Math.sqrt(matrixBytes / Float64Array.BYTES_PER_ELEMENT)));
  if (places.width > widthMost) throw new TooWideError(widthMost);
  const kinships = kinshipMatrix(pedigree, inbreeding, Int32Array.from(certain), { sweepBytes: matrixBytes });
  return parts.done(kinships, certain.length);
}

/** Clutches that are uncertain or descend from one that is, with their places in the ancestry; parents first. */
function touchedClutches(
  { clutchOf, pairSire, pairDam }: Pedigree,
  { clutches, start, pairs }: CandidateAncestry,
): Map<number, number> {
  const touched = new Map<number, number>();
  const isTouched = (parent: number): boolean => parent >= 0 && touched.has(clutchOf[parent] as number);
  for (let at = 0; at < clutches.length; at++) {
    const from = start[at] as number;
    const to = start[at + 1] as number;
    let is = to - from > 1;
    for (let entry = from; entry < to && !is; entry++) {
      const pair = pairs[entry] as number;
      is = isTouched(pairSire[pair] as number) || isTouched(pairDam[pair] as number);
    }
    if (is) touched.set(clutches[at] as number, at);
  }
  return touched;
}

/** The parents with certain ancestors, and for all others the place of the last clutch that names them. */
function findParents(
  { clutchOf, pairSire, pairDam }: Pedigree,
  { start, pairs }: CandidateAncestry,
  touched: ReadonlyMap<number, number>,
): { certain: number[]; lastUse: Map<number, number> } {
  const certain = new Set<number>();
  const lastUse = new Map<number, number>();
  for (const at of touched.values())
    for (let entry = start[at] as number; entry < (start[at + 1] as number); entry++) {
      const pair = pairs[entry] as number;
      for (const parent of [pairSire[pair] as number, pairDam[pair] as number])
        if (parent < 0) continue;
        else if (touched.has(clutchOf[parent] as number)) lastUse.set(parent, at);
        else certain.add(parent);
    }
  return { certain: [...certain], lastUse };
}

/** Gives each parent a place in the matrix; that of an animal without later clutches is given to the next. */
class Places {
  readonly #placeOf = new Map<number, number>();
  readonly #youngOf = new Map<number, number[]>();
  readonly #lastUse: ReadonlyMap<number, number>;
  readonly #free: number[] = [];
  #busy: { readonly place: number; readonly until: number }[] = [];
  width: number;

  constructor({ clutchOf }: Pedigree, certain: readonly number[], lastUse: ReadonlyMap<number, number>) {
    certain.forEach((animal, place) => this.#placeOf.set(animal, place));
    this.width = certain.length;
    this.#lastUse = lastUse;
    for (const animal of lastUse.keys()) {
      const clutch = clutchOf[animal] as number;
      const young = this.#youngOf.get(clutch);
      if (young) young.push(animal);
      else this.#youngOf.set(clutch, [animal]);
    }
  }

  of(animal: number): number {
    return animal < 0 ? -1 : (this.#placeOf.get(animal) ?? -1);
  }

  /** Places for the young of a clutch. Its own parents keep theirs until its rows are written. */
  take(clutch: number, at: number): { readonly animal: number; readonly place: number }[] {
    this.#busy = this.#busy.filter(({ place, until }) => {
      if (until < at) this.#free.push(place);
      return until >= at;
    });
    return (this.#youngOf.get(clutch) ?? []).map((animal) => {
      const place = this.#free.pop() ?? this.width++;
      this.#placeOf.set(animal, place);
      this.#busy.push({ place, until: this.#lastUse.get(animal) ?? at });
      return { animal, place };
    });
  }
}

/** The lists of a plan while they are filled. */
class PlanParts {
  readonly #pedigree: Pedigree;
  readonly #places: Places;
  readonly #youngOf = new Map<number, number>();
  readonly #pairStart = [0];
  readonly #sire: number[] = [];
  readonly #dam: number[] = [];
  readonly #sireYoung: number[] = [];
  readonly #damYoung: number[] = [];
  readonly #probability: number[] = [];
  readonly #youngStart = [0];
  readonly #young: number[] = [];
  readonly #youngClutch: number[] = [];

  constructor(pedigree: Pedigree, places: Places) {
    this.#pedigree = pedigree;
    this.#places = places;
  }

  add({ start, pairs }: CandidateAncestry, clutch: number, at: number): void {
    const { pairSire, pairDam, pairProbability } = this.#pedigree;
    const number = this.#pairStart.length - 1;
    for (let entry = start[at] as number; entry < (start[at + 1] as number); entry++) {
      const pair = pairs[entry] as number;
      const sire = pairSire[pair] as number;
      const dam = pairDam[pair] as number;
      this.#sire.push(this.#places.of(sire));
      this.#dam.push(this.#places.of(dam));
      this.#sireYoung.push(this.#youngOf.get(sire) ?? -1);
      this.#damYoung.push(this.#youngOf.get(dam) ?? -1);
      this.#probability.push(pairProbability[pair] as number);
    }
    this.#pairStart.push(this.#sire.length);
    for (const { animal, place } of this.#places.take(clutch, at)) {
      this.#youngOf.set(animal, this.#young.length);
      this.#young.push(place);
      this.#youngClutch.push(number);
    }
    this.#youngStart.push(this.#young.length);
  }

  done(kinships: Float64Array, certain: number): AssignmentPlan {
    return {
      width: this.#places.width,
      certain,
      kinships,
      count: this.#pairStart.length - 1,
      pairStart: Int32Array.from(this.#pairStart),
      pairSire: Int32Array.from(this.#sire),
      pairDam: Int32Array.from(this.#dam),
      sireYoung: Int32Array.from(this.#sireYoung),
      damYoung: Int32Array.from(this.#damYoung),
      pairProbability: Float64Array.from(this.#probability),
      youngStart: Int32Array.from(this.#youngStart),
      young: Int32Array.from(this.#young),
      youngClutch: Int32Array.from(this.#youngClutch),
    };
  }
}
