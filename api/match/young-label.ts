import { toFindings, type LabelEvidence } from '../lineage/label-evidence.ts';
import type { LabelFacts } from '../lineage/label-facts.queries.ts';
import type { LineageSnapshot } from '../lineage/lineage-snapshot.ts';
import type { RecordNames } from '../lineage/record-names.ts';
import { auditLabel } from '../provenance/flags.ts';
import type { YoungLabelView } from './mates/mates.view.ts';

/** The label of young of which nothing can be told. */
export const noLabel: YoungLabelView = { shares: [], tracedShare: { expected: 0, least: 0 }, flags: [] };

/** The label that young would carry, with what an audit would hold against it. */
export function youngLabel(
  snapshot: LineageSnapshot,
  label: LabelEvidence,
  facts: LabelFacts,
  names: RecordNames,
): YoungLabelView {
  const flags = auditLabel(toFindings(snapshot, label, facts, names)).map(({ code, severity }) => ({ code, severity }));
  return { shares: [...label.standings], tracedShare: label.tracedShare, flags };
}
