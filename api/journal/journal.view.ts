import { journalActions, type JournalAction } from '../../shared/vocabulary.ts';
import { KeeperView } from '../people/people.view.ts';
import { Shown } from '../platform/fields.ts';

/** The record that an entry is about. */
export class JournalRecordView {
  @Shown({
    description: 'Kind of record: individual, clutch, pairing, source, line, species, observation, import, keeper ...',
  })
  kind: string;

  @Shown({ description: 'Id of the record.', format: 'uuid' })
  id: string;

  @Shown({ description: 'What people call it.' })
  title: string;
}

/** One field that was changed, in words. A list has one entry a line. */
export class JournalChangeView {
  @Shown({ description: 'Name of the field, as the API calls it; of another record without "Id".', example: 'hatched' })
  field: string;

  @Shown({ description: 'What it was; null where there was nothing.', type: String, nullable: true })
  before: string | null;

  @Shown({ description: 'What it became; null where there is nothing.', type: String, nullable: true })
  after: string | null;
}

/** The place of an entry in the chain. */
export class JournalSealView {
  @Shown({ description: 'Place in the chain, from 1.', type: 'integer', minimum: 1 })
  sequence: number;

  @Shown({ description: 'SHA-256 over this entry and the hash before it, hexadecimal.', minLength: 64, maxLength: 64 })
  hash: string;
}

/** An entry of the journal: who changed what, when, and why. */
export class JournalEntryView {
  @Shown({ description: 'Id of the entry.', format: 'uuid' })
  id: string;

  @Shown({ description: 'When, RFC 3339 in UTC.', format: 'date-time' })
  at: string;

  @Shown({ description: 'Who acted; null where it was the service itself.', type: KeeperView, nullable: true })
  keeper: KeeperView | null;

  @Shown({
    description: 'By what: a session of the browser, a token of a program, or the service itself.',
    enum: ['session', 'token', 'service'],
  })
  via: 'session' | 'token' | 'service';

  @Shown({ description: 'What was done.', enum: journalActions })
  action: JournalAction;

  @Shown({ description: 'The record; null where it was none in particular.', type: JournalRecordView, nullable: true })
  record: JournalRecordView | null;

  @Shown({ description: 'What changed, field by field, as far as you may see it.', type: [JournalChangeView] })
  changes: JournalChangeView[];

  @Shown({ description: 'The reason that was given.', type: String, nullable: true })
  reason: string | null;

  @Shown({ description: 'Id of the entry whose change this one undid.', type: String, format: 'uuid', nullable: true })
  reverses: string | null;

  @Shown({ description: 'Id of the entry that undid this one.', type: String, format: 'uuid', nullable: true })
  reversedBy: string | null;

  @Shown({ description: 'Whether there is a way to undo a change of this kind; the record may have changed since.' })
  isUndoable: boolean;

  @Shown({ description: 'Its place in the chain; null in the first moments.', type: JournalSealView, nullable: true })
  seal: JournalSealView | null;
}

/** Where the chain stands. Keep the hash: with it anybody can tell later whether the journal was rewritten. */
export class JournalHeadView {
  @Shown({ description: 'How many entries are sealed.', type: 'integer', minimum: 0 })
  sequence: number;

  @Shown({
    description: 'Hash of the newest seal, hexadecimal; 64 zeros while there is none.',
    minLength: 64,
    maxLength: 64,
  })
  hash: string;

  @Shown({ description: 'When it was sealed, RFC 3339 in UTC.', type: String, format: 'date-time', nullable: true })
  sealedAt: string | null;

  @Shown({ description: 'How many entries wait for their seal.', type: 'integer', minimum: 0 })
  unsealed: number;

  @Shown({
    description: 'For how many seconds the oldest of them waits; 0 where none does.',
    type: 'number',
    minimum: 0,
  })
  oldestUnsealedSeconds: number;
}
