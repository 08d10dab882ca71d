import type { FlagCode, FlagSeverity, LabelKind } from '../../../shared/vocabulary.ts';
import { auditLabel } from '../../provenance/flags.ts';
import type { Claimant, LabelFindings, NamedRecord, SharedRecord } from '../../provenance/label-findings.ts';
import type { RegisterGraph } from '../register-graph.ts';
import type { RecordNames } from '../record-names.ts';
import type { LineAudit } from './audit-line.ts';

/** What a flag weighs, and what would clear it. */
export interface FlagWords {
  readonly severity: FlagSeverity;
  readonly clearedBy: string;
}

/** Severity and remedy of the flags of a line, by the same rules that judge one animal, held against all that its members descend from. */
export function flagWords(
  graph: RegisterGraph,
  label: { readonly name: string; readonly kind: LabelKind },
  audit: LineAudit,
  names: RecordNames,
): (code: FlagCode) => FlagWords {
  const found = new Map(auditLabel(findingsOf(graph, label, audit, names)).map((flag) => [flag.code, flag]));
  return (code) => found.get(code) ?? { severity: 'weakens', clearedBy: 'See the flags of the animals that carry it.' };
}

function findingsOf(
  graph: RegisterGraph,
  label: LabelFindings['label'],
  audit: LineAudit,
  names: RecordNames,
): LabelFindings {
  const causes = (code: FlagCode): SharedRecord[] =>
    (audit.flags.find((flag) => flag.code === code)?.causes ?? []).map(({ kind, number, share }) => ({
      ...names.record(kind, number),
      share,
    }));
  const labels = causes('mixed-labels');
  return {
    label,
    tracedShare: { expected: audit.traced.expected ?? 0, least: audit.traced.least ?? 0 },
    untraced: causes('label-beyond-evidence'),
    labelCount: labels.length > 0 ? Math.max(2, labels.length) : 0,
    founderLabels: labels.map((source) => ({ label: null, share: source.share, sources: [source] })),
    gaps: causes('origin-gap').map((gap) =>
      gap.kind === 'clutch' ? { ...gap, name: `an unknown parent of the ${gap.name}` } : gap,
    ),
    outsiders: (audit.flags.find(({ code }) => code === 'outside-line')?.causes ?? []).map(({ number, share }) => ({
      ...names.record('individual', number),
      share,
      line: lineTold(graph, names, number) ?? 'a line that is not told',
    })),
    crossedLines: [],
    uncertainClutches: causes('parents-uncertain').map((clutch): NamedRecord => clutch),
    isProposalUncertain: false,
    claimants: (audit.flags.find(({ code }) => code === 'disputed-claim')?.causes ?? []).flatMap(
      ({ kind, number }): Claimant[] =>
        kind === 'clutch'
          ? []
          : [{ record: names.record(kind, number), claims: graph.claims[kind].get(number) ?? [], source: null }],
    ),
    relabelled: [],
    nativeRange: [],
  };
}

/** Name of the line of an animal; null where whoever asks may not see the animal. */
export function lineTold(graph: RegisterGraph, names: RecordNames, individual: number): string | null {
  if (names.idOf('individual', individual).isPrivate) return null;
  return graph.lines[graph.lineOf[individual] ?? -1]?.name ?? null;
}
