import type pg from 'pg';
import type { EntityManager } from 'typeorm';
import { forEachBinaryRow, type BinaryRow } from './binary-rows.ts';

/**
 * The bulk reads of the lineage: animals, clutches, parents, sources and lines, in rows of plain columns.
 *
 * All of them have to be called in one REPEATABLE READ transaction, so that they see one state of the register. Without ids each
 * is a walk through a whole table; those ordered by id go along the primary key.
 */

/** Which state of the register a transaction sees. */
export interface Revision {
  /** Grows with every change that can touch a figure of the lineage. */
  readonly number: number;
  /** When that change was made (RFC 3339, UTC). */
  readonly changedAt: string;
  /** Notes of changes up to this revision may be gone: a state older than it cannot be led on by notes. */
  readonly pruned: number;
}

interface RevisionRow {
  readonly revision: string;
  readonly changed_at: Date;
  readonly pruned: string;
}

const revision = 'select revision, changed_at, pruned from lineage_revision';

/** The newest revision of the register. */
export async function readRevision(manager: EntityManager): Promise<Revision> {
  return revisionOf(await manager.query<RevisionRow[]>(revision));
}

/** The revision that the transaction at hand sees. */
export async function readRevisionIn(client: pg.ClientBase): Promise<Revision> {
  return revisionOf((await client.query<RevisionRow>(revision)).rows);
}

function revisionOf([row]: readonly RevisionRow[]): Revision {
  if (!row) throw new Error('the register has no revision row: its schema is damaged');
  return {
    number: Number(row.revision),
    changedAt: row.changed_at.toISOString(),
    pruned: Number(row.pruned),
  };
}

/** About how many individuals there are, never fewer: one look at the last registry serial. */
export async function countIndividuals(manager: EntityManager): Promise<number> {
  const [row] = await manager.query<{ serial: string | null }[]>('select max(number) as serial from individual');
  return Number(row?.serial ?? 0);
}

/** Ids as the database gave them; `null` stands for all records. */
export type Ids = readonly string[] | null;

const quoted = (ids: readonly string[]): string => ids.map((id) => `'${id}'`).join(',');
const among = (column: string, ids: Ids): string => (ids === null ? '' : ` where ${column} in (${quoted(ids)})`);

type Read = (client: pg.ClientBase, ids: Ids, take: (row: BinaryRow) => void) => Promise<void>;

const read =
  (columns: string, table: string, column: string, order = ''): Read =>
  async (client, ids, take) => {
    if (ids !== null && ids.length === 0) return;
    await forEachBinaryRow(client, `select ${columns} from ${table}${among(column, ids)}${order}`, take);
  };

/** Rows of id, number, sex, status, line, clutch, source, withdrawn. */
export const forEachIndividual = read(
  'id, number, sex, status, line_id, clutch_id, source_id, withdrawn_at is not null',
  'individual',
  'id',
  ' order by id',
);

/** Rows of id. */
export const forEachClutch = read('id', 'clutch', 'id', ' order by id');

/** Rows of clutch, role, individual (null: a frog nobody knows), probability. */
export const forEachCandidate = read('clutch_id, role, individual_id, probability', 'clutch_candidate', 'clutch_id');

/** Rows of clutch, one parent, the other, probability. */
export const forEachPair = read('clutch_id, a_id, b_id, probability', 'clutch_pair', 'clutch_id');

/** Rows of id, kind, label as received, base kinship. */
export const forEachSource = read('id, kind, label_as_received, base_kinship', 'source', 'id', ' order by id');

/** Rows of id, name, label kind. */
export const forEachLine = read('id, name, label_kind', 'line', 'id', ' order by id');

/** A noted change of the register; without an id for everything at once. */
export interface NotedChange {
  readonly kind: 'individual' | 'origin' | 'clutch' | 'source' | 'line' | 'everything';
  readonly id: string | null;
}

/** The revision that the transaction at hand sees, and the changes after another one, oldest first, no more than `most` + 1. */
export async function readChanges(
  client: pg.ClientBase,
  after: number,
  most: number,
): Promise<{ revision: Revision; changes: NotedChange[] }> {
  const { rows } = await client.query<RevisionRow & { changes: NotedChange[] }>(
    `select revision, changed_at, pruned, coalesce((
       select json_agg(json_build_object('kind', c.kind, 'id', c.record_id) order by c.id)
       from (select * from lineage_change where revision > $1 order by id limit $2) c), '[]') as changes
     from lineage_revision`,
    [after, most + 1],
  );
  return { revision: revisionOf(rows), changes: rows[0]?.changes ?? [] };
}
