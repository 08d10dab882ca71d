import type { DataSource, EntityManager } from 'typeorm';
import { writeEntry } from '../platform/journal-entry.ts';

/**
 * Fills an empty register with `fill`, where that is given. Several copies of the service may come here at once; one does it.
 */
export async function prepareRegister(
  dataSource: DataSource,
  fill: ((manager: EntityManager) => Promise<void>) | null,
): Promise<void> {
  if (!fill) return;
  await dataSource.transaction(async (manager) => {
    await manager.query('lock table club in exclusive mode');
    const found = await manager.query<unknown[]>('select 1 from club');
    if (found.length > 0) return;
    await fill(manager);
    await writeEntry(manager, { action: 'seeded', kind: 'club', recordId: null, before: null, after: null });
  });
}
