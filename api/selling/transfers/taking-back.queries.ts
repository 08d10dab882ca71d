import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { Obstacle } from './locked-animals.ts';
import { say } from '../../platform/say.ts';

/** The giver's codes of the animals of a transfer, as they were when it passed (transfer_animal_pkey). */
export async function givenCodes(
  manager: EntityManager,
  transferId: string,
): Promise<ReadonlyMap<string, string | null>> {
  const rows = await manager.query<{ id: string; code: string | null }[]>(
    'select individual_id as id, given_code as code from transfer_animal where transfer_id = $1',
    [transferId],
  );
  return new Map(rows.map(({ id, code }) => [id, code]));
}

interface Row {
  readonly individualId: string;
  readonly number: string;
  readonly kind: 'transfer' | 'stay' | 'clutch';
  readonly name: string | null;
}

const words = {
  transfer: () => say`It is on offer, or was passed on.`,
  stay: (name: string) => say`It lives or lived in ${name} of its new keeper.`,
  clutch: (name: string) => say`A clutch of its new keeper names it as a possible parent: ${name}.`,
};

/**
 * What stands on it that animals changed hands: later transfers of them, stays and clutches at the receiver's that do not certainly
 * lie before it (transfer_animal_individual_index, pairing_member_individual_index, clutch_candidate_individual_index, clutch_pair_a_index,
 * clutch_pair_b_index).
 */
export async function standingOn(manager: EntityManager, transferId: string): Promise<Obstacle[]> {
  const rows = await manager.query<Row[]>(
    `with passed as (
       select a.individual_id as id, i.number, t.to_id, t.date_earliest as since, t.id as transfer_id
       from transfer_animal a join transfer t on t.id = a.transfer_id join individual i on i.id = a.individual_id where t.id = $1)
     select p.id as "individualId", p.number::text, 'transfer' as kind, null as name from passed p
       join transfer_animal a on a.individual_id = p.id and a.transfer_id <> p.transfer_id
         and (a.state = 'offered' or a.state = 'accepted' and a.transfer_id > p.transfer_id)
     union all
     select p.id, p.number::text, 'stay', g.name from passed p join pairing_member m on m.individual_id = p.id and m.stands
       join pairing g on g.id = m.pairing_id and g.keeper_id = p.to_id
       where m.joined_earliest is null or m.joined_earliest >= p.since
     union all
     select p.id, p.number::text, 'clutch', coalesce(c.code, c.laid, 'without a date') from passed p
       join clutch c on c.keeper_id = p.to_id and c.withdrawn_at is null and c.id in (
         select clutch_id from clutch_candidate where individual_id = p.id
         union all select clutch_id from clutch_pair where a_id = p.id union all select clutch_id from clutch_pair where b_id = p.id)
       where c.laid_latest is null or c.laid_latest >= p.since
     limit 20`,
    [transferId],
  );
  return rows.map(({ individualId, number, kind, name }) => ({
    individualId,
    number: formatRegistryNumber(number),
    detail: words[kind](name ?? ''),
  }));
}
