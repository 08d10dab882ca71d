import { Candidates } from './candidates.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';
import { withSearchSpace, type SearchSpace } from './search-space.ts';

/**
 * The part of a pedigree that a few animals descend from, numbered anew from 0: founders first, then the young of each
 * clutch together, parents first. Animals outside it have no part in what is asked about these few.
 */
export interface Ancestry {
  /** Local number to individual. */
  readonly animals: Int32Array;
  /** Local numbers of the individuals asked for, in the order they were given. */
  readonly asked: Int32Array;
  /** Local number of an individual, −1 for those outside; costs what the ancestors cost, not what the register does. */
  find(individual: number): number;
  /** The first so many animals are founders. */
  readonly founders: number;
  /** Clutches, parents first. */
  readonly clutches: Int32Array;
  /** Clutches + 1: the young of local clutch c are the animals youngStart[c] .. youngStart[c+1]−1. */
  readonly youngStart: Int32Array;
  /** Clutches + 1: its recorded candidates are entries parentStart[c] .. parentStart[c+1]−1 of `parents`. */
  readonly parentStart: Int32Array;
  /** Candidates as local numbers. */
  readonly parents: Int32Array;
  /** Weight w = ½ Σ p of each candidate; what is missing from 1 in a clutch belongs to unknown parents. */
  readonly weights: Float64Array;
}

/** Collects some individuals and all their possible ancestors. Costs what the ancestors cost. */
export function collectAncestry(pedigree: Pedigree, order: PedigreeOrder, individuals: Iterable<number>): Ancestry {
  return withSearchSpace(pedigree, (space) => {
    const asked = Int32Array.from(individuals);
    const search = new AncestorSearch(pedigree, order, space);
    for (const individual of asked) search.add(individual);
    search.run();
    return search.number(asked);
  });
}

class AncestorSearch {
  readonly #pedigree: Pedigree;
  readonly #order: PedigreeOrder;
  readonly #space: SearchSpace;
  readonly #candidates: Candidates;
  readonly #founders: number[] = [];
  readonly #clutches: number[] = []; // last first
  #links = 0;
  #animals = 0;

  constructor(pedigree: Pedigree, order: PedigreeOrder, space: SearchSpace) {
    this.#pedigree = pedigree;
    this.#order = order;
    this.#space = space;
    this.#candidates = new Candidates(pedigree);
  }

  /** Animals found are chained by clutch: `ofClutch` holds the last of them, counted from 1, `next` the one before. */
  add(individual: number): void {
    const clutch = this.#pedigree.clutchOf[individual];
    if (clutch === undefined) throw new RangeError(`There is no individual ${individual}.`);
    const { ofIndividual, next, ofClutch, waiting } = this.#space;
    if (ofIndividual[individual] !== 0) return;
    ofIndividual[individual] = 1; // found; its number comes when all are
    this.#animals++;
    if (clutch < 0) {
      this.#founders.push(individual);
      return;
    }
    const before = ofClutch[clutch] as number;
    next[individual] = before - 1;
    ofClutch[clutch] = individual + 1;
    if (before === 0) waiting.add(this.#order.positionOf[clutch] as number);
  }

  run(): void {
    const candidates = this.#candidates;
    const { waiting } = this.#space;
    while (waiting.size > 0) {
      const clutch = this.#order.clutches[waiting.takeGreatest()] as number;
      this.#clutches.push(clutch);
      candidates.gather(clutch);
      this.#links += candidates.count;
      for (let place = 0; place < candidates.count; place++) this.add(candidates.individual[place] as number);
    }
  }

  /** Numbers what was found and cleans the space up. */
  number(individuals: Int32Array): Ancestry {
    const { ofIndividual, next, ofClutch } = this.#space;
    const clutches = Int32Array.from(this.#clutches).reverse();
    const animals = new Int32Array(this.#animals);
    const youngStart = new Int32Array(clutches.length + 1);
    let filled = 0;
    for (const founder of this.#founders) filled = this.#give(animals, founder, filled);
    for (let local = 0; local < clutches.length; local++) {
      youngStart[local] = filled;
      const clutch = clutches[local] as number;
      let young = (ofClutch[clutch] as number) - 1;
      for (; young >= 0; young = next[young] as number) filled = this.#give(animals, young, filled);
      ofClutch[clutch] = 0;
    }
    youngStart[clutches.length] = filled;
    const links = this.#linkParents(clutches);
    const asked = individuals.map((individual) => (ofIndividual[individual] as number) - 1);
    for (const animal of animals) ofIndividual[animal] = 0;
    return new FoundAncestry(this.#pedigree.clutchOf.length, {
      animals,
      asked,
      founders: this.#founders.length,
      clutches,
      youngStart,
      ...links,
    });
  }

  #give(animals: Int32Array, individual: number, local: number): number {
    animals[local] = individual;
    this.#space.ofIndividual[individual] = local + 1;
    return local + 1;
  }

  #linkParents(clutches: Int32Array): Pick<Ancestry, 'parentStart' | 'parents' | 'weights'> {
    const parentStart = new Int32Array(clutches.length + 1);
    const parents = new Int32Array(this.#links);
    const weights = new Float64Array(this.#links);
    const candidates = this.#candidates;
    let filled = 0;
    for (let local = 0; local < clutches.length; local++) {
      candidates.gather(clutches[local] as number);
      for (let place = 0; place < candidates.count; place++, filled++) {
        parents[filled] = (this.#space.ofIndividual[candidates.individual[place] as number] as number) - 1;
        weights[filled] = candidates.weight[place] as number;
      }
      parentStart[local + 1] = filled;
    }
    return { parentStart, parents, weights };
  }
}

/** A register so many times as large as the ancestry is not worth an array. */
const SPARSE = 64;

class FoundAncestry implements Ancestry {
  readonly animals: Int32Array;
  readonly asked: Int32Array;
  readonly founders: number;
  readonly clutches: Int32Array;
  readonly youngStart: Int32Array;
  readonly parentStart: Int32Array;
  readonly parents: Int32Array;
  readonly weights: Float64Array;
  readonly #individuals: number;
  /** Local numbers by individual, made when first wanted: an array where the ancestry is a good part of the register. */
  #found: Map<number, number> | Int32Array | undefined;

  constructor(individuals: number, found: Omit<Ancestry, 'find'>) {
    this.#individuals = individuals;
    ({
      animals: this.animals,
      asked: this.asked,
      founders: this.founders,
      clutches: this.clutches,
      youngStart: this.youngStart,
      parentStart: this.parentStart,
      parents: this.parents,
      weights: this.weights,
    } = found);
  }

  find(individual: number): number {
    const found = (this.#found ??= this.#number());
    return (found instanceof Map ? found.get(individual) : found[individual]) ?? -1;
  }

  #number(): Map<number, number> | Int32Array {
    if (this.#individuals > SPARSE * this.animals.length)
      return new Map(Array.from(this.animals, (animal, local) => [animal, local]));
    const numbers = new Int32Array(this.#individuals).fill(-1);
    this.animals.forEach((animal, local) => (numbers[animal] = local));
    return numbers;
  }
}
