import { evidenceKinds, type EvidenceKind, type Standing } from '../../../shared/vocabulary.ts';
import { independent, standingOfClaim, type Bears, type ClaimStanding } from '../standing-of-claim.ts';

/** What people call each kind of evidence. */
const kindWords: Readonly<Record<EvidenceKind, string>> = {
  'collecting-permit': 'collecting permit',
  'export-permit': 'export permit',
  'field-note': "collector's field note",
  publication: 'publication',
  'importers-list': "importer's list",
  invoice: 'invoice',
  letter: 'letter',
  'other-document': 'document',
  appearance: 'look at the animals',
};

/** How well a claim stands and why, and what would raise it, in sentences that name no person and no paper. */
export interface ExplainedStanding extends ClaimStanding {
  readonly because: string;
  readonly raisedBy: string | null;
}

/** Explains how a claim stands by its evidence. */
export function explainStanding(evidence: readonly Bears[]): ExplainedStanding {
  const found = standingOfClaim(evidence);
  const deciding = evidence.filter(({ id }) => found.decidedBy.includes(id));
  const waiting = evidence.filter(({ review, isWithdrawn }) => review === 'pending' && !isWithdrawn).length;
  const because = `${wordOf(found.standing)}, because ${reasons[found.standing](deciding, evidence)}`;
  const [raised] = [raisedBy[found.standing]];
  const pending =
    waiting === 0
      ? ''
      : ` ${waiting === 1 ? 'One piece' : `${waiting} pieces`} of evidence wait${waiting === 1 ? 's' : ''} for a review.`;
  return { ...found, because, raisedBy: raised === null ? null : raised + pending };
}

type Known = ClaimStanding['standing'];
type Reason = (deciding: readonly Bears[], evidence: readonly Bears[]) => string;

const reasons: Readonly<Record<Known, Reason>> = {
  documented: (deciding) => `${listed(deciding)} ${deciding.length === 1 ? 'names' : 'name'} it.`,
  corroborated: (deciding, evidence) =>
    `${listed(deciding)} name it, ${independent(deciding, evidence)} of them independent of each other, and nothing contradicts it.`,
  stated: (deciding, evidence) => {
    if (deciding.length === 0)
      return countryOnly(evidence)
        ? 'its papers name only the country of export, so that it is somebody’s word.'
        : 'it is somebody’s word, and no accepted document names it.';
    return deciding.length === 1
      ? `only ${listed(deciding)} names it.`
      : `${listed(deciding)} name it, but nothing shows that they are independent of each other.`;
  },
  'by-looks': () => 'it was assigned from how the animals look.',
  disputed: (deciding) => `${listed(deciding)} ${deciding.length === 1 ? 'contradicts' : 'contradict'} it.`,
};

const raisedBy: Readonly<Record<Known, string | null>> = {
  documented: null,
  corroborated: 'A primary document that names it: a permit, a field note or a publication on that shipment.',
  stated: 'A primary document that names it, or two documents of different issuers that agree.',
  'by-looks': 'A document that names it: looks alone tell no place.',
  disputed: 'A review that turns the contradicting evidence down; else a claim that agrees with it.',
};

const wordOf = (standing: Standing): string => (standing === 'by-looks' ? 'by looks' : standing);

const countryOnly = (evidence: readonly Bears[]): boolean =>
  evidence.some(
    ({ names, review, isWithdrawn, kind }) =>
      names === 'country' && review === 'accepted' && !isWithdrawn && evidenceKinds[kind] !== 'appearance',
  );

/** Documents by kind, such as "an invoice and 2 letters". */
function listed(documents: readonly Bears[]): string {
  const counts = new Map<EvidenceKind, number>();
  for (const { kind } of documents) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const parts = [...counts].map(([kind, count]) => {
    const word = kindWords[kind];
    if (count === 1) return `${/^[aeiou]/u.test(word) ? 'an' : 'a'} ${word}`;
    return kind === 'appearance' ? `${count} looks at the animals` : `${count} ${word}s`;
  });
  return parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1) ?? ''}`;
}
