import type { StandingShare } from '$lib/api/types.ts';
import type { IndividualNode, PedigreeEdge, PedigreeNode, PedigreeView } from './pedigree-view.ts';

/** Id of the young that do not exist yet; no record has it. */
export const proposedId = 'proposed-young';

/**
 * The pedigree that young of two animals would have: both pedigrees laid over each other, with a clutch laid on `laid`
 * (a calendar date) below the two. An animal that stands in both is there once, with whichever of the two says more.
 */
export function proposedYoung(
  one: PedigreeView,
  other: PedigreeView,
  laid: string,
  standings: StandingShare[],
): PedigreeView {
  const nodes = new Map<string, PedigreeNode>();
  for (const node of [...one.nodes, ...other.nodes]) {
    const known = nodes.get(node.id);
    if (!known || (known.kind === 'individual' && known.hasMoreAncestors)) nodes.set(node.id, node);
  }
  const edges = new Map<string, PedigreeEdge>();
  for (const edge of [...one.edges, ...other.edges]) edges.set(`${edge.from} ${edge.to}`, edge);
  const clutch = `${proposedId}-clutch`;
  for (const [parent, role] of [[one.root, 'sire'] as const, [other.root, 'dam'] as const])
    edges.set(`${parent} ${clutch}`, { from: parent, to: clutch, kind: 'parent', role, probability: 1 });
  edges.set(`${clutch} ${proposedId}`, { from: clutch, to: proposedId, kind: 'young' });
  nodes.set(clutch, {
    kind: 'clutch',
    id: clutch,
    title: 'the clutch in question',
    laid,
    earliest: laid,
    latest: laid,
  });
  nodes.set(proposedId, youngNode(standings));
  return {
    root: proposedId,
    nodes: [...nodes.values()],
    edges: [...edges.values()],
    truncated: one.truncated || other.truncated,
  };
}

function youngNode(standings: StandingShare[]): IndividualNode {
  return {
    kind: 'individual',
    id: proposedId,
    number: 'not yet laid',
    code: 'the young',
    sex: 'unsexed',
    status: 'unknown',
    unknownOrigin: false,
    hasMoreAncestors: false,
    standings,
    inbreeding: null,
  };
}
