import { Candidates } from './candidates.ts';
import type { ClutchFigures } from './figures.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';
import type { SearchSpace } from './search-space.ts';
import { founderInbreedingOf, sourcesWithKinship } from './sources.ts';

/**
 * The ancestor trace of `AncestorTrace` for a few clutches: it numbers nothing beforehand and so costs the ancestors of
 * these clutches only. A visit costs some three times as much as there.
 */
export class ClutchTrace {
  readonly #pedigree: Pedigree;
  readonly #order: PedigreeOrder;
  readonly #figures: ClutchFigures;
  readonly #space: SearchSpace;
  readonly #candidates: Candidates;
  readonly #isNode: Uint8Array;
  /** Founders in the sum under way. */
  readonly #founders: number[] = [];
  /** Coefficients of sources that are nodes, and which of them are in the sum. */
  readonly #sourceCoefficient: Float64Array;
  readonly #sources: number[] = [];

  /** @param space all zero; left so after every call */
  constructor(pedigree: Pedigree, order: PedigreeOrder, figures: ClutchFigures, space: SearchSpace) {
    this.#pedigree = pedigree;
    this.#order = order;
    this.#figures = figures;
    this.#space = space;
    this.#candidates = new Candidates(pedigree);
    this.#isNode = sourcesWithKinship(pedigree);
    this.#sourceCoefficient = new Float64Array(pedigree.baseKinship.length);
  }

  /** Computes all figures of a clutch from those of the clutches among its ancestors. */
  trace(clutch: number): void {
    const { pairStart, pairSire, pairDam, pairProbability } = this.#pedigree;
    const start = pairStart[clutch] as number;
    const end = pairStart[clutch + 1] as number;
    let expected = 0;
    let within = 0;
    let least = Infinity;
    let greatest = -Infinity;
    for (let pair = start; pair < end; pair++) {
      const sire = pairSire[pair] as number;
      const dam = pairDam[pair] as number;
      const probability = pairProbability[pair] as number;
      const selves = this.#self(sire) + this.#self(dam);
      const kinship = sire < 0 || dam < 0 ? 0 : this.#kinship(sire, dam, selves);
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
    figures.clutchResidual[clutch] = this.#residual(clutch, within);
  }

  #residual(clutch: number, within: number): number {
    const { pairStart, pairSire, pairDam } = this.#pedigree;
    const pair = pairStart[clutch] as number;
    if ((pairStart[clutch + 1] as number) - pair === 1)
      return ((pairSire[pair] as number) < 0 ? 0.125 : 0) + ((pairDam[pair] as number) < 0 ? 0.125 : 0);
    this.#candidates.gather(clutch);
    const { individual, weight, count } = this.#candidates;
    for (let place = 0; place < count; place++) this.#add(individual[place] as number, weight[place] as number);
    return within - this.#takeVariance();
  }

  /** φ(s,d) from var ½(u_s+u_d) = ¼(φ(s,s)+φ(d,d)+2φ(s,d)); rounding below 0 is cut off. */
  #kinship(sire: number, dam: number, selves: number): number {
    this.#add(sire, 0.5);
    this.#add(dam, 0.5);
    return Math.max(0, 2 * this.#takeVariance() - 0.5 * selves);
  }

  /** Kinship of an animal with itself; ½ for a parent nobody knows. */
  #self(individual: number): number {
    if (individual < 0) return 0.5;
    const clutch = this.#pedigree.clutchOf[individual] as number;
    const inbreeding =
      clutch < 0 ? founderInbreedingOf(this.#pedigree, individual) : (this.#figures.clutchExpected[clutch] as number);
    return 0.5 * (1 + inbreeding);
  }

  /** Adds to the coefficient of an animal, which waits with its clutch-mates for the visit of their clutch. */
  #add(individual: number, share: number): void {
    if (individual < 0) return;
    const { ofIndividual: isMet, next, ofClutch: lastMet, coefficient, waiting } = this.#space;
    coefficient[individual] = (coefficient[individual] as number) + share;
    if (isMet[individual] === 1) return;
    isMet[individual] = 1;
    const clutch = this.#pedigree.clutchOf[individual] as number;
    if (clutch < 0) {
      this.#founders.push(individual);
      return;
    }
    const before = lastMet[clutch] as number; // counted from 1: 0 says that none was met
    next[individual] = before - 1;
    lastMet[clutch] = individual + 1;
    if (before === 0) waiting.add(this.#order.positionOf[clutch] as number);
  }

  /** The variance of Σ x_k u_k over the animals added since the last call, which leaves an empty sum. */
  #takeVariance(): number {
    const { waiting } = this.#space;
    let variance = 0;
    while (waiting.size > 0) variance += this.#visit(this.#order.clutches[waiting.takeGreatest()] as number);
    for (const founder of this.#founders) variance += this.#takeFounder(founder);
    this.#founders.length = 0;
    return variance + this.#takeSources();
  }

  /** The part of a clutch and its young; the coefficient of the clutch goes on to its candidates. */
  #visit(clutch: number): number {
    const { pairStart, pairSire, pairDam, pairProbability } = this.#pedigree;
    const { ofIndividual: isMet, next, ofClutch: lastMet, coefficient } = this.#space;
    const { clutchExpected, clutchWithin, clutchResidual } = this.#figures;
    let sum = 0;
    let squares = 0;
    for (let young = (lastMet[clutch] as number) - 1; young >= 0; young = next[young] as number) {
      const own = coefficient[young] as number;
      sum += own;
      squares += own * own;
      coefficient[young] = 0;
      isMet[young] = 0;
    }
    lastMet[clutch] = 0;
    const end = pairStart[clutch + 1] as number;
    for (let pair = pairStart[clutch] as number; pair < end; pair++) {
      const share = 0.5 * (pairProbability[pair] as number) * sum;
      this.#add(pairSire[pair] as number, share);
      this.#add(pairDam[pair] as number, share);
    }
    const mendelian = 0.5 * (1 + (clutchExpected[clutch] as number)) - (clutchWithin[clutch] as number);
    return mendelian * squares + (clutchResidual[clutch] as number) * sum * sum;
  }

  #takeFounder(founder: number): number {
    const { ofIndividual: isMet, coefficient } = this.#space;
    const own = coefficient[founder] as number;
    coefficient[founder] = 0;
    isMet[founder] = 0;
    const self = 0.5 * (1 + founderInbreedingOf(this.#pedigree, founder));
    const source = this.#pedigree.sourceOf[founder] as number;
    if (source < 0 || this.#isNode[source] === 0) return self * own * own;
    if (this.#sourceCoefficient[source] === 0) this.#sources.push(source);
    this.#sourceCoefficient[source] = (this.#sourceCoefficient[source] as number) + own;
    return (self - (this.#pedigree.baseKinship[source] as number)) * own * own;
  }

  #takeSources(): number {
    if (this.#sources.length === 0) return 0;
    const { baseKinship, sourceKinships = [] } = this.#pedigree;
    const coefficients = this.#sourceCoefficient;
    let variance = 0;
    for (const { a, b, kinship } of sourceKinships)
      variance += 2 * kinship * (coefficients[a] as number) * (coefficients[b] as number);
    for (const source of this.#sources) {
      const pooled = coefficients[source] as number;
      variance += (baseKinship[source] as number) * pooled * pooled;
      coefficients[source] = 0;
    }
    this.#sources.length = 0;
    return variance;
  }
}
