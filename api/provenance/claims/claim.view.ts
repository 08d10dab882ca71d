import { claimAspects, standings, type ClaimAspect, type Standing } from '../../../shared/vocabulary.ts';
import { Shown } from '../../platform/fields.ts';
import { KeptRecordView } from '../../register/record.view.ts';

const text = (description: string): PropertyDecorator => Shown({ description, type: String, nullable: true });
const number = (description: string, bounds: { minimum: number; maximum: number }): PropertyDecorator =>
  Shown({ description, type: Number, nullable: true, ...bounds });

/** How well a claim stands, and why. */
export class ClaimStandingView {
  @Shown({
    description: 'How well it stands by its accepted evidence; computed, never typed.',
    enum: standings.filter((standing) => standing !== 'unknown'),
  })
  standing: Exclude<Standing, 'unknown'>;

  @Shown({ description: 'Why, in words, such as "documented, because …".' })
  because: string;

  @Shown({ description: 'What would let it stand better; null where nothing would.', type: String, nullable: true })
  raisedBy: string | null;

  @Shown({ description: 'Ids of the evidence that decides it.', type: [String] })
  decidedBy: string[];
}

/** Evidence of a claim, counted. */
export class EvidenceCountsView {
  @Shown({ description: 'Evidence that waits for a review.', type: 'integer', minimum: 0 })
  pending: number;

  @Shown({ description: 'Evidence that counts.', type: 'integer', minimum: 0 })
  accepted: number;

  @Shown({ description: 'Evidence that was turned down.', type: 'integer', minimum: 0 })
  rejected: number;
}

/** A claimed place, in the terms of Darwin Core. A stranger is shown it generalised. */
export class PlaceView {
  @text('The words of the label, list or invoice, unaltered (verbatimLocality); null where a stranger asks.')
  verbatimLocality: string | null;

  @text('The place in words of today (locality); null where a stranger asks.')
  locality: string | null;

  @text('Country, ISO 3166-1 code of two letters (countryCode).')
  countryCode: string | null;

  @text('Province or state (stateProvince).')
  stateProvince: string | null;

  @number('Latitude in degrees, south negative (decimalLatitude).', { minimum: -90, maximum: 90 })
  decimalLatitude: number | null;

  @number('Longitude in degrees, west negative (decimalLongitude).', { minimum: -180, maximum: 180 })
  decimalLongitude: number | null;

  @text('Datum or EPSG code of the coordinates (geodeticDatum).')
  geodeticDatum: string | null;

  @number(
    'Radius in metres of the smallest circle that holds the whole place (coordinateUncertaintyInMeters); never 0.',
    {
      minimum: 0,
      maximum: 20_037_509,
    },
  )
  coordinateUncertaintyM: number | null;

  @text('Who found the coordinates (georeferencedBy); null where a stranger asks.')
  georeferencedBy: string | null;

  @text('By which maps or papers (georeferenceSources); null where a stranger asks.')
  georeferenceSources: string | null;

  @text('How the place was made coarser for whoever asks (dataGeneralizations); null where it was not.')
  dataGeneralizations: string | null;

  @text('What is held back from whoever asks (informationWithheld); null where nothing is.')
  informationWithheld: string | null;
}

/** A statement about where a source, a line or an animal comes from. */
export class ClaimView extends KeptRecordView {
  @Shown({ description: 'The source that it is about.', type: String, format: 'uuid', nullable: true })
  sourceId: string | null;

  @Shown({ description: 'The line that it is about.', type: String, format: 'uuid', nullable: true })
  lineId: string | null;

  @Shown({ description: 'The animal that it is about.', type: String, format: 'uuid', nullable: true })
  individualId: string | null;

  @Shown({ description: 'Whether it names a place or only a trade name.', enum: claimAspects })
  aspect: ClaimAspect;

  @Shown({ description: 'The label that it claims: the name of the place, or the trade name.' })
  value: string;

  @text('Whose word it is (locationAccordingTo); null where a stranger asks.')
  statedBy: string | null;

  @text('When it was stated, EDTF.')
  statedOn: string | null;

  @Shown({ description: 'The place, in the terms of Darwin Core.', type: PlaceView })
  place: PlaceView;

  @text('Notes; null where a stranger asks.')
  notes: string | null;

  @Shown({ description: 'How well it stands.', type: ClaimStandingView })
  standing: ClaimStandingView;

  @Shown({
    description:
      'What looks wrong with its place and may yet be right, such as coordinates in another country than the one that it names; for members.',
    type: [String],
  })
  warnings: string[];

  @Shown({ description: 'Its evidence, counted.', type: EvidenceCountsView })
  evidence: EvidenceCountsView;
}
