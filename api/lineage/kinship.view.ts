import { ApiExtraModels, getSchemaPath } from '@nestjs/swagger';
import { Shown } from '../platform/fields.ts';
import { YoungInbreedingView } from './inbreeding.view.ts';
import { AnimalRef, AsOfView } from './lineage.view.ts';

/** Kinships of some animals with each other. */
@ApiExtraModels(YoungInbreedingView)
export class KinshipView {
  @Shown({ description: 'The animals, in the order they were named.', type: [AnimalRef] })
  individuals: AnimalRef[];

  @Shown({
    description:
      'Expected kinships φ, 0 to 1 (Malécot 1948): full and symmetric, rows and columns in the order of `individuals`; ½(1+F) where an animal meets itself. Twice them is the relationship matrix.',
    type: 'array',
    items: { type: 'array', items: { type: 'number', minimum: 0, maximum: 1 } },
  })
  kinship: number[][];

  @Shown({
    description:
      'What young of each two would be, in the same order, whatever their sexes; null where an animal meets itself. Null unless asked for.',
    type: 'array',
    items: {
      type: 'array',
      items: { nullable: true, allOf: [{ $ref: getSchemaPath(YoungInbreedingView) }] },
    },
    nullable: true,
  })
  young: (YoungInbreedingView | null)[][] | null;

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
