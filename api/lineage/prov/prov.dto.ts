import { IntegerField } from '../../platform/fields.ts';

/** How far back to go. */
export class ProvQuery {
  @IntegerField({
    min: 1,
    max: 12,
    optional: true,
    description: 'How many generations of ancestors to tell of; 4 if left out.',
  })
  generations = 4;
}
