import type { EntityManager } from 'typeorm';
import { seen } from '../people/visibility.ts';
import type { Span } from '../register/warnings/spans.ts';

/** What the rules about breeding ask of an animal's record. */
export interface BreederRow {
  readonly speciesId: string;
  readonly keeperId: string;
  /** Whether its keeper has left the club. */
  readonly keeperLeft: boolean;
  /** Age in days; null where no hatching date is recorded. */
  readonly ageInDays: Span | null;
}

interface Group extends Omit<BreederRow, 'ageInDays'> {
  /** Of each animal its place among those asked for, and its least and greatest age. */
  readonly animals: readonly (readonly [number, number | null, number | null])[];
}

/**
 * Records of animals by their registry serials (individual_number_unique), in the order asked for; null for one that was withdrawn or may
 * not be seen. The animals of a keeper come in one row, since a row for each costs the service more time than all else of a ranking.
 *
 * @param today calendar date that ages are counted to
 */
export async function readBreederRows(
  manager: EntityManager,
  serials: readonly number[],
  today: string,
): Promise<(BreederRow | null)[]> {
  const rows = serials.map((): BreederRow | null => null);
  if (serials.length === 0) return rows;
  const groups = await manager.query<Group[]>(
    `select i.species_id as "speciesId", i.keeper_id as "keeperId", k.left_at is not null as "keeperLeft",
       json_agg(json_build_array(asked.place - 1, ${daysSince('i.hatched_latest')}, ${daysSince('i.hatched_earliest')})) as animals
     from unnest($1::bigint[]) with ordinality as asked (number, place)
     join individual i on i.number = asked.number join keeper k on k.id = i.keeper_id
     where i.withdrawn_at is null and ${seen('individual', 'i')}
     group by i.species_id, i.keeper_id, k.left_at`,
    [`{${serials.join(',')}}`, today],
  );
  for (const { animals, speciesId, keeperId, keeperLeft } of groups)
    for (const [place, least, greatest] of animals) {
      const ageInDays = least === null && greatest === null ? null : { least, greatest };
      rows[place] = { speciesId, keeperId, keeperLeft, ageInDays };
    }
  return rows;
}

/** An open side of a date is stored as infinity, which cannot be counted from. */
const daysSince = (column: string): string => `case when isfinite(${column}) then $2::date - ${column} end`;
