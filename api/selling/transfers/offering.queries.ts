import type { EntityManager } from 'typeorm';
import type { TransferState } from '../../../shared/vocabulary.ts';
import { seen } from '../../people/visibility.ts';
import { TRANSFERRED_MOST } from './transfer.dto.ts';

/** A keeper by id (primary key), and whether they left the club; null where there is none. */
export async function readKeeper(
  manager: EntityManager,
  id: string,
): Promise<{ readonly name: string; readonly hasLeft: boolean } | null> {
  const [row] = await manager.query<{ name: string; hasLeft: boolean }[]>(
    'select name, left_at is not null as "hasLeft" from keeper where id = $1',
    [id],
  );
  return row ?? null;
}

/** Living young of a clutch that may be seen and are not on offer, by number; one more than a transfer takes, of each keeper (individual_clutch_index). */
export async function readYoungToGive(
  manager: EntityManager,
  clutchId: string,
): Promise<{ readonly id: string; readonly keeperId: string }[]> {
  return manager.query(
    `select id, "keeperId" from (
       select i.id, i.keeper_id as "keeperId", i.number, row_number() over (partition by i.keeper_id order by i.number) as place
       from individual i where i.clutch_id = $1 and i.withdrawn_at is null and i.status = 'alive' and ${seen('individual', 'i')}
         and not exists (select from transfer_animal a where a.individual_id = i.id and a.state = 'offered')) young
     where place <= ${TRANSFERRED_MOST + 1} order by number`,
    [clutchId],
  );
}

/** Puts animals into a transfer, each with the code that the giver has for it. */
export async function insertAnimals(
  manager: EntityManager,
  transferId: string,
  state: TransferState,
  ids: readonly string[],
): Promise<void> {
  await manager.query(
    `insert into transfer_animal (transfer_id, individual_id, state, given_code)
     select $1, id, $2, code from individual where id = any($3::uuid[]) order by id`,
    [transferId, state, ids],
  );
}

/** Keeps the codes that the giver has for the animals of a transfer now. */
export async function keepGivenCodes(manager: EntityManager, transferId: string): Promise<void> {
  await manager.query(
    `update transfer_animal a set given_code = i.code from individual i where i.id = a.individual_id and a.transfer_id = $1`,
    [transferId],
  );
}
