import { IntegerField } from '../platform/fields.ts';

/** How much of the answer is wanted. */
export class CommonAncestorsQuery {
  @IntegerField({
    min: 1,
    max: 200,
    optional: true,
    description:
      'Most common ancestors to name, those with the largest parts of F; 50 if left out. The rest is told as a sum.',
  })
  most = 50;
}
