/*
 * In the kernel `as number` on an element of a typed array says: this index was proved by `validatePedigree` or runs
 * over the array's own length. A check at run time in these loops would double their cost.
 */
import { groupByComponent } from './components.ts';
import { LoopError } from './loop-error.ts';
import type { Pedigree } from './pedigree.ts';
import { validatePedigree } from './validate-pedigree.ts';

export { validatePedigree } from './validate-pedigree.ts';

/** The clutches of a pedigree so that the parents of each were hatched from clutches before it, family by family. */
export interface PedigreeOrder {
  /** m: all clutches, one connected component after the other, parents first within each. */
  readonly clutches: Int32Array;
  /** m: where each clutch stands in `clutches`. */
  readonly positionOf: Int32Array;
  /** Number of components + 1: component q holds positions componentStart[q] .. componentStart[q+1]−1. */
  readonly componentStart: Int32Array;
}

/**
 * Puts the clutches of a pedigree in an order in which parents come first, and finds its connected components: families
 * that share no animal and no source with a kinship of its own, so that kinship between them is 0.
 *
 * The register's own order is kept where it already has parents first, as a register written in time does.
 * Iterative, linear in clutches and pairs.
 *
 * @throws RangeError if the pedigree breaks a promise of its type.
 * @throws LoopError if an animal would be its own ancestor.
 */
export function orderPedigree(pedigree: Pedigree): PedigreeOrder {
  validatePedigree(pedigree);
  const sequence = parentsStandFirst(pedigree) ? null : levelSequence(pedigree);
  return groupByComponent(pedigree, sequence);
}

/**
 * All individuals, parents before young: founders first, then the young clutch by clutch.
 *
 * @returns n individuals, each once.
 */
export function orderIndividuals(pedigree: Pedigree, order: PedigreeOrder): Int32Array {
  const { clutchOf } = pedigree;
  const start = new Int32Array(order.clutches.length + 2);
  const bucketOf = (individual: number): number => {
    const clutch = clutchOf[individual] as number;
    return clutch < 0 ? 0 : 1 + (order.positionOf[clutch] as number);
  };
  for (let individual = 0; individual < clutchOf.length; individual++) {
    const next = bucketOf(individual) + 1;
    if (next < start.length) start[next] = (start[next] as number) + 1;
  }
  for (let bucket = 1; bucket < start.length; bucket++)
    start[bucket] = (start[bucket] as number) + (start[bucket - 1] as number);
  const individuals = new Int32Array(clutchOf.length);
  for (let individual = 0; individual < clutchOf.length; individual++) {
    const bucket = bucketOf(individual);
    const place = start[bucket] as number;
    individuals[place] = individual;
    start[bucket] = place + 1;
  }
  return individuals;
}

function parentsStandFirst({ clutchOf, pairStart, pairSire, pairDam }: Pedigree): boolean {
  for (let clutch = 0; clutch + 1 < pairStart.length; clutch++) {
    const end = pairStart[clutch + 1] as number;
    for (let pair = pairStart[clutch] as number; pair < end; pair++) {
      const sire = pairSire[pair] as number;
      const dam = pairDam[pair] as number;
      if (sire >= 0 && (clutchOf[sire] as number) >= clutch) return false;
      if (dam >= 0 && (clutchOf[dam] as number) >= clutch) return false;
    }
  }
  return true;
}

/**
 * A sequence by level: a clutch whose young never breed stands as early as its parents allow, any other as late as its
 * dependants allow. Founders' clutches are therefore visited when they are wanted and the frontier stays narrow,
 * whatever the order of rows was.
 */
export function levelSequence(pedigree: Pedigree): Int32Array {
  const clutches = pedigree.pairStart.length - 1;
  const { start, dependants } = dependantsOf(pedigree);
  const { sequence, level } = earliestLevels(pedigree, start, dependants);
  for (let place = clutches - 1; place >= 0; place--) {
    const clutch = sequence[place] as number;
    const end = start[clutch + 1] as number;
    let latest = -1;
    for (let edge = start[clutch] as number; edge < end; edge++) {
      const limit = (level[dependants[edge] as number] as number) - 1;
      if (latest < 0 || limit < latest) latest = limit;
    }
    if (latest >= 0) level[clutch] = latest;
  }
  return sortedByLevel(sequence, level);
}

