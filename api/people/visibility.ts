import { acting, SignInProblem, viewer } from '../platform/acting.ts';
import { say } from '../platform/say.ts';

/** Tables whose rows have a visibility. */
type Veiled = 'individual' | 'source' | 'observation';

/**
 * The SQL condition under which whoever asks may see a row of `table`, known in the statement as `alias`: true for rows that they may
 * see. A private animal or source is seen by its keeper and by registrars, a private remark by its keeper alone. A private animal is seen
 * besides by the keeper to whom it is on offer, and by keepers who gave it.
 */
export function seen(table: Veiled, alias: string): string {
  const who = viewer();
  if (table !== 'individual' || who === null || who.roles.includes('registrar')) return seenAtHome(table, alias);
  return `(${alias}.visibility <> 'private' or ${alias}.keeper_id = '${who.id}' or '${who.id}' = any(${alias}.shown_to))`;
}

/** The opposite of `seen`, written so that an index over the few private rows answers it. */
export function hidden(table: Veiled, alias: string): string {
  const who = viewer();
  if (table !== 'individual' || who === null || who.roles.includes('registrar')) return hiddenAtHome(table, alias);
  return `(${alias}.visibility = 'private' and ${alias}.keeper_id <> '${who.id}' and '${who.id}' <> all(${alias}.shown_to))`;
}

/** As `seen`, for what an animal has at its keeper's place: being offered it, or having given it, opens no doors there. */
export function seenAtHome(table: Veiled, alias: string): string {
  const who = viewer();
  if (who === null) return `${alias}.visibility = 'public'`;
  if (table !== 'observation' && who.roles.includes('registrar')) return 'true';
  // the id comes from our own table, never from the request
  return `(${alias}.visibility <> 'private' or ${alias}.keeper_id = '${who.id}')`;
}

/** The opposite of `seenAtHome`. */
export function hiddenAtHome(table: Veiled, alias: string): string {
  const who = viewer();
  if (who === null) return `${alias}.visibility <> 'public'`;
  if (table !== 'observation' && who.roles.includes('registrar')) return 'false';
  return `(${alias}.visibility = 'private' and ${alias}.keeper_id <> '${who.id}')`;
}

/** The SQL condition for rows of the acting keeper; for registrars all, for strangers none. */
export function owned(alias: string): string {
  const who = viewer();
  if (who === null) return 'false';
  return who.roles.includes('registrar') ? 'true' : `${alias}.keeper_id = '${who.id}'`;
}

/** Whether nobody is signed in: such a reader is told no names of people. */
export function isStranger(): boolean {
  return viewer() === null;
}

/** SQL for a column that names people: null where a stranger asks. */
export function forMembers(column: string): string {
  return isStranger() ? 'null' : column;
}

/** 401 where a stranger asks for what would tell who keeps an animal. */
export function requireMember(): void {
  if (isStranger())
    throw new SignInProblem(say`Only members of the club can search and sort by keeper. Sign in first.`);
}

/** Whether the acting keeper is the one that a record belongs to; a registrar is not. */
export function isOwn(record: { readonly keeperId: string | null }): boolean {
  return record.keeperId === acting().id;
}
