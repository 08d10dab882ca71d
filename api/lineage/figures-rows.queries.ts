import type { EntityManager } from 'typeorm';
import type { NotedChange } from './register-rows.queries.ts';

/** Stored figures: one row an animal, for lists to sort and filter by. */

/** Figures of some animals, list by list. */
export interface AnimalRows {
  readonly ids: readonly string[];
  readonly inbreeding: readonly number[];
  readonly depth: readonly number[];
  readonly isLiving: readonly boolean[];
  readonly tracedShare: readonly number[];
  readonly meanKinship: readonly (number | null)[];
  /** Whether the mean kinship that is stored stays. */
  readonly keepsKinship: readonly boolean[];
}

/** A noted change whose figures are not written yet. */
export interface UnsettledChange extends NotedChange {
  readonly note: string;
}

/** The oldest unsettled changes, up to a note where one is given (lineage_change_unsettled_index). */
export function readUnsettled(
  manager: EntityManager,
  most: number,
  upTo: string | null = null,
): Promise<UnsettledChange[]> {
  return manager.query(
    `select id as note, kind, record_id as id from lineage_change where not settled and ($2::bigint is null or lineage_change.id <= $2)
     order by lineage_change.id limit $1`,
    [most, upTo],
  );
}

/** The newest note of changes up to a revision; '0' where there is none. */
export async function newestNote(manager: EntityManager, revision: number): Promise<string> {
  const [row] = await manager.query<{ note: string | null }[]>(
    'select max(id) as note from lineage_change where revision <= $1',
    [revision],
  );
  return row?.note ?? '0';
}

/** Holds the register still until the transaction ends, at whatever revision it is. */
export async function hold(manager: EntityManager): Promise<void> {
  await manager.query('select 1 from lineage_revision for update');
}

/**
 * Whether a change after a revision is settled already: figures of that revision would take newer ones back. Asked in a transaction that
 * holds the register by `hold`, in a statement of its own, so that it sees what was settled while the hold was waited for.
 */
export async function isOvertaken(manager: EntityManager, revision: number): Promise<boolean> {
  const [row] = await manager.query<{ overtaken: boolean }[]>(
    'select exists (select from lineage_change where settled and revision > $1) as overtaken',
    [revision],
  );
  return row?.overtaken ?? false;
}

/** Writes figures of animals; a row that would not change is left alone. */
export async function writeAnimalRows(manager: EntityManager, rows: AnimalRows): Promise<void> {
  if (rows.ids.length > 0) await manager.query(insertAnimalRows(1), animalParameters(rows));
}

/** The lists of `insertAnimalRows`. */
const animalParameters = (rows: AnimalRows): unknown[] => [
  rows.ids,
  rows.inbreeding,
  rows.depth,
  rows.tracedShare,
  rows.meanKinship,
  rows.keepsKinship,
  rows.isLiving,
];

/** SQL that writes figures of animals: seven lists from a parameter on, as far as `condition` holds. */
const insertAnimalRows = (first: number, condition = 'true'): string => {
  const lists = ['uuid', 'float8', 'int', 'float8', 'float8', 'boolean', 'boolean'].map(
    (type, at) => `$${first + at}::${type}[]`,
  );
  return `insert into individual_figures as held (individual_id, inbreeding, depth, traced_share, mean_kinship, is_living)
    select new.id, new.inbreeding, new.depth, new.traced, case when new.keeps then before.mean_kinship else new.kinship end, new.living
    from unnest(${lists.join(', ')}) as new (id, inbreeding, depth, traced, kinship, keeps, living)
      left join individual_figures before on before.individual_id = new.id
    where ${condition}
    on conflict (individual_id) do update set inbreeding = excluded.inbreeding, depth = excluded.depth,
      traced_share = excluded.traced_share, mean_kinship = excluded.mean_kinship, is_living = excluded.is_living
    where (held.inbreeding, held.depth, held.traced_share, held.mean_kinship, held.is_living)
      is distinct from (excluded.inbreeding, excluded.depth, excluded.traced_share, excluded.mean_kinship, excluded.is_living)`;
};

