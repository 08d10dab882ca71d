import type { EntityManager } from 'typeorm';
import { decodeCursor, encodeCursor, toPage, type Page, type PageQuery } from '../platform/paging.ts';
import { countStanding } from './import-undo.queries.ts';
import { seenImport } from './seen-imports.ts';
import type { CreatedCounts, ImportView, ImportWarning, PastImportView, WholeImportView } from './import.view.ts';

/** Lets this transaction take longer than a usual request: a sheet may hold a million animals. */
export async function allowLongWork(manager: EntityManager): Promise<void> {
  await manager.query(`set local statement_timeout = '10min'`);
  await manager.query(`set local lock_timeout = '2min'`);
  await manager.query(`set local idle_in_transaction_session_timeout = '10min'`);
}

/**
 * Lets the planner know of many new rows at once: until its own housekeeping comes round it would plan for the tables as they
 * were before, and read whole tables for single animals.
 */
export async function tellPlanner(manager: EntityManager): Promise<void> {
  await manager.query('analyze species, line, source, clutch, individual, clutch_candidate, clutch_pair');
}

/** Notes that a sheet was taken and gives the id of the note. */
export async function insertImport(
  manager: EntityManager,
  keeperId: string,
  view: ImportView,
  sheetSha256: string,
): Promise<string> {
  const [row] = await manager.query<{ id: string }[]>(
    'insert into register_import (keeper_id, rows, created, warnings, sheet_sha256) values ($1, $2, $3, $4, $5) returning id',
    [
      keeperId,
      view.rows,
      JSON.stringify(view.created),
      JSON.stringify({ total: view.warningCount, items: view.warnings }),
      sheetSha256,
    ],
  );
  if (!row) throw new Error('the database gave no id for an import');
  return row.id;
}

interface ImportRow {
  readonly id: string;
  readonly created_at: Date;
  readonly keeper: string;
  readonly keeper_id: string;
  readonly rows: number;
  readonly created: CreatedCounts;
  readonly warning_count: string;
  readonly withdrawn_at: Date | null;
  readonly withdrawn_reason: string | null;
}

const columns = `i.id, i.created_at, k.name as keeper, i.keeper_id, i.rows, i.created, i.warnings ->> 'total' as warning_count,
  i.withdrawn_at, i.withdrawn_reason`;

const order = 'newest';

/** Imports of the past, newest first. Only those that may be seen. */
export async function listImports(manager: EntityManager, query: PageQuery): Promise<Page<PastImportView>> {
  const after = query.after === undefined ? null : decodeCursor(order, 2, query.after);
  const rows = await manager.query<ImportRow[]>(
    `select ${columns}
     from register_import i join keeper k on k.id = i.keeper_id
     where ${seenImport('i')} ${after === null ? '' : 'and (i.created_at, i.id) < ($2::timestamptz, $3::uuid)'}
     order by i.created_at desc, i.id desc limit $1`,
    [query.limit + 1, ...(after ?? [])],
  );
  const total = query.total ? await countImports(manager) : undefined;
  return toPage(rows, query.limit, viewOf, (row) => encodeCursor(order, [row.created_at.toISOString(), row.id]), total);
}

/** One import, whole, by its id (primary key), or null where there is none or it may not be seen. */
export async function findImport(manager: EntityManager, id: string): Promise<WholeImportView | null> {
  const [row] = await manager.query<(ImportRow & { sheet_sha256: string | null; items: ImportWarning[] })[]>(
    `select ${columns}, i.sheet_sha256, i.warnings -> 'items' as items
     from register_import i join keeper k on k.id = i.keeper_id where i.id = $1 and ${seenImport('i')}`,
    [id],
  );
  if (!row) return null;
  const standing = await countStanding(manager, id);
  return { ...viewOf(row), warnings: row.items, standing, sheetSha256: row.sheet_sha256 };
}

async function countImports(manager: EntityManager): Promise<number> {
  const [row] = await manager.query<{ count: string }[]>(
    `select count(*) from register_import i where ${seenImport('i')}`,
  );
  return Number(row?.count);
}

function viewOf(row: ImportRow): PastImportView {
  return {
    id: row.id,
    createdAt: row.created_at.toISOString(),
    keeper: row.keeper,
    keeperId: row.keeper_id,
    rows: row.rows,
    created: row.created,
    warningCount: Number(row.warning_count),
    withdrawn:
      row.withdrawn_at === null ? null : { at: row.withdrawn_at.toISOString(), reason: row.withdrawn_reason ?? '' },
  };
}
