import { ApiProperty } from '@nestjs/swagger';
import { ArrayMaxSize, ArrayUnique, IsArray, IsIn } from 'class-validator';
import { IdField, IntegerField, TextField } from '../../platform/fields.ts';
import { mergeFields, type MergeField } from './merge-fields.ts';
import { say } from '../../platform/say.ts';

/** Which two records to compare. */
export class ComparisonQuery {
  @TextField({ max: 40, description: 'Id or registry number of the record that would go on.', example: '1001-8' })
  kept: string;

  @TextField({ max: 40, description: 'Id or registry number of the record that would be withdrawn in its favour.' })
  duplicate: string;
}

/** Two records of one animal, and what the one that goes on takes over. */
export class MergeRequest {
  @IdField({ description: 'The record that goes on.' })
  keptId: string;

  @IdField({ description: 'The record that is withdrawn in its favour.' })
  duplicateId: string;

  @ApiProperty({
    description:
      'Fields that the kept record takes over from the duplicate; the others stay as they are. sex is its basis and date too, origin ' +
      'the source or clutch, status the date of death too.',
    isArray: true,
    enum: mergeFields,
    uniqueItems: true,
    maxItems: mergeFields.length,
  })
  @IsArray({ message: say`must be a list` })
  @ArrayMaxSize(mergeFields.length, { message: `must have at most ${mergeFields.length} entries` })
  @ArrayUnique({ message: say`must name each field once` })
  @IsIn(mergeFields, { each: true, message: `must be of ${mergeFields.join(', ')}` })
  take: MergeField[];

  @TextField({ max: 500, description: 'Why they are one animal, 1 to 500 characters; it stays with both records.' })
  reason: string;

  @IntegerField({
    min: 1,
    max: 2_147_483_647,
    optional: true,
    description: 'Version of the kept record that was compared; 412 where it was changed since. Left out: any.',
  })
  keptVersion?: number;

  @IntegerField({
    min: 1,
    max: 2_147_483_647,
    optional: true,
    description: 'Version of the duplicate that was compared; 412 where it was changed since. Left out: any.',
  })
  duplicateVersion?: number;
}
