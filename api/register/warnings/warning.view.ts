import { Shown } from '../../platform/fields.ts';

/** That a keeper looked at a warning and accepts it. */
export class ConfirmationView {
  @Shown({ description: 'Why it is accepted.' })
  reason: string;

  @Shown({
    description: 'Name of the keeper who accepted it; null where a stranger asks.',
    type: String,
    nullable: true,
  })
  keeper: string | null;

  @Shown({ description: 'When, RFC 3339 in UTC.', format: 'date-time' })
  at: string;
}

/** Something in a record that looks implausible. */
export class WarningView {
  @Shown({ description: 'Which warning; a record has each at most once.', example: 'young-dam' })
  code: string;

  @Shown({ description: 'What was found and what is usual, in words with figures.' })
  detail: string;

  @Shown({ description: 'Fields of the record that it concerns.', type: [String] })
  fields: string[];

  @Shown({ description: 'Set once a keeper has accepted it in these words.', type: ConfirmationView, nullable: true })
  confirmed: ConfirmationView | null;
}
