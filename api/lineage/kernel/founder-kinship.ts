import type { Ancestry } from './ancestry.ts';
import type { Pedigree } from './pedigree.ts';
import { founderInbreedingOf, sourcesWithKinship } from './sources.ts';

/** The diagonal end of the passes over an ancestry: kinship among its founders, with sources as nodes. */
export class FounderKinship {
  readonly #lanes: number;
  readonly #own: Float64Array;
  /** Founder to a dense number of its source if that is a node, −1 otherwise. */
  readonly #node: Int32Array;
  /** Kinship of two founders of each node. */
  readonly #base: Float64Array;
  /** Kinships recorded between two nodes. */
  readonly #between: { readonly a: number; readonly b: number; readonly kinship: number }[] = [];
  /** Nodes × lanes: coefficients summed by source. */
  readonly #pooled: Float64Array;
  /** Nodes × lanes: those times the kinships within and between sources. */
  readonly #kin: Float64Array;

  /** @param lanes columns side by side */
  constructor(pedigree: Pedigree, { animals, founders }: Ancestry, lanes: number) {
    const { sourceOf, baseKinship, sourceKinships = [] } = pedigree;
    const isNode = sourcesWithKinship(pedigree);
    const nodeOf = new Map<number, number>();
    this.#lanes = lanes;
    this.#own = new Float64Array(founders);
    this.#node = new Int32Array(founders).fill(-1);
    for (let founder = 0; founder < founders; founder++) {
      const individual = animals[founder] as number;
      const source = sourceOf[individual] as number;
      this.#own[founder] = 0.5 * (1 + founderInbreedingOf(pedigree, individual));
      if (source < 0 || isNode[source] === 0) continue;
      const node = nodeOf.get(source) ?? nodeOf.size;
      nodeOf.set(source, node);
      this.#node[founder] = node;
      this.#own[founder] = (this.#own[founder] as number) - (baseKinship[source] as number);
    }
    this.#base = Float64Array.from(nodeOf.keys(), (source) => baseKinship[source] as number);
    for (const { a, b, kinship } of sourceKinships) {
      const first = nodeOf.get(a);
      const second = nodeOf.get(b);
      if (first !== undefined && second !== undefined) this.#between.push({ a: first, b: second, kinship });
    }
    this.#pooled = new Float64Array(nodeOf.size * lanes);
    this.#kin = new Float64Array(nodeOf.size * lanes);
  }

  /** Turns coefficients of the founders, which come first in `values`, into their kinships. */
  apply(values: Float64Array): void {
    const own = this.#own;
    const lanes = this.#lanes;
    if (this.#base.length > 0) this.#pool(values);
    for (let founder = 0; founder < own.length; founder++) {
      const node = this.#node[founder] as number;
      for (let lane = 0; lane < lanes; lane++) {
        const at = founder * lanes + lane;
        const pooled = node < 0 ? 0 : (this.#kin[node * lanes + lane] as number);
        values[at] = (own[founder] as number) * (values[at] as number) + pooled;
      }
    }
  }

  #pool(values: Float64Array): void {
    const lanes = this.#lanes;
    const pooled = this.#pooled.fill(0);
    const kin = this.#kin;
    for (let founder = 0; founder < this.#node.length; founder++) {
      const node = this.#node[founder] as number;
      for (let lane = 0; node >= 0 && lane < lanes; lane++)
        pooled[node * lanes + lane] =
          (pooled[node * lanes + lane] as number) + (values[founder * lanes + lane] as number);
    }
    for (let at = 0; at < pooled.length; at++)
      kin[at] = (this.#base[Math.floor(at / lanes)] as number) * (pooled[at] as number);
    for (const { a, b, kinship } of this.#between)
      for (let lane = 0; lane < lanes; lane++) {
        const atA = a * lanes + lane;
        const atB = b * lanes + lane;
        kin[atA] = (kin[atA] as number) + kinship * (pooled[atB] as number);
        kin[atB] = (kin[atB] as number) + kinship * (pooled[atA] as number);
      }
  }
}
