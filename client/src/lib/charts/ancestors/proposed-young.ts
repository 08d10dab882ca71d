import type { StandingShare } from '$lib/api/types.ts';
import type { IndividualNode, PedigreeEdge, PedigreeNode, PedigreeView } from './pedigree-view.ts';

/** Id of the young that do not exist yet; no record has it. */
export const proposedId = 'proposed-young';

/**
 * The pedigree that young of two animals would have: both pedigrees laid over each other, with a clutch laid on `laid`
 * (a calendar date) below the two. An animal that stands in both is there once, with whichever of the two says more; private
 * ones cannot be recognised and stay apart.
 */
export function proposedYoung(
  one: PedigreeView,
  other: PedigreeView,
  laid: string,
  standings: StandingShare[],
): PedigreeView {
  const [sire, dam] = [withOwnPrivates(one, 'sire'), withOwnPrivates(other, 'dam')];
  const nodes = new Map<string, PedigreeNode>();
  for (const node of [...sire.nodes, ...dam.nodes]) {
    const known = nodes.get(node.id);
    if (!known || (known.kind === 'individual' && known.hasMoreAncestors)) nodes.set(node.id, node);
  }
  const edges = new Map<string, PedigreeEdge>();
  for (const edge of [...sire.edges, ...dam.edges]) edges.set(`${edge.from} ${edge.to}`, edge);
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

/** "private-1" is another animal in each answer. */
function withOwnPrivates(view: PedigreeView, side: string): Pick<PedigreeView, 'nodes' | 'edges'> {
  const own = (id: string): string => (id.startsWith('private-') ? `${id} of the ${side}` : id);
  const nodes = view.nodes.map((node) => {
    if (node.kind !== 'clutch' || !node.pairs) return { ...node, id: own(node.id) };
    const pairs = node.pairs.map((pair) => ({ ...pair, a: own(pair.a), b: own(pair.b) }));
    return { ...node, id: own(node.id), pairs };
  });
  return { nodes, edges: view.edges.map((edge) => ({ ...edge, from: own(edge.from), to: own(edge.to) })) };
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
