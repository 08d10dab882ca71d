import type { GeneTable } from './pass-on.ts';

/** What is found of the genes of one generation, over all loci; 0 to 1 each. */
export interface GeneFindings {
  /** Chance that two genes drawn from the generation, the first put back, are no copies of one founder gene: 1 − Σp². */
  diversity: number;
  /** Part of the loci at which an animal's two genes are copies of one founder gene. */
  inbreeding: number;
  /** Part of the genes from each origin; those of origins that are not told apart are in the last entry. */
  readonly shares: Float64Array;
}

/** Counts the genes of one generation after the other. */
export class GeneCount {
  readonly found: GeneFindings;
  readonly #shareOf: Int32Array;
  readonly #loci: number;
  /** Copies of each gene at one locus; 0 between two counts. */
  readonly #copies: Int32Array;

  /**
   * @param shareOf for each gene the entry of `shares` that it counts in
   * @param shares how many entries there are
   */
  constructor(shareOf: Int32Array, shares: number, loci: number) {
    this.#shareOf = shareOf;
    this.#loci = loci;
    this.#copies = new Int32Array(shareOf.length);
    this.found = { diversity: 0, inbreeding: 0, shares: new Float64Array(shares) };
  }

  /** Counts the genes of the first so many animals. The findings are good until the next count. */
  count({ genes, stride }: GeneTable, animals: number): GeneFindings {
    const loci = this.#loci;
    const { found } = this;
    let same = 0;
    let squares = 0;
    found.shares.fill(0);
    for (let locus = 0; locus < loci; locus++) {
      const at = locus * stride;
      const end = at + 2 * animals;
      for (let copy = at; copy < end; copy += 2) if (genes[copy] === genes[copy + 1]) same++;
      squares += this.#countLocus(genes, at, end);
    }
    const copies = 2 * animals;
    found.inbreeding = same / (animals * loci);
    found.diversity = 1 - squares / (copies * copies * loci);
    for (let share = 0; share < found.shares.length; share++)
      found.shares[share] = (found.shares[share] as number) / (copies * loci);
    return found;
  }

  /** Σ of the squares of how often each gene is there. */
  #countLocus(genes: Int32Array, from: number, end: number): number {
    const copies = this.#copies;
    const shareOf = this.#shareOf;
    const { shares } = this.found;
    for (let at = from; at < end; at++) {
      const gene = genes[at] as number;
      copies[gene] = (copies[gene] as number) + 1;
    }
    let squares = 0;
    for (let at = from; at < end; at++) {
      const gene = genes[at] as number;
      const times = copies[gene] as number;
      if (times === 0) continue; // counted already
      copies[gene] = 0;
      squares += times * times;
      const share = shareOf[gene] as number;
      shares[share] = (shares[share] as number) + times;
    }
    return squares;
  }
}
