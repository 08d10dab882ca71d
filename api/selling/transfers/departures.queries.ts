import type { EntityManager } from 'typeorm';
import type { StoredDate } from '../../platform/dates.ts';

/** The animals of a departure that came back, by their ids (transfer_animal_pkey). */
export async function readReturned(manager: EntityManager, transferId: string): Promise<ReadonlySet<string>> {
  const rows = await manager.query<{ id: string }[]>(
    'select individual_id as id from transfer_animal where transfer_id = $1 and returned is not null',
    [transferId],
  );
  return new Set(rows.map(({ id }) => id));
}

/** Notes when animals of a departure came back; a date without a text says that they did not (transfer_animal_pkey). */
export async function setReturned(
  manager: EntityManager,
  transferId: string,
  ids: readonly string[],
  { text, earliest, latest }: StoredDate,
): Promise<void> {
  await manager.query(
    `update transfer_animal set returned = $3, returned_earliest = $4, returned_latest = $5
     where transfer_id = $1 and individual_id = any($2::uuid[])`,
    [transferId, ids, text, earliest, latest],
  );
}
