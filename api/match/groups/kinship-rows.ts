import { kinshipRangesWith } from '../../lineage/kernel/kinship-with.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { restsOn } from '../../lineage/young-inbreeding.ts';
import type { GroupRowView } from './groups.view.ts';

/** F of the young of every sire with every dam, each with its range and depth: one row for each of the males, the females in their order. */
export function kinshipRows(
  snapshot: LineageSnapshot,
  males: readonly number[],
  females: readonly number[],
): GroupRowView[] {
  const { graph, inbreeding } = snapshot;
  const dams = Int32Array.from(females);
  return males.map((male) => ({
    inbreeding: kinshipRangesWith(graph.pedigree, inbreeding, male, dams).map((range, place) =>
      restsOn(snapshot, male, females[place] ?? -1, range),
    ),
  }));
}
