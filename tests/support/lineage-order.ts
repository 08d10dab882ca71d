import type { DataSource } from 'typeorm';

interface Edge {
  readonly parent: string;
  readonly child: string;
}

/** Every edge of the lineage: from possible parents to clutches, from clutches to young. */
async function readEdges(dataSource: DataSource): Promise<Edge[]> {
  return dataSource.query<Edge[]>(`
    select individual_id as parent, clutch_id as child from clutch_candidate where individual_id is not null
    union all select a_id, clutch_id from clutch_pair union all select b_id, clutch_id from clutch_pair
    union all select clutch_id, id from individual where clutch_id is not null`);
}

/**
 * The nodes that lie on a loop or below one, by taking away whatever has no parent left until nothing changes: empty for a
 * lineage without loops. It looks at the edges alone and knows nothing of ranks.
 */
export async function nodesInLoops(dataSource: DataSource): Promise<string[]> {
  const edges = await readEdges(dataSource);
  const left = new Set(edges.flatMap((edge) => [edge.parent, edge.child]));
  for (let hasChanged = true; hasChanged;) {
    hasChanged = false;
    const withParent = new Set(edges.filter((edge) => left.has(edge.parent)).map((edge) => edge.child));
    for (const node of left)
      if (!withParent.has(node)) {
        left.delete(node);
        hasChanged = true;
      }
  }
  return [...left];
}
