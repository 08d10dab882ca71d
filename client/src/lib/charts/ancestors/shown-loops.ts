import type { InbreedingLoop, InbreedingLoops, LoopAncestor } from '$lib/api/types.ts';
import { placesInTree } from './genome-shares.ts';
import { topOfLoop } from './loop-paths.ts';
import { childCount, commonAncestors, type CommonAncestor } from './loops.ts';
import type { PedigreeGraph } from './pedigree-graph.ts';

/** Loops of one common ancestor, or one of them, with the answer that they are from. */
export interface LoopsThrough {
  answer: InbreedingLoops;
  ancestor: LoopAncestor;
  loops: readonly InbreedingLoop[];
}

/** What the service tells of an animal's loops, and what is looked at. */
export interface ShownLoops {
  /** Null until it is there. */
  readonly answer: InbreedingLoops | null;
  /** Chosen beside the chart; null lets the chart light the strongest common ancestor. */
  readonly chosen: LoopsThrough | null;
  /** All that is known of the loops of a common ancestor of `answer`. */
  through(ancestor: LoopAncestor): LoopsThrough;
}

/** A common ancestor in a chart; `told` is what the service says of it. */
export interface ChartAncestor extends CommonAncestor {
  told: LoopAncestor | null;
}

/**
 * The common ancestors that stand in a chart, by id there. With an answer of the service: those that it names with their parts of F, and what else
 * fills several places, which adds nothing. Without one (young not yet laid) the chart looks for itself.
 */
export function ancestorsInChart(graph: PedigreeGraph, shown: ShownLoops | undefined): Map<string, ChartAncestor> {
  if (!shown) return new Map(commonAncestors(graph).map((one) => [one.id, { ...one, told: null }]));
  const { answer } = shown;
  const found = new Map<string, ChartAncestor>();
  if (!answer?.isTakenApart) return found;
  const places = placesInTree(graph);
  for (const told of answer.ancestors) {
    const id = idInChart(graph, answer, told);
    if (id !== null) found.set(id, { id, places: places.get(id) ?? 1, part: told.part, told });
  }
  // one that is not named may add something where there are more than were named
  if (answer.others > 0) return found;
  for (const [id, count] of places)
    if (id !== graph.root && count > 1 && !found.has(id) && childCount(graph, id) > 1)
      found.set(id, { id, places: count, part: 0, told: null });
  return found;
}

/** A private animal is found by a loop that closes in it. */
function idInChart(graph: PedigreeGraph, answer: InbreedingLoops, { ancestor }: LoopAncestor): string | null {
  if (!ancestor) return null;
  if (!ancestor.isPrivate) return graph.individuals.has(ancestor.id) ? ancestor.id : null;
  const place = answer.ancestors.findIndex((one) => one.ancestor?.id === ancestor.id);
  const loop = answer.loops.find(({ commonAncestor }) => commonAncestor === place);
  return loop ? topOfLoop(graph, answer, loop) : null;
}
