import { flagCodes } from '../../../shared/vocabulary.ts';
import type { Ancestry } from '../kernel/ancestry.ts';
import type { AuditInput } from './audit-input.ts';
import { bitOf, isOfUnknownOrigin, verdictOf } from './founder-verdicts.ts';

const GAP = bitOf('origin-gap');
const OUTSIDE = bitOf('outside-line');
const UNCERTAIN = bitOf('parents-uncertain');
const MIXED = bitOf('mixed-labels');
const BEYOND = bitOf('label-beyond-evidence');
const CHANGED = bitOf('label-changed');

/** Beside the bits of flags: blood of founders that carry another label than that of the line, be it the only one. */
export const OTHER_LABEL = 1 << flagCodes.length;

/** Shares are sums of many halves: what misses 1 by less than this is whole. */
export const ROUNDING = 1e-9;

/** What holds of an animal under the label of the line. */
export interface Finding {
  /** Its flags, as `bitOf` has them, and `OTHER_LABEL`. */
  readonly bits: number;
  /** Expected and least share of founders whose papers name the label; 0 to 1. */
  readonly traced: number;
  readonly least: number;
  /** Expected share that came in through animals of other lines; 0 to 1. */
  readonly outside: number;
}

/**
 * What all young of each clutch of an ancestry have in common under the label of one line: their flags, traced shares and blood of other
 * lines. One pass over the candidate pairs, parents first, whatever the number of young.
 */
export class ClutchFindings {
  readonly #input: AuditInput;
  /** Local number of each clutch of the register, −1 outside the ancestry. */
  readonly localOf: Int32Array;
  readonly #words: number;
  /** Clutches: what its young carry down; the flags of a label are added by `of`. */
  readonly #carried: Uint16Array;
  readonly #labels: Uint32Array;
  /** Clutches: 1 where all parents known carry one label that is not that of the line. */
  readonly #bornUnderOther: Uint8Array;
  readonly #traced: Float64Array;
  readonly #least: Float64Array;
  readonly #outside: Float64Array;

  constructor(input: AuditInput, ancestry: Ancestry) {
    const clutches = ancestry.clutches.length;
    this.#input = input;
    this.localOf = new Int32Array(input.pedigree.pairStart.length - 1).fill(-1);
    ancestry.clutches.forEach((clutch, local) => (this.localOf[clutch] = local));
    this.#words = Math.max(1, Math.ceil(input.verdicts.labelCount / 32));
    this.#carried = new Uint16Array(clutches);
    this.#labels = new Uint32Array(clutches * this.#words);
    this.#bornUnderOther = new Uint8Array(clutches);
    this.#traced = new Float64Array(clutches);
    this.#least = new Float64Array(clutches);
    this.#outside = new Float64Array(clutches);
    ancestry.clutches.forEach((clutch, local) => this.#write(clutch, local));
  }

  /** Whether an animal is of another line; one of no line is not. */
  isOutside(individual: number): boolean {
    const line = this.#input.lineOf[individual] ?? -1;
    return line >= 0 && line !== this.#input.line;
  }

  #write(clutch: number, local: number): void {
    const { pairStart, pairSire, pairDam, pairProbability } = this.#input.pedigree;
    const start = pairStart[clutch] as number;
    const end = pairStart[clutch + 1] as number;
    let bits = end - start > 1 ? UNCERTAIN : 0;
    let traced = 0;
    let outside = 0;
    let least = 1;
    let bornUnder = NO_PARENT;
    for (let pair = start; pair < end; pair++) {
      const half = 0.5 * (pairProbability[pair] as number);
      let leastOfPair = 0;
      for (let side = 0; side < 2; side++) {
        const parent = (side === 0 ? pairSire[pair] : pairDam[pair]) as number;
        bits |= this.#carriedBy(parent);
        traced += half * this.#shareOf(this.#traced, parent);
        leastOfPair += 0.5 * this.#shareOf(this.#least, parent);
        outside += half * this.#outsideOf(parent);
        this.#addLabels(parent, local);
        if (parent >= 0)
          bornUnder = bornUnder === NO_PARENT ? this.#labelOfLine(parent) : this.#common(bornUnder, parent);
      }
      least = Math.min(least, leastOfPair);
    }
    this.#carried[local] = bits;
    this.#bornUnderOther[local] = bornUnder > 0 ? 1 : 0;
    this.#traced[local] = Math.min(1, traced);
    this.#outside[local] = Math.min(1, outside);
    this.#least[local] = Math.min(least, traced); // rounding must not lift the least above the expected
  }

