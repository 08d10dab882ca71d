import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';

/**
 * Kinship by the definition in section 1 of the lineage maths, written for the eye and not for speed: expand whichever
 * animal stands in the later clutch over its candidate pairs. Clutches must be numbered parents first.
 */
export class SlowRecursion {
  readonly #pedigree: Pedigree;
  readonly #known = new Map<string, number>();

  constructor(pedigree: Pedigree) {
    this.#pedigree = pedigree;
  }

  pairsOf(clutch: number): { sire: number; dam: number; probability: number }[] {
    const { pairStart, pairSire, pairDam, pairProbability } = this.#pedigree;
    const pairs = [];
    for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
      pairs.push({ sire: pairSire[pair] ?? -1, dam: pairDam[pair] ?? -1, probability: pairProbability[pair] ?? 0 });
    return pairs;
  }

  /** Kinship of two animals, or of one with itself. An unknown parent (−1) is kin to nobody. */
  kinship(a: number, b: number): number {
    if (a < 0 || b < 0) return 0;
    const key = a < b ? `${a} ${b}` : `${b} ${a}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const value = this.#expand(a, b);
    this.#known.set(key, value);
    return value;
  }

  inbreeding(individual: number): number {
    const clutch = this.#pedigree.clutchOf[individual] ?? -1;
    const source = this.#pedigree.sourceOf[individual] ?? -1;
    if (clutch >= 0) return this.young(clutch);
    return source < 0 ? 0 : ((this.#pedigree.founderInbreeding ?? this.#pedigree.baseKinship)[source] ?? 0);
  }

  /** Inbreeding of the young of a clutch. */
  young(clutch: number): number {
    return this.pairsOf(clutch).reduce(
      (sum, { sire, dam, probability }) => sum + probability * this.kinship(sire, dam),
      0,
    );
  }

  /** Kinship of two different young of a clutch. */
  within(clutch: number): number {
    const self = (parent: number): number => (parent < 0 ? 0.5 : this.kinship(parent, parent));
    return this.pairsOf(clutch).reduce(
      (sum, { sire, dam, probability }) =>
        sum + probability * 0.25 * (self(sire) + self(dam) + 2 * this.kinship(sire, dam)),
      0,
    );
  }

  #expand(a: number, b: number): number {
    if (a === b) return 0.5 * (1 + this.inbreeding(a));
    const clutchOfA = this.#pedigree.clutchOf[a] ?? -1;
    const clutchOfB = this.#pedigree.clutchOf[b] ?? -1;
    if (clutchOfA < 0 && clutchOfB < 0) return this.#founders(a, b);
    if (clutchOfA === clutchOfB) return this.within(clutchOfA);
    const [later, clutch, other] = clutchOfA > clutchOfB ? [a, clutchOfA, b] : [b, clutchOfB, a];
    if (later < 0) throw new Error('unreachable');
    return this.pairsOf(clutch).reduce(
      (sum, { sire, dam, probability }) =>
        sum + probability * 0.5 * (this.kinship(sire, other) + this.kinship(dam, other)),
      0,
    );
  }

  #founders(a: number, b: number): number {
    const first = this.#pedigree.sourceOf[a] ?? -1;
    const second = this.#pedigree.sourceOf[b] ?? -1;
    if (first < 0 || second < 0) return 0;
    if (first === second) return this.#pedigree.baseKinship[first] ?? 0;
    const recorded = this.#pedigree.sourceKinships?.find(
      ({ a: x, b: y }) => (x === first && y === second) || (x === second && y === first),
    );
    return recorded?.kinship ?? 0;
  }
}
