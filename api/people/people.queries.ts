import type { EntityManager } from 'typeorm';
import { decodeCursor, encodeCursor, toPage, type Page, type PageQuery } from '../platform/paging.ts';
import type { KeeperView } from './people.view.ts';

interface ClubRow {
  readonly name: string;
  readonly demo: boolean;
  readonly publicReading: boolean;
}

/** Name of the club , whether it is invented, and whether strangers may read what is public. Null until it was set up. */
export async function readClub(manager: EntityManager): Promise<ClubRow | null> {
  const [club] = await manager.query<ClubRow[]>('select name, demo, public_reading as "publicReading" from club');
  return club ?? null;
}

/** A page of keepers by name. Index: keeper_name_unique. */
export async function listKeepers(manager: EntityManager, query: PageQuery): Promise<Page<KeeperView>> {
  const after = query.after === undefined ? null : decodeCursor('name', 1, query.after);
  const rows = await manager.query<KeeperView[]>(
    `select id, name from keeper where $1::text is null or lower(name) > $1 order by lower(name) limit $2`,
    [after?.[0] ?? null, query.limit + 1],
  );
  const total = query.total ? await countKeepers(manager) : undefined;
  return toPage(
    rows,
    query.limit,
    (row) => row,
    (row) => encodeCursor('name', [row.name.toLowerCase()]),
    total,
  );
}

async function countKeepers(manager: EntityManager): Promise<number> {
  const [row] = await manager.query<{ total: number }[]>('select count(*)::integer as total from keeper');
  return row?.total ?? 0;
}
