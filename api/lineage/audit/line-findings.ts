import type { FlagCode, FlagSeverity } from '../../../shared/vocabulary.ts';
import { auditLabel } from '../../provenance/flags.ts';
import type { Claimant, LabelFindings, NamedRecord, SharedRecord } from '../../provenance/label-findings.ts';
import type { RegisterGraph } from '../register-graph.ts';
import type { RecordNames } from '../record-names.ts';
import type { LineView } from '../../register/lines/line.view.ts';
import type { CarriedFlag, CauseOfFlag } from './audit-line.ts';
import type { AuditParts } from './audit-view.ts';
import { claimantOf } from './founder-verdicts.ts';
import { say } from '../../platform/say.ts';

/** What a flag weighs, and what would clear it. */
export interface FlagWords {
  readonly severity: FlagSeverity;
  readonly clearedBy: string;
}

/** Severity and remedy of the flags of a line, by the same rules that judge one animal, held against all that its members descend from. */
export function flagWords(parts: Omit<AuditParts, 'keepers'>): (flag: CarriedFlag) => FlagWords {
  const findings = findingsOf(parts);
  return (flag) => {
    const judged = { ...findings, claimants: claimantsOf(flag, parts) };
    const found = auditLabel(judged).find(({ code }) => code === flag.code);
    return found ?? { severity: 'weakens', clearedBy: say`See the flags of the animals that carry it.` };
  };
}

/** A record beyond those that a flag names: it is only counted. */
const unnamed = { id: '', name: '', isPrivate: false };

function findingsOf({ line, audit, names, facts }: Omit<AuditParts, 'keepers'>): Omit<LabelFindings, 'claimants'> {
  const flagOf = (code: FlagCode) => audit.flags.find((flag) => flag.code === code);
  const causes = (code: FlagCode): SharedRecord[] => {
    const flag = flagOf(code);
    const named = (flag?.causes ?? []).map((cause) => ({ ...recordOf(cause, line, names), share: cause.share }));
    const further = (flag?.causeCount ?? 0) - named.length;
    return [...named, ...Array.from({ length: further }, () => ({ ...unnamed, kind: 'source' as const, share: 0 }))];
  };
  const labels = causes('mixed-labels');
  return {
    label: { name: line.name, kind: line.labelKind },
    // a flag that only the dead carry is judged too, so it is not the traced share of the living that decides
    tracedShare: flagOf('label-beyond-evidence') ? { expected: 0, least: 0 } : { expected: 1, least: 1 },
    untraced: causes('label-beyond-evidence'),
    labelCount: labels.length > 0 ? Math.max(2, labels.length) : 0,
    founderLabels: labels.map((source) => ({ label: null, share: source.share, sources: [source] })),
    gaps: causes('origin-gap').map((gap) =>
      gap.kind === 'clutch' ? { ...gap, name: say`an unknown parent of the ${gap.name}` } : gap,
    ),
    outsiders: causes('outside-line').map((outsider) => ({ ...outsider, line: '' })),
    crossedLines: [],
    uncertainClutches: causes('parents-uncertain'),
    isProposalUncertain: false,
    relabelled: causes('label-changed').map((record) => ({ ...record, from: null })),
    nativeRange: facts.nativeRange,
  };
}

/**
 * Those whose claims cause a flag, also beyond those that it names, since how grave it is may follow from any; and the line, since what is
 * claimed of it stands in for what is not claimed of them.
 */
function claimantsOf(
  { causes, furtherClaims }: CarriedFlag,
  { snapshot: { graph }, line, names, facts }: Omit<AuditParts, 'keepers'>,
): Claimant[] {
  const claimants = ({ kind, number }: CauseOfFlag, record: NamedRecord): Claimant[] =>
    kind === 'clutch' || kind === 'line' ? [] : [{ ...claimantOf(graph, facts, kind, number), record }];
  return [
    ...causes.flatMap((cause) => claimants(cause, recordOf(cause, line, names))),
    ...furtherClaims.flatMap((cause) => claimants(cause, { ...unnamed, kind: cause.kind })),
    claimantOf(
      graph,
      facts,
      'line',
      graph.lines.findIndex(({ id }) => id === line.id),
    ),
  ];
}

/** A record that causes a flag, by name. */
export function recordOf({ kind, number }: CauseOfFlag, line: LineView, names: RecordNames): NamedRecord {
  return kind === 'line' ? { kind, id: line.id, name: line.name, isPrivate: false } : names.record(kind, number);
}

/** Name of the line of an animal; null where whoever asks may not see the animal. */
export function lineTold(graph: RegisterGraph, names: RecordNames, individual: number): string | null {
  if (names.idOf('individual', individual).isPrivate) return null;
  return graph.lines[graph.lineOf[individual] ?? -1]?.name ?? null;
}
