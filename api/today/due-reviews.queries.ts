import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../shared/registry-number.ts';
import type { SourceKind } from '../../shared/vocabulary.ts';
import { may, permissionsOf } from '../people/permissions.ts';
import { seen } from '../people/visibility.ts';
import type { Acting } from '../platform/acting.ts';
import { seenIn } from '../register/seen-records.ts';
import { sourceTitle } from '../register/titles.ts';
import type { DueReviewsView, DueReviewView } from './today.view.ts';

interface ReviewRow extends Omit<DueReviewView, 'about' | 'createdAt'> {
  readonly createdAt: Date;
  readonly line: string | null;
  readonly number: string | null;
  readonly code: string | null;
  readonly sourceKind: SourceKind | null;
  readonly sourceDate: string | null;
  readonly total: number;
}

/** Evidence of others that waits for a review, the longest waiting first (evidence_pending_index). None for who may not review. */
export async function readDueReviews(manager: EntityManager, keeper: Acting, limit: number): Promise<DueReviewsView> {
  if (!may(permissionsOf(keeper, { publicReading: false }), 'review', 'evidence')) return { items: [], total: 0 };
  const rows = await manager.query<ReviewRow[]>(
    `select e.id, e.kind, e.reference, c.value as claim, k.name as keeper, e.created_at as "createdAt", l.name as line,
       i.number::text as number, i.code, o.kind as "sourceKind", o.date as "sourceDate", (count(*) over ())::integer as total
     from evidence e join claim c on c.id = e.claim_id join keeper k on k.id = e.keeper_id
       left join line l on l.id = c.line_id
       left join individual i on i.id = c.individual_id and ${seen('individual', 'i')}
       left join source o on o.id = c.source_id and ${seen('source', 'o')}
     where e.review = 'pending' and e.withdrawn_at is null and c.withdrawn_at is null and e.keeper_id <> $1 and ${seenIn.evidence('e')}
     order by e.id limit ${limit}`,
    [keeper.id],
  );
  return { items: rows.map(toView), total: rows[0]?.total ?? 0 };
}

function toView(row: ReviewRow): DueReviewView {
  const { id, kind, reference, claim, keeper, createdAt } = row;
  return { id, kind, reference, claim, about: aboutOf(row), keeper, createdAt: createdAt.toISOString() };
}

function aboutOf({ line, number, code, sourceKind, sourceDate }: ReviewRow): string | null {
  if (line !== null) return line;
  if (number !== null) return code ?? formatRegistryNumber(number);
  return sourceKind === null ? null : sourceTitle({ kind: sourceKind, date: sourceDate });
}
