import type { Pedigree } from './pedigree.ts';

/** The recorded candidate parents of one clutch at a time, each once, with its weight w = ½ Σ p over the pairs that name it. */
export class Candidates {
  /** The animals; only the first `count` entries count. Another array may stand here after `gather`. */
  individual = new Int32Array(16);
  /** Their weights, 0 to ½ each. */
  weight = new Float64Array(16);
  count = 0;

  readonly #pedigree: Pedigree;
  readonly #placeOf = new Map<number, number>();

  constructor(pedigree: Pedigree) {
    this.#pedigree = pedigree;
  }

  /** Gathers the candidates of a clutch; the figures of the clutch before are gone. */
  gather(clutch: number): void {
    const { pairStart, pairSire, pairDam, pairProbability } = this.#pedigree;
    const start = pairStart[clutch] as number;
    const end = pairStart[clutch + 1] as number;
    this.count = 0;
    if (2 * (end - start) > this.individual.length) {
      this.individual = new Int32Array(4 * (end - start));
      this.weight = new Float64Array(4 * (end - start));
    }
    if (end - start === 1) {
      this.#append(pairSire[start] as number, 0.5);
      this.#append(pairDam[start] as number, 0.5);
      return;
    }
    this.#placeOf.clear();
    for (let pair = start; pair < end; pair++) {
      const weight = 0.5 * (pairProbability[pair] as number);
      this.#merge(pairSire[pair] as number, weight);
      this.#merge(pairDam[pair] as number, weight);
    }
  }

  #append(individual: number, weight: number): void {
    if (individual < 0) return;
    this.individual[this.count] = individual;
    this.weight[this.count] = weight;
    this.count++;
  }

  #merge(individual: number, weight: number): void {
    const place = this.#placeOf.get(individual);
    if (place !== undefined) {
      this.weight[place] = (this.weight[place] as number) + weight;
      return;
    }
    if (individual >= 0) this.#placeOf.set(individual, this.count);
    this.#append(individual, weight);
  }
}
