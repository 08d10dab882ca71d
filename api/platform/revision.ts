import type { EntityManager } from 'typeorm';

/**
 * Begins a change of the lineage: waits until no other change is under way and gives the new revision. The row stays locked
 * until the transaction ends, so that two writers never look for loops past each other.
 */
export async function lockPedigree(manager: EntityManager): Promise<number> {
  const [rows] = await manager.query<[{ revision: string }[], number]>(
    'update lineage_revision set revision = revision + 1, changed_at = now() returning revision',
  );
  return Number(rows[0]?.revision);
}

/** The revision of the lineage as this transaction sees it: a whole number that grows with every change of it. */
export async function currentRevision(manager: EntityManager): Promise<{ revision: number; changedAt: Date }> {
  const [row] = await manager.query<{ revision: string; changed_at: Date }[]>(
    'select revision, changed_at from lineage_revision',
  );
  if (!row) throw new Error('the register has no revision row: its schema is damaged');
  return { revision: Number(row.revision), changedAt: row.changed_at };
}
