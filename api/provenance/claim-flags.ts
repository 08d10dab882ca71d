import { isCertainlyBefore, type DateBounds } from '../../shared/edtf.ts';
import { evidenceKinds, type FlagCode, type FlagSeverity } from '../../shared/vocabulary.ts';
import type { ClaimFacts, EvidenceFacts } from './claim-facts.ts';
import { listed, named, type Flag, type Rule } from './flag-words.ts';
import type { Claimant, LabelFindings, NamedRecord, SourceFacts } from './label-findings.ts';
import { claimsNaming } from './standing.ts';

/** Accepted evidence contradicts what is claimed: of this label it breaks it, of another it is worth knowing. */
export const disputedClaim: Rule = ({ label, claimants }) => {
  const disputed = claimants.filter(({ claims }) => claims.some(({ standing }) => standing === 'disputed'));
  const isOwn = disputed.some(({ claims }) =>
    claimsNaming(label?.name ?? null, claims).some(({ standing }) => standing === 'disputed'),
  );
  return flag(
    'disputed-claim',
    isOwn ? 'breaks' : 'worth-knowing',
    disputed,
    (names) => `Accepted papers contradict what is claimed of ${names}.`,
    (names) => `A second review of the papers against ${names}, or a claim that agrees with them.`,
  );
};

/** The label took the place of another, and no accepted document of the animal or its source names it. */
export const labelChanged: Rule = ({ label, relabelled }) => {
  if (relabelled.length === 0) return null;
  const from = [...new Set(relabelled.flatMap(({ from }) => (from === null ? [] : [`“${from}”`])))];
  const others = from.length > 0 ? from.slice(0, 4).join(', ') : 'another label';
  return {
    code: 'label-changed',
    severity: 'breaks',
    detail: `It is kept as “${label?.name ?? ''}”, but ${listed(relabelled)} came or hatched under ${others}, and no accepted document says why.`,
    records: named(relabelled),
    clearedBy: `An accepted document that names ${label?.name ?? 'the label'} for ${listed(relabelled)}, or the old label back.`,
  };
};

/** The claimed place lies in a country where the species is not known to live; silent where the profile names no country. */
export const outsideRange: Rule = (findings) => {
  const { nativeRange } = findings;
  const outside = claimants(findings, ({ countryCode }) => countryCode !== null && !nativeRange.includes(countryCode));
  if (nativeRange.length === 0) return null;
  return flag(
    'outside-range',
    'breaks',
    outside,
    (names) => `The place that is claimed of ${names} lies in a country where the species is not known to live.`,
    (names) =>
      `Correct the country of the place for ${names}, or the native range in the species profile, whichever is wrong.`,
  );
};

/**
 * Exported from another country than that of every place claimed of it. Trade through a third country is common, so it is worth knowing;
 * it weakens a wild collection, which leaves from where it was made.
 */
export const exportRoute: Rule = (findings) => {
  const ofLine = findings.claimants.filter(({ record }) => record.kind === 'line').flatMap(({ claims }) => claims);
  const route = findings.claimants.filter(({ source, claims }) => {
    const own = countriesOf(claims);
    const claimed = own.length > 0 ? own : countriesOf(ofLine);
    const from = source?.countryOfExport ?? null;
    return from !== null && claimed.length > 0 && !claimed.includes(from);
  });
  return flag(
    'export-route',
    route.some(({ source }) => source?.kind === 'wild-collection') ? 'weakens' : 'worth-knowing',
    route,
    (names) =>
      `The country of export of ${names} is not the country of the place claimed. Trade through a third country is common.`,
    (names) => `A paper that follows ${names} from the place to the country of export.`,
  );
};

/** Papers or statements whose dates cannot fit the source that they tell of. */
export const dateConflict: Rule = ({ claimants }) => {
  const wrong = claimants.filter(({ source, claims }) =>
    claims.some((claim) => source !== null && claim.evidence.some((evidence) => isOutOfTime(evidence, source))),
  );
  return flag(
    'date-conflict',
    'weakens',
    wrong,
    (names) =>
      `A paper on ${names} is dated so that it cannot tell of these animals: issued after they came, or years before.`,
    (names) => `Correct the date of the paper or of ${names}, or withdraw the paper.`,
  );
};

/** Papers are there, but they name the country of export and no place. */
export const countryOnly: Rule = ({ label, claimants }) => {
  const only = claimants.filter(({ claims }) => {
    const naming = claimsNaming(label?.name ?? null, claims);
    const judged = naming.length > 0 ? naming : claims.filter(({ aspect }) => aspect === 'locality');
    const papers = judged.flatMap(({ evidence }) => evidence).filter(isSupportingPaper);
    return papers.length > 0 && papers.every(({ names }) => names === 'country');
  });
  return flag(
    'country-only',
    'weakens',
    only,
    (names) => `The papers on ${names} name the country of export, and no place.`,
    (names) => `A paper that names the place itself for ${names}.`,
  );
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

const countriesOf = (claims: readonly ClaimFacts[]): string[] =>
  claims.flatMap(({ countryCode, standing }) => (countryCode === null || standing === 'disputed' ? [] : [countryCode]));

const claimants = (findings: LabelFindings, has: (claim: ClaimFacts) => boolean): Claimant[] =>
  findings.claimants.filter(({ claims }) => claims.some((claim) => claim.standing !== 'disputed' && has(claim)));

function flag(
  code: FlagCode,
  severity: FlagSeverity,
  caused: readonly Claimant[],
  detail: (names: string) => string,
  clearedBy: (names: string) => string,
): Flag | null {
  if (caused.length === 0) return null;
  const records: NamedRecord[] = caused.map(({ record }) => record);
  const names = listed(records);
  return { code, severity, detail: detail(names), records: named(records), clearedBy: clearedBy(names) };
}
