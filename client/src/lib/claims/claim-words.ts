import {
  evidenceKinds,
  type Bearing,
  type ClaimAspect,
  type EvidenceKind,
  type EvidenceNames,
} from '$shared/vocabulary.ts';
import type { Claim, Evidence } from '../api/types.ts';
import { word } from '../words/word.ts';

export const aspectChoices: { value: ClaimAspect; label: string }[] = [
  { value: 'locality', label: 'a place' },
  { value: 'trade-name', label: 'a trade name' },
];

export const kindWords: Readonly<Record<EvidenceKind, string>> = {
  'collecting-permit': 'collecting permit',
  'export-permit': 'export permit',
  'field-note': "collector's field note",
  publication: 'publication on that shipment',
  'importers-list': "importer's list",
  invoice: word('invoice'),
  letter: 'letter of a previous keeper',
  'other-document': 'another document',
  appearance: 'how the animals look',
};

const rankWords = { primary: word('primary'), secondary: word('secondary'), appearance: 'looks only' } as const;

export const evidenceKindChoices = (Object.keys(evidenceKinds) as EvidenceKind[]).map((value) => ({
  value,
  label: `${kindWords[value]} (${rankWords[evidenceKinds[value]]})`,
}));

export const bearingChoices: { value: Bearing; label: string }[] = [
  { value: 'supports', label: 'supports it' },
  { value: 'contradicts', label: 'contradicts it' },
];

export const namesChoices: { value: EvidenceNames; label: string }[] = [
  { value: 'claim', label: 'names what is claimed' },
  { value: 'country', label: 'names only the country' },
];

/** A claim in a line: `the place “Quebrada Honda”`. */
export const claimInWords = (claim: Pick<Claim, 'aspect' | 'value'>): string =>
  `${claim.aspect === 'locality' ? 'the place' : 'the trade name'} “${claim.value}”`;

/** Whether evidence counts, in words. */
export function reviewInWords({ review, reviewed, withdrawn }: Evidence): string {
  if (withdrawn) return `withdrawn: ${withdrawn.reason}`;
  if (review === 'pending' || !reviewed) return 'waits for a review, and does not count yet';
  const verdict = review === 'accepted' ? word('accepted') : 'rejected, so it does not count';
  return `${verdict} by ${reviewed.reviewer}: ${reviewed.reason}`;
}

/** What evidence is, in a line: `importer's list “No. 17” of Terrario, 1994`. */
export const evidenceInWords = (
  { kind, reference, issuedBy, dated }: Evidence,
  date: (edtf: string) => string,
): string => {
  const named = `${kindWords[kind]} “${reference}”`;
  const paper = issuedBy ? `${named} of ${issuedBy}` : named;
  return dated ? `${paper}, ${date(dated)}` : paper;
};
