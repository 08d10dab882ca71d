import type { Ancestry } from './ancestry.ts';
import type { Pedigree } from './pedigree.ts';
import { SeededRandom } from './seeded-random.ts';

/** One way in which the genes of one locus may have come down. Entries 2i and 2i+1 belong to the local animal i. */
export interface Descent {
  /** Numbers that are the same for copies of one founder gene. */
  readonly genes: Int32Array;
  /** Beside each gene: 1 where it has met a copy of itself in an ancestor of the animal, the animal itself not counted. */
  readonly hasMet: Uint8Array;
}

/** How genes are dropped. */
export interface GeneDropOptions {
  /** Count every way, instead of sampling, while there are no more than so many; 2¹⁶ unless said otherwise. */
  readonly exactUpTo?: number;
  /** How many ways to sample beyond that; 10 000 unless said otherwise. */
  readonly samples?: number;
  /** What the sample begins with; the same seed gives the same sample. 1 unless said otherwise. */
  readonly seed?: number;
}

/** Means over all ways, or over a sample of them. */
export interface GeneDropped {
  /** Whether every way was counted: the means are exact then. */
  readonly isExact: boolean;
  /** How many ways were looked at. */
  readonly ways: number;
  readonly means: Float64Array;
  /** Standard error of each mean; 0 where they are exact. */
  readonly standardErrors: Float64Array;
}

/** Whether founders of a source may carry copies of one gene, as its base kinship says, or have two genes of their own each. */
export type FounderGenes = 'kin' | 'all different';

/**
 * Means of some quantities over the ways in which genes can come down an ancestry (gene dropping, MacCluer et al. 1986): by
 * counting all of them with their probabilities where they are few, else by sampling. Every clutch draws one pair of parents
 * for all its young; a parent that nobody knows has two genes of its own.
 *
 * @param founderGenes `kin`: a gene of a source with base kinship θ is with probability √θ the one that the source shares, so that two are
 * the same with probability θ
 * @param measure writes the quantities of one way into its second argument, each
 * @throws RangeError under `kin` where sources are kin or founders are not as inbred as their base kinship says
 */
export function dropGenes(
  pedigree: Pedigree,
  ancestry: Ancestry,
  founderGenes: FounderGenes,
  quantities: number,
  measure: (descent: Descent, into: Float64Array) => void,
  options: GeneDropOptions = {},
): GeneDropped {
  const { exactUpTo = 2 ** 16, samples = 10_000, seed = 1 } = options;
  const drop = new GeneDrop(pedigree, ancestry, founderGenes);
  const into = new Float64Array(quantities);
  const means = new Float64Array(quantities);
  const squares = new Float64Array(quantities);
  let ways = 0;
  const isExact = drop.ways <= exactUpTo;
  const take = (probability: number): void => {
    ways++;
    measure(drop, into);
    for (let place = 0; place < quantities; place++) {
      const value = into[place] as number;
      means[place] = (means[place] as number) + probability * value;
      squares[place] = (squares[place] as number) + probability * value * value;
    }
  };
  if (isExact) drop.enumerate(take);
  else {
    const random = new SeededRandom(seed);
    for (let sample = 0; sample < samples; sample++) {
      drop.draw(random);
      take(1 / samples);
    }
  }
  const standardErrors = squares.map((square, place) =>
    isExact || ways < 2 ? 0 : Math.sqrt(Math.max(0, square - (means[place] as number) ** 2) / (ways - 1)),
  );
  return { isExact, ways, means, standardErrors };
}

/** The genes of all animals of an ancestry, each a choice between two of a parent's. */
class GeneDrop implements Descent {
  readonly genes: Int32Array;
  readonly hasMet: Uint8Array;
  readonly #pedigree: Pedigree;
  readonly #ancestry: Ancestry;
  /** Local number to local clutch, −1 for founders. */
  readonly #clutchOf: Int32Array;
  /** Chance that a gene of a founder is the one that its source shares. */
  readonly #shared: Float64Array;
  /** The pair that each clutch has drawn. */
  readonly #pair: Int32Array;
  /** What must be added to the number of a clutch's pair to find its parents in `#parents`. */
  readonly #pairOffset: Int32Array;
  /** Both parents of each pair as local numbers, −1 for unknown. */
  readonly #parents: Int32Array;

  constructor(pedigree: Pedigree, ancestry: Ancestry, founderGenes: FounderGenes) {
    this.#pedigree = pedigree;
    this.#ancestry = ancestry;
    const { animals, founders, clutches, youngStart } = ancestry;
    this.genes = new Int32Array(2 * animals.length);
    this.hasMet = new Uint8Array(2 * animals.length);
    this.#pair = new Int32Array(clutches.length);
    this.#clutchOf = new Int32Array(animals.length).fill(-1);
    for (let clutch = 0; clutch < clutches.length; clutch++)
      this.#clutchOf.fill(clutch, youngStart[clutch], youngStart[clutch + 1]);
    this.#pairOffset = new Int32Array(clutches.length);
    this.#parents = this.#findParents();
    this.#shared = founderGenes === 'kin' ? chancesShared(pedigree, ancestry) : new Float64Array(founders);
  }

