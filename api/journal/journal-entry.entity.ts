import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type { JournalAction, Visibility } from '../../shared/vocabulary.ts';
import { Keeper } from '../people/keeper.entity.ts';
import type { KeptForm } from '../platform/journal-entry.ts';

/** What was changed, by whom, when and why. The database takes new entries and refuses every other change of them. */
@Entity('journal_entry')
@Check('journal_entry_via', `via in ('session', 'token', 'service')`)
@Index('journal_entry_record_index', ['recordId', 'id'])
@Index('journal_entry_keeper_index', ['keeperId', 'id'])
@Index('journal_entry_about_index', { synchronize: false })
@Index('journal_entry_reverses_index', { synchronize: false })
export class JournalEntry {
  @PrimaryColumn({ type: 'uuid', default: () => 'new_id()' })
  id: string;

  @Column({ type: 'timestamptz', precision: 3, default: () => 'clock_timestamp()' })
  at: Date;

  /** Who acted; null: the service itself. */
  @Column({ name: 'keeper_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Keeper, { name: 'journal_entry_keeper' })
  keeperId: string | null;

  @Column('text')
  via: 'session' | 'token' | 'service';

  @Column({ name: 'request_id', type: 'text', nullable: true })
  requestId: string | null;

  @Column('text')
  action: JournalAction;

  /** The table of the record, or another word where it has none. */
  @Column('text')
  kind: string;

  @Column({ name: 'record_id', type: 'uuid', nullable: true })
  recordId: string | null;

  /** The version of the record after the change. */
  @Column({ name: 'record_version', type: 'integer', nullable: true })
  recordVersion: number | null;

  @Column({ name: 'owner_id', type: 'uuid', nullable: true })
  ownerId: string | null;

  /** Who could see the record, before or after, whichever is stricter. */
  @Column('text')
  visibility: Visibility;

  @Column({ type: 'json', nullable: true })
  before: KeptForm | null;

  @Column({ type: 'json', nullable: true })
  after: KeptForm | null;

  @Column({ type: 'text', nullable: true })
  reason: string | null;

  /** The entry whose change this one undid. */
  @Column({ name: 'reverses_id', type: 'uuid', nullable: true })
  @ForeignKey(() => JournalEntry, { name: 'journal_entry_reverses' })
  reversesId: string | null;

  /** Records besides its own whose history shows the entry. */
  @Column({ name: 'about_ids', type: 'uuid', array: true, default: () => `'{}'` })
  aboutIds: string[];
}
