import { Candidates } from './candidates.ts';
import type { Breeding, ClutchFigures } from './figures.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';
import { PositionSet } from './position-set.ts';

/**
 * The ancestor trace: φ = T D Tᵀ restricted to the ancestors of one clutch (Henderson 1976; Quaas 1976; Meuwissen & Luo
 * 1992), over clutch nodes, so that full siblings are visited once.
 *
 * The value of an animal is u_i = u_c + m_i, c its clutch, var m = ½(1+F_c) − within_c; that of a clutch is
 * u_c = Σ w_k u_k + e_c over its recorded candidates, var e = the clutch's residual. Then φ(i,j) = cov(u_i, u_j).
 */
export class AncestorTrace {
  readonly #pedigree: Pedigree;
  readonly #order: PedigreeOrder;
  readonly #breeding: Breeding;
  readonly #figures: ClutchFigures;
  readonly #candidates: Candidates;
  readonly #waiting: PositionSet;
  /** n: coefficient of each animal in the sum being traced; 0 while untouched. */
  readonly #coefficient: Float64Array;
  /** m and n: the touched young of each clutch, as chains. */
  readonly #touched: Int32Array;
  readonly #nextTouched: Int32Array;
  readonly #founders: number[] = [];
  readonly #sourceCoefficient: Float64Array;
  /** m: var m of the young of each clutch. */
  readonly #mendelian: Float64Array;

  constructor(pedigree: Pedigree, order: PedigreeOrder, breeding: Breeding, figures: ClutchFigures) {
    this.#pedigree = pedigree;
    this.#order = order;
    this.#breeding = breeding;
    this.#figures = figures;
    this.#candidates = new Candidates(pedigree);
    this.#waiting = new PositionSet(order.clutches.length);
    this.#coefficient = new Float64Array(pedigree.clutchOf.length);
    this.#touched = new Int32Array(order.clutches.length).fill(-1);
    this.#nextTouched = new Int32Array(pedigree.clutchOf.length);
    this.#sourceCoefficient = new Float64Array(pedigree.baseKinship.length);
    this.#mendelian = new Float64Array(order.clutches.length);
  }

  /** Computes the figures of one component. */
  trace(component: number): void {
    const { clutches, componentStart } = this.#order;
    const { pairStart } = this.#pedigree;
    const end = componentStart[component + 1] as number;
    for (let position = componentStart[component] as number; position < end; position++) {
      const clutch = clutches[position] as number;
      const first = pairStart[clutch] as number;
      if ((pairStart[clutch + 1] as number) - first === 1) this.#certainFigures(clutch, first);
      else this.#uncertainFigures(clutch);
      const self = 0.5 * (1 + (this.#figures.clutchExpected[clutch] as number));
      this.#mendelian[clutch] = self - (this.#figures.clutchWithin[clutch] as number);
    }
  }

  /** How many clutches a trace of this one visits: the clutches among its ancestors. */
  countAncestors(clutch: number): number {
    this.#candidates.gather(clutch);
    const { individual, count } = this.#candidates;
    for (let place = 0; place < count; place++) this.#add(individual[place] as number, 1);
    let visited = 0;
    while (this.#waiting.size > 0) {
      const ancestor = this.#order.clutches[this.#waiting.takeGreatest()] as number;
      visited++;
      this.#takeTouched(ancestor);
      this.#addParents(ancestor, 1);
    }
    for (const founder of this.#founders) this.#coefficient[founder] = 0;
    this.#founders.length = 0;
    return visited;
  }

  #certainFigures(clutch: number, pair: number): void {
    const figures = this.#figures;
    const sire = this.#pedigree.pairSire[pair] as number;
    const dam = this.#pedigree.pairDam[pair] as number;
    const selves = this.#self(sire) + this.#self(dam);
    const kinship = this.#kinship(sire, dam, selves);
    figures.clutchExpected[clutch] = figures.clutchLeast[clutch] = figures.clutchGreatest[clutch] = kinship;
    figures.clutchWithin[clutch] = 0.25 * (selves + 2 * kinship);
    figures.clutchResidual[clutch] = (sire < 0 ? 0.125 : 0) + (dam < 0 ? 0.125 : 0);
  }

  #uncertainFigures(clutch: number): void {
    const { pairStart, pairSire, pairDam, pairProbability } = this.#pedigree;
    let expected = 0;
    let within = 0;
    let least = Infinity;
    let greatest = -Infinity;
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
      const sire = pairSire[pair] as number;
      const dam = pairDam[pair] as number;
      const probability = pairProbability[pair] as number;
      const selves = this.#self(sire) + this.#self(dam);
      const kinship = this.#kinship(sire, dam, selves);
      expected += probability * kinship;
      within += probability * 0.25 * (selves + 2 * kinship);
      least = Math.min(least, kinship);
      greatest = Math.max(greatest, kinship);
    }
    const figures = this.#figures;
    figures.clutchExpected[clutch] = expected;
    figures.clutchLeast[clutch] = least;
    figures.clutchGreatest[clutch] = greatest;
    figures.clutchWithin[clutch] = within;
    this.#candidates.gather(clutch);
    const { individual, weight, count } = this.#candidates;
    for (let place = 0; place < count; place++) this.#add(individual[place] as number, weight[place] as number);
    figures.clutchResidual[clutch] = within - this.#variance();
  }

