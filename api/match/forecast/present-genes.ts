/*
 * As in the kernel of the lineage, `as number` on an element of a typed array says: the index runs over the array's own length, or was
 * written by the code that numbered it. A check at run time in these loops would double their cost.
 */
import { chanceShared, requireDroppable } from '../../lineage/kernel/gene-drop.ts';
import type { Pedigree } from '../../lineage/kernel/pedigree.ts';
import type { SeededRandom } from '../../lineage/kernel/seeded-random.ts';
import { geneTable, passOn, type GeneTable } from './pass-on.ts';

/** Where genes begin: the founders of one source together, a founder of unknown origin, or a parent of a clutch that nobody knows. */
export type GeneOrigin =
  | { readonly kind: 'source'; readonly source: number }
  | { readonly kind: 'individual'; readonly individual: number }
  | { readonly kind: 'unknown parent'; readonly clutch: number };

/** A founder with two genes of its own, or the gene that its source shares. */
interface Founder {
  readonly origin: number;
  /** Number of the gene that its source shares; −1 where it shares none. */
  readonly sharedGene: number;
  readonly chance: number;
}

/**
 * The genes of some loci in all animals of a pedigree, dropped anew as often as wanted (gene dropping, MacCluer et al. 1986). Every gene of
 * a founder is one of its own, but for founders of a source with base kinship θ, each of whose genes is with probability √θ the one that
 * the source shares. A clutch draws one pair of parents for all its young and loci; a parent that nobody knows is a founder of that clutch.
 */
export class PresentGenes {
  /** Animals by their numbers in the pedigree, then the parents that nobody knows. */
  readonly table: GeneTable;
  /** Where genes begin, in the order in which they are met. */
  readonly origins: readonly GeneOrigin[];
  /** Place in `origins` of each gene. */
  readonly originOf: Int32Array;
  readonly #loci: number;
  readonly #founders: readonly Founder[];
  /** Places of the founders. */
  readonly #founderAt: Int32Array;
  /** The pairs of each clutch; parents by their places. */
  readonly #pairStart: Int32Array;
  readonly #pairSire: Int32Array;
  readonly #pairDam: Int32Array;
  readonly #upTo: Float64Array;
  /** Clutches + 1: where the young of each begin. */
  readonly #youngStart: Int32Array;
  /** For each copy of a gene the parent that it comes from, as it was last drawn. */
  readonly #parents: Int32Array;
  readonly #bits: Uint32Array;
  /** Clutches with several possible pairs. */
  readonly #uncertain: Int32Array;

