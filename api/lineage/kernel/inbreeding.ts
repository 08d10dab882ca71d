import { AncestorTrace } from './ancestor-trace.ts';
import type { Breeding, ClutchFigures } from './figures.ts';
import { copyCertain, emptyFigures, findBreeding } from './figures.ts';
import { FrontierPlanner } from './frontier-plan.ts';
import { FrontierSweep } from './frontier-sweep.ts';
import { MethodChoice, type Choice } from './method-choice.ts';
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
  const choose = chooser(pedigree, order, breeding, options);
  const tools = new Tools(pedigree, order, breeding, figures);
  const components = order.componentStart.length - 1;
  let frontier = 0;
  for (let component = 0; component < components; component++) {
    const { method, width } = choose(component);
    if (method === 'trace') tools.trace.trace(component);
    else {
      frontier++;
      tools.frontier.sweep(component, width);
    }
  }
  copyCertain(pedigree, figures);
  return { order, ...figures, method: { frontier, trace: components - frontier } };
}

/** What `computeInbreeding` would cost apart from reading the pedigree: row elements of a frontier, ½ ns each. */
export function inbreedingCost(pedigree: Pedigree, order: PedigreeOrder, options: InbreedingOptions = {}): number {
  const breeding = findBreeding(pedigree, order.clutches);
  const choose = chooser(pedigree, order, breeding, options);
  let elements = 0;
  for (let component = 0; component + 1 < order.componentStart.length; component++)
    elements += choose(component).elements;
  return elements;
}

/** Tells the method of each component, which may be asked for once. */
function chooser(
  pedigree: Pedigree,
  order: PedigreeOrder,
  breeding: Breeding,
  { method = 'auto', frontierBytes = DEFAULT_FRONTIER_BYTES }: InbreedingOptions,
): (component: number) => Choice {
  if (method === 'trace') return () => ({ method, width: 0, elements: 0 });
  if (method === 'auto') {
    const choice = new MethodChoice(pedigree, order, breeding, frontierBytes);
    return (component) => choice.choose(component);
  }
  const planner = new FrontierPlanner(pedigree, order, breeding);
  return (component) => ({ method, ...planner.plan(component) });
}

/** The two methods, each made when first wanted. */
class Tools {
  #frontier: FrontierSweep | undefined;
  #trace: AncestorTrace | undefined;
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
