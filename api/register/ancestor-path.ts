import type { EntityManager } from 'typeorm';
import { linksAbove, nameNodes, tiersOf, type Node } from './tier.queries.ts';

interface Step {
  readonly node: Node;
  /** The step below it. */
  readonly below: Step | null;
}

/**
 * The names along the shortest way from one animal down to another that descends from it, clutches included; null where neither
 * descends from the other. Walks up from the later one, one question a generation, past nothing that ranks before the earlier one.
 */
export async function pathOfDescent(manager: EntityManager, one: string, other: string): Promise<string[] | null> {
  const [earlier, later] = (await tiersOf(manager, 'individual', [one, other])).sort((a, b) => a.tier - b.tier);
  if (!earlier || !later || earlier.tier === later.tier) return null;
  const seen = new Set([later.id]);
  let steps: Step[] = [{ node: { kind: 'individual', id: later.id }, below: null }];
  while (steps.length > 0) {
    const belowOf = new Map(steps.map((step) => [step.node.id, step]));
    const next: Step[] = [];
    for (const { parent, child, tier } of await linksAbove(
      manager,
      steps.map(({ node }) => node),
    )) {
      if (tier < earlier.tier || seen.has(parent.id)) continue;
      seen.add(parent.id);
      const step = { node: parent, below: belowOf.get(child.id) ?? null };
      if (parent.id === earlier.id) return nameNodes(manager, nodesFrom(step));
      next.push(step);
    }
    steps = next;
  }
  return null;
}

function nodesFrom(top: Step): Node[] {
  const nodes: Node[] = [];
  for (let step: Step | null = top; step; step = step.below) nodes.push(step.node);
  return nodes;
}