/** What a settling writes. */
export interface Settling {
  readonly animals: AnimalRows;
  /** Records that are gone, by id: their rows go too. */
  readonly gone: readonly string[];
  /** Lines whose mean kinships have to be computed anew. */
  readonly dueLines: readonly string[];
  /** The changes that are settled by it. */
  readonly notes: readonly string[];
}

/**
 * Writes a settling by one statement, as a transaction of its own; false, and nothing is written, where the register is not at this
 * revision any more. The statement holds the register first, and what it waited for there is no other state than it began with, since
 * that would have another revision. Animals, lines, notes: in the order in which the job writes them too, so that the two wait for
 * each other at most. A settling that is lost with the power is simply done again, so it waits for no disk.
 */
export async function settleAt(manager: EntityManager, revision: number, settling: Settling): Promise<boolean> {
  const { animals, gone, dueLines, notes } = settling;
  const [row] = await manager.query<{ held: boolean }[]>(
    `with held as (select set_config('synchronous_commit', 'off', true) from lineage_revision where revision = $1 for update),
       written as (${insertAnimalRows(2, 'exists (select from held)')} returning 1),
       gone_animals as (delete from individual_figures f where f.individual_id = any($9::uuid[]) and exists (select from held)
         and not exists (select from individual r where r.id = f.individual_id) returning 1),
       gone_lines as (delete from line_figures f where f.line_id = any($9::uuid[]) and exists (select from held)
         and not exists (select from line r where r.id = f.line_id) returning 1),
       due as (insert into line_figures (line_id, due_since)
         select id, now() from unnest($10::uuid[]) as line (id)
         where exists (select from held) and (select count(*) from written) >= 0 order by id
         on conflict (line_id) do update set due_since = excluded.due_since returning 1),
       settled as (update lineage_change set settled = true
         where not settled and id = any($11::bigint[]) and exists (select from held) and (select count(*) from due) >= 0)
     select exists (select from held) as held`,
    [revision, ...animalParameters(animals), gone, dueLines, notes],
  );
  return row?.held ?? false;
}

/** Mean kinships as they are written, by the ids of animals; who has none, or no row yet, is left out. */
export async function readMeanKinships(manager: EntityManager, ids: readonly string[]): Promise<Map<string, number>> {
  const rows = await manager.query<{ id: string; kinship: number }[]>(
    `select individual_id as id, mean_kinship as kinship from individual_figures
     where individual_id = any($1::uuid[]) and mean_kinship is not null`,
    [ids],
  );
  return new Map(rows.map(({ id, kinship }) => [id, kinship]));
}

/** Removes the rows of records that are gone: those named, or all that have no record any more. */
export async function removeRows(manager: EntityManager, ids: readonly string[] | 'all'): Promise<void> {
  const among = (column: string): string => (ids === 'all' ? '' : `f.${column} = any($1::uuid[]) and `);
  const gone = (table: string, column: string, record: string): string =>
    `delete from ${table} f where ${among(column)}not exists (select from ${record} r where r.id = f.${column})`;
  await manager.query(
    `with animals as (${gone('individual_figures', 'individual_id', 'individual')} returning 1)
     ${gone('line_figures', 'line_id', 'line')}`,
    ids === 'all' ? [] : [ids],
  );
}

/** Marks changes up to a note as settled. */
export async function markSettled(manager: EntityManager, upTo: string): Promise<void> {
  await manager.query('update lineage_change set settled = true where not settled and id <= $1', [upTo]);
}

/** Ids of the animals that hatched from some clutches or came from some sources (individual_clutch_index, individual_source_index). */
export async function readYoungOf(
  manager: EntityManager,
  clutches: readonly string[],
  sources: readonly string[],
): Promise<string[]> {
  if (clutches.length === 0 && sources.length === 0) return [];
  const rows = await manager.query<{ id: string }[]>(
    'select id from individual where clutch_id = any($1::uuid[]) union all select id from individual where source_id = any($2::uuid[])',
    [clutches, sources],
  );
  return rows.map(({ id }) => id);
}

