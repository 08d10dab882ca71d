import { isCertainlyBefore, type DateBounds } from '../../shared/edtf.ts';
import { evidenceKinds } from '../../shared/vocabulary.ts';
import type { ClaimFacts, EvidenceFacts } from './claim-facts.ts';
import type { Claimant, LabelFindings, SourceFacts } from './label-findings.ts';
import { claimsNaming } from './standing.ts';

/** What flags that follow from claims are judged by. */
export type ClaimFindings = Pick<LabelFindings, 'label' | 'claimants' | 'nativeRange'>;

/** Flags that follow from what is claimed. */
export const claimFlagCodes = [
  'disputed-claim',
  'outside-range',
  'export-route',
  'date-conflict',
  'country-only',
] as const;
export type ClaimFlagCode = (typeof claimFlagCodes)[number];

/**
 * The records whose claims raise a flag. Each is judged by itself and by what is claimed of the line, whatever else stands beside it: so
 * those of many animals may be judged together.
 */
export const claimCauses: Readonly<Record<ClaimFlagCode, (findings: ClaimFindings) => Claimant[]>> = {
  'disputed-claim': ({ claimants }) =>
    claimants.filter(({ claims }) => claims.some(({ standing }) => standing === 'disputed')),

  /** Silent where the profile names no country. */
  'outside-range': ({ claimants, nativeRange }) =>
    nativeRange.length === 0
      ? []
      : claimants.filter(({ claims }) => countriesOf(claims).some((country) => !nativeRange.includes(country))),

  'export-route': ({ claimants }) => {
    const ofLine = countriesOf(claimants.flatMap(({ record, claims }) => (record.kind === 'line' ? claims : [])));
    return claimants.filter(({ source, claims }) => {
      const own = countriesOf(claims);
      const claimed = own.length > 0 ? own : ofLine;
      const from = source?.countryOfExport ?? null;
      return from !== null && claimed.length > 0 && !claimed.includes(from);
    });
  },

  'date-conflict': ({ claimants }) =>
    claimants.filter(({ source, claims }) =>
      claims.some((claim) => source !== null && claim.evidence.some((evidence) => isOutOfTime(evidence, source))),
    ),

  'country-only': ({ label, claimants }) =>
    claimants.filter(({ claims }) => {
      const naming = claimsNaming(label?.name ?? null, claims);
      const judged = naming.length > 0 ? naming : claims.filter(({ aspect }) => aspect === 'locality');
      const papers = judged.flatMap(({ evidence }) => evidence).filter(isSupportingPaper);
      return papers.length > 0 && papers.every(({ names }) => names === 'country');
    }),
};

/** How many years before animals came the papers of their shipment may have been issued. */
const YEARS_BEFORE = 2;

/**
 * Whether evidence certainly cannot tell of a source: a permit or field note dated after an import or wild collection came, since it precedes
 * it; an export permit, list or invoice of an import dated over two years before. Letters and publications may be of any date, and a
 * purchase may have papers of any shipment before it. Uncertain dates count only where every day that they allow is wrong.
 */
function isOutOfTime({ kind, dated, bearing }: EvidenceFacts, source: SourceFacts): boolean {
  if (bearing !== 'supports' || dated === null || source.date === null) return false;
  if (source.kind !== 'import' && source.kind !== 'wild-collection') return false;
  const precedes =
    kind === 'collecting-permit' || kind === 'export-permit' || (kind === 'field-note' && source.kind === 'import');
  if (precedes && isCertainlyBefore(source.date, dated)) return true;
  const ofShipment = kind === 'export-permit' || kind === 'importers-list' || kind === 'invoice';
  return source.kind === 'import' && ofShipment && isCertainlyBefore(yearsLater(dated), source.date);
}

function yearsLater({ earliest, latest }: DateBounds): DateBounds {
  const later = (day: string | null): string | null =>
    day === null ? null : `${Number(day.slice(0, 4)) + YEARS_BEFORE}${day.slice(4)}`;
  return { earliest: later(earliest), latest: later(latest) };
}

const isSupportingPaper = ({ kind, bearing }: EvidenceFacts): boolean =>
  bearing === 'supports' && evidenceKinds[kind] !== 'appearance';

/** Countries of the places claimed, but for claims that are disputed. */
const countriesOf = (claims: readonly ClaimFacts[]): string[] =>
  claims.flatMap(({ countryCode, standing }) => (countryCode === null || standing === 'disputed' ? [] : [countryCode]));
