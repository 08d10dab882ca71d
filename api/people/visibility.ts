import { viewer } from '../platform/acting.ts';

/** Tables whose rows have a visibility. */
type Veiled = 'individual' | 'source' | 'observation';

/**
 * The SQL condition under which whoever asks may see a row of `table`, known in the statement as `alias`: true for rows that they may
 * see. A private animal or source is seen by its keeper and by registrars, a private remark by its keeper alone.
 */
export function seen(table: Veiled, alias: string): string {
  const who = viewer();
  if (who === null) return `${alias}.visibility = 'public'`;
  if (table !== 'observation' && who.roles.includes('registrar')) return 'true';
  // the id comes from our own table, never from the request
  return `(${alias}.visibility <> 'private' or ${alias}.keeper_id = '${who.id}')`;
}