/** Says that the mean kinships of some lines, or of all, have to be computed anew. */
export async function noteDueLines(manager: EntityManager, lines: readonly string[] | 'all'): Promise<void> {
  if (lines === 'all') await manager.query('select note_due_lines(array(select id from line))');
  else if (lines.length > 0) await manager.query('select note_due_lines($1::uuid[])', [lines]);
}

/**
 * The lines that have waited longest for their mean kinships (line_figures_due_index), each with the version of its row: two changes
 * may make a line due at the same millisecond, but never in the same version.
 */
export function readDueLines(manager: EntityManager, most: number): Promise<{ id: string; version: string }[]> {
  return manager.query(
    'select line_id as id, xmin::text as version from line_figures where due_since is not null order by due_since limit $1',
    [most],
  );
}

/** Writes mean kinships that changed; animals without a row get none, since their own change is still to be settled. */
export async function writeMeanKinships(
  manager: EntityManager,
  ids: readonly string[],
  values: readonly (number | null)[],
): Promise<void> {
  await manager.query(
    `update individual_figures f set mean_kinship = new.value from unnest($1::uuid[], $2::float8[]) as new (id, value)
     where f.individual_id = new.id and f.mean_kinship is distinct from new.value`,
    [ids, values],
  );
}

/** Says that the mean kinships of a line are written, unless it has become due again since. */
export async function clearDueLine(manager: EntityManager, line: string, version: string): Promise<void> {
  await manager.query('update line_figures set due_since = null where line_id = $1 and xmin::text = $2', [
    line,
    version,
  ]);
}

/** One copy of the service at a time writes where it is much: whoever holds this lock, which ends with its connection. */
const turnKey = `hashtext('linekeeper figures')`;

/** Takes the turn for a connection where no other has it, and lets the server find out soon when the machine behind it vanished. */
export async function takeTurn(manager: EntityManager): Promise<boolean> {
  await manager.query(
    `select set_config('tcp_keepalives_idle', '10', false), set_config('tcp_keepalives_interval', '5', false),
       set_config('tcp_keepalives_count', '3', false)`,
  );
  const [row] = await manager.query<{ mine: boolean }[]>(`select pg_try_advisory_lock(${turnKey}) as mine`);
  return row?.mine ?? false;
}

/** Gives the turn back, on the connection that took it. */
export async function giveTurnBack(manager: EntityManager): Promise<void> {
  await manager.query(`select pg_advisory_unlock(${turnKey})`);
}

const isWaiting = `exists (select from lineage_change where not settled)
       or exists (select from line_figures where due_since is not null)`;

/** Whether figures wait to be written while no copy of the service has its turn. */
export async function isWorkLeft(manager: EntityManager): Promise<boolean> {
  const [row] = await manager.query<{ left: boolean }[]>(
    // the lock is only tried where something waits, and ends with the statement
    `select case when ${isWaiting} then pg_try_advisory_xact_lock(${turnKey}) else false end as left`,
  );
  return row?.left ?? false;
}

/** How far the figures have come. */
export interface FiguresProgress {
  /** Whether every stored figure follows the newest change. */
  readonly current: boolean;
  readonly done: number;
  readonly total: number;
}

/** How far the figures have come, as every copy of the service can tell. */
export async function readProgress(manager: EntityManager): Promise<FiguresProgress> {
  const [row] = await manager.query<FiguresProgress[]>(
    `select not (${isWaiting}) as current, done, total from figures_progress`,
  );
  return row ?? { current: true, done: 0, total: 0 };
}

/** Tells how far the figures have come. */
export async function noteProgress(manager: EntityManager, done: number, total: number): Promise<void> {
  await manager.query('update figures_progress set done = $1, total = $2', [done, total]);
}

/** Forgets settled notes but the newest ones, and says up to which revision they may be gone. */
export async function pruneNotes(manager: EntityManager, kept: number): Promise<void> {
  await manager.query(
    `with gone as (
       delete from lineage_change where settled and id <= (select max(id) from lineage_change) - $1::bigint returning revision)
     update lineage_revision set pruned = greatest(pruned, (select max(revision) from gone))
     where exists (select from gone)`,
    [kept],
  );
}
