import type { EntityManager } from 'typeorm';
import type { DateBounds } from '../../shared/edtf.ts';
import { seen } from '../people/visibility.ts';

/** What the rules about breeding ask of an animal's record. */
export interface BreederRow {
  readonly id: string;
  readonly speciesId: string;
  readonly keeperId: string;
  /** Whether its keeper has left the club. */
  readonly keeperLeft: boolean;
  readonly hatched: DateBounds | null;
}

interface Row extends Omit<BreederRow, 'hatched'> {
  readonly earliest: string | null;
  readonly latest: string | null;
}

/** Records of animals, by their ids (primary key); those that were withdrawn or may not be seen are left out. */
export async function readBreederRows(manager: EntityManager, ids: readonly string[]): Promise<BreederRow[]> {
  if (ids.length === 0) return [];
  const rows = await manager.query<Row[]>(
    `select i.id, i.species_id as "speciesId", i.keeper_id as "keeperId", k.left_at is not null as "keeperLeft",
       i.hatched_earliest::text as earliest, i.hatched_latest::text as latest
     from individual i join keeper k on k.id = i.keeper_id where i.id = any($1::uuid[])
       and i.withdrawn_at is null and ${seen('individual', 'i')}`,
    [ids],
  );
  return rows.map(({ earliest, latest, ...row }) => ({
    ...row,
    hatched: earliest === null ? null : { earliest: day(earliest), latest: day(latest) },
  }));
}

const day = (text: string | null): string | null => (text === null || text.endsWith('infinity') ? null : text);
