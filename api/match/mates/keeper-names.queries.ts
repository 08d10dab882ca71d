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
