import type { FlagCode, FlagSeverity } from '../../shared/vocabulary.ts';
import { claimCauses } from './claim-causes.ts';
import { listed, named, type Flag, type Rule } from './flag-words.ts';
import type { Claimant, NamedRecord } from './label-findings.ts';
import { claimsNaming } from './standing.ts';
import { say } from '../platform/say.ts';

/** Accepted evidence contradicts what is claimed: of this label it breaks it, of another it is worth knowing. */
export const disputedClaim: Rule = (findings) => {
  const disputed = claimCauses['disputed-claim'](findings);
  const isOwn = disputed.some(({ claims }) =>
    claimsNaming(findings.label?.name ?? null, claims).some(({ standing }) => standing === 'disputed'),
  );
  return flag(
    'disputed-claim',
    isOwn ? 'breaks' : 'worth-knowing',
    disputed,
    (names) => say`Accepted papers contradict what is claimed of ${names}.`,
    (names) => say`A second review of the papers against ${names}, or a claim that agrees with them.`,
  );
};

/** The label took the place of another, and no accepted document of the animal or its source names it. */
export const labelChanged: Rule = ({ label, relabelled }) => {
  if (relabelled.length === 0) return null;
  const from = [...new Set(relabelled.flatMap(({ from }) => (from === null ? [] : [`“${from}”`])))];
  const others = from.length > 0 ? from.slice(0, 4).join(', ') : say`another label`;
  return {
    code: 'label-changed',
    severity: 'breaks',
    detail: say`It is kept as “${label?.name ?? ''}”, but ${listed(relabelled)} came or hatched under ${others}, and no accepted document says why.`,
    records: named(relabelled),
    clearedBy: say`An accepted document that names ${label?.name ?? say`the label`} for ${listed(relabelled)}, or the old label back.`,
  };
};

/** The claimed place lies in a country where the species is not known to live; silent where the profile names no country. */
export const outsideRange: Rule = (findings) =>
  flag(
    'outside-range',
    'breaks',
    claimCauses['outside-range'](findings),
    (names) => say`The place that is claimed of ${names} lies in a country where the species is not known to live.`,
    (names) =>
      say`Correct the country of the place for ${names}, or the native range in the species profile, whichever is wrong.`,
  );

/**
 * Exported from another country than that of every place claimed of it. Trade through a third country is common, so it is worth knowing;
 * it weakens a wild collection, which leaves from where it was made.
 */
export const exportRoute: Rule = (findings) => {
  const route = claimCauses['export-route'](findings);
  return flag(
    'export-route',
    route.some(({ source }) => source?.kind === 'wild-collection') ? 'weakens' : 'worth-knowing',
    route,
    (names) =>
      say`The country of export of ${names} is not the country of the place claimed. Trade through a third country is common.`,
    (names) => say`A paper that follows ${names} from the place to the country of export.`,
  );
};

/** Papers or statements whose dates cannot fit the source that they tell of. */
export const dateConflict: Rule = (findings) =>
  flag(
    'date-conflict',
    'weakens',
    claimCauses['date-conflict'](findings),
    (names) =>
      say`A paper on ${names} is dated so that it cannot tell of these animals: issued after they came, or years before.`,
    (names) => say`Correct the date of the paper or of ${names}, or withdraw the paper.`,
  );

/** Papers are there, but they name the country of export and no place. */
export const countryOnly: Rule = (findings) =>
  flag(
    'country-only',
    'weakens',
    claimCauses['country-only'](findings),
    (names) => say`The papers on ${names} name the country of export, and no place.`,
    (names) => say`A paper that names the place itself for ${names}.`,
  );

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
