import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';

/** Counts ancestors of sampled clutches, to tell what tracing a component would cost. */
export class AncestorCount {
  readonly #pedigree: Pedigree;
  readonly #order: PedigreeOrder;
  /** m: number of the count in which a clutch was seen last. */
  readonly #seen: Int32Array;
  #count = 0;

  constructor(pedigree: Pedigree, order: PedigreeOrder) {
    this.#pedigree = pedigree;
    this.#order = order;
    this.#seen = new Int32Array(order.clutches.length);
  }

  /**
   * Clutches among the ancestors of evenly spread clutches of a component, on average.
   *
   * @param limit beyond it counting is broken off, and the answer is some number above it
   */
  mean(component: number, samples: number, limit: number): number {
    const { clutches, componentStart } = this.#order;
    const start = componentStart[component] as number;
    const size = (componentStart[component + 1] as number) - start;
    let counted = 0;
    for (let sample = 0; sample < samples && counted <= samples * limit; sample++) {
      const position = start + Math.floor(((sample + 0.5) * size) / samples);
      counted += this.#ancestors(clutches[position] as number, samples * limit - counted);
    }
    return counted / samples;
  }

  /** Clutches among the ancestors of one, counted no further than one beyond the limit. */
  #ancestors(clutch: number, limit: number): number {
    const { clutchOf, pairStart, pairSire, pairDam } = this.#pedigree;
    const count = ++this.#count;
    const stack = [clutch];
    let found = 0;
    for (let at = stack.pop(); at !== undefined && found <= limit; at = stack.pop())
      for (let pair = pairStart[at] as number; pair < (pairStart[at + 1] as number); pair++)
        for (const parent of [pairSire[pair] as number, pairDam[pair] as number]) {
          const from = parent < 0 ? -1 : (clutchOf[parent] as number);
          if (from < 0 || this.#seen[from] === count) continue;
          this.#seen[from] = count;
          found++;
          stack.push(from);
        }
    return found;
  }
}
