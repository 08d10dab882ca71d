import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';

/** Two candidate parents by their dense numbers, −1 for a frog nobody knows, and the odds that they are the parents. */
export interface Pair {
  readonly a: number;
  readonly b: number;
  readonly probability: number;
}

/** Expected genome shares of one animal; they sum to 1. */
export interface Shares {
  /** Share through each animal at which the flow ended. */
  readonly individuals: ReadonlyMap<number, number>;
  /** Share of the unknown parents of each clutch. */
  readonly unknownParents: ReadonlyMap<number, number>;
}

/**
 * The ancestors of one animal, or of young not yet laid. Every question costs one pass over the ancestors' clutches, each
 * once, whatever the number of paths that lead through it.
 */
export class GenomeFlow {
  readonly #pedigree: Pedigree;
  readonly #start: number | readonly Pair[];
  /** The clutches among the ancestors, the animal's own included, parents first. */
  readonly clutches: Int32Array;
  /** Place of the clutch of each individual within `clutches` is looked up here; filled while a pass runs. */
  readonly #places: Int32Array;

  /**
   * @param places m entries of −1, shared working space; left as it was found
   * @param start an individual, or the candidate pairs of young not yet laid, both parents known
   */
  constructor(pedigree: Pedigree, order: PedigreeOrder, places: Int32Array, start: number | readonly Pair[]) {
    this.#pedigree = pedigree;
    this.#start = start;
    this.#places = places;
    this.clutches = this.#gather(order);
  }

  /** Every individual that the ancestry begins with: the animal itself, or the parents proposed. */
  get #first(): readonly number[] {
    return typeof this.#start === 'number' ? [this.#start] : this.#start.flatMap(({ a, b }) => [a, b]);
  }

  #gather(order: PedigreeOrder): Int32Array {
    const { clutchOf, pairStart, pairSire, pairDam } = this.#pedigree;
    const places = this.#places;
    const found: number[] = [];
    const visit = (individual: number): void => {
      const clutch = individual < 0 ? -1 : (clutchOf[individual] ?? -1);
      if (clutch < 0 || places[clutch] !== -1) return;
      places[clutch] = 0;
      found.push(clutch);
    };
    this.#first.forEach(visit);
    for (let next = 0; next < found.length; next++) {
      const clutch = found[next] ?? -1;
      for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++) {
        visit(pairSire[pair] ?? -1);
        visit(pairDam[pair] ?? -1);
      }
    }
    for (const clutch of found) places[clutch] = -1;
    const positions = Int32Array.from(found, (clutch) => order.positionOf[clutch] ?? 0).sort();
    return positions.map((position) => order.clutches[position] ?? 0);
  }

  /**
   * Expected genome shares: half from each parent, averaged over the candidates, upwards until an animal without a clutch
   * or one that `endsAt` says. The animal asked about itself never ends the flow unless it has no clutch.
   */
  shares(endsAt: (individual: number) => boolean = () => false): Shares {
    return this.#withPlaces(() => {
      const { clutchOf, pairStart, pairSire, pairDam, pairProbability } = this.#pedigree;
      const weights = new Float64Array(this.clutches.length);
      const individuals = new Map<number, number>();
      const unknownParents = new Map<number, number>();
      const give = (individual: number, share: number, mayEnd: boolean): void => {
        const clutch = clutchOf[individual] ?? -1;
        if (clutch < 0 || (mayEnd && endsAt(individual))) {
          individuals.set(individual, (individuals.get(individual) ?? 0) + share);
          return;
        }
        const place = this.#places[clutch] ?? 0;
        weights[place] = (weights[place] ?? 0) + share;
      };
      if (typeof this.#start === 'number') give(this.#start, 1, false);
      else
        for (const { a, b, probability } of this.#start)
          for (const parent of [a, b]) give(parent, probability / 2, true);
      for (let place = this.clutches.length - 1; place >= 0; place--) {
        const weight = weights[place] ?? 0;
        if (weight === 0) continue;
        const clutch = this.clutches[place] ?? 0;
        for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++) {
          const share = 0.5 * weight * (pairProbability[pair] ?? 0);
          for (const parent of [pairSire[pair] ?? -1, pairDam[pair] ?? -1])
            if (parent < 0) unknownParents.set(clutch, (unknownParents.get(clutch) ?? 0) + share);
            else give(parent, share, true);
        }
      }
      return { individuals, unknownParents };
    });
  }

  /**
   * The least share, over all ways in which the candidate parents of all ancestors may turn out, that comes from founders
   * that `counts`. Exact: a clutch adds most to no descendant by adding more, so each takes its own least pair.
   */
  leastShare(counts: (founder: number) => boolean): number {
    return this.#withPlaces(() => {
      const { clutchOf, pairStart, pairSire, pairDam } = this.#pedigree;
      const leasts = new Float64Array(this.clutches.length);
      const of = (individual: number): number => {
        if (individual < 0) return 0;
        const clutch = clutchOf[individual] ?? -1;
        if (clutch < 0) return counts(individual) ? 1 : 0;
        return leasts[this.#places[clutch] ?? 0] ?? 0;
      };
      for (let place = 0; place < this.clutches.length; place++) {
        const clutch = this.clutches[place] ?? 0;
        let least = 1;
        for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
          least = Math.min(least, 0.5 * (of(pairSire[pair] ?? -1) + of(pairDam[pair] ?? -1)));
        leasts[place] = least;
      }
      if (typeof this.#start === 'number') return of(this.#start);
      return Math.min(1, ...this.#start.map(({ a, b }) => 0.5 * (of(a) + of(b))));
    });
  }

  /** The clutches among the ancestors that have more than one candidate pair, the youngest first. */
  uncertainClutches(): number[] {
    const { pairStart } = this.#pedigree;
    return [...this.clutches].filter((clutch) => (pairStart[clutch + 1] ?? 0) - (pairStart[clutch] ?? 0) > 1).reverse();
  }

  /** Whether more than one pair is proposed for young not yet laid. */
  get isProposalUncertain(): boolean {
    return typeof this.#start !== 'number' && this.#start.length > 1;
  }

  /** Runs a pass with the place of each clutch known, and cleans up after it. */
  #withPlaces<T>(pass: () => T): T {
    this.clutches.forEach((clutch, place) => (this.#places[clutch] = place));
    try {
      return pass();
    } finally {
      for (const clutch of this.clutches) this.#places[clutch] = -1;
    }
  }
}
