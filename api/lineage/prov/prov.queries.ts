import type { EntityManager } from 'typeorm';
import { isStranger, seen } from '../../people/visibility.ts';

export interface KeptBy {
  readonly id: string;
  readonly keeperId: string;
  readonly keeper: string;
}

/** Who keeps these animals, as far as they may be seen (primary keys); nobody is named to a stranger. */
export async function readKeepers(manager: EntityManager, ids: readonly string[]): Promise<KeptBy[]> {
  if (isStranger()) return [];
  return manager.query<KeptBy[]>(
    `select i.id, k.id as "keeperId", k.name as keeper from individual i join keeper k on k.id = i.keeper_id
     where i.id = any($1) and ${seen('individual', 'i')} order by i.id`,
    [ids],
  );
}
