import type { EntityManager } from 'typeorm';
import { decodeCursor, encodeCursor, toPage, type Page, type PageQuery } from '../platform/paging.ts';
import { isId } from '../platform/ids.ts';
import type { MemberView } from './people.view.ts';

interface ClubRow {
  readonly version: number;
  readonly name: string;
  readonly demo: boolean;
  readonly publicReading: boolean;
}

/** Name of the club, whether it is invented, and whether strangers may read what is public. Null until it was set up. */
export async function readClub(manager: EntityManager): Promise<ClubRow | null> {
  const [club] = await manager.query<ClubRow[]>(
    'select version, name, demo, public_reading as "publicReading" from club',
  );
  return club ?? null;
}

const member = 'id, version, name, region, roles, created_at as "joinedAt", left_at as "leftAt"';

/** One member, also one who left; null where there is none. */
export async function findMember(manager: EntityManager, id: string): Promise<MemberView | null> {
  const [found] = isId(id) ? await manager.query<MemberView[]>(`select ${member} from keeper where id = $1`, [id]) : [];
  return found ?? null;
}

/** A page of members by name, also of those who left. Index: keeper_name_unique. */
export async function listMembers(manager: EntityManager, query: PageQuery): Promise<Page<MemberView>> {
  const after = query.after === undefined ? null : decodeCursor('name', 1, query.after);
  const rows = await manager.query<(MemberView & { sort: string })[]>(
    `select ${member}, lower(name) as sort from keeper where $1::text is null or lower(name) > $1
     order by lower(name) limit $2`,
    [after?.[0] ?? null, query.limit + 1],
  );
  const total = query.total ? await countKeepers(manager) : undefined;
  return toPage(
    rows,
    query.limit,
    ({ id, version, name, region, roles, joinedAt, leftAt }) => ({
      id,
      version,
      name,
      region,
      roles,
      joinedAt,
      leftAt,
    }),
    (row) => encodeCursor('name', [row.sort]),
    total,
  );
}

async function countKeepers(manager: EntityManager): Promise<number> {
  const [row] = await manager.query<{ total: number }[]>('select count(*)::integer as total from keeper');
  return row?.total ?? 0;
}
