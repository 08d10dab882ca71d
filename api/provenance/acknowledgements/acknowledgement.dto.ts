import { flagCodes, type FlagCode } from '../../../shared/vocabulary.ts';
import { ChoiceField, IdField, TextField } from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';

/** Whose flag can be acknowledged. */
export const acknowledgedSubjects = ['individualId', 'lineId'] as const;

/** That a flag is known of, and why it may stay. Exactly one of individualId and lineId is there. */
export class NewAcknowledgementRequest {
  @IdField({ optional: true, description: 'The animal that carries the flag.' })
  individualId?: string;

  @IdField({ optional: true, description: 'The line whose audit shows the flag.' })
  lineId?: string;

  @ChoiceField(flagCodes, { description: 'The flag; the animal or line must carry it now.' })
  code: FlagCode;

  @TextField({
    max: 500,
    description: 'Why it may stay. Every member who sees the flag reads it.',
    example: 'The importer died in 2003, and his papers went with him.',
  })
  reason: string;
}

/** Which acknowledgements to list. */
export class AcknowledgementQuery extends PageQuery {
  @IdField({ optional: true, description: 'Those of this animal.' })
  individualId?: string;

  @IdField({ optional: true, description: 'Those of this line, without those of its animals.' })
  lineId?: string;
}
