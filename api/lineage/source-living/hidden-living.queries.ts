import type { EntityManager } from 'typeorm';
import { hidden } from '../../people/visibility.ts';

/** Ids of the living animals that whoever asks may not see: few, found by individual_private_index. */
export async function findHiddenLiving(manager: EntityManager): Promise<string[]> {
  const rows = await manager.query<{ id: string }[]>(
    `select i.id from individual i where i.withdrawn_at is null and i.status = 'alive' and ${hidden('individual', 'i')}`,
  );
  return rows.map(({ id }) => id);
}
