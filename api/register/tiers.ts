import type { EntityManager } from 'typeorm';
import { LoopProblem } from '../platform/problem.ts';
import {
  linksBelowClutches,
  linksBelowIndividuals,
  nameNodes,
  raise,
  tiersOf,
  type Node,
  type NodeKind,
} from './tier.queries.ts';

interface Visit {
  readonly node: Node;
  tier: number;
  /** Through which node it was reached; null for the one that began it. */
  from: Visit | null;
}

/**
 * Raises the rank in time of an animal or a clutch to at least `tier`, and of everything below it as far as needed, so that a
 * new parent or origin of that rank fits above it. `above` are the nodes that are about to be put above it: where one of them
 * lies below, the change would close a loop and is refused with 409, the members of the loop named.
 *
 * Every node of a path down to such a parent ranks lower than it should, so the walk cannot miss it. Cost: one question a
 * generation for what has to rise; nothing where the rank already fits. Callers hold the lock of the lineage.
 */
export async function raiseTiers(
  manager: EntityManager,
  start: Node,
  tier: number,
  above: readonly Node[],
): Promise<void> {
  const [current] = await tiersOf(manager, start.kind, [start.id]);
  if (current && current.tier >= tier) return;
  const forbidden = new Set(above.map(keyOf));
  const visits = new Map<string, Visit>();
  const first: Visit = { node: start, tier, from: null };
  visits.set(keyOf(start), first);
  let frontier: Visit[] = [first];
  while (frontier.length > 0) {
    const next = new Set<Visit>();
    for (const link of await linksBelow(manager, frontier)) {
      const parent = visits.get(keyOf(link.parent));
      if (!parent || link.tier > parent.tier) continue;
      const visit = reach(visits, link.child, parent);
      if (forbidden.has(keyOf(link.child))) throw await loopThrough(manager, visit);
      next.add(visit);
    }
    frontier = [...next];
  }
  await raiseDeepestFirst(manager, visits);
}

function reach(visits: Map<string, Visit>, node: Node, parent: Visit): Visit {
  const tier = parent.tier + 1;
  const known = visits.get(keyOf(node));
  if (!known) {
    const visit = { node, tier, from: parent };
    visits.set(keyOf(node), visit);
    return visit;
  }
  if (known.tier < tier) {
    known.tier = tier;
    known.from = parent;
  }
  return known;
}

async function linksBelow(
  manager: EntityManager,
  frontier: readonly Visit[],
): Promise<{ parent: Node; child: Node; tier: number }[]> {
  const idsOf = (kind: NodeKind): string[] =>
    frontier.filter((visit) => visit.node.kind === kind).map((visit) => visit.node.id);
  return [
    ...(await linksBelowIndividuals(manager, idsOf('individual'))),
    ...(await linksBelowClutches(manager, idsOf('clutch'))),
  ];
}

/** A child must rank above its parent at every moment, so the deepest go up first. */
async function raiseDeepestFirst(manager: EntityManager, visits: ReadonlyMap<string, Visit>): Promise<void> {
  const levels = new Map<number, Visit[]>();
  for (const visit of visits.values()) levels.set(visit.tier, [...(levels.get(visit.tier) ?? []), visit]);
  for (const [tier, level] of [...levels].sort(([a], [b]) => b - a))
    for (const kind of ['individual', 'clutch'] as const)
      await raise(
        manager,
        kind,
        level.filter((visit) => visit.node.kind === kind).map((visit) => visit.node.id),
        tier,
      );
}

async function loopThrough(manager: EntityManager, last: Visit): Promise<LoopProblem> {
  const path: Node[] = [];
  for (let visit: Visit | null = last; visit; visit = visit.from) path.unshift(visit.node);
  return new LoopProblem(await nameNodes(manager, path));
}

const keyOf = (node: Node): string => `${node.kind} ${node.id}`;
