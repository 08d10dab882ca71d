import { placesInTree } from './genome-shares.ts';
import { LoopParts } from './loop-parts.ts';
import { parentLinks, parentsFirst, type PedigreeGraph } from './pedigree-graph.ts';

/** An ancestor that appears more than once above the root. */
export interface CommonAncestor {
  id: string;
  /** Places it would fill if the pedigree were written as a tree. */
  places: number;
  /** What it adds to the expected F of the root (0 to 1); 0 when its loops close above one parent only. */
  part: number;
}

/**
 * Looks for loops in a chart itself: for young not yet laid, whom no answer of the service knows. A recorded animal's loops come from the service
 * (`loop-paths.ts`), which knows its ancestors beyond what is drawn.
 *
 * The ancestors in which separate paths from the root meet. Animals that repeat only because their single descendant
 * does are left out: the loop closes below them.
 */
export function commonAncestors(graph: PedigreeGraph): CommonAncestor[] {
  const places = placesInTree(graph);
  const parts = new LoopParts(graph);
  const found: CommonAncestor[] = [];
  for (const id of parentsFirst(graph)) {
    const count = places.get(id) ?? 0;
    if (id === graph.root || count < 2 || childCount(graph, id) < 2) continue;
    const { part, closesAny } = parts.of(id, descendants(graph, id));
    // Two candidates for one place have a common parent, but only one of them is real: no loop.
    if (closesAny) found.push({ id, places: count, part });
  }
  return found;
}

/** How many animals of the chart an animal may be a parent of. */
export function childCount(graph: PedigreeGraph, id: string): number {
  return (graph.clutchesOf.get(id) ?? []).reduce((sum, link) => sum + (graph.youngOf.get(link.clutch)?.length ?? 0), 0);
}

/** The animals between an ancestor and the root, both included. */
export function descendants(graph: PedigreeGraph, from: string): Set<string> {
  const reaches = new Map<string, boolean>([[graph.root, true]]);
  const walk = (id: string): boolean => {
    const known = reaches.get(id);
    if (known !== undefined) return known;
    let any = false;
    for (const link of graph.clutchesOf.get(id) ?? [])
      for (const young of graph.youngOf.get(link.clutch) ?? []) if (walk(young)) any = true;
    reaches.set(id, any);
    return any;
  };
  walk(from);
  return new Set([...reaches].filter(([, reached]) => reached).map(([id]) => id));
}

/** Everything between an ancestor and the root: animals, eggs, and the keys of the streams ("from to"). */
export function pathsToRoot(graph: PedigreeGraph, from: string): { nodes: Set<string>; streams: Set<string> } {
  const nodes = descendants(graph, from);
  const streams = new Set<string>();
  for (const id of [...nodes]) {
    for (const link of id === graph.root ? [] : (graph.clutchesOf.get(id) ?? []))
      for (const young of graph.youngOf.get(link.clutch) ?? [])
        if (nodes.has(young)) {
          nodes.add(link.clutch);
          streams.add(`${id} ${link.clutch}`).add(`${link.clutch} ${young}`);
        }
  }
  return { nodes, streams };
}

/** Links above an animal that a reader may ask for: its possible parents, likeliest first. */
export function likeliestParents(graph: PedigreeGraph, id: string): string[] {
  return [...parentLinks(graph, id)].sort((a, b) => b.probability - a.probability).map((link) => link.parent);
}
