import type { ClaimAspect } from '$shared/vocabulary.ts';
import { dateProblem } from '../ui/typed-dates.ts';

/** What a claim is about, as the service wants it. */
export type ClaimSubject = { sourceId: string } | { lineId: string } | { individualId: string };

/** A claim that is being written. */
export class ClaimDraft {
  aspect = $state<ClaimAspect>('locality');
  value = $state('');
  statedBy = $state('');
  statedOn = $state('');
  verbatimLocality = $state('');
  countryCode = $state('');
  stateProvince = $state('');
  locality = $state('');
  latitude = $state('');
  longitude = $state('');
  geodeticDatum = $state('');
  uncertainty = $state('');

  /** Pointers of the fields of the form. */
  static readonly fields = [
    '/aspect',
    '/value',
    '/statedBy',
    '/statedOn',
    '/verbatimLocality',
    '/countryCode',
    '/stateProvince',
    '/locality',
    '/decimalLatitude',
    '/decimalLongitude',
    '/geodeticDatum',
    '/coordinateUncertaintyM',
  ];

  /** What cannot be written as it stands, by pointer. */
  problems(): Record<string, string> {
    const found: Record<string, string> = {};
    if (this.value.trim() === '') found['/value'] = 'Write the name that is claimed, as it stood on the label.';
    const wrongDate = dateProblem(this.statedOn);
    if (wrongDate) found['/statedOn'] = wrongDate;
    if (this.countryCode.trim() !== '' && !/^[A-Za-z]{2}$/.test(this.countryCode.trim()))
      found['/countryCode'] = 'Write the two letters of the country, such as EC.';
    const numbers = [
      ['/decimalLatitude', this.latitude, 90],
      ['/decimalLongitude', this.longitude, 180],
    ] as const;
    for (const [pointer, typed, most] of numbers) {
      const number = numberIn(typed);
      if (number !== null && !(Math.abs(number) <= most))
        found[pointer] = `Write degrees from -${most} to ${most}, such as -3.98; south and west are negative.`;
    }
    const radius = numberIn(this.uncertainty);
    if (radius !== null && !(radius > 0))
      found['/coordinateUncertaintyM'] = 'Write metres above 0, or leave it empty where nobody knows.';
    return found;
  }

  /** The body of the request. */
  body(subject: ClaimSubject): object {
    const said = (typed: string): string | null => typed.trim() || null;
    const hasPoint = said(this.latitude) !== null || said(this.longitude) !== null;
    return {
      ...subject,
      aspect: this.aspect,
      value: this.value.trim(),
      statedBy: said(this.statedBy),
      statedOn: said(this.statedOn),
      verbatimLocality: said(this.verbatimLocality),
      countryCode: said(this.countryCode)?.toUpperCase() ?? null,
      stateProvince: said(this.stateProvince),
      locality: said(this.locality),
      decimalLatitude: numberIn(this.latitude),
      decimalLongitude: numberIn(this.longitude),
      geodeticDatum: hasPoint ? (said(this.geodeticDatum) ?? 'not recorded') : null,
      coordinateUncertaintyM: numberIn(this.uncertainty),
    };
  }
}

/** A number as it was typed, with a comma or a point; null where nothing was. */
function numberIn(typed: string): number | null {
  return typed.trim() === '' ? null : Number(typed.trim().replace(',', '.'));
}
