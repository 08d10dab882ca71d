import type { FounderStandings } from '../../lineage/founder-standings.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { sourceView } from '../../lineage/origin-views.ts';
import type { RecordNames } from '../../lineage/record-names.ts';
import type { BeginningView } from './carrier.view.ts';

/** A founder or a source by dense numbers; −1 for none. */
export interface Beginning {
  readonly founder: number;
  readonly source: number;
}

/** A founder with its source, or a source, by name; what may not be seen by what stands for it. */
export function beginningView(
  snapshot: LineageSnapshot,
  standings: FounderStandings,
  { founder, source }: Beginning,
  names: RecordNames,
): BeginningView {
  const ref = founder < 0 ? null : names.refOf(founder);
  // where a private founder came from is not told either
  const isTold = source >= 0 && ref?.isPrivate !== true;
  return { founder: ref, source: isTold ? sourceView(snapshot, source, standings.ofSource(source), names) : null };
}
