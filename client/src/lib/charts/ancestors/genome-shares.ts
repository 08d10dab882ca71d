import { parentLinks, parentsFirst, type PedigreeGraph } from './pedigree-graph.ts';

/**
 * Expected part of each animal in the genome of the root, 0 to 1: the root is 1, and every possible parent of an
 * animal carries half of that animal's part, times its probability.
 */
export function genomeShares(graph: PedigreeGraph): Map<string, number> {
  const shares = new Map<string, number>([[graph.root, 1]]);
  for (const id of parentsFirst(graph).reverse()) {
    const own = shares.get(id) ?? 0;
    for (const link of parentLinks(graph, id))
      shares.set(link.parent, (shares.get(link.parent) ?? 0) + (own * link.probability) / 2);
  }
  return shares;
}

/** Sum of the parts of a clutch's young: what flows through the clutch. */
export function clutchShare(graph: PedigreeGraph, shares: Map<string, number>, clutch: string): number {
  let sum = 0;
  for (const young of graph.youngOf.get(clutch) ?? []) sum += shares.get(young) ?? 0;
  return sum;
}

/** How many places each animal would fill if the pedigree were written out as a tree, bounded to stay a number. */
export function placesInTree(graph: PedigreeGraph): Map<string, number> {
  const places = new Map<string, number>([[graph.root, 1]]);
  for (const id of parentsFirst(graph).reverse()) {
    const own = places.get(id) ?? 0;
    for (const link of parentLinks(graph, id)) places.set(link.parent, (places.get(link.parent) ?? 0) + own);
  }
  return places;
}

/** Fewest and most steps from the root to each animal. */
export function generations(graph: PedigreeGraph): Map<string, { least: number; most: number }> {
  const found = new Map([[graph.root, { least: 0, most: 0 }]]);
  for (const id of parentsFirst(graph).reverse()) {
    const own = found.get(id);
    if (!own) continue;
    for (const link of parentLinks(graph, id)) {
      const old = found.get(link.parent);
      found.set(link.parent, {
        least: Math.min(old?.least ?? Infinity, own.least + 1),
        most: Math.max(old?.most ?? 0, own.most + 1),
      });
    }
  }
  return found;
}
