import { Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import { JournalEntry } from './journal-entry.entity.ts';

/** An entry that waits for its place in the chain. */
@Entity('journal_unsealed')
export class JournalUnsealed {
  @PrimaryColumn({ name: 'entry_id', type: 'uuid' })
  @ForeignKey(() => JournalEntry, { name: 'journal_unsealed_entry' })
  entryId: string;
}
