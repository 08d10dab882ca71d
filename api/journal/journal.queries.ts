import type { EntityManager } from 'typeorm';
import type { JournalAction } from '../../shared/vocabulary.ts';
import { acting } from '../platform/acting.ts';
import { isId } from '../platform/ids.ts';
import { contentColumns, type SealedContent } from './chain.ts';
import type { JournalQuery } from './journal.dto.ts';
import type { JournalKinds } from './journal-kinds.ts';

/** An entry as it is read, whole. */
export type EntryRow = Omit<SealedContent, 'action' | 'before' | 'after' | 'via'> & {
  readonly action: JournalAction;
  readonly via: 'session' | 'token' | 'service';
  readonly before: Readonly<Record<string, unknown>> | null;
  readonly after: Readonly<Record<string, unknown>> | null;
  readonly keeper: string | null;
  readonly reversedBy: string | null;
  readonly sequence: string | null;
  readonly hash: string | null;
};

/** Seals by journal_seal_once, the entry that undid one by journal_entry_reverses_index. */
const select = `
  select ${contentColumns('e')}, k.name as keeper, s.sequence, encode(s.hash, 'hex') as hash,
    (select r.id from journal_entry r where r.reverses_id = e.id order by r.id desc limit 1) as "reversedBy"
  from journal_entry e left join keeper k on k.id = e.keeper_id left join journal_seal s on s.entry_id = e.id`;

/**
 * The SQL condition under which whoever asks may read an entry `e`: the record is seen now, and the state that the entry tells of could be
 * seen by them then. Entries of kinds that nobody vouches for are about people: for administrators, and for whom they concern.
 */
function readable(kinds: JournalKinds): string {
  const who = acting();
  const concerned = `'${who.id}' in (e.owner_id, e.record_id, e.keeper_id)`;
  const others = who.roles.includes('administrator') ? 'true' : concerned;
  const cases = kinds.all().map(({ kind, seen }) => `when '${kind}' then ${seen('e.record_id')}`);
  const isRegistrar = who.roles.includes('registrar') ? `e.kind <> 'observation'` : 'false';
  // which warning was accepted, and why, tells of parents that not everybody may see
  const isOfWarning = `e.action in ('confirmed', 'unconfirmed')`;
  const isOwn = `(e.owner_id = '${who.id}' or e.keeper_id = '${who.id}')`;
  return `(e.visibility <> 'private' or e.owner_id = '${who.id}' or ${isRegistrar})
    and (not ${isOfWarning} or ${isOwn} or ${isRegistrar})
    and case e.kind ${cases.join(' ')} else ${others} end`;
}

/** Entries that whoever asks may read, by their ids (primary key). */
export async function readEntries(
  manager: EntityManager,
  kinds: JournalKinds,
  ids: readonly string[],
): Promise<EntryRow[]> {
  return manager.query<EntryRow[]>(`${select} where e.id = any($1) and ${readable(kinds)} order by e.id desc`, [
    ids.filter(isId),
  ]);
}

/** Entries of one record that came after an entry which left it at `version`, those that whoever asks may read (journal_entry_record_index). */
export async function readEntriesSince(
  manager: EntityManager,
  kinds: JournalKinds,
  recordId: string,
  version: number | null,
  entryId: string,
): Promise<EntryRow[]> {
  return manager.query<EntryRow[]>(
    `${select} where e.record_id = $1 and (e.record_version > $2 or e.record_version = $2 and e.id > $3) and ${readable(kinds)} order by e.id desc limit 20`,
    [recordId, version ?? 0, entryId],
  );
}

/**
 * Entries, the newest first, after a cursor; one more than the limit. A record's history by journal_entry_record_index and
 * journal_entry_about_index, a keeper's by journal_entry_keeper_index, all else by the primary key read backwards.
 */
export async function listEntries(
  manager: EntityManager,
  kinds: JournalKinds,
  query: JournalQuery,
  after: string | null,
): Promise<EntryRow[]> {
  const { sql, parameters } = await conditions(manager, kinds, query);
  parameters.push(after);
  const place = `$${parameters.length}`;
  return manager.query<EntryRow[]>(
    `${select} where ${sql} and (${place}::uuid is null or e.id < ${place}) order by e.id desc limit ${query.limit + 1}`,
    parameters,
  );
}

/** How many entries match, of those that whoever asks may read. */
export async function countEntries(manager: EntityManager, kinds: JournalKinds, query: JournalQuery): Promise<number> {
  const { sql, parameters } = await conditions(manager, kinds, query);
  const [row] = await manager.query<{ total: number }[]>(
    `select count(*)::integer as total from journal_entry e where ${sql}`,
    parameters,
  );
  return row?.total ?? 0;
}

async function conditions(
  manager: EntityManager,
  kinds: JournalKinds,
  query: JournalQuery,
): Promise<{ sql: string; parameters: unknown[] }> {
  const parameters: unknown[] = [];
  const clauses = [readable(kinds)];
  const add = (clause: (place: string) => string, value: unknown): void => {
    if (value === undefined) return;
    parameters.push(value);
    clauses.push(clause(`$${parameters.length}`));
  };
  add((place) => `e.kind = ${place}`, query.kind);
  add((place) => `e.keeper_id = ${place}`, query.keeper);
  add((place) => `e.action = ${place}`, query.action);
  add((place) => `e.at >= ${place}::date::timestamp at time zone 'UTC'`, query.from);
  add((place) => `e.at < (${place}::date + 1)::timestamp at time zone 'UTC'`, query.to);
  if (query.record !== undefined) {
    const { isSeen, origins } = await findOrigins(manager, kinds, query.record);
    add((place) => `e.id in (${historyOf(place, isSeen)})`, [query.record, ...origins]);
  }
  return { sql: clauses.join(' and '), parameters };
}

/** A record that may not be seen must not show up as the young, or the duplicate, of another's entry. */
const historyOf = (place: string, isSeen: boolean): string =>
  `select id from journal_entry where record_id = any(${place}::uuid[])` +
  (isSeen
    ? ` union select id from journal_entry where about_ids <> '{}' and about_ids @> (${place}::uuid[])[1:1]`
    : '');

/** Whether a record is there and seen, and whose entries stand in its history beside its own: those of the sheet that brought it. */
async function findOrigins(
  manager: EntityManager,
  kinds: JournalKinds,
  id: string,
): Promise<{ isSeen: boolean; origins: string[] }> {
  const seen = kinds.all().map((kind) => kind.seen('$1::uuid'));
  const origins = kinds.all().flatMap((kind) => (kind.origins ? [kind.origins('$1::uuid')] : []));
  const [row] = await manager.query<{ seen: boolean; origins: string[] }[]>(
    `select ${['false', ...seen].join(' or ')} as seen,
       array(${origins.length > 0 ? origins.join(' union all ') : 'select null::uuid limit 0'}) as origins`,
    [id],
  );
  return { isSeen: row?.seen ?? false, origins: row?.seen ? row.origins : [] };
}
