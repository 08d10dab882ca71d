import { IntegerField } from '../platform/fields.ts';

/** How the spread of an inbreeding coefficient is drawn. */
export class InbreedingSpreadQuery {
  @IntegerField({
    min: 100,
    max: 100_000,
    optional: true,
    description:
      'How many assignments of parents are drawn, where there are too many to go through all; 2000 if left out.',
  })
  samples = 2000;

  @IntegerField({
    min: 0,
    max: 2 ** 32 - 1,
    optional: true,
    description:
      'Seed of the drawing: the same seed and revision of the register give the same answer, to the last bit; 1 if left out.',
  })
  seed = 1;
}
