import type { EntityManager } from 'typeorm';
import { seenImport } from './seen-imports.ts';
import type { CreatedCounts } from './import.view.ts';

/** An import as its undo needs to know it. */
export interface LockedImport {
  readonly id: string;
  readonly keeperId: string;
  readonly rows: number;
  readonly withdrawnAt: Date | null;
  readonly withdrawnReason: string | null;
  /** Whether its records remember it: those of old imports do not. */
  readonly isRemembered: boolean;
}

/** Locks an import (primary key); null where there is none or it may not be seen. */
export async function lockImport(manager: EntityManager, id: string): Promise<LockedImport | null> {
  const [row] = await manager.query<LockedImport[]>(
    `select id, keeper_id as "keeperId", rows, withdrawn_at as "withdrawnAt", withdrawn_reason as "withdrawnReason", sheet_sha256 is not null as "isRemembered"
     from register_import i where id = $1 and ${seenImport('i')} for update`,
    [id],
  );
  return row ?? null;
}

/** Tables of what a sheet makes, and how the counts of an import name them. */
const made = {
  individual: 'individuals',
  clutch: 'clutches',
  source: 'sources',
  line: 'lines',
  species: 'species',
} as const;
type Table = keyof typeof made;
const tables = Object.keys(made) as Table[];

/**
 * Withdraws at one moment all that an import made and that still stands, the import itself too, and gives how much it was. The
 * moment is the mark by which a restoration knows what was withdrawn together.
 */
export async function withdrawImport(
  manager: EntityManager,
  id: string,
  at: Date,
  reason: string,
): Promise<CreatedCounts> {
  await manager.query('update register_import set withdrawn_at = $2, withdrawn_reason = $3 where id = $1', [
    id,
    at,
    reason,
  ]);
  return inEachTable(
    manager,
    (table) => `update ${table} set withdrawn_at = $2, withdrawn_reason = $3, version = version + 1, updated_at = $2
      where import_id = $1 and withdrawn_at is null`,
    [id, at, reason],
  );
}

/** Restores what the undo of an import at that moment withdrew, and the import; gives how much it was. */
export async function restoreImport(manager: EntityManager, id: string, at: Date): Promise<CreatedCounts> {
  await manager.query('update register_import set withdrawn_at = null, withdrawn_reason = null where id = $1', [id]);
  return inEachTable(
    manager,
    (
      table,
    ) => `update ${table} set withdrawn_at = null, withdrawn_reason = null, version = version + 1, updated_at = now()
      where import_id = $1 and withdrawn_at = $2`,
    [id, at],
  );
}

async function inEachTable(
  manager: EntityManager,
  statementFor: (table: Table) => string,
  parameters: unknown[],
): Promise<CreatedCounts> {
  const counts: CreatedCounts = { individuals: 0, clutches: 0, sources: 0, lines: 0, species: 0 };
  for (const table of tables) {
    const [, count] = await manager.query<[unknown[], number]>(statementFor(table), parameters);
    counts[made[table]] = count;
  }
  return counts;
}

/** How much of what an import made still stands (one index of import_id a table). */
export async function countStanding(manager: EntityManager, id: string): Promise<CreatedCounts> {
  const counts = tables.map(
    (table) =>
      `(select count(*)::integer from ${table} where import_id = $1 and withdrawn_at is null) as ${made[table]}`,
  );
  const [row] = await manager.query<CreatedCounts[]>(`select ${counts.join(', ')}`, [id]);
  if (!row) throw new Error('the database did not count');
  return row;
}
