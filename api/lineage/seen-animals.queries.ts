import type { EntityManager } from 'typeorm';
import { seen } from '../people/visibility.ts';

/**
 * Those of these animals that whoever asks may see (primary key). The lineage is shared by everybody and knows all animals, so it is
 * asked before an animal that a request names is taken; also where none was found, so that both cases take the same way.
 */
export async function seenAmong(manager: EntityManager, ids: readonly string[]): Promise<ReadonlySet<string>> {
  const rows = await manager.query<{ id: string }[]>(
    `select i.id from individual i where i.id = any($1::uuid[]) and ${seen('individual', 'i')}`,
    [ids],
  );
  return new Set(rows.map((row) => row.id));
}
