import type { EntityManager } from 'typeorm';
import type { Trait } from '../../shared/vocabulary.ts';
import { seen } from '../people/visibility.ts';
import { Conditions } from '../register/keyset.ts';
import type { Asked } from './asked.ts';
import type { ProfileGapView } from './today.view.ts';

/** What days are reckoned from. */
const needed: readonly Trait[] = ['laying-to-hatching', 'hatching-to-leaving-water', 'sexable-by-looks'];
/** So many of the newest living animals tell which species are kept. */
const LOOKED_AT = 500;

/** Species kept of whose profile something is missing that days are reckoned from (individual_keeper_index, species_range_pkey). */
export async function readProfileGaps(manager: EntityManager, asked: Asked): Promise<ProfileGapView[]> {
  const conditions = new Conditions();
  conditions.add(`i.status = 'alive'`);
  conditions.add('i.withdrawn_at is null');
  if (asked.keeperId !== null) conditions.add(`i.keeper_id = ${conditions.bind(asked.keeperId)}`);
  conditions.add(seen('individual', 'i'));
  return manager.query<ProfileGapView[]>(
    `select s.id as "speciesId", s.scientific_name as species, array_agg(t.trait order by t.place) as missing
     from (select distinct species_id from (select i.species_id from individual i where ${conditions.sql} order by i.number desc limit ${LOOKED_AT}) newest) kept
     join species s on s.id = kept.species_id
     cross join unnest(${conditions.bind(needed)}::text[]) with ordinality as t (trait, place)
     where not exists (select from species_range r where r.species_id = s.id and r.trait = t.trait
       and num_nonnulls(r.usual_least, r.usual_most, r.extreme_least, r.extreme_most) > 0)
     group by s.id order by s.scientific_name limit 20`,
    conditions.parameters,
  );
}

/** Whether somebody keeps an animal, and has a pairing (individual_keeper_index, pairing_keeper_index). */
export async function readHoldings(
  manager: EntityManager,
  keeperId: string,
): Promise<{ keepsAnimals: boolean; keepsPairings: boolean }> {
  const [row] = await manager.query<{ keepsAnimals: boolean; keepsPairings: boolean }[]>(
    `select exists (select from individual where keeper_id = $1 and withdrawn_at is null) as "keepsAnimals",
       exists (select from pairing where keeper_id = $1 and withdrawn_at is null) as "keepsPairings"`,
    [keeperId],
  );
  return row ?? { keepsAnimals: false, keepsPairings: false };
}
