import { IntegerField } from '../../platform/fields.ts';

/** How many descendants are wanted. */
export class DescendantsQuery {
  @IntegerField({
    min: 1,
    max: 3,
    optional: true,
    description: 'How many generations of young to go down; 1 if left out.',
  })
  generations = 1;
}
