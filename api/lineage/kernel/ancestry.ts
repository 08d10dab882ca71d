import { Candidates } from './candidates.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';
import { PositionSet } from './position-set.ts';

/**
 * The part of a pedigree that a few animals descend from, numbered anew from 0: founders first, then the young of each
 * clutch together, parents first. Animals outside it have no part in what is asked about these few.
 */
export interface Ancestry {
  /** Local number to individual. */
  readonly animals: Int32Array;
  /** Individual to local number, −1 for those outside. */
  readonly localOf: Int32Array;
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

/** Collects some individuals and all their possible ancestors. Costs what the ancestors cost, and one array over all. */
export function collectAncestry(pedigree: Pedigree, order: PedigreeOrder, individuals: Iterable<number>): Ancestry {
  const search = new AncestorSearch(pedigree, order);
  for (const individual of individuals) search.add(individual);
  search.run();
  return search.number();
}

class AncestorSearch {
  readonly #pedigree: Pedigree;
  readonly #order: PedigreeOrder;
  readonly #candidates: Candidates;
  readonly #waiting: PositionSet;
  readonly #localOf: Int32Array;
  readonly #founders: number[] = [];
  readonly #clutches: number[] = []; // last first
  /** Per clutch the last of its animals found, and per animal the one found before it; −1 ends the chain. */
  readonly #lastFound: Int32Array;
  readonly #foundBefore: Int32Array;
  #links = 0;
  #animals = 0;

  constructor(pedigree: Pedigree, order: PedigreeOrder) {
    this.#pedigree = pedigree;
    this.#order = order;
    this.#candidates = new Candidates(pedigree);
    this.#waiting = new PositionSet(order.clutches.length);
    this.#localOf = new Int32Array(pedigree.clutchOf.length).fill(-1);
    this.#lastFound = new Int32Array(order.clutches.length).fill(-1);
    this.#foundBefore = new Int32Array(pedigree.clutchOf.length);
  }

  add(individual: number): void {
    const clutch = this.#pedigree.clutchOf[individual];
    if (clutch === undefined) throw new RangeError(`There is no individual ${individual}.`);
    if (this.#localOf[individual] !== -1) return;
    this.#localOf[individual] = 0; // found; its number comes when all are
    this.#animals++;
    if (clutch < 0) {
      this.#founders.push(individual);
      return;
    }
    const before = this.#lastFound[clutch] as number;
    this.#foundBefore[individual] = before;
    this.#lastFound[clutch] = individual;
    if (before < 0) this.#waiting.add(this.#order.positionOf[clutch] as number);
  }

  run(): void {
    const candidates = this.#candidates;
    while (this.#waiting.size > 0) {
      const clutch = this.#order.clutches[this.#waiting.takeGreatest()] as number;
      this.#clutches.push(clutch);
      candidates.gather(clutch);
      this.#links += candidates.count;
      for (let place = 0; place < candidates.count; place++) this.add(candidates.individual[place] as number);
    }
  }

  number(): Ancestry {
    const clutches = Int32Array.from(this.#clutches).reverse();
    const animals = new Int32Array(this.#animals);
    const youngStart = new Int32Array(clutches.length + 1);
    let next = 0;
    for (const founder of this.#founders) next = this.#give(animals, founder, next);
    for (let local = 0; local < clutches.length; local++) {
      youngStart[local] = next;
      let young = this.#lastFound[clutches[local] as number] as number;
      for (; young >= 0; young = this.#foundBefore[young] as number) next = this.#give(animals, young, next);
    }
    youngStart[clutches.length] = next;
    const links = this.#linkParents(clutches);
    return { animals, localOf: this.#localOf, founders: this.#founders.length, clutches, youngStart, ...links };
  }

  #give(animals: Int32Array, individual: number, local: number): number {
    animals[local] = individual;
    this.#localOf[individual] = local;
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
        parents[filled] = this.#localOf[candidates.individual[place] as number] as number;
        weights[filled] = candidates.weight[place] as number;
      }
      parentStart[local + 1] = filled;
    }
    return { parentStart, parents, weights };
  }
}
