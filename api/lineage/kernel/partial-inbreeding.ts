import type { Pair } from './genome-flow.ts';
import { KinshipTerms } from './kinship-terms.ts';
import type { Pedigree } from './pedigree.ts';
import { founderInbreedingOf, sourceKinship } from './sources.ts';

/** The parts of an inbreeding coefficient by where the doubled genes began; all parts together sum to F. */
export interface PartialInbreeding {
  /** Part owed to single founders: both copies of a gene began as one of the two that the founder had. */
  readonly founders: ReadonlyMap<number, number>;
  /** Part owed to the kinship between different founders of a source. */
  readonly sources: ReadonlyMap<number, number>;
  /** Part owed to the unknown parents of a clutch. */
  readonly unknownParents: ReadonlyMap<number, number>;
}

/**
 * Partial inbreeding (Lacy, Alaks & Walsh 1996): the probability that both copies of a gene of the young are copies of one gene of
 * each founder, 0 to 1, expected over uncertain parents. Copies that are the same because two founders of a source are kin
 * belong to that source; where two sources are kin, to each by half.
 *
 * F depends on the kinships of ancestors in a linear way, so it is taken apart backwards: the kinship of the parents is replaced
 * by kinships further up, clutch by clutch, until only founders are left. One sweep over the ancestors does it, however
 * many founders there are.
 *
 * @param clutches the clutches of all ancestors of the pairs, parents first; the young's own may stand there too
 * @param pairs the candidate pairs of the young, whose probabilities sum to 1
 */
export function partialInbreeding(pedigree: Pedigree, clutches: Int32Array, pairs: readonly Pair[]): PartialInbreeding {
  const sweep = new BackwardSweep(pedigree);
  sweep.begin(pairs);
  for (let place = clutches.length - 1; place >= 0; place--) sweep.replace(clutches[place] as number);
  return sweep.end();
}

/** F as a sum of kinships between ancestors, and of founders' shares, on its way up. */
class BackwardSweep {
  readonly #pedigree: Pedigree;
  readonly #terms: KinshipTerms;
  readonly #founders = new Map<number, number>();
  readonly #sources = new Map<number, number>();
  readonly #unknownParents = new Map<number, number>();
  /** By clutch: coefficient of the founders' shares in its young. */
  readonly #shares = new Map<number, number>();

  constructor(pedigree: Pedigree) {
    this.#pedigree = pedigree;
    this.#terms = new KinshipTerms(pedigree.clutchOf);
  }

  begin(pairs: readonly Pair[]): void {
    for (const { a, b, probability } of pairs) this.#addKinship(a, b, probability);
  }

  /**
   * Replaces the young of a clutch by its parents. With a founder's part of it all: φ(i,j) = Σ w_k φ(k,j); ½(share + F) of an
   * animal with itself; Σ p ¼(φ(s,s)+φ(d,d)+2φ(s,d)) of two clutch-mates; F = Σ p φ(s,d).
   */
  replace(clutch: number): void {
    const taken = this.#terms.take(clutch);
    const share = (this.#shares.get(clutch) ?? 0) + 0.5 * (taken?.self ?? 0);
    if (taken === null && share === 0) return;
    const { pairStart, pairSire, pairDam, pairProbability } = this.#pedigree;
    const weights = new Map<number, number>();
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
      const probability = pairProbability[pair] as number;
      const sire = pairSire[pair] as number;
      const dam = pairDam[pair] as number;
      for (const parent of [sire, dam]) {
        weights.set(parent, (weights.get(parent) ?? 0) + 0.5 * probability);
        if (taken) this.#addSelf(clutch, parent, 0.25 * probability * taken.within);
      }
      if (taken) this.#addKinship(sire, dam, probability * (0.5 * taken.within + 0.5 * taken.self));
    }
    for (const [parent, weight] of weights) this.#passShare(clutch, parent, weight * share);
    weights.delete(-1); // a frog nobody knows is kin to nobody
    if (taken) this.#terms.spread(taken, weights);
  }

  end(): PartialInbreeding {
    const { sourceOf } = this.#pedigree;
    this.#terms.forEach((founder, other, coefficient) => {
      if (founder === other) {
        const self = 0.5 * (1 + founderInbreedingOf(this.#pedigree, founder));
        add(this.#founders, founder, coefficient * self);
        return;
      }
      const source = sourceOf[founder] as number;
      const second = sourceOf[other] as number;
      if (source < 0 || second < 0) return;
      const part = 0.5 * coefficient * sourceKinship(this.#pedigree, source, second);
      if (part === 0) return;
      add(this.#sources, source, part);
      add(this.#sources, second, part);
    });
    return { founders: this.#founders, sources: this.#sources, unknownParents: this.#unknownParents };
  }

  #addKinship(a: number, b: number, coefficient: number): void {
    if (a >= 0 && b >= 0 && coefficient !== 0) this.#terms.add(a, b, coefficient);
  }

  #addSelf(clutch: number, parent: number, coefficient: number): void {
    if (coefficient === 0) return;
    if (parent >= 0) this.#terms.add(parent, parent, coefficient);
    else add(this.#unknownParents, clutch, 0.5 * coefficient);
  }

  #passShare(clutch: number, parent: number, share: number): void {
    if (share === 0) return;
    if (parent < 0) {
      add(this.#unknownParents, clutch, share);
      return;
    }
    const above = this.#pedigree.clutchOf[parent] as number;
    if (above < 0) add(this.#founders, parent, share);
    else add(this.#shares, above, share);
  }
}

function add(map: Map<number, number>, key: number, part: number): void {
  map.set(key, (map.get(key) ?? 0) + part);
}
