import { kinshipRangesWith } from '../../lineage/kernel/kinship-with.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import type { GroupRowView } from './groups.view.ts';

/** F of the young of every sire with every dam, each with its range: one row for each of the males, the females in their order. */
export function kinshipRows(
  { graph, inbreeding }: LineageSnapshot,
  males: readonly number[],
  females: readonly number[],
): GroupRowView[] {
  const dams = Int32Array.from(females);
  return males.map((male) => ({ inbreeding: kinshipRangesWith(graph.pedigree, inbreeding, male, dams) }));
}
