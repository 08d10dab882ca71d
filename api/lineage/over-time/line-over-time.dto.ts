import { IntegerField } from '../../platform/fields.ts';

/** Which members of a line to draw. */
export class LineOverTimeQuery {
  @IntegerField({
    min: 1700,
    max: 2199,
    optional: true,
    description: 'Members hatched, or perhaps hatched, in this year or later; those without a date are then left out.',
  })
  hatchedFrom?: number;

  @IntegerField({
    min: 1700,
    max: 2199,
    optional: true,
    description: 'Members hatched, or perhaps hatched, in this year or before; those without a date are then left out.',
  })
  hatchedTo?: number;
}
