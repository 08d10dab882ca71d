import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';
import type { SearchSpace } from './search-space.ts';

/**
 * Finds clutches with all clutches among their ancestors.
 *
 * @param space all zero; left so
 * @param limit beyond which the search is given up
 * @returns clutches, each once, in no order; null where there are more than `limit`.
 */
export function findAncestors(
  pedigree: Pedigree,
  clutches: Int32Array,
  space: SearchSpace,
  limit = Infinity,
): number[] | null {
  const { clutchOf, pairStart, pairSire, pairDam } = pedigree;
  const seen = space.ofClutch;
  const found: number[] = [];
  const meet = (clutch: number): void => {
    if (clutch < 0 || seen[clutch] === 1) return;
    seen[clutch] = 1;
    found.push(clutch);
  };
  clutches.forEach(meet);
  for (let next = 0; next < found.length && found.length <= limit; next++) {
    const clutch = found[next] as number;
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
      const sire = pairSire[pair] as number;
      const dam = pairDam[pair] as number;
      if (sire >= 0) meet(clutchOf[sire] as number);
      if (dam >= 0) meet(clutchOf[dam] as number);
    }
  }
  for (const clutch of found) seen[clutch] = 0;
  return found.length > limit ? null : found;
}

/** The same clutches, parents first. */
export function parentsFirst(order: PedigreeOrder, clutches: readonly number[]): Int32Array {
  const positions = Int32Array.from(clutches, (clutch) => order.positionOf[clutch] as number).sort();
  return positions.map((position) => order.clutches[position] as number);
}

/**
 * A part of a pedigree that is closed under descent upwards, as a pedigree of its own: clutch `i` of it is `clutches[i]`,
 * and the animals that are candidate parents there have a number, and those asked for. Sources keep theirs.
 *
 * @param clutches parents first, all their ancestors among them
 * @param space all zero; left so
 * @param first animals of these clutches or founders, each once, that become individuals 0, 1, 2, … in this order
 */
export function partOfPedigree(
  pedigree: Pedigree,
  clutches: Int32Array,
  space: SearchSpace,
  first: Int32Array = new Int32Array(0),
): Pedigree {
  const { pairStart, pairSire, pairDam, pairProbability } = pedigree;
  const numbers = new Numbering(pedigree, clutches, space);
  for (const individual of first) numbers.of(individual);
  const start = new Int32Array(clutches.length + 1);
  for (let local = 0; local < clutches.length; local++) {
    const clutch = clutches[local] as number;
    const pairs = (pairStart[clutch + 1] as number) - (pairStart[clutch] as number);
    start[local + 1] = (start[local] as number) + pairs;
  }
  const count = start[clutches.length] as number;
  const sires = new Int32Array(count);
  const dams = new Int32Array(count);
  const probabilities = new Float64Array(count);
  let filled = 0;
  for (let local = 0; local < clutches.length; local++) {
    const clutch = clutches[local] as number;
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++, filled++) {
      sires[filled] = numbers.of(pairSire[pair] as number);
      dams[filled] = numbers.of(pairDam[pair] as number);
      probabilities[filled] = pairProbability[pair] as number;
    }
  }
  return {
    ...pedigree,
    ...numbers.finish(),
    pairStart: start,
    pairSire: sires,
    pairDam: dams,
    pairProbability: probabilities,
  };
}

/** Gives animals their numbers as they are met. */
class Numbering {
  readonly #pedigree: Pedigree;
  readonly #clutches: Int32Array;
  readonly #space: SearchSpace;
  readonly #animals: number[] = [];

  constructor(pedigree: Pedigree, clutches: Int32Array, space: SearchSpace) {
    this.#pedigree = pedigree;
    this.#clutches = clutches;
    this.#space = space;
    clutches.forEach((clutch, local) => (space.ofClutch[clutch] = local));
  }

  of(individual: number): number {
    if (individual < 0) return -1;
    const known = this.#space.ofIndividual[individual] as number; // counted from 1
    if (known > 0) return known - 1;
    this.#space.ofIndividual[individual] = this.#animals.push(individual);
    return this.#animals.length - 1;
  }

  /** Clutches and sources of the animals met; cleans the space up. */
  finish(): Pick<Pedigree, 'clutchOf' | 'sourceOf'> {
    const { ofIndividual, ofClutch } = this.#space;
    const { clutchOf, sourceOf } = this.#pedigree;
    const clutches = Int32Array.from(this.#animals, (animal) => {
      const clutch = clutchOf[animal] as number;
      return clutch < 0 ? -1 : (ofClutch[clutch] as number);
    });
    const sources = Int32Array.from(this.#animals, (animal) => sourceOf[animal] as number);
    for (const animal of this.#animals) ofIndividual[animal] = 0;
    for (const clutch of this.#clutches) ofClutch[clutch] = 0;
    return { clutchOf: clutches, sourceOf: sources };
  }
}
