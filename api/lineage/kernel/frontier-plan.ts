import { Candidates } from './candidates.ts';
import type { ChosenYoung } from './chosen.ts';
import type { Breeding } from './figures.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';

/** What a frontier sweep of a component would take, known before it starts. */
export interface FrontierPlan {
  /** The most rows held at once (sources that are nodes count for the whole way). */
  readonly width: number;
  /** Row elements read and written. */
  readonly elements: number;
  /** How many of the chosen animals belong to it. */
  readonly staying: number;
}

/**
 * Walks components in order, letting animals enter and leave without computing anything. Linear in clutches and candidates.
 * A component planned just before it is swept is still in the processor's cache.
 */
export class FrontierPlanner {
  readonly #order: PedigreeOrder;
  readonly #walk: FrontierWalk;
  readonly #widest: number;

  /**
   * @param widest width beyond which a component is not walked to its end: its width is then told as one more than `widest`
   * or greater, its elements only as far as it was walked.
   * @param chosen animals whose kinships are to be told on the way
   */
  constructor(
    pedigree: Pedigree,
    order: PedigreeOrder,
    breeding: Breeding,
    widest = Infinity,
    chosen: ChosenYoung | null = null,
  ) {
    this.#order = order;
    this.#walk = new FrontierWalk(pedigree, breeding, chosen);
    this.#widest = widest;
  }

  /** Plans a component. Each can be planned once. */
  plan(component: number): FrontierPlan {
    const { clutches, componentStart } = this.#order;
    const walk = this.#walk;
    walk.restart();
    const end = componentStart[component + 1] as number;
    for (let position = componentStart[component] as number; position < end && walk.most <= this.#widest; position++)
      walk.visit(clutches[position] as number, position);
    return { width: walk.most + walk.sources, elements: walk.elements, staying: walk.staying };
  }
}

class FrontierWalk {
  most = 0;
  elements = 0;
  /** Sources that are nodes; related ones enter together, so all of them are counted for the whole way. */
  sources = 0;
  /** Chosen animals met. */
  staying = 0;
  #active = 0;
  readonly #pedigree: Pedigree;
  readonly #breeding: Breeding;
  readonly #chosen: ChosenYoung | null;
  readonly #candidates: Candidates;
  readonly #entered: Uint8Array;
  readonly #sourceEntered: Uint8Array;

  constructor(pedigree: Pedigree, breeding: Breeding, chosen: ChosenYoung | null) {
    this.#chosen = chosen;
    this.#pedigree = pedigree;
    this.#breeding = breeding;
    this.#candidates = new Candidates(pedigree);
    this.#entered = new Uint8Array(pedigree.clutchOf.length);
    this.#sourceEntered = new Uint8Array(pedigree.baseKinship.length);
  }

  restart(): void {
    this.most = this.elements = this.sources = this.staying = this.#active = 0;
  }

  visit(clutch: number, position: number): void {
    const candidates = this.#candidates;
    candidates.gather(clutch);
    let leaving = 0;
    for (let place = 0; place < candidates.count; place++) {
      const parent = candidates.individual[place] as number;
      if ((this.#pedigree.clutchOf[parent] as number) < 0 && this.#entered[parent] === 0) this.#enterFounder(parent);
      if (this.#breeding.lastPosition[parent] === position) leaving++;
    }
    this.most = Math.max(this.most, this.#active);
    let young = 0;
    for (let at = this.#breeding.firstYoung[clutch] as number; at >= 0; at = this.#breeding.nextYoung[at] as number)
      young++;
    const chosen = this.#chosen === null ? 0 : this.#countChosen(clutch);
    const columns = this.#active + this.staying;
    if (young + chosen > 0) this.elements += columns * (candidates.count + young) + this.#active * (young + chosen);
    this.staying += chosen;
    this.#active += young - leaving;
    this.most = Math.max(this.most, this.#active);
  }

  #countChosen(clutch: number): number {
    if (this.#chosen === null) return 0;
    const { firstYoung, nextYoung } = this.#chosen;
    let chosen = 0;
    for (let at = firstYoung[clutch] as number; at >= 0; at = nextYoung[at] as number) chosen++;
    return chosen;
  }

  #enterFounder(founder: number): void {
    this.#entered[founder] = 1;
    this.#active++;
    this.elements += 2 * this.#active + this.staying;
    if (this.#chosen !== null && founder < this.#chosen.count) this.staying++;
    const source = this.#pedigree.sourceOf[founder] as number;
    if (source < 0 || this.#breeding.sourceIsNode[source] === 0 || this.#sourceEntered[source] === 1) return;
    this.#sourceEntered[source] = 1;
    this.sources++;
  }
}
