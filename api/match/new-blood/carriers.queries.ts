import type { EntityManager } from 'typeorm';
import { seen } from '../../people/visibility.ts';
import { seenPairing } from '../../register/seen-records.ts';

/** Ids of the keepers of animals, by the ids of the animals (primary key); those that may not be seen are left out. */
export async function readKeepersOf(manager: EntityManager, ids: readonly string[]): Promise<Map<string, string>> {
  if (ids.length === 0) return new Map();
  const rows = await manager.query<{ id: string; keeperId: string }[]>(
    `select i.id, i.keeper_id as "keeperId" from individual i where i.id = any($1::uuid[]) and ${seen('individual', 'i')}`,
    [ids],
  );
  return new Map(rows.map(({ id, keeperId }) => [id, keeperId]));
}

/** Ids of the species of animals, by the ids of the animals (primary key); those that may not be seen are left out. */
export async function readSpeciesOf(manager: EntityManager, ids: readonly string[]): Promise<Map<string, string>> {
  if (ids.length === 0) return new Map();
  const rows = await manager.query<{ id: string; speciesId: string }[]>(
    `select i.id, i.species_id as "speciesId" from individual i where i.id = any($1::uuid[]) and ${seen('individual', 'i')}`,
    [ids],
  );
  return new Map(rows.map(({ id, speciesId }) => [id, speciesId]));
}

/** Those of these animals that live in a pairing now, as far as whoever asks may see both (pairing_member_individual_index). */
export async function readHoused(manager: EntityManager, ids: readonly string[]): Promise<Set<string>> {
  if (ids.length === 0) return new Set();
  const rows = await manager.query<{ id: string }[]>(
    `select distinct i.id from individual i
     join pairing_member m on m.individual_id = i.id and m.stands and m."left" is null
     join pairing p on p.id = m.pairing_id and p.withdrawn_at is null
     where i.id = any($1::uuid[]) and ${seen('individual', 'i')} and ${seenPairing('p')}`,
    [ids],
  );
  return new Set(rows.map(({ id }) => id));
}
