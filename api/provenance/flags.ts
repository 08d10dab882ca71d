import type { FlagCode, FlagSeverity } from '../../shared/vocabulary.ts';
import type { LabelFindings, NamedRecord } from './label-findings.ts';

/** What the audit holds against a label, what caused it, and what would clear it. */
export interface Flag {
  readonly code: FlagCode;
  readonly severity: FlagSeverity;
  readonly detail: string;
  readonly records: readonly NamedRecord[];
  readonly clearedBy: string;
}

/** Most records that one flag names; `detail` tells how many there are. */
export const FLAG_RECORDS_MOST = 50;

/** Shares are sums of many halves: what misses 1 by less than this is whole. */
const ROUNDING = 1e-9;

type Rule = (findings: LabelFindings) => Flag | null;

/** Holds the findings of one animal against every rule that follows from the lineage alone; the gravest flags first. */
export function auditLabel(findings: LabelFindings): Flag[] {
  return rules.map((rule) => rule(findings)).filter((flag) => flag !== null);
}

/** A label that names a place, while not all of the animal comes from founders whose own papers name that place. */
const labelBeyondEvidence: Rule = ({ label, tracedShare, untraced }) => {
  if (label?.kind !== 'locality' || tracedShare.least >= 1 - ROUNDING) return null;
  const { expected, least } = tracedShare;
  const atLeast = expected - least > ROUNDING ? `, and it may be as little as ${percent(least)}` : '';
  return {
    code: 'label-beyond-evidence',
    severity: 'weakens',
    detail:
      expected > ROUNDING
        ? `“${label.name}” names a place. ${percent(expected)} comes from founders whose papers name it too${atLeast}.`
        : `“${label.name}” names a place, but the register holds no papers that name it for any of its founders.`,
    records: named(untraced),
    clearedBy: `Papers that name ${label.name} for ${listed(untraced)}: a permit or a field note, or two papers that agree.`,
  };
};

/** Founders that came in under different labels. */
const mixedLabels: Rule = ({ label, labelCount, founderLabels }) => {
  if (labelCount < 2) return null;
  const parts = founderLabels.map(({ label, share }) =>
    label === null ? `labels of private sources ${percent(share)}` : `“${label}” ${percent(share)}`,
  );
  return {
    code: 'mixed-labels',
    severity: severityUnder(label),
    detail: `Its founders came in under ${labelCount} different labels: ${parts.slice(0, 6).join(', ')}${parts.length > 6 ? ', …' : ''}.`,
    records: named(founderLabels.flatMap(({ sources }) => sources)),
    clearedBy: 'Papers that show these labels to mean the same; or else keep its young under no single label.',
  };
};

/** Blood from another line. */
const outsideLine: Rule = ({ label, outsiders, crossedLines }) => {
  if (outsiders.length === 0 && crossedLines.length < 2) return null;
  const lines = [...new Set(outsiders.map(({ line }) => line))];
  const share = outsiders.reduce((sum, outsider) => sum + outsider.share, 0);
  const detail =
    crossedLines.length > 1
      ? `Its parents belong to different lines: ${crossedLines.join(', ')}. The young would belong to none of them alone.`
      : `${percent(share)} of it came in through ${counted(outsiders.length, 'ancestor')} of another line than ${label?.name ?? 'its own'}: ${lines.slice(0, 6).join(', ')}.`;
  return {
    code: 'outside-line',
    severity: severityUnder(label),
    detail,
    records: named(outsiders),
    clearedBy:
      crossedLines.length > 1
        ? 'Choose parents of one line, or record the young as a line of its own, of the kind cross.'
        : `Correct the line or the parents of ${listed(outsiders)} if they are recorded wrong; blood that did come in stays in.`,
  };
};

/** An ancestor that nobody knows where it came from, or a parent that nobody knows. */
const originGap: Rule = ({ gaps }) => {
  if (gaps.length === 0) return null;
  const share = gaps.reduce((sum, gap) => sum + gap.share, 0);
  return {
    code: 'origin-gap',
    severity: 'weakens',
    detail: `Nobody knows where ${share > 1 - ROUNDING ? 'it' : `${percent(share)} of it`} came from: ${listed(gaps)}.`,
    records: named(gaps),
    clearedBy: `A source, or parents, for ${listed(gaps)}: ask whoever kept or passed them on.`,
  };
};

/** Candidate parents: some clutch may have had another father or mother. */
const parentsUncertain: Rule = ({ uncertainClutches, isProposalUncertain }) => {
  const count = uncertainClutches.length + (isProposalUncertain ? 1 : 0);
  if (count === 0) return null;
  return {
    code: 'parents-uncertain',
    severity: 'worth-knowing',
    detail: isProposalUncertain
      ? `More than one pair may be the parents of the young${uncertainClutches.length > 0 ? `, and so it is in ${counted(uncertainClutches.length, 'clutch')} further up` : ''}.`
      : `More than one pair may be the parents in ${counted(count, 'clutch')}: ${listed(uncertainClutches)}.`,
    records: named(uncertainClutches),
    clearedBy:
      uncertainClutches.length > 0
        ? `A genetic test of the candidates of ${listed(uncertainClutches)}, or a note of who was seen with the eggs.`
        : 'House a single pair, or note who is seen with the eggs.',
  };
};

/** What breaks a label that claims one origin is only worth knowing under one that says it is a cross. */
function severityUnder(label: LabelFindings['label']): FlagSeverity {
  return label?.kind === 'cross' ? 'worth-knowing' : 'breaks';
}

const rules: readonly Rule[] = [mixedLabels, outsideLine, labelBeyondEvidence, originGap, parentsUncertain];

function named(records: readonly NamedRecord[]): NamedRecord[] {
  const once = new Map(records.filter(({ id }) => id !== '').map((record) => [record.id, record]));
  return [...once.values()]
    .slice(0, FLAG_RECORDS_MOST)
    .map(({ kind, id, name, isPrivate }) => ({ kind, id, name, isPrivate }));
}

/** Records in a sentence. Those without an id are only counted. */
function listed(records: readonly NamedRecord[]): string {
  const names = [...new Set(records.filter(({ id }) => id !== '').map(({ name }) => name))];
  const unnamed = records.filter(({ id }) => id === '').length;
  if (names.length === 0) return 'its founders';
  if (names.length > 4 || unnamed > 0) {
    const shown = names.slice(0, 3);
    return `${shown.join(', ')} and ${names.length - shown.length + unnamed} more`;
  }
  return names.length === 1 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : noun === 'clutch' ? 'es' : 's'}`;
}

/** A share in words: one decimal, but never 0 % or 100 % where it is not quite. */
function percent(share: number): string {
  if (share > 0 && share < 0.0005) return 'less than 0.1 %';
  if (share < 1 - ROUNDING && share > 0.9995) return 'more than 99.9 %';
  return `${Number((100 * share).toFixed(1))} %`;
}
