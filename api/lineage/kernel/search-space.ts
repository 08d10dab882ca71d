import type { Pedigree } from './pedigree.ts';
import { PositionSet } from './position-set.ts';

/**
 * Working space of searches among ancestors. Between two searches everything in it is zero, and each search cleans up what
 * it touched: a question about a few animals then costs what their ancestors cost, whatever the size of the register.
 */
export class SearchSpace {
  /** One number an individual. */
  readonly ofIndividual: Int32Array;
  /** One number an individual, of no meaning unless the search has written it. */
  readonly next: Int32Array;
  /** One number a clutch. */
  readonly ofClutch: Int32Array;
  readonly coefficient: Float64Array;
  /** Positions of clutches. */
  readonly waiting: PositionSet;

  constructor(individuals: number, clutches: number) {
    this.ofIndividual = new Int32Array(individuals);
    this.next = new Int32Array(individuals);
    this.ofClutch = new Int32Array(clutches);
    this.coefficient = new Float64Array(individuals);
    this.waiting = new PositionSet(clutches);
  }
}

let held: SearchSpace | null = null;

/**
 * Lends the working space of this thread to a search that runs to its end without waiting for anything. It grows with the
 * largest register seen. A search within a search gets a space of its own, and a space that a search failed in is dropped.
 */
export function withSearchSpace<Result>(pedigree: Pedigree, search: (space: SearchSpace) => Result): Result {
  const individuals = pedigree.clutchOf.length;
  const clutches = pedigree.pairStart.length - 1;
  const fits = held !== null && held.ofIndividual.length >= individuals && held.ofClutch.length >= clutches;
  const space = fits && held !== null ? held : new SearchSpace(roomFor(individuals), roomFor(clutches));
  held = null;
  const result = search(space);
  held = space;
  return result;
}

/** Some more than is needed now, since registers grow by one record at a time. */
function roomFor(count: number): number {
  return Math.ceil(count * 1.25) + 64;
}
