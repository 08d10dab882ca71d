import type { ClutchNode, IndividualNode, PedigreeView, SourceNode } from './pedigree-view.ts';

/** A parent as seen from a clutch; `probability` that this animal is the parent in its role. */
export interface ParentLink {
  parent: string;
  clutch: string;
  role: 'sire' | 'dam' | 'either';
  probability: number;
}

/** The pedigree view indexed for walking, every list in an order that does not depend on the input's. */
export interface PedigreeGraph {
  root: string;
  individuals: Map<string, IndividualNode>;
  clutches: Map<string, ClutchNode>;
  sources: Map<string, SourceNode>;
  /** Clutch id to its parents: sires, then either, then dams; within these by probability and id. */
  parentsOf: Map<string, ParentLink[]>;
  /** Clutch id to the young of it that stand in the view. */
  youngOf: Map<string, string[]>;
  /** Individual id to the clutch it hatched from. */
  birthClutch: Map<string, string>;
  /** Individual id to the clutches it may be a parent of. */
  clutchesOf: Map<string, ParentLink[]>;
  /** Individual id to its source. */
  sourceOf: Map<string, string>;
  foundersOf: Map<string, string[]>;
}

const roleOrder = { sire: 0, either: 1, dam: 2 };

const byId = (a: { id: string }, b: { id: string }) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

function push<T>(map: Map<string, T[]>, key: string, value: T): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}

/**
 * Indexes a pedigree view. Nodes and links are sorted by id first, so that the same pedigree gives the same chart
 * whatever order it came in. Links to nodes that the view leaves out are ignored.
 */
export function readPedigree(view: PedigreeView): PedigreeGraph {
  const graph: PedigreeGraph = {
    root: view.root,
    individuals: new Map(),
    clutches: new Map(),
    sources: new Map(),
    parentsOf: new Map(),
    youngOf: new Map(),
    birthClutch: new Map(),
    clutchesOf: new Map(),
    sourceOf: new Map(),
    foundersOf: new Map(),
  };
  for (const node of [...view.nodes].sort(byId)) {
    if (node.kind === 'individual') graph.individuals.set(node.id, node);
    else if (node.kind === 'clutch') graph.clutches.set(node.id, node);
    else graph.sources.set(node.id, node);
  }
  const ends = (edge: PedigreeView['edges'][number]): string => `${edge.from} ${edge.to} ${edge.role ?? ''}`;
  const edges = [...view.edges].sort((a, b) => (ends(a) < ends(b) ? -1 : 1));
  for (const edge of edges) addEdge(graph, edge);
  for (const links of graph.parentsOf.values())
    links.sort(
      (a, b) =>
        roleOrder[a.role] - roleOrder[b.role] || b.probability - a.probability || (a.parent < b.parent ? -1 : 1),
    );
  return graph;
}

function addEdge(graph: PedigreeGraph, edge: PedigreeView['edges'][number]): void {
  const { individuals, clutches, sources } = graph;
  if (edge.kind === 'parent' && individuals.has(edge.from) && clutches.has(edge.to)) {
    const link = {
      parent: edge.from,
      clutch: edge.to,
      role: edge.role ?? 'either',
      probability: edge.probability ?? 1,
    } as const;
    push(graph.parentsOf, edge.to, link);
    push(graph.clutchesOf, edge.from, link);
  } else if (edge.kind === 'young' && clutches.has(edge.from) && individuals.has(edge.to)) {
    push(graph.youngOf, edge.from, edge.to);
    graph.birthClutch.set(edge.to, edge.from);
  } else if (edge.kind === 'founder' && sources.has(edge.from) && individuals.has(edge.to)) {
    push(graph.foundersOf, edge.from, edge.to);
    graph.sourceOf.set(edge.to, edge.from);
  }
}

/** The parents an animal may have, empty when its clutch or its parents are not in the view. */
export function parentLinks(graph: PedigreeGraph, individual: string): ParentLink[] {
  const clutch = graph.birthClutch.get(individual);
  return clutch === undefined ? [] : (graph.parentsOf.get(clutch) ?? []);
}

/** All animals of the view, each after all of its possible parents; throws on a loop, which no register can hold. */
export function parentsFirst(graph: PedigreeGraph): string[] {
  const order: string[] = [];
  const state = new Map<string, 'open' | 'done'>();
  const visit = (id: string): void => {
    if (state.get(id) === 'done') return;
    if (state.get(id) === 'open') throw new Error(`The pedigree holds a loop through ${id}.`);
    state.set(id, 'open');
    for (const link of parentLinks(graph, id)) visit(link.parent);
    state.set(id, 'done');
    order.push(id);
  };
  visit(graph.root);
  for (const id of graph.individuals.keys()) visit(id);
  return order;
}
