import type { EntityManager } from 'typeorm';
import { evidenceKinds } from '../../../shared/vocabulary.ts';
import { isId } from '../../platform/ids.ts';
import { decodeCursor, encodeCursor, toPage, type Page } from '../../platform/paging.ts';
import { Conditions, countWhere, orderBy, type SortColumn } from '../../register/keyset.ts';
import { recordColumns, toRecordView, type RecordRow } from '../../register/record.view.ts';
import { seenIn } from '../../register/seen-records.ts';
import type { EvidenceQuery } from './evidence.dto.ts';
import type { EvidenceFileView, EvidenceView } from './evidence.view.ts';

type EvidenceRow = RecordRow &
  Omit<EvidenceView, 'createdAt' | 'updatedAt' | 'withdrawn' | 'rank' | 'reviewed'> & {
    readonly reviewer: string | null;
    readonly reviewedAt: Date | null;
    readonly reviewReason: string | null;
    readonly file: EvidenceFileView | null;
    readonly sort: string;
  };

const inOrder: readonly SortColumn[] = [{ sql: 'e.id', type: 'uuid' }];

const select = `
  select ${recordColumns('e')}, k.name as keeper, e.keeper_id as "keeperId", e.claim_id as "claimId", c.value as claim, e.bearing, e.kind, e.names,
    e.reference, e.issued_by as "issuedBy", e.dated, e.repeats_id as "repeatsId", e.notes, e.review, r.name as reviewer,
    e.reviewed_at as "reviewedAt", e.review_reason as "reviewReason",
    (select json_build_object('hash', f.hash, 'mediaType', f.media_type, 'bytes', f.bytes) from stored_file f where f.hash = e.file_hash) as file,
    e.id::text as sort
  from evidence e join keeper k on k.id = e.keeper_id join claim c on c.id = e.claim_id left join keeper r on r.id = e.reviewer_id`;

/** One piece of evidence by its id (primary key), or null where there is none or it may not be seen. */
export async function findEvidence(manager: EntityManager, id: string): Promise<EvidenceView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<EvidenceRow[]>(`${select} where e.id = $1 and ${seenIn.evidence('e')}`, [id]);
  return row ? toEvidenceView(row) : null;
}

/** A page of evidence in the order in which it was brought: evidence_claim_index, evidence_pending_index, else the primary key. */
export async function listEvidence(manager: EntityManager, query: EvidenceQuery): Promise<Page<EvidenceView>> {
  const conditions = new Conditions();
  conditions.add('e.withdrawn_at is null');
  conditions.add('c.withdrawn_at is null');
  conditions.add(seenIn.evidence('e'));
  if (query.claimId !== undefined) conditions.add(`e.claim_id = ${conditions.bind(query.claimId)}`);
  // the word stands in the statement, so that the index of what waits can answer
  if (query.review !== undefined) conditions.add(`e.review = '${query.review}'`);
  const from = 'evidence e join claim c on c.id = e.claim_id';
  const total = query.total ? await countWhere(manager, from, conditions) : undefined;
  if (query.after !== undefined)
    conditions.addAfter(inOrder, decodeCursor('brought', inOrder.length, query.after), false);
  const rows = await manager.query<EvidenceRow[]>(
    `${select} where ${conditions.sql} order by ${orderBy(inOrder, false)} limit ${query.limit + 1}`,
    conditions.parameters,
  );
  return toPage(rows, query.limit, toEvidenceView, (row) => encodeCursor('brought', [row.sort]), total);
}

/** Standing evidence of these claims that was accepted, the oldest first (evidence_claim_index). To a stranger none. */
export async function findAcceptedEvidence(
  manager: EntityManager,
  claimIds: readonly string[],
  limit: number,
): Promise<EvidenceView[]> {
  const rows = await manager.query<EvidenceRow[]>(
    `${select} where e.claim_id = any($1) and e.review = 'accepted' and e.withdrawn_at is null and ${seenIn.evidence('e')} order by e.id limit $2`,
    [claimIds, limit],
  );
  return rows.map(toEvidenceView);
}

function toEvidenceView(row: EvidenceRow): EvidenceView {
  const { reviewer, reviewedAt, reviewReason } = row;
  return {
    ...toRecordView(row),
    keeper: row.keeper,
    keeperId: row.keeperId,
    claimId: row.claimId,
    claim: row.claim,
    bearing: row.bearing,
    kind: row.kind,
    rank: evidenceKinds[row.kind],
    names: row.names,
    reference: row.reference,
    issuedBy: row.issuedBy,
    dated: row.dated,
    repeatsId: row.repeatsId,
    file: row.file,
    notes: row.notes,
    review: row.review,
    reviewed:
      reviewer === null || reviewedAt === null
        ? null
        : { reviewer, at: reviewedAt.toISOString(), reason: reviewReason ?? '' },
  };
}
