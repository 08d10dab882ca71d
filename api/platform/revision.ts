import type { EntityManager } from 'typeorm';
import { currentRequest } from './acting.ts';

/**
 * Keeps the lineage as it is until the transaction ends, and gives its revision: whoever changes it waits. For writes that rest on its figures
 * without changing them; called before any record is locked, as `lockPedigree` is.
 */
export async function holdPedigree(manager: EntityManager): Promise<number> {
  const [row] = await manager.query<{ revision: string }[]>('select revision from lineage_revision for share');
  return Number(row?.revision);
}

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
