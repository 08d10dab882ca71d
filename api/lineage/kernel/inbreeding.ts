import { AncestorCount } from './ancestor-count.ts';
import { AncestorTrace } from './ancestor-trace.ts';
import type { Breeding, ClutchFigures } from './figures.ts';
import { copyCertain, emptyFigures, findBreeding } from './figures.ts';
import { FrontierPlanner, type FrontierPlan } from './frontier-plan.ts';
import { FrontierSweep } from './frontier-sweep.ts';
import type { PedigreeOrder } from './order.ts';
import { orderPedigree } from './order.ts';
import type { Pedigree } from './pedigree.ts';
import { founderInbreedingOf } from './sources.ts';

/** Inbreeding of a whole register: one figure a clutch, since all young of a clutch have the same expectation. */
export interface Inbreeding extends ClutchFigures {
  readonly order: PedigreeOrder;
  /** How many connected components each method computed. */
  readonly method: { readonly frontier: number; readonly trace: number };
}

/** Expected inbreeding coefficient with its range over the candidate pairs; each from 0 to 1. */
export interface InbreedingRange {
  readonly expected: number;
  readonly least: number;
  readonly greatest: number;
}

/** How `computeInbreeding` may go about it; the result is the same to 1e-12. */
export interface InbreedingOptions {
  /** The pedigree's order, if it has been made already. */
  readonly order?: PedigreeOrder;
  /** `auto`, the default, takes the cheaper one for each component. */
  readonly method?: 'auto' | 'frontier' | 'trace';
  /** Most bytes that `auto` lets a frontier matrix take; 512 MiB unless said otherwise. */
  readonly frontierBytes?: number;
}

const DEFAULT_FRONTIER_BYTES = 512 * 2 ** 20;
/** Row elements a clutch below which no trace can pay: it would have to visit fewer than a handful of ancestors. */
const ALWAYS_FRONTIER = 128;
/** What visiting one clutch in a trace costs, in row elements of a frontier: some 20 ns to ½ ns, measured. */
const VISIT_COST = 40;
const SAMPLES = 24;

/**
 * Inbreeding coefficients of the young of every clutch, with range, and the kinship of clutch-mates.
 * Definitions: Wright (1922), Malécot (1948); the clutch as a node that all its young share.
 *
 * @throws RangeError if the pedigree breaks a promise of its type.
 * @throws LoopError if an animal would be its own ancestor.
 */
export function computeInbreeding(pedigree: Pedigree, options: InbreedingOptions = {}): Inbreeding {
  const order = options.order ?? orderPedigree(pedigree);
  const breeding = findBreeding(pedigree, order.clutches);
  const figures = emptyFigures(order.clutches.length);
  const method = options.method ?? 'auto';
  const components = order.componentStart.length - 1;
  const widest = method === 'auto' ? widestFrontier(options.frontierBytes ?? DEFAULT_FRONTIER_BYTES) : Infinity;
  const planner = method === 'trace' ? null : new FrontierPlanner(pedigree, order, breeding, widest);
  const tools = new Tools(pedigree, order, breeding, figures);
  let frontier = 0;
  for (let component = 0; component < components; component++) {
    const plan = planner === null ? null : planner.plan(component);
    if (plan !== null && (method === 'frontier' || tools.frontierPays(plan, component, widest))) {
      frontier++;
      tools.frontier.sweep(component, plan.width);
    } else tools.trace.trace(component);
  }
  copyCertain(pedigree, figures);
  return { order, ...figures, method: { frontier, trace: components - frontier } };
}

/** Most rows of a frontier matrix, width · (width + 16) numbers of 8 bytes, that take no more than so many bytes. */
function widestFrontier(bytes: number): number {
  return Math.floor(Math.sqrt(bytes / 8 + 64) - 8);
}

/** The two methods, each made when first wanted, and the choice between them. */
class Tools {
  #frontier: FrontierSweep | undefined;
  #trace: AncestorTrace | undefined;
  #counted: AncestorCount | undefined;
  readonly #parts: [Pedigree, PedigreeOrder, Breeding, ClutchFigures];

  constructor(...parts: [Pedigree, PedigreeOrder, Breeding, ClutchFigures]) {
    this.#parts = parts;
  }

  get frontier(): FrontierSweep {
    return (this.#frontier ??= new FrontierSweep(...this.#parts));
  }

  get trace(): AncestorTrace {
    return (this.#trace ??= new AncestorTrace(...this.#parts));
  }

  get #count(): AncestorCount {
    return (this.#counted ??= new AncestorCount(this.#parts[0], this.#parts[1]));
  }

  frontierPays(plan: FrontierPlan, component: number, widest: number): boolean {
    if (plan.width > widest) return false;
    const { componentStart } = this.#parts[1];
    const size = (componentStart[component + 1] as number) - (componentStart[component] as number);
    const perClutch = plan.elements / size;
    if (perClutch < ALWAYS_FRONTIER) return true;
    // A trace is made for each candidate pair; the mean over the register stands for the component's.
    const { pairSire, pairStart } = this.#parts[0];
    const traces = pairSire.length / (pairStart.length - 1);
    return this.#count.exceeds(component, SAMPLES, perClutch / (VISIT_COST * traces));
  }
}

/** Inbreeding coefficient of one individual, with range: its clutch's, or a founder's own. */
export function inbreedingOf(pedigree: Pedigree, inbreeding: Inbreeding, individual: number): InbreedingRange {
  const clutch = pedigree.clutchOf[individual];
  if (clutch === undefined) throw new RangeError(`There is no individual ${individual}.`);
  if (clutch < 0) {
    const value = founderInbreedingOf(pedigree, individual);
    return { expected: value, least: value, greatest: value };
  }
  return {
    expected: inbreeding.clutchExpected[clutch] as number, // one entry a clutch
    least: inbreeding.clutchLeast[clutch] as number,
    greatest: inbreeding.clutchGreatest[clutch] as number,
  };
}
