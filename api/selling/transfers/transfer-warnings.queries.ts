import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { seen } from '../../people/visibility.ts';
import { seenPairing } from '../../register/seen-records.ts';
import type { TransferWarningView } from './transfer.view.ts';
import { say } from '../../platform/say.ts';

interface Row {
  readonly individualId: string;
  readonly number: string;
  readonly pairing: string | null;
}

/**
 * What to think of before the animals of an open offer pass, as far as whoever asks may see them and the pairings
 * (transfer_animal_pkey, pairing_member_individual_index).
 */
export async function warningsOf(manager: EntityManager, transferId: string): Promise<TransferWarningView[]> {
  const rows = await manager.query<Row[]>(
    `select i.id as "individualId", i.number, p.name as pairing
     from transfer_animal a join transfer t on t.id = a.transfer_id join individual i on i.id = a.individual_id
       join pairing_member m on m.individual_id = i.id and m."left" is null and m.stands
       join pairing p on p.id = m.pairing_id and p.keeper_id is distinct from t.to_id
     where a.transfer_id = $1 and ${seen('individual', 'i')} and ${seenPairing('p')}
     union all
     select i.id, i.number, null from transfer_animal a join individual i on i.id = a.individual_id
     where a.transfer_id = $1 and ${seen('individual', 'i')} and i.clutch_id is not null and i.out_of_water is null
     order by 2, 3`,
    [transferId],
  );
  return rows.map(({ individualId, number, pairing }) => {
    const name = formatRegistryNumber(number);
    return pairing === null
      ? {
          individualId,
          code: 'in-water',
          detail: say`${name}: nobody noted that it left the water. Is it still a tadpole?`,
        }
      : {
          individualId,
          code: 'stay-ends',
          detail: say`${name} lives in ${pairing}. Its stay there ends on the day on which it passes.`,
        };
  });
}
