import type { EntityManager } from 'typeorm';
import { currentRequest } from './acting.ts';

/**
 * Begins a change of the lineage: waits until no other change is under way and gives the new revision. The row stays locked
 * until the transaction ends, so that two writers never look for loops past each other.
 */
export async function lockPedigree(manager: EntityManager): Promise<number> {
  const [rows] = await manager.query<[{ revision: string }[], number]>(
    'update lineage_revision set revision = revision + 1, changed_at = now() returning revision',
  );
  const asked = currentRequest();
  if (asked) asked.changedLineage = true;
  return Number(rows[0]?.revision);
}
