import type { SeededRandom } from '../../lineage/kernel/seeded-random.ts';
import type { Matings } from './drawn-generations.ts';
import type { GeneCount, GeneFindings } from './gene-count.ts';
import { geneTable, passOn, type GeneTable } from './pass-on.ts';

/** How a generation is bred from the one before. */
export interface CourseOptions {
  readonly generations: number;
  readonly youngKept: number;
  readonly loci: number;
}

/** One way in which breeding may go on, replicate after replicate. */
export class BreedingCourse {
  readonly #breeders: Int32Array;
  readonly #matings: Matings;
  readonly #options: CourseOptions;
  /** Genes of the generation before and of the one that is bred. */
  #parents: GeneTable;
  #young: GeneTable;
  /** For each copy of the young's genes the parent that it comes from. */
  readonly #parentOf: Int32Array;
  readonly #bits: Uint32Array;

  /** @param breeders places in the genes that are there now, in the order in which `matings` numbers them */
  constructor(breeders: Int32Array, matings: Matings, options: CourseOptions) {
    this.#breeders = breeders;
    this.#matings = matings;
    this.#options = options;
    const animals = Math.max(breeders.length, this.animals);
    this.#parents = geneTable(animals, options.loci);
    this.#young = geneTable(animals, options.loci);
    this.#parentOf = new Int32Array(2 * this.animals);
    this.#bits = new Uint32Array(2 * this.animals);
  }

  /** How many generations are bred. */
  get generationCount(): number {
    return this.#options.generations;
  }

  /** How many animals each generation after the first has. */
  get animals(): number {
    return this.#matings.clutches * this.#options.youngKept;
  }

  /**
   * Breeds all generations once.
   *
   * @param present genes that are there now
   * @param tell is told what is found of each generation, 0 the breeders
   */
  run(
    present: GeneTable,
    random: SeededRandom,
    count: GeneCount,
    tell: (generation: number, found: GeneFindings) => void,
  ): void {
    this.#takeBreeders(present);
    tell(0, count.count(this.#parents, this.#breeders.length));
    for (let generation = 1; generation <= this.#options.generations; generation++) {
      this.#breed(generation, random);
      tell(generation, count.count(this.#young, this.animals));
      [this.#parents, this.#young] = [this.#young, this.#parents];
    }
  }

  #takeBreeders(present: GeneTable): void {
    const { genes, stride } = this.#parents;
    for (let locus = 0; locus < this.#options.loci; locus++)
      for (let place = 0; place < this.#breeders.length; place++) {
        const from = locus * present.stride + 2 * (this.#breeders[place] as number);
        const to = locus * stride + 2 * place;
        genes[to] = present.genes[from] as number;
        genes[to + 1] = present.genes[from + 1] as number;
      }
  }

  #breed(generation: number, random: SeededRandom): void {
    const { youngKept, loci } = this.#options;
    const { sires, dams } = this.#matings.parents(generation, random);
    const parentOf = this.#parentOf;
    for (let clutch = 0, copy = 0; clutch < sires.length; clutch++)
      for (let young = 0; young < youngKept; young++) {
        parentOf[copy++] = sires[clutch] as number; // a sire and a dam for each clutch
        parentOf[copy++] = dams[clutch] as number;
      }
    const range = { first: 0, end: parentOf.length, loci };
    passOn(this.#parents, this.#young, parentOf, this.#bits, range, random);
  }
}
