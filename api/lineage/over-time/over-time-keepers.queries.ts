import type { EntityManager } from 'typeorm';
import { forMembers, isStranger, seen } from '../../people/visibility.ts';

/** Keepers of some animals. */
export interface KeptBy {
  /** Sorted by name. */
  readonly keepers: readonly { readonly id: string; readonly name: string }[];
  /** Id of an animal to the id of its keeper; without those that whoever asks may not see. */
  readonly keeperOf: ReadonlyMap<string, string>;
}

/** Who keeps these animals (primary keys); strangers are told nobody. */
export async function readKeepersOf(manager: EntityManager, ids: readonly string[]): Promise<KeptBy> {
  if (isStranger()) return { keepers: [], keeperOf: new Map() };
  // the animals of a keeper come as one list: a row each would take longer to read than to find
  const rows = await manager.query<{ id: string; name: string; animals: string }[]>(
    `select k.id, ${forMembers('k.name')} as name, string_agg(i.id::text, ' ') as animals
     from individual i join keeper k on k.id = i.keeper_id
     where i.id = any($1::uuid[]) and ${seen('individual', 'i')} group by k.id order by k.name, k.id`,
    [ids],
  );
  return {
    keepers: rows.map(({ id, name }) => ({ id, name })),
    keeperOf: new Map(rows.flatMap(({ id, animals }) => animals.split(' ').map((animal) => [animal, id] as const))),
  };
}
