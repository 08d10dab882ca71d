import type { EntityManager } from 'typeorm';
import type { JournalAction, Visibility } from '../../shared/vocabulary.ts';
import { currentRequest } from './acting.ts';
import { newId } from './ids.ts';

/** A state of a record as JSON. Never a secret. */
export type KeptForm = Readonly<Record<string, unknown>>;

/** What a change tells the journal. */
export interface NewEntry {
  readonly action: JournalAction;
  /** The kind of record, by the name of its table: individual, clutch, keeper, import ... */
  readonly kind: string;
  readonly recordId: string | null;
  /** The version of the record after the change. */
  readonly recordVersion?: number | null;
  /** The keeper whose record it is. */
  readonly ownerId?: string | null;
  /** Who may read the entry: the stricter one of before and after. `club` if left out. */
  readonly visibility?: Visibility;
  /** The record as it was; null where it was not there. */
  readonly before: KeptForm | null;
  /** The record as it is now; null where it is gone. */
  readonly after: KeptForm | null;
  readonly reason?: string | null;
  /** The entry whose change this one undoes. */
  readonly reversesId?: string | null;
  /** Records besides the entry's own whose history shows it too. */
  readonly aboutIds?: readonly string[];
  /** Who acts, where the request itself does not know it yet: whoever joins or sets the club up. */
  readonly keeperId?: string;
}

/**
 * Writes an entry into the journal, in the transaction of the change that it tells of, and puts it on the sealer's list. Who acts
 * and by which request is known from the request; outside of one it is the service itself. Gives the entry's id, which
 * the answer then carries in the header Journal-Entry (the first entry of a request).
 */
export async function writeEntry(manager: EntityManager, entry: NewEntry): Promise<string> {
  const [id] = await writeEntries(manager, [entry]);
  if (id === undefined) throw new Error('an entry was asked for');
  return id;
}

/** Entries that one statement carries. */
const SLICE = 200;

/** Writes several entries as `writeEntry` does one, and gives their ids in their order. */
export async function writeEntries(manager: EntityManager, entries: readonly NewEntry[]): Promise<string[]> {
  const asked = currentRequest();
  const ids: string[] = [];
  for (let from = 0; from < entries.length; from += SLICE) {
    const rows = entries.slice(from, from + SLICE).map((entry) => valuesOf(entry, asked));
    const width = rows[0]?.length ?? 0;
    const places = rows.map((row, at) => `(${row.map((_, column) => `$${at * width + column + 1}`).join(', ')})`);
    await manager.query(
      `with entry as (
       insert into journal_entry (id, keeper_id, via, request_id, action, kind, record_id, record_version, owner_id, visibility,
         before, after, reason, reverses_id, about_ids)
       values ${places.join(', ')} returning id)
     insert into journal_unsealed (entry_id) select id from entry`,
      rows.flat(),
    );
    ids.push(...rows.map(([id]) => id as string));
  }
  if (asked) asked.journalEntryId ??= ids[0];
  return ids;
}

function valuesOf(entry: NewEntry, asked: ReturnType<typeof currentRequest>): unknown[] {
  const who = asked?.viewer ?? null;
  return [
    newId(),
    entry.keeperId ?? who?.id ?? null,
    who?.via ?? (entry.keeperId === undefined ? 'service' : 'session'),
    asked?.requestId ?? null,
    entry.action,
    entry.kind,
    entry.recordId,
    entry.recordVersion ?? null,
    entry.ownerId ?? null,
    entry.visibility ?? 'club',
    asJson(entry.before),
    asJson(entry.after),
    entry.reason ?? null,
    entry.reversesId ?? null,
    entry.aboutIds ?? [],
  ];
}

const asJson = (form: KeptForm | null): string | null => (form === null ? null : JSON.stringify(form));
