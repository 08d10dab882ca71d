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
 * share it; animals that may not be seen tell nothing, and where one is among the parents the line is not clear (clutch_candidate_once, clutch_pair_once, individual_clutch_index, pairing_member_pairing_index).
 */
export async function readHeritage(manager: EntityManager, clutchId: string): Promise<Heritage> {
  const [row] = await manager.query<
    { parentSpecies: string[]; kinSpecies: string[]; lines: (string | null)[]; sides: number; isHidden: boolean }[]
  >(
    `with parent as (
       select role, individual_id as id from clutch_candidate where clutch_id = $1
       union select 'sire', a_id from clutch_pair where clutch_id = $1 union select 'dam', b_id from clutch_pair where clutch_id = $1)
     select
       coalesce((select array_agg(distinct i.species_id::text) from parent p join individual i on i.id = p.id and ${seen('individual', 'i')}), '{}') as "parentSpecies",
       coalesce((select array_agg(distinct i.line_id::text) from parent p left join individual i on i.id = p.id), '{}') as lines,
       exists (select from parent p join individual i on i.id = p.id and ${hidden('individual', 'i')}) as "isHidden",
       (select count(distinct role)::integer from parent) as sides,
       coalesce(nullif((select array_agg(distinct y.species_id::text) from individual y where y.clutch_id = $1 and ${seen('individual', 'y')}), '{}'),
         (select array_agg(distinct i.species_id::text) from clutch c join pairing_member m on m.pairing_id = c.pairing_id
            join individual i on i.id = m.individual_id and ${seen('individual', 'i')} where c.id = $1), '{}') as "kinSpecies"`,
    [clutchId],
  );
  if (!row) return { speciesId: null, lineId: null };
  const speciesId = only(row.parentSpecies.length > 0 ? row.parentSpecies : row.kinSpecies);
  return { speciesId, lineId: row.sides === 2 && !row.isHidden ? only(row.lines) : null };
}

const only = (values: readonly (string | null)[]): string | null => (values.length === 1 ? (values[0] ?? null) : null);
