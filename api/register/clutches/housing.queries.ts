import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { owned, seen } from '../../people/visibility.ts';
import { readRanges } from '../warnings/facts.queries.ts';
import { parentsHousedAt, type Housing, type Stay } from './housing.ts';
import type { Parents } from './parents.ts';

/**
 * Every stay in a pairing, by the animal's number, with the profiles of their species (pairing_member_pairing_index). Animals that
 * may not be seen count only for the keeper of the pairing, who houses them: others could learn from the parents that the housing
 * gives a clutch when they lived there.
 */
export async function readHousing(manager: EntityManager, pairingId: string): Promise<Housing> {
  const rows = await manager.query<(Stay['animal'] & { number: string } & Omit<Stay, 'animal'>)[]>(
    `select i.id, i.number::text, i.code, i.sex, i.status, i.tier, i.hatched, i.species_id as "speciesId",
       m.joined_earliest as "joinedEarliest", m."left", least(m.left_latest, i.died_latest) as "goneLatest"
     from pairing_member m join individual i on i.id = m.individual_id join pairing p on p.id = m.pairing_id
     where m.pairing_id = $1 and i.withdrawn_at is null and (${seen('individual', 'i')} or ${owned('p')}) order by i.number, m.joined_earliest`,
    [pairingId],
  );
  const stays = rows.map(({ id, number, code, sex, status, tier, ...stay }) => ({
    ...stay,
    animal: { id, number: formatRegistryNumber(number), code, sex, status, tier },
  }));
  return { stays, ranges: await readRanges(manager, [...new Set(stays.map((stay) => stay.speciesId))]) };
}

/** Who may be the parents of a clutch laid in a pairing, as `parentsHousedAt` has it. */
export async function housedParents(manager: EntityManager, pairingId: string, laid: string | null): Promise<Parents> {
  return parentsHousedAt(await readHousing(manager, pairingId), laid);
}