  /** φ(s,d) from var ½(u_s+u_d) = ¼(φ(s,s)+φ(d,d)+2φ(s,d)); rounding below 0 is cut off. */
  #kinship(sire: number, dam: number, selves: number): number {
    if (sire < 0 || dam < 0) return 0;
    this.#add(sire, 0.5);
    this.#add(dam, 0.5);
    return Math.max(0, 2 * this.#variance() - 0.5 * selves);
  }

  #self(individual: number): number {
    if (individual < 0) return 0.5;
    const clutch = this.#pedigree.clutchOf[individual] as number;
    if (clutch < 0) return this.#breeding.founderSelf[individual] as number;
    return 0.5 * (1 + (this.#figures.clutchExpected[clutch] as number));
  }

  /** Adds to the coefficient of an animal and lets its clutch wait for its visit. */
  #add(individual: number, coefficient: number): void {
    // A coefficient that has run down to 0 (more than a thousand generations) would look untouched; it has no effect.
    if (individual < 0 || coefficient === 0) return;
    const before = this.#coefficient[individual] as number;
    this.#coefficient[individual] = before + coefficient;
    if (before !== 0) return;
    const clutch = this.#pedigree.clutchOf[individual] as number;
    if (clutch < 0) {
      this.#founders.push(individual);
      return;
    }
    const chain = this.#touched[clutch] as number;
    this.#nextTouched[individual] = chain;
    this.#touched[clutch] = individual;
    if (chain < 0) this.#waiting.add(this.#order.positionOf[clutch] as number);
  }

  #addParents(clutch: number, coefficient: number): void {
    const { pairStart, pairSire, pairDam, pairProbability } = this.#pedigree;
    const end = pairStart[clutch + 1] as number;
    for (let pair = pairStart[clutch] as number; pair < end; pair++) {
      const share = 0.5 * coefficient * (pairProbability[pair] as number);
      this.#add(pairSire[pair] as number, share);
      this.#add(pairDam[pair] as number, share);
    }
  }

  #sum = 0;

  /** Sum of the coefficients of the touched young of a clutch; the sum of their squares is left in `#sum`. */
  #takeTouched(clutch: number): number {
    let total = 0;
    let squares = 0;
    for (let young = this.#touched[clutch] as number; young >= 0; young = this.#nextTouched[young] as number) {
      const coefficient = this.#coefficient[young] as number;
      this.#coefficient[young] = 0;
      total += coefficient;
      squares += coefficient * coefficient;
    }
    this.#touched[clutch] = -1;
    this.#sum = squares;
    return total;
  }

  /** var Σ x_k u_k over the animals added since the last call. */
  #variance(): number {
    const waiting = this.#waiting;
    const { clutchResidual, clutchWithin } = this.#figures;
    let variance = 0;
    while (waiting.size > 0) {
      const clutch = this.#order.clutches[waiting.takeGreatest()] as number;
      const total = this.#takeTouched(clutch);
      variance += this.#sum * (this.#mendelian[clutch] as number);
      if (waiting.size === 0 && this.#founders.length === 0) {
        // All that is left passes through this one clutch, whose own variance is known.
        return variance + total * total * (clutchWithin[clutch] as number);
      }
      variance += total * total * (clutchResidual[clutch] as number);
      this.#addParents(clutch, total);
    }
    return variance + this.#foundersVariance();
  }

  #foundersVariance(): number {
    const { sourceOf, baseKinship, sourceKinships } = this.#pedigree;
    let variance = 0;
    for (const founder of this.#founders) {
      const coefficient = this.#coefficient[founder] as number;
      this.#coefficient[founder] = 0;
      const source = sourceOf[founder] as number;
      const base = source < 0 ? 0 : (baseKinship[source] as number);
      const before = source < 0 ? 0 : (this.#sourceCoefficient[source] as number);
      // A source's sum is squared step by step: (X+x)² − X² = x² + 2Xx.
      variance += coefficient * coefficient * (this.#breeding.founderSelf[founder] as number);
      variance += 2 * before * coefficient * base;
      if (source >= 0) this.#sourceCoefficient[source] = before + coefficient;
    }
    for (const { a, b, kinship } of sourceKinships ?? [])
      variance += 2 * kinship * (this.#sourceCoefficient[a] as number) * (this.#sourceCoefficient[b] as number);
    for (const founder of this.#founders) {
      const source = sourceOf[founder] as number;
      if (source >= 0) this.#sourceCoefficient[source] = 0;
    }
    this.#founders.length = 0;
    return variance;
  }
}
