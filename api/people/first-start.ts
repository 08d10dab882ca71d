import type { DataSource, EntityManager } from 'typeorm';

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
    if (found.length === 0) await fill(manager);
  });
}
