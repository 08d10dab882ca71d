import { eventTimes, type EventTimes } from '../ancestors/event-times.ts';
import { parentLinks, parentsFirst, readPedigree, type PedigreeGraph } from '../ancestors/pedigree-graph.ts';
import type { PedigreeView } from '../ancestors/pedigree-view.ts';
import type { ChartDescendant, Family } from './families.ts';
import type { FamilyTree } from './family-tree.ts';

/** When everything of a chart of descendants happened, and how much of the first animal is in it. */
export interface FamilyTimes {
  /** Laying of each clutch, by id, and hatching of the first animal, in decimal years; each after its parents. */
  clutches: ReadonlyMap<string, number>;
  root: number;
  /** False where no date is known at all: then the years mean order only. */
  dated: boolean;
  /** Expected part of the first animal in the genome of each, 0 to 1, by its id and by the id of a clutch for all its young. */
  shares: ReadonlyMap<string, number>;
}

/** Times by the rules of the chart of ancestors: dates stand, vague ones give way to the order, missing ones are found between others. */
export function familyTimes(tree: FamilyTree): FamilyTimes {
  const graph = readPedigree(asPedigree(tree));
  const times = eventTimes(graph);
  return {
    clutches: new Map([...times.clutches].map(([id, { year }]) => [id, year])),
    root: yearOfRoot(times, graph.root),
    dated: times.dated,
    shares: sharesDown(graph),
  };
}

function yearOfRoot({ founders }: EventTimes, root: string): number {
  return founders.get(root)?.year ?? 0;
}

/** Stands for the young of a clutch, whether any are drawn or not. */
const anyYoung = (clutch: string): string => `young of ${clutch}`;

function asPedigree({ root, branches, clutches }: FamilyTree): PedigreeView {
  const view: PedigreeView = { root: root.animal.id, nodes: [], edges: [], truncated: false };
  const add = (id: string, { earliest, latest }: Pick<ChartDescendant, 'earliest' | 'latest'>): void => {
    const untold = { sex: 'unsexed', status: 'unknown', unknownOrigin: false, hasMoreAncestors: false } as const;
    const bounds = { earliest: earliest ?? null, latest: latest ?? null };
    view.nodes.push({ kind: 'individual', id, number: null, ...untold, ...bounds, standings: [] });
  };
  const join = (parent: string, { clutch }: Family): void => {
    view.edges.push({ from: parent, to: clutch.id, kind: 'parent', probability: clutch.probability });
  };
  for (const { animal } of branches) add(animal.id, animal === root.animal ? animal : {});
  for (const { family, members } of clutches) {
    const { id, title, earliest, latest } = family.clutch;
    view.nodes.push({ kind: 'clutch', id, title, earliest: earliest ?? null, latest: latest ?? null });
    add(anyYoung(id), {});
    for (const young of [anyYoung(id), ...members.map(({ animal }) => animal.id)])
      view.edges.push({ from: id, to: young, kind: 'young' });
  }
  for (const { animal, clutches: own } of branches) for (const { family } of own) join(animal.id, family);
  for (const { others } of clutches) for (const { parent, family } of others) join(parent.animal.id, family);
  return view;
}

function sharesDown(graph: PedigreeGraph): Map<string, number> {
  const shares = new Map([[graph.root, 1]]);
  for (const id of parentsFirst(graph)) {
    if (id === graph.root) continue;
    const share = parentLinks(graph, id).reduce(
      (sum, { parent, probability }) => sum + ((shares.get(parent) ?? 0) * probability) / 2,
      0,
    );
    shares.set(id, share);
    const clutch = graph.birthClutch.get(id);
    if (clutch !== undefined) shares.set(clutch, share);
  }
  return shares;
}
