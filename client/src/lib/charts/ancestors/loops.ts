import { placesInTree } from './genome-shares.ts';
import { parentLinks, parentsFirst, type ParentLink, type PedigreeGraph } from './pedigree-graph.ts';

/** An ancestor that appears more than once above the root. */
export interface CommonAncestor {
  id: string;
  /** Places it would fill if the pedigree were written as a tree. */
  places: number;
  /** True when it stands behind both parents of the root by separate paths, so that it adds to the root's F. */
  closesLoop: boolean;
  /** What it adds to the expected F of the root (0 to 1); null when it adds nothing or has too many paths to add up. */
  part: number | null;
}

const pathLimit = 400;

/**
 * The ancestors in which separate paths from the root meet. Animals that repeat only because their single descendant
 * does are left out: the loop closes below them.
 */
export function commonAncestors(graph: PedigreeGraph): CommonAncestor[] {
  const places = placesInTree(graph);
  const found: CommonAncestor[] = [];
  for (const id of parentsFirst(graph)) {
    const count = places.get(id) ?? 0;
    if (id === graph.root || count < 2 || childCount(graph, id) < 2) continue;
    const part = partOfInbreeding(graph, id);
    if (part === 0 && onlyAlternatives(graph, id)) continue;
    found.push({ id, places: count, closesLoop: part !== 0, part: part === 0 ? null : part });
  }
  return found;
}

function childCount(graph: PedigreeGraph, id: string): number {
  return (graph.clutchesOf.get(id) ?? []).reduce((sum, link) => sum + (graph.youngOf.get(link.clutch)?.length ?? 0), 0);
}

/** True when the animal's young meet again only as alternatives to each other (two candidates for one place). */
function onlyAlternatives(graph: PedigreeGraph, id: string): boolean {
  const paths = pathsDown(graph, id);
  if (paths === null) return false;
  for (let i = 0; i < paths.length; i++)
    for (let j = i + 1; j < paths.length; j++) {
      const a = paths[i];
      const b = paths[j];
      if (a && b && a[0]?.young !== b[0]?.young && jointProbability(graph, a, b) > 0) return false;
    }
  return true;
}

/** One step down: the link into the clutch and the young taken there. */
interface Step {
  link: ParentLink;
  young: string;
}

/** All ways from an animal down to the root, or null when there are too many to add up. */
function pathsDown(graph: PedigreeGraph, from: string): Step[][] | null {
  const below = descendants(graph, from);
  const paths: Step[][] = [];
  let steps = 0;
  const walk = (id: string, path: Step[]): boolean => {
    if (id === graph.root) return paths.push(path) <= pathLimit;
    for (const link of graph.clutchesOf.get(id) ?? [])
      for (const young of graph.youngOf.get(link.clutch) ?? [])
        if (below.has(young) && (++steps > 40 * pathLimit || !walk(young, [...path, { link, young }]))) return false;
    return true;
  };
  return walk(from, []) ? paths : null;
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

/**
 * Wright's path sum for one common ancestor A: over pairs of paths to the root that share no animal but A and the root,
 * one through each parent, (1/2)^(animals on both paths, A once, the root not counted) x (1 + F of A), weighted by the
 * probability that all parents on both paths are the true ones. Wright 1922, The American Naturalist 56:330-338.
 */
function partOfInbreeding(graph: PedigreeGraph, id: string): number | null {
  const paths = pathsDown(graph, id);
  if (paths === null) return null;
  const factor = 1 + (graph.individuals.get(id)?.inbreeding ?? 0);
  let sum = 0;
  for (let i = 0; i < paths.length; i++)
    for (let j = i + 1; j < paths.length; j++) {
      const a = paths[i];
      const b = paths[j];
      if (!a || !b || !disjoint(a, b)) continue;
      const animals = a.length + b.length - 1;
      sum += factor * 0.5 ** animals * jointProbability(graph, a, b);
    }
  return sum;
}

function disjoint(a: Step[], b: Step[]): boolean {
  const inner = new Set(a.slice(0, -1).map((step) => step.young));
  const parentA = a[a.length - 1]?.link.parent;
  const parentB = b[b.length - 1]?.link.parent;
  return parentA !== parentB && !b.slice(0, -1).some((step) => inner.has(step.young));
}

/** Probability that every parent on two paths is a true one; parents of one clutch are weighed together. */
function jointProbability(graph: PedigreeGraph, a: Step[], b: Step[]): number {
  const byClutch = new Map<string, ParentLink[]>();
  for (const { link } of [...a, ...b]) {
    const links = byClutch.get(link.clutch) ?? [];
    if (!links.some((one) => one.parent === link.parent)) byClutch.set(link.clutch, [...links, link]);
  }
  let product = 1;
  for (const [clutch, [first, second, third]] of byClutch) {
    if (third) return 0;
    if (!first) continue;
    product *= second ? couple(graph, clutch, first, second) : first.probability;
  }
  return product;
}

/** Probability that two animals are the two parents of a clutch. */
function couple(graph: PedigreeGraph, clutch: string, one: ParentLink, other: ParentLink): number {
  const pairs = graph.clutches.get(clutch)?.pairs;
  if (pairs && pairs.length > 0) {
    const both = pairs.filter(({ a, b }) => [a, b].includes(one.parent) && [a, b].includes(other.parent));
    return both.reduce((sum, pair) => sum + pair.probability, 0);
  }
  if (one.role === other.role && one.role !== 'either') return 0;
  return one.probability * other.probability;
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
