import { DirectedGraph } from 'graphology';
import { parentsOf, type RegisterGraph } from './register-graph.ts';

/** Most nodes and most edges of one chart: what a page can draw and a reader can follow. */
export const CHART_NODES_MOST = 5000;
const CHART_EDGES_MOST = 20_000;

/** A node of the lineage by its kind and its dense number. */
interface ChartNode {
  readonly kind: 'individual' | 'clutch' | 'source';
  readonly number: number;
}

interface ChartEdge {
  readonly kind: 'parent' | 'young' | 'founder';
  /** Of a parent only. */
  readonly role?: 'sire' | 'dam' | 'either';
  /** Of a parent only: the odds that it is one, above 0, at most 1. */
  readonly probability?: number;
}

/** The ancestors of one animal as a graph, each node once, keyed by the ids of the records; edges point down in time. */
export interface AncestorChart {
  readonly graph: DirectedGraph<ChartNode, ChartEdge>;
  /** Whether the chart had to end before the generations that were asked for, because it grew too large. */
  readonly truncated: boolean;
}

/** A recorded candidate parent of a clutch. */
export interface Link {
  readonly parent: number;
  readonly role: 'sire' | 'dam' | 'either';
  readonly probability: number;
}

/**
 * Builds the chart of an animal's ancestors, generation by generation, so that each appears at its least distance. A clutch
 * comes in with all its recorded candidates or not at all; a source comes in with its founders. Work and memory are bounded
 * by the chart's limits, whatever the size of the register.
 *
 * @param generations how many generations of parents to go back, 1 or more
 */
export function ancestorChart(register: RegisterGraph, root: number, generations: number): AncestorChart {
  const graph = new DirectedGraph<ChartNode, ChartEdge>();
  let truncated = false;
  addIndividual(graph, register, root);
  let present = [root];
  for (let generation = 1; generation <= generations && present.length > 0; generation++) {
    const parents: number[] = [];
    for (const individual of present) {
      const clutch = register.pedigree.clutchOf[individual] ?? -1;
      if (clutch < 0) continue;
      if (!graph.hasNode(register.clutches.at(clutch)) && !addClutch(graph, register, clutch, parents))
        truncated = true;
    }
    present = parents;
  }
  linkYoung(graph, register);
  return { graph, truncated };
}

/** Adds an animal, and the source it came from; gives whether it is new. */
function addIndividual(graph: DirectedGraph<ChartNode, ChartEdge>, register: RegisterGraph, number: number): boolean {
  const id = register.individuals.at(number) ?? '';
  if (graph.hasNode(id)) return false;
  graph.addNode(id, { kind: 'individual', number });
  const source = register.pedigree.sourceOf[number] ?? -1;
  if (source >= 0) {
    const sourceId = register.sources[source]?.id ?? '';
    if (!graph.hasNode(sourceId)) graph.addNode(sourceId, { kind: 'source', number: source });
    graph.addDirectedEdge(sourceId, id, { kind: 'founder' });
  }
  return true;
}

/** Adds a clutch with its parents, new ones to `parents` too; gives false, and adds nothing, where there is no room. */
function addClutch(
  graph: DirectedGraph<ChartNode, ChartEdge>,
  register: RegisterGraph,
  clutch: number,
  parents: number[],
): boolean {
  const links = linksTo(register, clutch);
  // each parent may bring its source
  if (graph.order + 1 + 2 * links.length > CHART_NODES_MOST || graph.size + 2 * links.length > CHART_EDGES_MOST)
    return false;
  const id = register.clutches.at(clutch) ?? '';
  graph.addNode(id, { kind: 'clutch', number: clutch });
  for (const { parent, role, probability } of links) {
    if (addIndividual(graph, register, parent)) parents.push(parent);
    graph.addDirectedEdge(register.individuals.at(parent), id, { kind: 'parent', role, probability });
  }
  return true;
}

/** The recorded candidates of a clutch, each once; frogs nobody knows have no node. */
export function linksTo(register: RegisterGraph, clutch: number): Link[] {
  const recorded = parentsOf(register, clutch);
  if (recorded.mode === 'lists')
    return [
      ...recorded.sires.map(({ individual, probability }): Link => ({ parent: individual, role: 'sire', probability })),
      ...recorded.dams.map(({ individual, probability }): Link => ({ parent: individual, role: 'dam', probability })),
    ].filter(({ parent }) => parent >= 0);
  const odds = new Map<number, number>();
  for (const { a, b, probability } of recorded.pairs)
    for (const parent of [a, b]) odds.set(parent, (odds.get(parent) ?? 0) + probability);
  return [...odds].map(([parent, probability]) => ({ parent, role: 'either', probability: Math.min(1, probability) }));
}

/** Joins every animal to its clutch where that is in the chart: clutch-mates find it there even at the last generation. */
function linkYoung(graph: DirectedGraph<ChartNode, ChartEdge>, register: RegisterGraph): void {
  const individuals = graph.filterNodes((_, { kind }) => kind === 'individual');
  for (const id of individuals) {
    const clutch = register.pedigree.clutchOf[graph.getNodeAttribute(id, 'number')] ?? -1;
    const clutchId = register.clutches.at(clutch);
    if (clutchId !== undefined && graph.hasNode(clutchId)) graph.addDirectedEdge(clutchId, id, { kind: 'young' });
  }
}
