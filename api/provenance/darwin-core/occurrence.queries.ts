import type { EntityManager } from 'typeorm';
import { parseRegistryNumber } from '../../../shared/registry-number.ts';
import type { Sex, SourceKind } from '../../../shared/vocabulary.ts';
import { seen } from '../../people/visibility.ts';
import { isId } from '../../platform/ids.ts';

/** An animal as far as its occurrence is told; of its source nothing where that may not be seen. */
export interface OccurrenceRow {
  readonly id: string;
  readonly number: string;
  readonly code: string | null;
  readonly sex: Sex;
  readonly species: string;
  readonly hatched: string | null;
  readonly sourceId: string | null;
  readonly sourceKind: SourceKind | null;
  readonly sourceDate: string | null;
}

/** An animal by its id or registry number, or null where there is none that may be seen (primary key, individual_number_unique). */
export async function findOccurrence(manager: EntityManager, name: string): Promise<OccurrenceRow | null> {
  const serial = isId(name) ? null : parseRegistryNumber(name);
  if (!isId(name) && serial === null) return null;
  const [row] = await manager.query<OccurrenceRow[]>(
    `select i.id, i.number::text, i.code, i.sex, s.scientific_name as species, i.hatched, o.id as "sourceId", o.kind as "sourceKind", o.date as "sourceDate"
     from individual i join species s on s.id = i.species_id
       left join source o on o.id = i.source_id and o.withdrawn_at is null and ${seen('source', 'o')}
     where ${serial === null ? 'i.id = $1' : 'i.number = $1'} and ${seen('individual', 'i')}`,
    [serial ?? name],
  );
  return row ?? null;
}
