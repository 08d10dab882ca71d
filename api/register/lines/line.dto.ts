import { OmitType, PartialType } from '@nestjs/swagger';
import { labelKinds, type LabelKind } from '../../../shared/vocabulary.ts';
import { ChoiceField, IdField, TextField } from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';

/** A new line. */
export class NewLineRequest {
  @IdField({ description: 'Its species.' })
  speciesId: string;

  @TextField({
    max: 120,
    description: 'Its name, which is its label; unique within the species.',
    example: 'Quebrada Honda',
  })
  name: string;

  @ChoiceField(labelKinds, { optional: true, description: 'What the label is; unlabelled if left out.' })
  labelKind?: LabelKind;

  @TextField({ max: 2000, optional: true, nullable: true, description: 'What its keepers agreed on.' })
  policy?: string | null;
}

/** Changes of a line; its species stays. */
export class LineChangeRequest extends PartialType(OmitType(NewLineRequest, ['speciesId']), {
  skipNullProperties: false,
}) {}

/** Which lines to list. */
export class LineQuery extends PageQuery {
  @IdField({ optional: true, description: 'Lines of this species only.' })
  speciesId?: string;

  @TextField({ max: 120, optional: true, description: 'Part of the name.' })
  q?: string;
}
