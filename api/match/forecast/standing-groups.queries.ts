import type { EntityManager } from 'typeorm';
import { seen } from '../../people/visibility.ts';
import { seenPairing } from '../../register/seen-records.ts';

/** A living animal of a line in the pairing that it lives in now. */
export interface HousedAnimal {
  readonly pairingId: string;
  readonly individualId: string;
}

/**
 * The living animals of a line that live in a pairing now, as far as whoever asks may see both (individual_line_index,
 * pairing_member_individual_index), in the order of pairings and registry numbers. One that stands in two, whose dates leave that open, is
 * told in the one that it joined last.
 */
export async function readHousedAnimals(manager: EntityManager, lineId: string): Promise<HousedAnimal[]> {
  return manager.query<HousedAnimal[]>(
    `select "pairingId", "individualId" from (
       select distinct on (i.id) m.pairing_id as "pairingId", i.id as "individualId", i.number
       from individual i
       join pairing_member m on m.individual_id = i.id and m.stands and m."left" is null
       join pairing p on p.id = m.pairing_id and p.withdrawn_at is null
       where i.line_id = $1 and i.withdrawn_at is null and i.status = 'alive' and ${seen('individual', 'i')} and ${seenPairing('p')}
       order by i.id, m.joined_earliest desc nulls last, m.id
     ) housed order by "pairingId", number`,
    [lineId],
  );
}
