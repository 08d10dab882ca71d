import { dateBounds } from '../../../shared/edtf.ts';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { standings } from '../../../shared/vocabulary.ts';
import type { ClaimView } from '../claims/claim.view.ts';
import type { OccurrenceTerms } from './darwin-core-terms.ts';
import type { OccurrenceRow } from './occurrence.queries.ts';

/**
 * An animal in the terms of Darwin Core, with the place that its own claims or those of its source speak of. An animal that was bred has no
 * place in the wild: what its ancestors bring is told by its provenance.
 */
export function occurrenceOf(animal: OccurrenceRow, claims: readonly ClaimView[]): OccurrenceTerms {
  const claim = bestClaim(claims);
  return known({
    occurrenceID: `urn:uuid:${animal.id}`,
    basisOfRecord: 'LivingSpecimen',
    organismID: formatRegistryNumber(animal.number),
    organismName: animal.code,
    scientificName: animal.species,
    kingdom: 'Animalia',
    sex: animal.sex === 'unsexed' ? null : animal.sex,
    degreeOfEstablishment: 'captive',
    ...eventOf(animal, claim !== undefined),
    ...(claim ? placeOf(claim) : {}),
  });
}

/** The claim of a place that stands best; of equal ones that of the animal itself, then the older one. A disputed one says nothing. */
function bestClaim(claims: readonly ClaimView[]): ClaimView | undefined {
  const rank = ({ standing, individualId }: ClaimView): number =>
    2 * standings.indexOf(standing.standing) + (individualId === null ? 1 : 0);
  return claims
    .filter(({ aspect, standing }) => aspect === 'locality' && standing.standing !== 'disputed')
    .sort((one, other) => rank(one) - rank(other) || (one.id < other.id ? -1 : 1))[0];
}

/** With a place in the wild goes only the day on which it was collected there. */
function eventOf(animal: OccurrenceRow, isPlaced: boolean): Record<string, string | null> {
  const isCollected = animal.sourceKind === 'wild-collection' && animal.sourceDate !== null;
  if (isCollected) return dated(animal.sourceDate, 'collected in the wild');
  return isPlaced || animal.hatched === null ? {} : dated(animal.hatched, 'hatched in captivity');
}

const dated = (date: string | null, remarks: string): Record<string, string | null> => ({
  eventDate: isoDate(date ?? ''),
  verbatimEventDate: date,
  eventRemarks: remarks,
});

/** An EDTF date as ISO 8601 has it: a day, a month, a year, or the interval of days that it may mean; null where that is open. */
export function isoDate(date: string): string | null {
  if (/^\d{4}(-(0\d|1[0-2])(-\d\d)?)?$/.test(date)) return date;
  const { earliest = null, latest = null } = dateBounds(date) ?? {};
  return earliest === null || latest === null ? null : `${earliest}/${latest}`;
}

function placeOf({ id, value, statedBy, place, standing }: ClaimView): Record<string, string | number | null> {
  const isLocated = place.decimalLatitude !== null;
  return {
    locationID: `urn:uuid:${id}`,
    countryCode: place.countryCode,
    stateProvince: place.stateProvince,
    locality: place.locality,
    verbatimLocality: place.verbatimLocality,
    decimalLatitude: place.decimalLatitude,
    decimalLongitude: place.decimalLongitude,
    geodeticDatum: place.geodeticDatum,
    coordinateUncertaintyInMeters: place.coordinateUncertaintyM,
    georeferencedBy: place.georeferencedBy,
    georeferenceSources: place.georeferenceSources,
    georeferenceVerificationStatus: isLocated ? 'requires verification' : 'requires georeference',
    locationAccordingTo: statedBy,
    locationRemarks: `Said to come from “${value}”: ${standing.because}`,
    dataGeneralizations: place.dataGeneralizations,
    informationWithheld: place.informationWithheld,
  };
}

function known(terms: Record<string, string | number | null>): OccurrenceTerms {
  return Object.fromEntries(Object.entries(terms).filter(([, value]) => value !== null && value !== ''));
}
