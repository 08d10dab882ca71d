import { standings, type Standing } from '../../../shared/vocabulary.ts';
import { Shown } from '../../platform/fields.ts';
import { PlaceView } from '../claims/claim.view.ts';

/** A place that somebody claims, for a map. */
export class ClaimedPlaceView {
  @Shown({ description: 'Id of the claim.', format: 'uuid' })
  claimId: string;

  @Shown({ description: 'The label that it claims.', example: 'Quebrada Honda' })
  value: string;

  @Shown({ description: 'What the claim is about.', enum: ['source', 'line', 'individual'] })
  about: 'source' | 'line' | 'individual';

  @Shown({ description: 'Id of what it is about.', format: 'uuid' })
  aboutId: string;

  @Shown({ description: 'What that is called.', example: 'Import, about 1994' })
  aboutTitle: string;

  @Shown({
    description: 'How well the claim stands by its accepted evidence.',
    enum: standings.filter((standing) => standing !== 'unknown'),
  })
  standing: Exclude<Standing, 'unknown'>;

  @Shown({
    description:
      'How many founders it speaks of, of those that whoever asks may see: the animals of the source, those of the line that came from a source, or the one animal.',
    type: 'integer',
    minimum: 0,
  })
  founders: number;

  @Shown({
    description:
      'The place; for a stranger generalised to a cell of 0.1 degree or coarser. It has coordinates, or at least a country.',
    type: PlaceView,
  })
  place: PlaceView;
}

/** Claimed places, in the order in which they were entered. */
export class PlacesView {
  @Shown({ description: 'The places.', type: [ClaimedPlaceView] })
  items: ClaimedPlaceView[];

  @Shown({ description: 'How many match in all.', type: 'integer', minimum: 0 })
  total: number;

  @Shown({ description: 'Whether coordinates and words are generalised for whoever asks.' })
  isGeneralised: boolean;
}
