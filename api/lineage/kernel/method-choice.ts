import { AncestorCount } from './ancestor-count.ts';
import type { Breeding } from './figures.ts';
import { FrontierPlanner } from './frontier-plan.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';

/** Which method computes a component, and what that costs. */
export interface Choice {
  readonly method: 'frontier' | 'trace';
  /** Rows that a frontier sweep holds at once; of no meaning for traces. */
  readonly width: number;
  /** Counted cost in row elements of a frontier, ½ ns each. */
  readonly elements: number;
}

/** What visiting one clutch in a trace costs, in row elements of a frontier: some 20 ns to ½ ns, measured. */
const VISIT_COST = 40;
/** Row elements a clutch below which no trace can pay: it would have to visit fewer than a handful of ancestors. */
const ALWAYS_FRONTIER = 128;
const SAMPLES = 24;

/** The choice between the two methods by counted cost, component by component. */
export class MethodChoice {
  readonly #pedigree: Pedigree;
  readonly #order: PedigreeOrder;
  readonly #planner: FrontierPlanner;
  readonly #widest: number;
  #counted: AncestorCount | undefined;

  /** @param frontierBytes most bytes that a frontier matrix may take */
  constructor(pedigree: Pedigree, order: PedigreeOrder, breeding: Breeding, frontierBytes: number) {
    this.#pedigree = pedigree;
    this.#order = order;
    this.#widest = widestFrontier(frontierBytes);
    this.#planner = new FrontierPlanner(pedigree, order, breeding, this.#widest);
  }

  /** Chooses for a component. Each can be asked for once. */
  choose(component: number): Choice {
    const { componentStart } = this.#order;
    const size = (componentStart[component + 1] as number) - (componentStart[component] as number);
    const { width, elements } = this.#planner.plan(component);
    const fits = width <= this.#widest;
    if (fits && elements < ALWAYS_FRONTIER * size) return { method: 'frontier', width, elements };
    // A trace is made for each candidate pair; the mean over the register stands for the component's.
    const { pairSire, pairStart } = this.#pedigree;
    const visit = (VISIT_COST * size * pairSire.length) / (pairStart.length - 1);
    this.#counted ??= new AncestorCount(this.#pedigree, this.#order);
    const visits = this.#counted.mean(component, SAMPLES, fits ? elements / visit : Infinity);
    if (fits && visits * visit > elements) return { method: 'frontier', width, elements };
    return { method: 'trace', width, elements: visits * visit };
  }
}

/** Most rows of a frontier matrix, width · (width + 16) numbers of 8 bytes, that take no more than so many bytes. */
function widestFrontier(bytes: number): number {
  return Math.floor(Math.sqrt(bytes / 8 + 64) - 8);
}
