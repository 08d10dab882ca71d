import { IntegerField } from '../platform/fields.ts';

/** How much of a pedigree is wanted. */
export class PedigreeQuery {
  @IntegerField({
    min: 1,
    max: 12,
    optional: true,
    description: 'How many generations of parents to go back; 4 if left out.',
  })
  generations = 4;
}
