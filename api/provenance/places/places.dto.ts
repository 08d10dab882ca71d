import { IdField, IntegerField } from '../../platform/fields.ts';

/** Which claimed places to show. */
export class PlacesQuery {
  @IdField({
    optional: true,
    description: 'Places of this line: of itself, of its animals and of the sources of these.',
  })
  lineId?: string;

  @IdField({ optional: true, description: 'Places of lines, animals and sources of this species.' })
  speciesId?: string;

  @IntegerField({ min: 1, max: 1000, optional: true, description: 'How many places at most; 500 if left out.' })
  limit = 500;
}
