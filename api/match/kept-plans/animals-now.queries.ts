import type { EntityManager } from 'typeorm';
import type { Sex, Status, Visibility } from '../../../shared/vocabulary.ts';
import { seen } from '../../people/visibility.ts';

/** An animal of a kept plan as its record stands today. */
export interface AnimalNow {
  readonly id: string;
  readonly status: Status;
  readonly sex: Sex;
  readonly keeperId: string;
  readonly keeper: string;
  readonly lineId: string | null;
  readonly line: string | null;
  readonly visibility: Visibility;
  readonly isWithdrawn: boolean;
  readonly isMerged: boolean;
  /** Serial of the record that goes on in its place, where that may be seen. */
  readonly mergedInto: string | null;
}

/** Records of animals by their ids (primary keys), withdrawn ones too; those that may not be seen are left out. */
export async function readAnimalsNow(
  manager: EntityManager,
  ids: readonly string[],
): Promise<ReadonlyMap<string, AnimalNow>> {
  if (ids.length === 0) return new Map();
  const rows = await manager.query<AnimalNow[]>(
    `select i.id, i.status, i.sex, i.keeper_id as "keeperId", k.name as keeper, i.line_id as "lineId", l.name as line, i.visibility,
       i.withdrawn_at is not null as "isWithdrawn", i.merged_into_id is not null as "isMerged",
       (select o.number::text from individual o where o.id = i.merged_into_id and ${seen('individual', 'o')}) as "mergedInto"
     from individual i join keeper k on k.id = i.keeper_id left join line l on l.id = i.line_id
     where i.id = any($1::uuid[]) and ${seen('individual', 'i')}`,
    [ids],
  );
  return new Map(rows.map((row) => [row.id, row]));
}
