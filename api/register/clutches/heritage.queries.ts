import type { EntityManager } from 'typeorm';
import { hidden, seen } from '../../people/visibility.ts';

/** What the young of a clutch inherit; null where it is not clear. */
export interface Heritage {
  readonly speciesId: string | null;
  readonly lineId: string | null;
}

/**
 * Species and line of a clutch's young. The species is that of all possible parents, where nobody is known that of the young
 * already there, then that of the animals of its pairing; the line only where both sides are known and all possible parents
 * share it; animals that may not be seen tell nothing, and where one is among the parents the line is not clear (clutch_candidate_once, clutch_pair_once).
 */
export async function readHeritage(manager: EntityManager, clutchId: string): Promise<Heritage> {
  const [row] = await manager.query<
    { species: string[]; lines: (string | null)[] | null; sides: number; isHidden: boolean }[]
  >(
    `select coalesce(array_agg(distinct i.species_id::text) filter (where ${seen('individual', 'i')}), '{}') as species,
       array_agg(distinct i.line_id::text) as lines, count(distinct parent.role)::integer as sides,
       coalesce(bool_or(${hidden('individual', 'i')}), false) as "isHidden"
     from (select role, individual_id as id from clutch_candidate where clutch_id = $1
       union all select 'sire', a_id from clutch_pair where clutch_id = $1
       union all select 'dam', b_id from clutch_pair where clutch_id = $1) parent
     left join individual i on i.id = parent.id`,
    [clutchId],
  );
  const { species, lines, sides, isHidden } = row ?? { species: [], lines: [], sides: 0, isHidden: false };
  return {
    speciesId: only(species.length > 0 ? species : await readKinSpecies(manager, clutchId)),
    lineId: sides === 2 && !isHidden ? only(lines ?? []) : null,
  };
}

/** Species of the young of a clutch, else of the animals of its pairing (individual_clutch_index, pairing_member_pairing_index). */
async function readKinSpecies(manager: EntityManager, clutchId: string): Promise<string[]> {
  const [row] = await manager.query<{ species: string[] }[]>(
    `select coalesce(
       (select array_agg(distinct y.species_id::text) from individual y where y.clutch_id = $1 and ${seen('individual', 'y')}),
       (select array_agg(distinct i.species_id::text) from clutch c join pairing_member m on m.pairing_id = c.pairing_id
          join individual i on i.id = m.individual_id and ${seen('individual', 'i')} where c.id = $1), '{}') as species`,
    [clutchId],
  );
  return row?.species ?? [];
}

const only = (values: readonly (string | null)[]): string | null => (values.length === 1 ? (values[0] ?? null) : null);
