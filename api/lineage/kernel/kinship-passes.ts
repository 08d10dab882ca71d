import type { Ancestry } from './ancestry.ts';
import { FounderKinship } from './founder-kinship.ts';
import type { Inbreeding } from './inbreeding.ts';
import type { Pedigree } from './pedigree.ts';

/** How many animals are carried through the passes side by side; eight doubles are one line of the processor's cache. */
export const LANES = 8;

/**
 * φ times up to eight columns at once, in two linear passes over an ancestry: φ x = T D Tᵀ x (Colleau 2002), with clutches
 * as nodes. Up: coefficients run from young to parents. Down: values run from parents to young.
 */
export class KinshipPasses {
  /** Animals × LANES: coefficients before `run`, kinships after it. */
  readonly values: Float64Array;
  readonly #ancestry: Ancestry;
  /** Clutches × LANES. */
  readonly #sums: Float64Array;
  readonly #mendelian: Float64Array;
  readonly #residual: Float64Array;
  readonly #founders: FounderKinship;

  constructor(pedigree: Pedigree, inbreeding: Inbreeding, ancestry: Ancestry) {
    this.#ancestry = ancestry;
    this.values = new Float64Array(ancestry.animals.length * LANES);
    this.#sums = new Float64Array(ancestry.clutches.length * LANES);
    this.#mendelian = Float64Array.from(ancestry.clutches, (clutch) => mendelianVariance(inbreeding, clutch));
    this.#residual = Float64Array.from(ancestry.clutches, (clutch) => inbreeding.clutchResidual[clutch] as number);
    this.#founders = new FounderKinship(pedigree, ancestry, LANES);
  }

  /**
   * Turns coefficients into kinships, for founders and the young of the first `clutches` clutches. Coefficients of animals
   * beyond them must be 0 and stay as they are.
   */
  run(clutches: number): void {
    this.#up(clutches);
    this.#founders.apply(this.values);
    this.#down(clutches);
  }

  /** Sets the values of founders and of the young of the first clutches to 0 again. */
  clear(clutches: number): void {
    this.values.fill(0, 0, (this.#ancestry.youngStart[clutches] as number) * LANES);
  }

  #up(clutches: number): void {
    const { youngStart, parentStart, parents, weights } = this.#ancestry;
    const values = this.values;
    const sums = this.#sums;
    for (let clutch = clutches - 1; clutch >= 0; clutch--) {
      const own = clutch * LANES;
      sums.fill(0, own, own + LANES);
      const youngEnd = (youngStart[clutch + 1] as number) * LANES;
      for (let young = (youngStart[clutch] as number) * LANES; young < youngEnd; young += LANES)
        for (let lane = 0; lane < LANES; lane++)
          sums[own + lane] = (sums[own + lane] as number) + (values[young + lane] as number);
      for (let link = parentStart[clutch] as number; link < (parentStart[clutch + 1] as number); link++) {
        const parent = (parents[link] as number) * LANES;
        const weight = weights[link] as number;
        for (let lane = 0; lane < LANES; lane++)
          values[parent + lane] = (values[parent + lane] as number) + weight * (sums[own + lane] as number);
      }
    }
  }

  #down(clutches: number): void {
    const { youngStart, parentStart, parents, weights } = this.#ancestry;
    const values = this.values;
    const sums = this.#sums;
    for (let clutch = 0; clutch < clutches; clutch++) {
      const own = clutch * LANES;
      const residual = this.#residual[clutch] as number;
      const mendelian = this.#mendelian[clutch] as number;
      for (let lane = 0; lane < LANES; lane++) sums[own + lane] = residual * (sums[own + lane] as number);
      for (let link = parentStart[clutch] as number; link < (parentStart[clutch + 1] as number); link++) {
        const parent = (parents[link] as number) * LANES;
        const weight = weights[link] as number;
        for (let lane = 0; lane < LANES; lane++)
          sums[own + lane] = (sums[own + lane] as number) + weight * (values[parent + lane] as number);
      }
      const youngEnd = (youngStart[clutch + 1] as number) * LANES;
      for (let young = (youngStart[clutch] as number) * LANES; young < youngEnd; young += LANES)
        for (let lane = 0; lane < LANES; lane++)
          values[young + lane] = (sums[own + lane] as number) + mendelian * (values[young + lane] as number);
    }
  }
}

/** What an animal of a clutch has of its own: ½(1+F) less the kinship of clutch-mates. */
export function mendelianVariance({ clutchExpected, clutchWithin }: Inbreeding, clutch: number): number {
  return 0.5 * (1 + (clutchExpected[clutch] as number)) - (clutchWithin[clutch] as number);
}