  #findParents(): Int32Array {
    const { pairStart, pairSire, pairDam } = this.#pedigree;
    const parents: number[] = [];
    this.#ancestry.clutches.forEach((clutch, local) => {
      this.#pairOffset[local] = parents.length / 2 - (pairStart[clutch] as number);
      for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++)
        parents.push(this.#ancestry.find(pairSire[pair] as number), this.#ancestry.find(pairDam[pair] as number));
    });
    return Int32Array.from(parents);
  }

  /** How many ways there are; Infinity where they are beyond counting. */
  get ways(): number {
    const { clutches, animals, founders } = this.#ancestry;
    const { pairStart } = this.#pedigree;
    let doublings = 2 * (animals.length - founders);
    for (const shared of this.#shared) if (shared > 0) doublings += 2;
    for (const clutch of clutches)
      doublings += Math.log2((pairStart[clutch + 1] as number) - (pairStart[clutch] as number));
    return 2 ** doublings;
  }

  /** Takes every way in turn, with its probability; they sum to 1. */
  enumerate(take: (probability: number) => void, local = 0, probability = 1): void {
    if (local === this.#clutchOf.length) {
      take(probability);
      return;
    }
    const clutch = this.#clutchOf[local] as number;
    if (clutch < 0) {
      this.#enumerateFounder(take, local, probability);
      return;
    }
    const isFirst = local === this.#ancestry.youngStart[clutch];
    const { pairStart, pairProbability } = this.#pedigree;
    const place = this.#ancestry.clutches[clutch] as number;
    const start = isFirst ? (pairStart[place] as number) : (this.#pair[clutch] as number);
    const end = isFirst ? (pairStart[place + 1] as number) : start + 1;
    for (let pair = start; pair < end; pair++) {
      this.#pair[clutch] = pair;
      const each = probability * (isFirst ? (pairProbability[pair] as number) : 1) * 0.25;
      for (let choice = 0; choice < 4; choice++) {
        this.#inherit(local, clutch, choice);
        this.enumerate(take, local + 1, each);
      }
    }
    this.#pair[clutch] = start; // for mates that are still on their way
  }

  /** Draws one way at random. */
  draw(random: SeededRandom): void {
    for (let local = 0; local < this.#clutchOf.length; local++) {
      const clutch = this.#clutchOf[local] as number;
      if (clutch < 0) {
        const shared = this.#shared[local] as number;
        this.#found(local, shared > 0 && random.next() < shared, shared > 0 && random.next() < shared);
        continue;
      }
      if (local === this.#ancestry.youngStart[clutch]) this.#pair[clutch] = this.#drawPair(clutch, random);
      this.#inherit(local, clutch, random.bits() >>> 30);
    }
  }

  #enumerateFounder(take: (probability: number) => void, local: number, probability: number): void {
    const shared = this.#shared[local] as number;
    for (let choice = 0; choice < (shared > 0 ? 4 : 1); choice++) {
      const [first, second] = [(choice & 1) === 1, choice > 1];
      this.#found(local, first, second);
      const odds = (first ? shared : 1 - shared) * (second ? shared : 1 - shared);
      this.enumerate(take, local + 1, probability * odds);
    }
  }

  #drawPair(clutch: number, random: SeededRandom): number {
    const { pairStart, pairProbability } = this.#pedigree;
    const place = this.#ancestry.clutches[clutch] as number;
    const last = (pairStart[place + 1] as number) - 1;
    let pair = pairStart[place] as number;
    if (pair === last) return pair;
    for (let left = random.next(); pair < last && left >= (pairProbability[pair] as number); pair++)
      left -= pairProbability[pair] as number;
    return pair;
  }

  /** A shared gene is numbered by its source, below 0. */
  #found(local: number, isFirstShared: boolean, isSecondShared: boolean): void {
    const source = this.#pedigree.sourceOf[this.#ancestry.animals[local] as number] as number;
    this.genes[2 * local] = isFirstShared ? -1 - source : 2 * local;
    this.genes[2 * local + 1] = isSecondShared ? -1 - source : 2 * local + 1;
  }

  /** @param choice its bits say which gene of either parent is passed on */
  #inherit(local: number, clutch: number, choice: number): void {
    const pair = 2 * ((this.#pair[clutch] as number) + (this.#pairOffset[clutch] as number));
    this.#inheritOne(2 * local, this.#parents[pair] as number, 4 * clutch, choice & 1);
    this.#inheritOne(2 * local + 1, this.#parents[pair + 1] as number, 4 * clutch + 2, choice >> 1);
  }

  #inheritOne(at: number, parent: number, unknown: number, which: number): void {
    if (parent < 0) {
      this.genes[at] = this.genes.length + unknown + which;
      this.hasMet[at] = 0;
      return;
    }
    const from = 2 * parent;
    const isDoubled = this.genes[from] === this.genes[from + 1];
    this.genes[at] = this.genes[from + which] as number;
    this.hasMet[at] = isDoubled ? 1 : (this.hasMet[from + which] as number);
  }
}

function chancesShared(pedigree: Pedigree, { animals, founders }: Ancestry): Float64Array {
  requireDroppable(pedigree);
  return Float64Array.from(animals.subarray(0, founders), (individual) => chanceShared(pedigree, individual));
}

/**
 * Checks that the genes of founders can be drawn one by one.
 *
 * @throws RangeError where sources are kin or founders are not as inbred as their base kinship says
 */
export function requireDroppable({ baseKinship, founderInbreeding, sourceKinships = [] }: Pedigree): void {
  const differs = founderInbreeding?.some((value, source) => value !== baseKinship[source]) ?? false;
  if (differs || sourceKinships.some(({ kinship }) => kinship > 0))
    throw new RangeError(
      'Genes can only be dropped from sources that are kin to no other and whose founders are as inbred as they are kin.',
    );
}

/** Chance that a gene of a founder is the one that its source shares: √θ, so that two genes are the same with probability θ. */
export function chanceShared({ baseKinship, sourceOf }: Pedigree, founder: number): number {
  const source = sourceOf[founder] as number;
  return source < 0 ? 0 : Math.sqrt(baseKinship[source] as number);
}