/** Which clutches have parents out of each clutch, as start and list; a dependant stands there once for each parent named. */
function dependantsOf({ clutchOf, pairStart, pairSire, pairDam }: Pedigree): {
  start: Int32Array;
  dependants: Int32Array;
} {
  const clutches = pairStart.length - 1;
  const start = new Int32Array(clutches + 1);
  const ends = [pairSire, pairDam];
  for (const parents of ends)
    for (let pair = 0; pair < parents.length; pair++) {
      const parent = parents[pair] as number;
      const from = parent < 0 ? -1 : (clutchOf[parent] as number);
      if (from >= 0) start[from] = (start[from] as number) + 1;
    }
  for (let clutch = 0, sum = 0; clutch <= clutches; clutch++) {
    sum += start[clutch] as number;
    start[clutch] = sum; // the end of the group for now; filling counts it down to its start
  }
  const dependants = new Int32Array(start[clutches] as number);
  for (let clutch = 0; clutch < clutches; clutch++)
    for (const parents of ends)
      for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
        const parent = parents[pair] as number;
        const from = parent < 0 ? -1 : (clutchOf[parent] as number);
        if (from < 0) continue;
        const place = (start[from] as number) - 1;
        start[from] = place;
        dependants[place] = clutch;
      }
  return { start, dependants };
}

/** Kahn's sorting (1962), with the earliest level of each clutch: 0 without recorded parents, else one above the highest parent. */
function earliestLevels(
  pedigree: Pedigree,
  start: Int32Array,
  dependants: Int32Array,
): { sequence: Int32Array; level: Int32Array } {
  const clutches = pedigree.pairStart.length - 1;
  const waiting = new Int32Array(clutches);
  for (let edge = 0; edge < dependants.length; edge++) {
    const clutch = dependants[edge] as number;
    waiting[clutch] = (waiting[clutch] as number) + 1;
  }
  const sequence = new Int32Array(clutches);
  const level = new Int32Array(clutches);
  let filled = 0;
  for (let clutch = 0; clutch < clutches; clutch++) if (waiting[clutch] === 0) sequence[filled++] = clutch;
  for (let place = 0; place < filled; place++) {
    const clutch = sequence[place] as number;
    const next = (level[clutch] as number) + 1;
    for (let edge = start[clutch] as number; edge < (start[clutch + 1] as number); edge++) {
      const dependant = dependants[edge] as number;
      if ((level[dependant] as number) < next) level[dependant] = next;
      const left = (waiting[dependant] as number) - 1;
      waiting[dependant] = left;
      if (left === 0) sequence[filled++] = dependant;
    }
  }
  if (filled < clutches) throw new LoopError(findLoop(pedigree, waiting));
  return { sequence, level };
}

/** Walks from a clutch that never came free to one parent after another that never did, until an animal comes again. */
function findLoop({ clutchOf, pairStart, pairSire, pairDam }: Pedigree, waiting: Int32Array): number[] {
  const stuckParent = (clutch: number): number => {
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++)
      for (const parent of [pairSire[pair] as number, pairDam[pair] as number]) {
        const from = parent < 0 ? -1 : (clutchOf[parent] as number);
        if (from >= 0 && (waiting[from] as number) > 0) return parent;
      }
    throw new Error('A clutch that waits for no waiting parent cannot be part of a loop.');
  };
  const path: number[] = [];
  const placeOf = new Map<number, number>();
  let clutch = waiting.findIndex((left) => left > 0);
  for (;;) {
    const parent = stuckParent(clutch);
    const seen = placeOf.get(clutch);
    if (seen !== undefined) return path.slice(seen).reverse();
    placeOf.set(clutch, path.length);
    path.push(parent);
    clutch = clutchOf[parent] as number;
  }
}

function sortedByLevel(sequence: Int32Array, level: Int32Array): Int32Array {
  const start = new Int32Array(sequence.length + 1);
  for (const clutch of sequence) {
    const next = (level[clutch] as number) + 1;
    start[next] = (start[next] as number) + 1;
  }
  for (let rank = 1; rank < start.length; rank++) start[rank] = (start[rank] as number) + (start[rank - 1] as number);
  const sorted = new Int32Array(sequence.length);
  for (const clutch of sequence) {
    const rank = level[clutch] as number;
    const place = start[rank] as number;
    sorted[place] = clutch;
    start[rank] = place + 1;
  }
  return sorted;
}
