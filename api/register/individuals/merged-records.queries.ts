import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { seen } from '../../people/visibility.ts';
import type { MergedIntoView, MergedRecordOfView } from './individual.view.ts';

/** The record that goes on in the place of a merged one (primary key), as far as it may be seen. */
export async function readMergedInto(manager: EntityManager, id: string): Promise<MergedIntoView | null> {
  const [row] = await manager.query<MergedIntoView[]>(
    `select i.id, i.number::text from individual d join individual i on i.id = d.merged_into_id
     where d.id = $1 and ${seen('individual', 'i')}`,
    [id],
  );
  return row ? { ...row, number: formatRegistryNumber(row.number) } : null;
}

/** Records that were merged into this one, as far as they may be seen, by number (individual_merged_into_index, merge_duplicate_index). */
export async function readMerged(manager: EntityManager, id: string): Promise<MergedRecordOfView[]> {
  const rows = await manager.query<MergedRecordOfView[]>(
    `select i.id, i.number::text, m.id as "mergeId" from individual i join merge m on m.duplicate_id = i.id and m.undone_at is null
     where i.merged_into_id = $1 and ${seen('individual', 'i')} order by i.number`,
    [id],
  );
  return rows.map((row) => ({ ...row, number: formatRegistryNumber(row.number) }));
}

/** SQL for the animals that have one of these numbers, or go on in the place of one that has (individual_number_unique, primary key). */
export function hasNumber(alias: string, number: string): string {
  return `(${alias}.number = ${number} or ${alias}.id = (select d.merged_into_id from individual d where d.number = ${number}))`;
}
