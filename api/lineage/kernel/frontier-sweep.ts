import { Candidates } from './candidates.ts';
import type { Chosen } from './chosen.ts';
import type { Breeding, ClutchFigures } from './figures.ts';
import { KinshipRows } from './kinship-rows.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';
import { founderInbreedingOf, sourceKinship } from './sources.ts';

/**
 * The frontier sweep: visits the clutches of one component in order and keeps the kinships of those animals only that
 * will breed again. A clutch costs its pairs, and one row for each of its young that breeds.
 */
export class FrontierSweep {
  readonly #pedigree: Pedigree;
  readonly #order: PedigreeOrder;
  readonly #breeding: Breeding;
  readonly #figures: ClutchFigures;
  readonly #chosen: Chosen | null;
  readonly #candidates: Candidates;
  readonly #rows = new KinshipRows();
  readonly #slotOf: Int32Array;
  readonly #sourceSlot: Int32Array;
  /** How many breeding founders of each source have not entered yet. */
  readonly #foundersLeft: Int32Array;

  /** @param chosen animals whose kinships with each other are told on the way */
  constructor(
    pedigree: Pedigree,
    order: PedigreeOrder,
    breeding: Breeding,
    figures: ClutchFigures,
    chosen: Chosen | null = null,
  ) {
    this.#chosen = chosen;
    this.#pedigree = pedigree;
    this.#order = order;
    this.#breeding = breeding;
    this.#figures = figures;
    this.#candidates = new Candidates(pedigree);
    this.#slotOf = new Int32Array(pedigree.clutchOf.length).fill(-1);
    this.#sourceSlot = new Int32Array(pedigree.baseKinship.length).fill(-1);
    this.#foundersLeft = new Int32Array(pedigree.baseKinship.length);
    const individuals = pedigree.baseKinship.length === 0 ? 0 : pedigree.sourceOf.length;
    for (let individual = 0; individual < individuals; individual++) {
      const source = pedigree.sourceOf[individual] as number;
      if (source >= 0 && (breeding.lastPosition[individual] as number) >= 0)
        this.#foundersLeft[source] = (this.#foundersLeft[source] as number) + 1;
    }
  }

  /**
   * Computes the figures of one component; least and greatest of certain parents are left to `copyCertain`.
   *
   * @param width the most rows it will hold at once, from `FrontierPlanner`
   * @param chosen how many of the chosen animals belong to it
   */
  sweep(component: number, width: number, chosen = 0): void {
    const { clutches, componentStart } = this.#order;
    this.#rows.clear(width, chosen);
    const end = componentStart[component + 1] as number;
    for (let position = componentStart[component] as number; position < end; position++)
      this.#visit(clutches[position] as number, position);
  }

  #visit(clutch: number, position: number): void {
    const { pairStart } = this.#pedigree;
    const candidates = this.#candidates;
    candidates.gather(clutch);
    for (let place = 0; place < candidates.count; place++) {
      const parent = candidates.individual[place] as number;
      if ((this.#slotOf[parent] as number) < 0) this.#enterFounder(parent);
    }
    if ((pairStart[clutch + 1] as number) - (pairStart[clutch] as number) === 1) this.#certainFigures(clutch);
    else this.#uncertainFigures(clutch);
    const breeds = (this.#breeding.firstYoung[clutch] as number) >= 0;
    const isChosen = this.#chosen !== null && (this.#chosen.firstYoung[clutch] as number) >= 0;
    if (breeds || isChosen) this.#blendParents();
    for (let place = 0; place < candidates.count; place++) {
      const parent = candidates.individual[place] as number;
      if (this.#breeding.lastPosition[parent] === position) this.#rows.release(this.#slotOf[parent] as number);
    }
    if (breeds) this.#enterYoung(clutch);
    if (isChosen) this.#tellYoung(clutch);
  }

  #certainFigures(clutch: number): void {
    const { pairStart, pairSire, pairDam } = this.#pedigree;
    const figures = this.#figures;
    const pair = pairStart[clutch] as number;
    const sire = pairSire[pair] as number;
    const dam = pairDam[pair] as number;
    const kinship = this.#kinship(sire, dam);
    figures.clutchExpected[clutch] = kinship;
    figures.clutchWithin[clutch] = 0.25 * (this.#self(sire) + this.#self(dam) + 2 * kinship);
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
      const kinship = this.#kinship(sire, dam);
      expected += probability * kinship;
      within += probability * 0.25 * (this.#self(sire) + this.#self(dam) + 2 * kinship);
      least = Math.min(least, kinship);
      greatest = Math.max(greatest, kinship);
    }
    const figures = this.#figures;
    figures.clutchExpected[clutch] = expected;
    figures.clutchLeast[clutch] = least;
    figures.clutchGreatest[clutch] = greatest;
    figures.clutchWithin[clutch] = within;
    figures.clutchResidual[clutch] = within - this.#candidatesVariance();
  }

  /** Σ w_k w_l φ(k,l) over the recorded candidates of the clutch at hand. */
  #candidatesVariance(): number {
    const { individual, weight, count } = this.#candidates;
    let sum = 0;
    for (let first = 0; first < count; first++) {
      const a = individual[first] as number;
      const w = weight[first] as number;
      sum += w * w * this.#self(a);
      for (let second = 0; second < first; second++)
        sum += 2 * w * (weight[second] as number) * this.#kinship(a, individual[second] as number);
    }
    return sum;
  }

  /** Kinship of two different animals in the frontier; 0 with an unknown one. */
  #kinship(a: number, b: number): number {
    return a < 0 || b < 0 ? 0 : this.#rows.at(this.#slotOf[a] as number, this.#slotOf[b] as number);
  }

  #self(individual: number): number {
    if (individual < 0) return 0.5;
    const slot = this.#slotOf[individual] as number;
    return this.#rows.at(slot, slot);
  }