  /**
   * @param pedigree founders first, then clutch by clutch, parents first
   * @param loci how many genes are followed beside each other, each on its own
   * @throws RangeError where sources are kin to each other
   */
  constructor(pedigree: Pedigree, loci: number) {
    requireDroppable(pedigree);
    const numbering = new FounderNumbering(pedigree);
    const animals = pedigree.clutchOf.length;
    this.#loci = loci;
    this.#youngStart = youngStarts(pedigree);
    this.#pairStart = pedigree.pairStart;
    ({ sires: this.#pairSire, dams: this.#pairDam } = numbering.parents);
    this.#upTo = oddsUpTo(pedigree);
    this.#founders = numbering.founders;
    this.#founderAt = Int32Array.from(numbering.places);
    this.origins = numbering.origins;
    this.originOf = Int32Array.from(numbering.originOf);
    this.table = geneTable(animals + numbering.unknown, loci);
    this.#parents = new Int32Array(2 * animals);
    this.#bits = new Uint32Array(2 * animals);
    this.#uncertain = this.#fixCertainParents();
    this.#giveOwnGenes();
  }

  /** Draws the founders' genes and parents of every clutch anew, and drops the genes. */
  draw(random: SeededRandom): void {
    this.#drawShared(random);
    for (const clutch of this.#uncertain) this.#setParents(clutch, this.#drawPair(clutch, random));
    const range = { first: 2 * (this.#youngStart[0] as number), end: this.#parents.length, loci: this.#loci };
    passOn(this.table, this.table, this.#parents, this.#bits, range, random);
  }

  #fixCertainParents(): Int32Array {
    const uncertain: number[] = [];
    for (let clutch = 0; clutch + 1 < this.#pairStart.length; clutch++) {
      const first = this.#pairStart[clutch] as number;
      if ((this.#pairStart[clutch + 1] as number) - first > 1) uncertain.push(clutch);
      else this.#setParents(clutch, first);
    }
    return Int32Array.from(uncertain);
  }

  #setParents(clutch: number, pair: number): void {
    const end = 2 * (this.#youngStart[clutch + 1] as number);
    for (let copy = 2 * (this.#youngStart[clutch] as number); copy < end; copy += 2) {
      this.#parents[copy] = this.#pairSire[pair] as number;
      this.#parents[copy + 1] = this.#pairDam[pair] as number;
    }
  }

  #giveOwnGenes(): void {
    const { genes, stride } = this.table;
    this.#founderAt.forEach((at, founder) => {
      for (let locus = 0; locus < this.#loci; locus++)
        for (let copy = 0; copy < 2; copy++) genes[locus * stride + 2 * at + copy] = 2 * founder + copy;
    });
  }

  /** Only founders of sources with a base kinship change from one drop to the next. */
  #drawShared(random: SeededRandom): void {
    const { genes, stride } = this.table;
    this.#founders.forEach(({ chance, sharedGene }, founder) => {
      if (chance === 0) return;
      const at = 2 * (this.#founderAt[founder] as number);
      for (let locus = 0; locus < this.#loci; locus++)
        for (let copy = 0; copy < 2; copy++)
          genes[locus * stride + at + copy] = random.next() < chance ? sharedGene : 2 * founder + copy;
    });
  }

  #drawPair(clutch: number, random: SeededRandom): number {
    let pair = this.#pairStart[clutch] as number;
    const last = (this.#pairStart[clutch + 1] as number) - 1;
    const drawn = random.bits();
    while (pair < last && drawn >= (this.#upTo[pair] as number)) pair++;
    return pair;
  }
}

/** For each pair: the odds of it and those before it in its clutch, in steps of 2⁻³². */
function oddsUpTo({ pairStart, pairProbability }: Pedigree): Float64Array {
  const upTo = new Float64Array(pairProbability.length);
  for (let clutch = 0; clutch + 1 < pairStart.length; clutch++) {
    let sum = 0;
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
      sum += pairProbability[pair] as number;
      upTo[pair] = Math.round(sum * 2 ** 32);
    }
  }
  return upTo;
}

function youngStarts({ clutchOf, pairStart }: Pedigree): Int32Array {
  const starts = new Int32Array(pairStart.length);
  let animal = 0;
  for (let clutch = 0; clutch < pairStart.length; clutch++) {
    while (animal < clutchOf.length && (clutchOf[animal] as number) < clutch) animal++;
    starts[clutch] = animal;
  }
  return starts;
}

/** Numbers founders, their genes and origins. Genes 2f and 2f + 1 are founder f's own, those that sources share come behind all of them. */
class FounderNumbering {
  readonly founders: Founder[] = [];
  readonly places: number[] = [];
  readonly origins: GeneOrigin[] = [];
  readonly originOf: number[] = [];
  readonly parents: { readonly sires: Int32Array; readonly dams: Int32Array };
  /** How many parents nobody knows. */
  unknown = 0;
  readonly #originOfSource = new Map<number, number>();

  constructor(pedigree: Pedigree) {
    const animals = pedigree.clutchOf.length;
    for (let animal = 0; animal < animals && (pedigree.clutchOf[animal] as number) < 0; animal++)
      this.#addFounder(pedigree, animal);
    this.parents = this.#findParents(pedigree);
    for (const { origin } of this.founders) this.originOf.push(origin, origin);
    const shared = new Map<number, number>();
    this.founders.forEach(({ origin, chance }, founder) => {
      if (chance === 0) return;
      const gene = shared.get(origin) ?? this.originOf.push(origin) - 1;
      shared.set(origin, gene);
      this.founders[founder] = { origin, chance, sharedGene: gene };
    });
  }

  #addFounder(pedigree: Pedigree, animal: number): void {
    const source = pedigree.sourceOf[animal] as number;
    const known = this.#originOfSource.get(source);
    const origin =
      known ??
      this.origins.push(source < 0 ? { kind: 'individual', individual: animal } : { kind: 'source', source }) - 1;
    if (source >= 0) this.#originOfSource.set(source, origin);
    this.founders.push({ origin, sharedGene: -1, chance: chanceShared(pedigree, animal) });
    this.places.push(animal);
  }

  #findParents({ clutchOf, pairStart, pairSire, pairDam }: Pedigree): { sires: Int32Array; dams: Int32Array } {
    const sires = pairSire.slice();
    const dams = pairDam.slice();
    for (let clutch = 0; clutch + 1 < pairStart.length; clutch++)
      for (const side of [sires, dams]) {
        const from = pairStart[clutch] as number;
        const to = pairStart[clutch + 1] as number;
        if (!side.subarray(from, to).includes(-1)) continue;
        const place = clutchOf.length + this.unknown++;
        for (let pair = from; pair < to; pair++) if (side[pair] === -1) side[pair] = place;
        const last = this.origins.at(-1);
        const isSame = last?.kind === 'unknown parent' && last.clutch === clutch;
        const origin = isSame ? this.origins.length - 1 : this.origins.push({ kind: 'unknown parent', clutch }) - 1;
        this.founders.push({ origin, sharedGene: -1, chance: 0 });
        this.places.push(place);
      }
    return { sires, dams };
  }
}
