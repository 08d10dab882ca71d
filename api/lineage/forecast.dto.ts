import { applyDecorators } from '@nestjs/common';
import { ApiExtraModels, ApiProperty, getSchemaPath } from '@nestjs/swagger';
import { Transform, Type } from 'class-transformer';
import { ArrayMaxSize, ArrayMinSize, IsArray, ValidateNested } from 'class-validator';
import { NumberField, TextField } from '../platform/fields.ts';

/** Most candidates on one side of a forecast. */
const CANDIDATES_MOST = 40;

/** A candidate parent of young not yet laid. */
export class ProposedParent {
  @TextField({ max: 40, description: 'Id or registry number of the animal.' })
  individual: string;

  @NumberField({
    min: 1e-6,
    max: 1e6,
    optional: true,
    description: 'How likely it is against the others of its side, any unit; 1 if left out.',
  })
  weight = 1;
}

/** Who may be the parents of young not yet laid. */
@ApiExtraModels(ProposedParent)
export class ForecastRequest {
  @ProposedSide('Candidate sires, males or unsexed animals: ids, registry numbers, or objects with a weight. 1 to 40.')
  sires: ProposedParent[];

  @ProposedSide('Candidate dams, females or unsexed animals: ids, registry numbers, or objects with a weight. 1 to 40.')
  dams: ProposedParent[];
}

/** A list of animals, each named by a text or by an object with a weight. */
function ProposedSide(description: string): PropertyDecorator {
  return applyDecorators(
    ApiProperty({
      description,
      type: 'array',
      minItems: 1,
      maxItems: CANDIDATES_MOST,
      items: { oneOf: [{ type: 'string', maxLength: 40 }, { $ref: getSchemaPath(ProposedParent) }] },
    }),
    Type(() => ProposedParent),
    Transform(({ value }: { value: unknown }) => (Array.isArray(value) ? value.map(asParent) : value)),
    IsArray({ message: 'must be a list' }),
    ArrayMinSize(1, { message: 'must name at least one animal' }),
    ArrayMaxSize(CANDIDATES_MOST, { message: `must have at most ${CANDIDATES_MOST} entries` }),
    ValidateNested({
      each: true,
      message: 'must hold ids, registry numbers, or objects with an individual and a weight',
    }),
  );
}

/** A list within the list would be checked member by member and taken for one animal; as null it is refused. */
function asParent(entry: unknown): unknown {
  if (Array.isArray(entry)) return null;
  return typeof entry === 'string' ? Object.assign(new ProposedParent(), { individual: entry.trim() }) : entry;
}
