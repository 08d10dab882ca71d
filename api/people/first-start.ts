import type { DataSource, EntityManager } from 'typeorm';
import { newId } from '../platform/ids.ts';

/**
 * Makes an empty register usable: a club and its default keeper; or hands it to `fill`. Several copies of the service may
 * come here at once; one does it.
 */
export async function prepareRegister(
  dataSource: DataSource,
  fill: ((manager: EntityManager) => Promise<void>) | null,
): Promise<void> {
  await dataSource.transaction(async (manager) => {
    await manager.query('lock table club in exclusive mode');
    const found = await manager.query<unknown[]>('select 1 from club');
    if (found.length > 0) return;
    if (fill) return fill(manager);
    const id = newId();
    await manager.query(`insert into keeper (id, name) values ($1, 'Keeper')`, [id]);
    await manager.query(`insert into club (name, default_keeper_id) values ('My register', $1)`, [id]);
  });
}
