import type { EntityManager } from 'typeorm';
import { seen } from '../../people/visibility.ts';

/** Ids of the keepers of animals, by the ids of the animals (primary key); those that may not be seen are left out. */
export async function readKeepersOf(manager: EntityManager, ids: readonly string[]): Promise<Map<string, string>> {
  if (ids.length === 0) return new Map();
  const rows = await manager.query<{ id: string; keeperId: string }[]>(
    `select i.id, i.keeper_id as "keeperId" from individual i where i.id = any($1::uuid[]) and ${seen('individual', 'i')}`,
    [ids],
  );
  return new Map(rows.map(({ id, keeperId }) => [id, keeperId]));
}
