import type { FlagSeverity } from '../../shared/vocabulary.ts';
import { countryOnly, dateConflict, disputedClaim, exportRoute, labelChanged, outsideRange } from './claim-flags.ts';
import { counted, listed, named, percent, ROUNDING, type Flag, type Rule } from './flag-words.ts';
import type { LabelFindings } from './label-findings.ts';
import { say, together } from '../platform/say.ts';

export { FLAG_RECORDS_MOST, type Flag } from './flag-words.ts';

/** Holds the findings of one animal against every rule; in the order of the vocabulary, which begins with the gravest. */
export function auditLabel(findings: LabelFindings): Flag[] {
  return rules.map((rule) => rule(findings)).filter((flag) => flag !== null);
}

/** A label that names a place, while not all of the animal comes from founders whose own papers name that place. */
const labelBeyondEvidence: Rule = ({ label, tracedShare, untraced }) => {
  if (label?.kind !== 'locality' || tracedShare.least >= 1 - ROUNDING) return null;
  const { expected, least } = tracedShare;
  const traced =
    expected - least > ROUNDING
      ? say`${percent(expected)} comes from founders whose papers name it too, and it may be as little as ${percent(least)}.`
      : say`${percent(expected)} comes from founders whose papers name it too.`;
  return {
    code: 'label-beyond-evidence',
    severity: 'weakens',
    detail:
      expected > ROUNDING
        ? say`“${label.name}” names a place. ${traced}`
        : say`“${label.name}” names a place, but the register holds no papers that name it for any of its founders.`,
    records: named(untraced),
    clearedBy: say`Papers that name ${label.name} for ${listed(untraced)}: a permit or a field note, or two papers that agree.`,
  };
};

/** Founders that came in under different labels. */
const mixedLabels: Rule = ({ label, labelCount, founderLabels }) => {
  if (labelCount < 2) return null;
  const parts = founderLabels.map(({ label, share }) =>
    label === null ? say`labels of private sources ${percent(share)}` : say`“${label}” ${percent(share)}`,
  );
  return {
    code: 'mixed-labels',
    severity: severityUnder(label),
    detail: say`Its founders came in under ${labelCount} different labels: ${together(parts.slice(0, 6), (some) => some.join(', '))}${parts.length > 6 ? ', …' : ''}.`,
    records: named(founderLabels.flatMap(({ sources }) => sources)),
    clearedBy: say`Papers that show these labels to mean the same; or else keep its young under no single label.`,
  };
};

/** Blood from another line. */
const outsideLine: Rule = ({ label, outsiders, crossedLines }) => {
  if (outsiders.length === 0 && crossedLines.length < 2) return null;
  const lines = [...new Set(outsiders.map(({ line }) => line))];
  const share = outsiders.reduce((sum, outsider) => sum + outsider.share, 0);
  const detail =
    crossedLines.length > 1
      ? say`Its parents belong to different lines: ${crossedLines.join(', ')}. The young would belong to none of them alone.`
      : say`${percent(share)} of it came in through ${counted(outsiders.length, 'ancestor')} of another line than ${label?.name ?? say`its own`}: ${lines.slice(0, 6).join(', ')}.`;
  return {
    code: 'outside-line',
    severity: severityUnder(label),
    detail,
    records: named(outsiders),
    clearedBy:
      crossedLines.length > 1
        ? say`Choose parents of one line, or record the young as a line of its own, of the kind cross.`
        : say`Correct the line or the parents of ${listed(outsiders)} if they are recorded wrong; blood that did come in stays in.`,
  };
};

/** An ancestor that nobody knows where it came from, or a parent that nobody knows. */
const originGap: Rule = ({ gaps }) => {
  if (gaps.length === 0) return null;
  const share = gaps.reduce((sum, gap) => sum + gap.share, 0);
  return {
    code: 'origin-gap',
    severity: 'weakens',
    detail:
      share > 1 - ROUNDING
        ? say`Nobody knows where it came from: ${listed(gaps)}.`
        : say`Nobody knows where ${percent(share)} of it came from: ${listed(gaps)}.`,
    records: named(gaps),
    clearedBy: say`A source, or parents, for ${listed(gaps)}: ask whoever kept or passed them on.`,
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
      ? uncertainClutches.length > 0
        ? say`More than one pair may be the parents of the young, and so it is in ${counted(uncertainClutches.length, 'clutch')} further up.`
        : say`More than one pair may be the parents of the young.`
      : say`More than one pair may be the parents in ${counted(count, 'clutch')}: ${listed(uncertainClutches)}.`,
    records: named(uncertainClutches),
    clearedBy:
      uncertainClutches.length > 0
        ? say`A genetic test of the candidates of ${listed(uncertainClutches)}, or a note of who was seen with the eggs.`
        : say`House a single pair, or note who is seen with the eggs.`,
  };
};

/** What breaks a label that claims one origin is only worth knowing under one that says it is a cross. */
function severityUnder(label: LabelFindings['label']): FlagSeverity {
  return label?.kind === 'cross' ? 'worth-knowing' : 'breaks';
}

const rules: readonly Rule[] = [
  disputedClaim,
  mixedLabels,
  outsideLine,
  labelChanged,
  labelBeyondEvidence,
  outsideRange,
  exportRoute,
  dateConflict,
  originGap,
  countryOnly,
  parentsUncertain,
];
