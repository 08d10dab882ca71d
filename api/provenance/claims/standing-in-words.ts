import { evidenceKinds, type EvidenceKind, type Standing } from '../../../shared/vocabulary.ts';
import { independent, standingOfClaim, type Bears, type ClaimStanding } from '../standing-of-claim.ts';
import { say, together } from '../../platform/say.ts';

/** What people call one and several pieces of each kind of evidence. */
const kindWords: Readonly<Record<EvidenceKind, (count: number) => string>> = {
  'collecting-permit': (count) => (count === 1 ? say`a collecting permit` : say`${count} collecting permits`),
  'export-permit': (count) => (count === 1 ? say`an export permit` : say`${count} export permits`),
  'field-note': (count) => (count === 1 ? say`a collector's field note` : say`${count} collector's field notes`),
  publication: (count) => (count === 1 ? say`a publication` : say`${count} publications`),
  'importers-list': (count) => (count === 1 ? say`an importer's list` : say`${count} importer's lists`),
  invoice: (count) => (count === 1 ? say`an invoice` : say`${count} invoices`),
  letter: (count) => (count === 1 ? say`a letter` : say`${count} letters`),
  'other-document': (count) => (count === 1 ? say`a document` : say`${count} documents`),
  appearance: (count) => (count === 1 ? say`a look at the animals` : say`${count} looks at the animals`),
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
  const because = say`${wordOf(found.standing)}, because ${reasons[found.standing](deciding, evidence)}`;
  const raised = raisedBy[found.standing];
  if (raised === null || waiting === 0) return { ...found, because, raisedBy: raised };
  const pending =
    waiting === 1
      ? say`One piece of evidence waits for a review.`
      : say`${waiting} pieces of evidence wait for a review.`;
  return { ...found, because, raisedBy: together([raised, pending], (sentences) => sentences.join(' ')) };
}

type Known = ClaimStanding['standing'];
type Reason = (deciding: readonly Bears[], evidence: readonly Bears[]) => string;

const reasons: Readonly<Record<Known, Reason>> = {
  documented: (deciding) =>
    deciding.length === 1 ? say`${listed(deciding)} names it.` : say`${listed(deciding)} name it.`,
  corroborated: (deciding, evidence) =>
    say`${listed(deciding)} name it, ${independent(deciding, evidence)} of them independent of each other, and nothing contradicts it.`,
  stated: (deciding, evidence) => {
    if (deciding.length === 0)
      return countryOnly(evidence)
        ? say`its papers name only the country of export, so that it is somebody’s word.`
        : say`it is somebody’s word, and no accepted document names it.`;
    return deciding.length === 1
      ? say`only ${listed(deciding)} names it.`
      : say`${listed(deciding)} name it, but nothing shows that they are independent of each other.`;
  },
  'by-looks': () => say`it was assigned from how the animals look.`,
  disputed: (deciding) =>
    deciding.length === 1 ? say`${listed(deciding)} contradicts it.` : say`${listed(deciding)} contradict it.`,
};

const raisedBy: Readonly<Record<Known, string | null>> = {
  documented: null,
  corroborated: say`A primary document that names it: a permit, a field note or a publication on that shipment.`,
  stated: say`A primary document that names it, or two documents of different issuers that agree.`,
  'by-looks': say`A document that names it: looks alone tell no place.`,
  disputed: say`A review that turns the contradicting evidence down; else a claim that agrees with it.`,
};

const wordOf = (standing: Standing): string => (standing === 'by-looks' ? say`by looks` : standing);

const countryOnly = (evidence: readonly Bears[]): boolean =>
  evidence.some(
    ({ names, review, isWithdrawn, kind }) =>
      names === 'country' && review === 'accepted' && !isWithdrawn && evidenceKinds[kind] !== 'appearance',
  );

/** Documents by kind, such as "an invoice and 2 letters". */
function listed(documents: readonly Bears[]): string {
  const counts = new Map<EvidenceKind, number>();
  for (const { kind } of documents) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const parts = [...counts].map(([kind, count]) => kindWords[kind](count));
  if (parts.length < 2) return parts[0] ?? '';
  const first = together(parts.slice(0, -1), (words) => words.join(', '));
  return say`${first} and ${parts.at(-1)}`;
}
