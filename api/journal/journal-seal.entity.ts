import { Column, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';
import { JournalEntry } from './journal-entry.entity.ts';

/** The place of an entry in the chain. The database takes new seals and refuses every other change of them. */
@Entity('journal_seal')
@Unique('journal_seal_once', ['entryId'])
export class JournalSeal {
  /** From 1, without gaps; as text, since it is 64 bits wide. */
  @PrimaryColumn('bigint')
  sequence: string;

  @Column({ name: 'entry_id', type: 'uuid' })
  @ForeignKey(() => JournalEntry, { name: 'journal_seal_entry' })
  entryId: string;

  @Column({ name: 'previous_hash', type: 'bytea' })
  previousHash: Buffer;

  @Column('bytea')
  hash: Buffer;

  @Column({ name: 'sealed_at', type: 'timestamptz', precision: 3, default: () => 'now()' })
  sealedAt: Date;
}
