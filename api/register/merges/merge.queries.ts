import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { isId } from '../../platform/ids.ts';
import type { MergeView, MergedRecordView, MovedCountsView } from './merge.view.ts';
import { notAcknowledgedOf } from './merged-provenance.queries.ts';
import type { Moved } from './moved.ts';

interface MergeRow {
  readonly id: string;
  readonly kept: MergedRecordView;
  readonly duplicate: MergedRecordView;
  readonly moved: Moved;
  readonly reason: string;
  readonly keeper: string;
  readonly createdAt: Date;
  readonly undoneAt: Date | null;
}

const record = (alias: string): string =>
  `json_build_object('id', ${alias}.id, 'number', ${alias}.number::text, 'code', ${alias}.code)`;

/** One merging by its id (primary key), or null. */
export async function findMerge(manager: EntityManager, id: string): Promise<MergeView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<MergeRow[]>(
    `select m.id, ${record('k')} as kept, ${record('d')} as duplicate, m.moved, m.reason, p.name as keeper,
       m.created_at as "createdAt", m.undone_at as "undoneAt"
     from merge m join individual k on k.id = m.kept_id join individual d on d.id = m.duplicate_id join keeper p on p.id = m.keeper_id
     where m.id = $1`,
    [id],
  );
  if (!row) return null;
  const { moved, createdAt, undoneAt, kept, duplicate, ...rest } = row;
  const { provenance } = moved;
  return {
    ...rest,
    kept: withCheck(kept),
    duplicate: withCheck(duplicate),
    taken: [...moved.fields],
    moved: {
      clutches: moved.clutches.length,
      stays: moved.stays.length + moved.joinedStays.reduce((sum, { before }) => sum + before.length, 0),
      remarks: moved.remarks.length,
      confirmations: moved.confirmations.length,
      records: moved.followers.length,
      claims: (provenance?.claims.length ?? 0) + (provenance?.joinedClaims.length ?? 0),
      photographs: provenance?.photographs.length ?? 0,
      acknowledgements: provenance?.acknowledgements.length ?? 0,
    },
    createdAt: createdAt.toISOString(),
    undoneAt: undoneAt?.toISOString() ?? null,
  };
}

const withCheck = ({ number, ...rest }: MergedRecordView): MergedRecordView => ({
  ...rest,
  number: formatRegistryNumber(number),
});

/** A standing merging that has to be undone before another. */
export interface LaterMerge {
  readonly id: string;
  readonly kept: string;
  readonly duplicate: string;
}

/** Standing mergings of either record after this one, newest first (merge_kept_index, merge_duplicate_index). */
export async function laterMerges(
  manager: EntityManager,
  id: string,
  records: readonly string[],
): Promise<LaterMerge[]> {
  const rows = await manager.query<LaterMerge[]>(
    `select m.id, k.number::text as kept, d.number::text as duplicate
     from merge m join individual k on k.id = m.kept_id join individual d on d.id = m.duplicate_id
     where m.undone_at is null and m.id > $1 and (m.kept_id = any($2::uuid[]) or m.duplicate_id = any($2::uuid[])) order by m.id desc`,
    [id, records],
  );
  return rows.map((row) => ({
    id: row.id,
    kept: formatRegistryNumber(row.kept),
    duplicate: formatRegistryNumber(row.duplicate),
  }));
}

/** How much names a record and would move with it. */
export async function countMoves(
  manager: EntityManager,
  keptId: string,
  duplicateId: string,
): Promise<Omit<MovedCountsView, 'clutches'>> {
  const [row] = await manager.query<Omit<MovedCountsView, 'clutches'>[]>(
    `select (select count(*)::integer from pairing_member where individual_id = $2) as stays,
       (select count(*)::integer from observation where individual_id = $2) as remarks,
       (select count(*)::integer from confirmed_warning where individual_id = $2
          and code not in (select code from confirmed_warning where individual_id = $1)) as confirmations,
       (select count(*)::integer from individual where merged_into_id = $2) as records,
       (select count(*)::integer from claim where individual_id = $2) as claims,
       (select count(*)::integer from photograph where individual_id = $2) as photographs,
       (select count(*)::integer from flag_acknowledgement r where individual_id = $2 and ${notAcknowledgedOf('$1')}) as acknowledgements`,
    [keptId, duplicateId],
  );
  if (!row) throw new Error('the database did not count');
  return row;
}

/** The animal that has the code of another one of the same keeper (individual_code_unique), or null. */
export async function holderOfCode(
  manager: EntityManager,
  individualId: string,
): Promise<{ id: string; number: string; code: string } | null> {
  const [row] = await manager.query<{ id: string; number: string; code: string }[]>(
    `select o.id, o.number::text, o.code from individual r
     join individual o on o.keeper_id = r.keeper_id and lower(o.code) = lower(r.code) and o.withdrawn_at is null and o.id <> r.id
     where r.id = $1`,
    [individualId],
  );
  return row ?? null;
}
