import { flagCodes, type FlagCode } from '../../../shared/vocabulary.ts';
import { Shown } from '../../platform/fields.ts';
import { KeptRecordView } from '../../register/record.view.ts';
import { FLAG_RECORDS_MOST } from '../flag-words.ts';

/** That a registrar knows of a flag, and why it may stay. */
export class AcknowledgementView extends KeptRecordView {
  @Shown({
    description: 'The animal whose flag it is; null where it is the flag of a line.',
    type: String,
    format: 'uuid',
    nullable: true,
  })
  individualId: string | null;

  @Shown({
    description: 'The line whose flag it is; null where it is the flag of an animal.',
    type: String,
    format: 'uuid',
    nullable: true,
  })
  lineId: string | null;

  @Shown({ description: 'The flag.', enum: flagCodes })
  code: FlagCode;

  @Shown({ description: 'Why it may stay.' })
  reason: string;

  @Shown({
    description: `How many records caused the flag when it was acknowledged, the first ${FLAG_RECORDS_MOST} counted.`,
    type: 'integer',
    minimum: 0,
    maximum: FLAG_RECORDS_MOST,
  })
  causes: number;
}

/** That a flag is acknowledged, as it is told beside the flag. */
export class AcknowledgedView {
  @Shown({ description: 'Id of the acknowledgement.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Its version, to withdraw it by (If-Match).', type: 'integer', minimum: 1 })
  version: number;

  @Shown({ description: 'Name of the registrar; null where a stranger asks.', type: String, nullable: true })
  by: string | null;

  @Shown({ description: 'When, RFC 3339 in UTC.', format: 'date-time' })
  at: string;

  @Shown({
    description: 'Why the flag may stay; null where a stranger asks, since it may name people or places.',
    type: String,
    nullable: true,
  })
  reason: string | null;

  @Shown({
    description:
      'Whether a record causes the flag now that did not when it was acknowledged: what was said was not said of that one. ' +
      `Null where more records cause it than are compared, ${FLAG_RECORDS_MOST}.`,
    type: Boolean,
    nullable: true,
  })
  otherCauses: boolean | null;
}
