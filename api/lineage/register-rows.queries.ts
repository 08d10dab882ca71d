import pg from 'pg';
import type { EntityManager } from 'typeorm';

/**
 * The bulk reads of the lineage: every animal, clutch, parent, source and line, in rows of plain columns.
 *
 * All of them have to be called in one REPEATABLE READ transaction, so that they see one state of the register. Each is a
 * walk through a whole table; those ordered by id go along the primary key.
 */

/** Which state of the register a transaction sees. */
export interface Revision {
  /** Grows with every change that can touch a figure of the lineage. */
  readonly number: number;
  /** When that change was made (RFC 3339, UTC). */
  readonly changedAt: string;
}

/** One row of `forEachIndividual`: id, number, sex, status, line, clutch, source, withdrawn. */
export type IndividualRow = [string, string, string, string, string | null, string | null, string | null, boolean];

/** One row of `forEachCandidate`: clutch, role, individual (null: a frog nobody knows), probability. */
export type CandidateRow = [string, 'sire' | 'dam', string | null, number];

/** One row of `forEachPair`: clutch, one parent, the other, probability. */
export type PairRow = [string, string, string, number];

/** One row of `forEachSource`: id, kind, label as received, base kinship. */
export type SourceRow = [string, string, string | null, number];

/** One row of `forEachLine`: id, name, label kind. */
export type LineRow = [string, string, string];

/** The revision that the transaction at hand sees; outside of one, the newest. */
export async function readRevision(manager: EntityManager): Promise<Revision> {
  const [row] = await manager.query<{ revision: string; changed_at: Date }[]>(
    'select revision, changed_at from lineage_revision',
  );
  if (!row) throw new Error('the register has no revision row: its schema is damaged');
  return { number: Number(row.revision), changedAt: row.changed_at.toISOString() };
}

export function forEachIndividual(manager: EntityManager, take: (row: IndividualRow) => void): Promise<void> {
  return forEachRow(
    manager,
    `select id, number, sex, status, line_id, clutch_id, source_id, withdrawn_at is not null from individual order by id`,
    take,
  );
}

export function forEachClutch(manager: EntityManager, take: (row: [string]) => void): Promise<void> {
  return forEachRow(manager, 'select id from clutch order by id', take);
}

export function forEachCandidate(manager: EntityManager, take: (row: CandidateRow) => void): Promise<void> {
  return forEachRow(manager, 'select clutch_id, role, individual_id, probability from clutch_candidate', take);
}

export function forEachPair(manager: EntityManager, take: (row: PairRow) => void): Promise<void> {
  return forEachRow(manager, 'select clutch_id, a_id, b_id, probability from clutch_pair', take);
}

export function forEachSource(manager: EntityManager, take: (row: SourceRow) => void): Promise<void> {
  return forEachRow(manager, 'select id, kind, label_as_received, base_kinship from source order by id', take);
}

export function forEachLine(manager: EntityManager, take: (row: LineRow) => void): Promise<void> {
  return forEachRow(manager, 'select id, name, label_kind from line order by id', take);
}

/** Hands over rows as they arrive, as arrays: no list of 100 000 objects is ever held. */
async function forEachRow<Row extends unknown[]>(
  manager: EntityManager,
  text: string,
  take: (row: Row) => void,
): Promise<void> {
  const client = (await manager.queryRunner?.connect()) as pg.PoolClient | undefined;
  if (!client) throw new Error('the register is read inside a transaction only');
  await new Promise<void>((resolve, reject) => {
    const inArrays: pg.QueryArrayConfig = { text, rowMode: 'array' };
    const query = new pg.Query(inArrays);
    // what is thrown in the middle of the driver's work would leave the connection waiting for ever
    let failure: unknown;
    query.on('row', (row: unknown) => {
      try {
        if (failure === undefined) take(row as Row);
      } catch (error) {
        failure = error;
      }
    });
    query.on('end', () => (failure === undefined ? resolve() : reject(failure as Error)));
    query.on('error', reject);
    client.query(query);
  });
}