  #blendParents(): void {
    const { individual, weight, count } = this.#candidates;
    const rows = this.#rows;
    if (count === 2 && weight[0] === 0.5 && weight[1] === 0.5) {
      rows.blendTwo(this.#slotOf[individual[0] as number] as number, this.#slotOf[individual[1] as number] as number);
      return;
    }
    rows.blendNothing();
    for (let place = 0; place < count; place++)
      rows.blend(this.#slotOf[individual[place] as number] as number, weight[place] as number);
  }

  #enterYoung(clutch: number): void {
    const within = this.#figures.clutchWithin[clutch] as number;
    const self = 0.5 * (1 + (this.#figures.clutchExpected[clutch] as number));
    const { firstYoung, nextYoung } = this.#breeding;
    for (let young = firstYoung[clutch] as number; young >= 0; young = nextYoung[young] as number)
      this.#slotOf[young] = this.#enter(young, self, within);
  }

  /** The chosen young of a clutch that have no slot, since they do not breed. */
  #tellYoung(clutch: number): void {
    const { firstYoung, nextYoung } = this.#chosen as Chosen; // asked only where there are any
    const within = this.#figures.clutchWithin[clutch] as number;
    const self = 0.5 * (1 + (this.#figures.clutchExpected[clutch] as number));
    for (let young = firstYoung[clutch] as number; young >= 0; young = nextYoung[young] as number) {
      if ((this.#breeding.lastPosition[young] as number) >= 0) continue;
      this.#tell(young, self);
      this.#rows.setLastStaying(within);
    }
  }

  #tell(individual: number, self: number): void {
    this.#rows.stay(self, (kinships, start) => this.#chosen?.tell(individual, kinships, start));
  }

  #enter(individual: number, self: number, within: number): number {
    if (this.#chosen === null || individual >= this.#chosen.count) return this.#rows.enter(self, within);
    this.#tell(individual, self);
    const slot = this.#rows.enter(self, within);
    this.#rows.setLastStaying(within);
    return slot;
  }

  #enterFounder(founder: number): void {
    const rows = this.#rows;
    const self = 0.5 * (1 + founderInbreedingOf(this.#pedigree, founder));
    const source = this.#pedigree.sourceOf[founder] as number;
    if (source < 0 || this.#breeding.sourceIsNode[source] === 0) {
      rows.blendNothing();
      this.#slotOf[founder] = this.#enter(founder, self, 0);
      return;
    }
    if ((this.#sourceSlot[source] as number) < 0) this.#enterSources(source);
    rows.blendNothing();
    rows.blend(this.#sourceSlot[source] as number, 1);
    this.#slotOf[founder] = this.#enter(founder, self, 0);
    const left = (this.#foundersLeft[source] as number) - 1;
    this.#foundersLeft[source] = left;
    if (left === 0) rows.release(this.#sourceSlot[source] as number);
  }

  /** A source enters together with all sources it is kin to, directly or through others: none may have descendants here yet. */
  #enterSources(first: number): void {
    const waiting = [first];
    const entered: number[] = [];
    for (let source = waiting.pop(); source !== undefined; source = waiting.pop()) {
      if ((this.#sourceSlot[source] as number) >= 0 || this.#foundersLeft[source] === 0) continue;
      this.#rows.blendNothing();
      for (const other of entered)
        this.#rows.setBlend(this.#sourceSlot[other] as number, sourceKinship(this.#pedigree, source, other));
      this.#sourceSlot[source] = this.#rows.enter(this.#pedigree.baseKinship[source] as number, 0);
      entered.push(source);
      for (const { a, b, kinship } of this.#pedigree.sourceKinships ?? [])
        if (kinship > 0 && (a === source || b === source)) waiting.push(a === source ? b : a);
    }
  }
}
