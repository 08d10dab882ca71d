import { OmitType, PartialType } from '@nestjs/swagger';
import { claimAspects, type ClaimAspect } from '../../../shared/vocabulary.ts';
import { ChoiceField, DateField, IdField, NumberField, PatternField, TextField } from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';

const subject = (description: string): PropertyDecorator => IdField({ optional: true, description });
const optional = { optional: true, nullable: true } as const;

/** A new claim; exactly one of the three ids is given. */
export class NewClaimRequest {
  @subject('The source that it is about.')
  sourceId?: string;

  @subject('The line that it is about.')
  lineId?: string;

  @subject('The animal that it is about.')
  individualId?: string;

  @ChoiceField(claimAspects, { description: 'Whether it names a place or only a trade name.' })
  aspect: ClaimAspect;

  @TextField({ max: 200, description: 'The label that it claims: the name of the place, or the trade name.' })
  value: string;

  @TextField({ max: 200, ...optional, description: 'Whose word it is (Darwin Core locationAccordingTo).' })
  statedBy?: string | null;

  @DateField({ ...optional, description: 'When it was stated.' })
  statedOn?: string | null;

  @TextField({
    max: 2000,
    ...optional,
    description:
      'The place exactly as it stood on the label, list or invoice (Darwin Core verbatimLocality). It is never changed afterwards: a slip of the pen is a new claim.',
  })
  verbatimLocality?: string | null;

  @TextField({ max: 500, ...optional, description: 'The place in words of today (Darwin Core locality).' })
  locality?: string | null;

  @PatternField({
    pattern: /^[A-Z]{2}$/,
    words: 'must be an ISO 3166-1 code of two capital letters, such as EC',
    ...optional,
    description: 'Country of the place, ISO 3166-1 code of two letters (Darwin Core countryCode).',
    example: 'EC',
  })
  countryCode?: string | null;

  @TextField({ max: 200, ...optional, description: 'Province or state (Darwin Core stateProvince).' })
  stateProvince?: string | null;

  @NumberField({
    min: -90,
    max: 90,
    ...optional,
    description: 'Latitude in degrees, south negative (Darwin Core decimalLatitude); with longitude and datum.',
  })
  decimalLatitude?: number | null;

  @NumberField({
    min: -180,
    max: 180,
    ...optional,
    description: 'Longitude in degrees, west negative (Darwin Core decimalLongitude); with latitude and datum.',
  })
  decimalLongitude?: number | null;

  @TextField({
    max: 100,
    ...optional,
    description: 'Datum or EPSG code of the coordinates, or "not recorded" (Darwin Core geodeticDatum).',
    example: 'EPSG:4326',
  })
  geodeticDatum?: string | null;

  @NumberField({
    min: 0.1,
    max: 20_037_509,
    ...optional,
    description:
      'Radius in metres of the smallest circle that holds the whole place (Darwin Core coordinateUncertaintyInMeters); leave it out where it is not known.',
  })
  coordinateUncertaintyM?: number | null;

  @TextField({ max: 200, ...optional, description: 'Who found the coordinates (Darwin Core georeferencedBy).' })
  georeferencedBy?: string | null;

  @TextField({
    max: 500,
    ...optional,
    description: 'By which maps or papers (Darwin Core georeferenceSources).',
  })
  georeferenceSources?: string | null;

  @TextField({ max: 10_000, ...optional, description: 'Notes.' })
  notes?: string | null;
}

/** Changes of a claim; what it is about stays, and so do the words of the label. */
export class ClaimChangeRequest extends PartialType(
  OmitType(NewClaimRequest, ['sourceId', 'lineId', 'individualId', 'verbatimLocality']),
  { skipNullProperties: false },
) {}

/** Which claims to list. */
export class ClaimQuery extends PageQuery {
  @subject('Claims about this source.')
  sourceId?: string;

  @subject('Claims about this line.')
  lineId?: string;

  @subject('Claims about this animal.')
  individualId?: string;

  @ChoiceField(claimAspects, { optional: true, description: 'Aspect.' })
  aspect?: ClaimAspect;
}

/** What a claim can be about. */
export const claimSubjects = ['sourceId', 'lineId', 'individualId'] as const;
