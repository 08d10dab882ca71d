import { JournalEntry } from './journal-entry.entity.ts';
import { JournalSeal } from './journal-seal.entity.ts';
import { JournalUnsealed } from './journal-unsealed.entity.ts';

/** Every table of the journal. */
export const journalEntities = [JournalEntry, JournalSeal, JournalUnsealed];
