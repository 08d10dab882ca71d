import type { EntityManager } from 'typeorm';
import type { EntryToUndo } from '../../journal/journal-kinds.ts';

/** No request takes longer: milliseconds within which all its entries lie. */
const REQUEST_TAKES = 600_000;

/** The least id that a record of a moment can have: ids begin with their milliseconds. */
const idOfMoment = (milliseconds: number): string => {
  const digits = Math.max(0, milliseconds).toString(16).padStart(12, '0');
  return `${digits.slice(0, 8)}-${digits.slice(8)}-0000-0000-000000000000`;
};

/**
 * The other entries of the transaction of an entry, of the kinds asked for, in the order in which changes of one record can be undone. Entries
 * of one moment are in no order of their own. By the primary key: the ids of one request lie close together.
 */
export async function entriesOfRequest(
  manager: EntityManager,
  id: string,
  kinds: readonly string[],
): Promise<EntryToUndo[]> {
  const moment = parseInt(id.replace('-', '').slice(0, 12), 16);
  return manager.query<EntryToUndo[]>(
    `select j.id, j.kind, j.action, j.record_id as "recordId", j.record_version as "recordVersion", j.before, j.after, j.about_ids as "aboutIds"
     from journal_entry j join journal_entry e on e.id = $1
     where j.id between $2 and $3 and j.kind = any($4) and j.request_id = e.request_id and j.keeper_id = e.keeper_id and j.xmin = e.xmin
     order by array_position(array['added', 'restored', 'changed', 'withdrawn'], j.action), j.id`,
    [id, idOfMoment(moment - REQUEST_TAKES), idOfMoment(moment + REQUEST_TAKES), kinds],
  );
}
