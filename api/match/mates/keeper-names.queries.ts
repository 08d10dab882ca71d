import type { EntityManager } from 'typeorm';

/** Names of keepers by their ids (primary key); only members of the club are told any. */
export async function readKeeperNames(manager: EntityManager, ids: readonly string[]): Promise<Map<string, string>> {
  if (ids.length === 0) return new Map();
  const rows = await manager.query<{ id: string; name: string }[]>(
    'select id, name from keeper where id = any($1::uuid[])',
    [ids],
  );
  return new Map(rows.map(({ id, name }) => [id, name]));
}

/** Where keepers live, of those who said so, by their ids (primary key); only members of the club are told. */
export async function readKeeperRegions(manager: EntityManager, ids: readonly string[]): Promise<Map<string, string>> {
  if (ids.length === 0) return new Map();
  const rows = await manager.query<{ id: string; region: string }[]>(
    'select id, region from keeper where id = any($1::uuid[]) and region is not null',
    [ids],
  );
  return new Map(rows.map(({ id, region }) => [id, region]));
}
