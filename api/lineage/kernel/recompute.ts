import { findAncestors, parentsFirst, partOfPedigree } from './ancestral-part.ts';
import { ClutchTrace } from './clutch-trace.ts';
import { groupByComponent } from './components.ts';
import type { ClutchFigures } from './figures.ts';
import { computeInbreeding, inbreedingCost } from './inbreeding.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';
import { withSearchSpace, type SearchSpace } from './search-space.ts';

/** Clutches that stand for all when ancestors are counted. */
const SAMPLES = 24;
/** Steps of taking a clutch out into a pedigree of its own and putting that in order: some 700 ns, measured. */
const STEPS_APART = 14;
/** Row elements of a frontier in a step. */
const ELEMENTS = 100;

/** How recomputing may go about it; the figures are the same to 1e-12. */
export interface RecomputeOptions {
  /** Most bytes that the matrix of a frontier sweep may take, as in `InbreedingOptions`. */
  readonly frontierBytes?: number;
}

/**
 * The clutches whose figures follow from some clutches: these and all that descend from them.
 *
 * Looks at the clutches that stand after the first of them: for clutches at the end of the order this costs nothing.
 *
 * @param order parents first; only `clutches` and `positionOf` are used
 * @param from clutches, any of them more than once
 * @returns clutches, each once, parents first.
 */
export function descendantClutches(pedigree: Pedigree, order: PedigreeOrder, from: Int32Array): Int32Array {
  const { clutchOf, pairStart, pairSire, pairDam } = pedigree;
  return withSearchSpace(pedigree, ({ ofClutch: isFound }) => {
    let first = order.clutches.length;
    for (const clutch of from) {
      isFound[clutch] = 1;
      first = Math.min(first, order.positionOf[clutch] as number);
    }
    const found: number[] = [];
    const comesFromFound = (individual: number): boolean => {
      const clutch = individual < 0 ? -1 : (clutchOf[individual] as number);
      return clutch >= 0 && isFound[clutch] === 1;
    };
    for (let position = first; position < order.clutches.length; position++) {
      const clutch = order.clutches[position] as number;
      const end = pairStart[clutch + 1] as number;
      for (let pair = pairStart[clutch] as number; pair < end && isFound[clutch] === 0; pair++)
        if (comesFromFound(pairSire[pair] as number) || comesFromFound(pairDam[pair] as number)) isFound[clutch] = 1;
      if (isFound[clutch] === 1) found.push(clutch);
    }
    for (const clutch of found) isFound[clutch] = 0;
    return Int32Array.from(found);
  });
}

/**
 * Writes the figures of some clutches anew. Those of all other clutches must be right already, so the clutches must hold
 * every descendant of theirs, as `descendantClutches` gives them.
 *
 * Either by one ancestor trace a clutch, or by computing them and everything above them from nothing, as `computeInbreeding`
 * does: whichever has the lower counted cost.
 *
 * @param order parents first; only `clutches` and `positionOf` are used
 * @param figures one entry a clutch; written in place
 * @param clutches each once, parents first
 */
export function recomputeClutches(
  pedigree: Pedigree,
  order: PedigreeOrder,
  figures: ClutchFigures,
  clutches: Int32Array,
  options: RecomputeOptions = {},
): void {
  withSearchSpace(pedigree, (space) => {
    const part = clutches.length === 1 ? null : findWays(pedigree, order, clutches, space, Infinity, options).part;
    if (part !== null) {
      takeOver(computeInbreeding(part.pedigree, { ...options, order: part.order }), part, figures, clutches, space);
      return;
    }
    const trace = new ClutchTrace(pedigree, order, figures, space);
    for (const clutch of clutches) trace.trace(clutch);
  });
}

/**
 * What `recomputeClutches` would cost, counted beforehand in steps of about 50 ns: 20 000 of them are a millisecond.
 *
 * @param limit beyond it the answer is some number above it, found in little more than so many steps
 */
export function recomputeCost(
  pedigree: Pedigree,
  order: PedigreeOrder,
  clutches: Int32Array,
  limit = Infinity,
  options: RecomputeOptions = {},
): number {
  return withSearchSpace(pedigree, (space) => {
    const { part, traces } = findWays(pedigree, order, clutches, space, limit, options);
    return part?.steps ?? traces;
  });
}

/** Clutches with all above them as a pedigree of their own, and the steps that it costs to compute it from nothing. */
interface Part {
  readonly clutches: Int32Array;
  readonly pedigree: Pedigree;
  readonly order: PedigreeOrder;
  readonly steps: number;
}

/** The steps of tracing each clutch, and the part to be computed from nothing where that costs less. */
function findWays(
  pedigree: Pedigree,
  order: PedigreeOrder,
  clutches: Int32Array,
  space: SearchSpace,
  limit: number,
  options: RecomputeOptions,
): { traces: number; part: Part | null } {
  const traces = traceSteps(pedigree, clutches, space, limit);
  const found = findAncestors(pedigree, clutches, space, Math.min(limit, traces) / STEPS_APART);
  if (found === null) return { traces, part: null };
  const first = parentsFirst(order, found);
  const alone = partOfPedigree(pedigree, first, space);
  const orderOfPart = groupByComponent(alone, null);
  const steps = STEPS_APART * first.length + inbreedingCost(alone, orderOfPart, options) / ELEMENTS;
  return { traces, part: steps < traces ? { clutches: first, pedigree: alone, order: orderOfPart, steps } : null };
}

/** Clutches that traces would visit, judged by some of them; above `limit` the count is broken off and Infinity stands for it. */
function traceSteps(pedigree: Pedigree, clutches: Int32Array, space: SearchSpace, limit: number): number {
  const { pairStart } = pedigree;
  const samples = Math.min(SAMPLES, clutches.length);
  const scale = clutches.length / samples;
  let steps = 0;
  for (let sample = 0; sample < samples; sample++) {
    const clutch = clutches[Math.floor((sample + 0.5) * scale)] as number;
    const pairs = (pairStart[clutch + 1] as number) - (pairStart[clutch] as number);
    const visits = findAncestors(pedigree, Int32Array.of(clutch), space, limit / scale - steps);
    if (visits === null) return Infinity;
    steps += (pairs === 1 ? 1 : pairs + 1) * visits.length;
  }
  return steps * scale || 0;
}

/** Writes what was computed of a part, for some of its clutches. */
function takeOver(
  computed: ClutchFigures,
  part: Part,
  figures: ClutchFigures,
  clutches: Int32Array,
  space: SearchSpace,
): void {
  clutches.forEach((clutch) => (space.ofClutch[clutch] = 1));
  part.clutches.forEach((clutch, local) => {
    if (space.ofClutch[clutch] === 0) return;
    space.ofClutch[clutch] = 0;
    figures.clutchExpected[clutch] = computed.clutchExpected[local] as number;
    figures.clutchLeast[clutch] = computed.clutchLeast[local] as number;
    figures.clutchGreatest[clutch] = computed.clutchGreatest[local] as number;
    figures.clutchWithin[clutch] = computed.clutchWithin[local] as number;
    figures.clutchResidual[clutch] = computed.clutchResidual[local] as number;
  });
}