  #common(label: number, parent: number): number {
    return this.#labelOfLine(parent) === label ? label : NO_LABEL;
  }

  /** Number of the label that its line gives an animal. */
  #labelOfLine(individual: number): number {
    return this.#input.verdicts.lineLabels[this.#input.lineOf[individual] ?? -1] ?? NO_LABEL;
  }

  #carriedBy(individual: number): number {
    if (individual < 0) return GAP;
    const local = this.#localOfAnimal(individual);
    const bits = local >= 0 ? (this.#carried[local] as number) : this.#ofFounder(individual);
    // how founders of another line came by their label is a matter of that line
    return this.isOutside(individual) ? OUTSIDE | (bits & ~CHANGED) : bits;
  }

  #ofFounder(individual: number): number {
    const { pedigree, verdicts } = this.#input;
    if (isOfUnknownOrigin(verdicts, pedigree, individual)) return GAP;
    // what is held against its source is held against a founder, whatever else is claimed of it
    const rows = [pedigree.sourceOf[individual] as number, verdicts.apart.get(individual) ?? -1];
    const bits = rows.reduce((all, row) => all | (row < 0 ? 0 : (verdicts.flags[row] as number)), 0);
    return this.isRelabelled(individual) ? bits | CHANGED : bits;
  }

  /** Whether a founder within the line came under another label, and no document of it or its source names that of the line. */
  isRelabelled(founder: number): boolean {
    const { pedigree, verdicts, lineOf, line } = this.#input;
    if (lineOf[founder] !== line || verdicts.renames[pedigree.sourceOf[founder] as number] !== 1) return false;
    return verdicts.documents[verdictOf(verdicts, pedigree, founder)] !== 1;
  }

  #shareOf(shares: Float64Array, individual: number): number {
    if (individual < 0) return 0;
    const local = this.#localOfAnimal(individual);
    if (local >= 0) return shares[local] as number;
    const row = this.#verdictOf(individual);
    return row < 0 ? 0 : (this.#input.verdicts.traces[row] as number);
  }

  #outsideOf(individual: number): number {
    if (individual < 0) return 0;
    if (this.isOutside(individual)) return 1;
    const local = this.#localOfAnimal(individual);
    return local < 0 ? 0 : (this.#outside[local] as number);
  }

  #addLabels(individual: number, to: number): void {
    if (individual < 0) return;
    const from = this.#localOfAnimal(individual);
    const labels = this.#labels;
    if (from < 0) {
      const label = this.#labelOf(individual);
      const word = to * this.#words + (label >> 5);
      if (label >= 0) labels[word] = (labels[word] as number) | (1 << (label & 31));
      return;
    }
    for (let word = 0; word < this.#words; word++)
      labels[to * this.#words + word] =
        (labels[to * this.#words + word] as number) | (labels[from * this.#words + word] as number);
  }

  #labelOf(founder: number): number {
    const row = this.#verdictOf(founder);
    return row < 0 ? -1 : (this.#input.verdicts.labels[row] as number);
  }

  #verdictOf(founder: number): number {
    return verdictOf(this.#input.verdicts, this.#input.pedigree, founder);
  }

  #localOfAnimal(individual: number): number {
    const clutch = this.#input.pedigree.clutchOf[individual] as number;
    return clutch < 0 ? -1 : (this.localOf[clutch] as number);
  }

  /** What holds of a member of the line: a founder, or young of a clutch of the ancestry. */
  of(member: number): Finding {
    const local = this.#localOfAnimal(member);
    if (local >= 0) {
      const finding = this.#ofClutch(local);
      const own = this.ownBits(member);
      return own === 0 ? finding : { ...finding, bits: finding.bits | own };
    }
    const traced = this.#shareOf(this.#traced, member);
    const label = this.#labelOf(member);
    const bits = this.#carriedBy(member) | (label > 0 ? OTHER_LABEL : 0) | this.#input.verdicts.ofLine;
    return { bits: bits | this.#beyond(traced), traced, least: traced, outside: 0 };
  }

  /**
   * Flags that a member that hatched in captivity carries by itself, whatever its lineage: what is claimed of it, and a label that is
   * not the one it hatched under. It hands none of them down. Founders have none: theirs are those of their descendants too.
   */
  ownBits(member: number): number {
    const { verdicts, labelKind } = this.#input;
    const local = this.#localOfAnimal(member);
    if (local < 0) return 0;
    const row = verdicts.apart.get(member) ?? -1;
    const bits = row < 0 ? 0 : (verdicts.flags[row] as number);
    const claimsOrigin = labelKind === 'locality' || labelKind === 'trade-name';
    const isChanged = claimsOrigin && this.#bornUnderOther[local] === 1 && verdicts.documents[row] !== 1;
    return isChanged ? bits | CHANGED : bits;
  }

  #ofClutch(local: number): Finding {
    const least = this.#least[local] as number;
    let labels = 0;
    for (let word = 0; word < this.#words; word++)
      labels += bitCount(this.#labels[local * this.#words + word] as number);
    const ofLine = (this.#labels[local * this.#words] as number) & 1;
    const mixed = (labels > 1 ? MIXED : 0) | (labels > ofLine ? OTHER_LABEL : 0);
    return {
      bits: (this.#carried[local] as number) | mixed | this.#input.verdicts.ofLine | this.#beyond(least),
      traced: this.#traced[local] as number,
      least,
      outside: this.#outside[local] as number,
    };
  }

  #beyond(least: number): number {
    return this.#input.labelKind === 'locality' && least < 1 - ROUNDING ? BEYOND : 0;
  }
}

/** Numbers that stand for no label: an animal's, and that of parents as long as none is known. */
const NO_LABEL = -1;
const NO_PARENT = -2;

function bitCount(word: number): number {
  let left = word;
  let count = 0;
  for (; left !== 0; count++) left &= left - 1;
  return count;
}
