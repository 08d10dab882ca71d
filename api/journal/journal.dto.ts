import { journalActions, type JournalAction } from '../../shared/vocabulary.ts';
import { ChoiceField, IdField, PatternField, TextField } from '../platform/fields.ts';
import { PageQuery } from '../platform/paging.ts';
import { say } from '../platform/say.ts';

const day = (description: string): PropertyDecorator =>
  PatternField({
    pattern: /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/,
    words: say`must be a day such as 2024-05-01`,
    optional: true,
    description,
    example: '2024-05-01',
  });

/** Which entries to list. */
export class JournalQuery extends PageQuery {
  @IdField({ optional: true, description: 'The history of one record.' })
  record?: string;

  @TextField({ max: 40, optional: true, description: 'Entries about records of one kind.', example: 'individual' })
  kind?: string;

  @IdField({ optional: true, description: 'What one keeper did.' })
  keeper?: string;

  @ChoiceField(journalActions, { optional: true, description: 'Entries of one kind of change.' })
  action?: JournalAction;

  @day('From this day on (UTC).')
  from?: string;

  @day('Up to this day, itself included (UTC).')
  to?: string;
}
