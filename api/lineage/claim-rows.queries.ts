import type pg from 'pg';
import type { DateBounds } from '../../shared/edtf.ts';
import type { Bearing, ClaimAspect, EvidenceKind, EvidenceNames, Review } from '../../shared/vocabulary.ts';
import { claimFacts, type ClaimFacts, type EvidenceRow } from '../provenance/claim-facts.ts';
import { forEachBinaryRow, type BinaryRow } from './binary-rows.ts';
import type { Ids } from './register-rows.queries.ts';

/** What a claim can be about. */
export const claimSubjects = ['source', 'individual', 'line'] as const;
export type ClaimSubject = (typeof claimSubjects)[number];

const among = (subject: ClaimSubject, ids: Ids): string =>
  ids === null ? `c.${subject}_id is not null` : `c.${subject}_id in (${ids.map((id) => `'${id}'`).join(',')})`;

/**
 * Claims in force about records of one kind, each with its evidence, ordered by id (claim_source_index and its like,
 * evidence_claim_index). To be called in the transaction that reads the register.
 *
 * @param ids of the records that the claims are about; null for all
 * @param take gets the id of the record and the claim
 */
export async function forEachClaim(
  client: pg.ClientBase,
  subject: ClaimSubject,
  ids: Ids,
  take: (subjectId: string, claim: ClaimFacts) => void,
): Promise<void> {
  if (ids !== null && ids.length === 0) return;
  const claims: [string, Parameters<typeof claimFacts>[0]][] = [];
  await forEachBinaryRow(
    client,
    `select c.id, c.${subject}_id, c.aspect, c.value, c.country_code, c.stated_on_earliest::text, c.stated_on_latest::text
     from claim c where c.withdrawn_at is null and ${among(subject, ids)} order by c.id`,
    (row) => claims.push([row.id(1), claimOfRow(row)]),
  );
  if (claims.length === 0) return;
  const evidence = new Map<string, EvidenceRow[]>();
  await forEachBinaryRow(
    client,
    `select e.id, e.claim_id, e.kind, e.bearing, e.names, e.issued_by, e.repeats_id, e.review, e.withdrawn_at is not null,
       e.dated_earliest::text, e.dated_latest::text
     from evidence e join claim c on c.id = e.claim_id where c.withdrawn_at is null and ${among(subject, ids)} order by e.id`,
    (row) => {
      const pieces = evidence.get(row.id(1)) ?? [];
      pieces.push(evidenceOfRow(row));
      evidence.set(row.id(1), pieces);
    },
  );
  for (const [subjectId, claim] of claims) take(subjectId, claimFacts(claim, evidence.get(claim.id) ?? []));
}

function claimOfRow(row: BinaryRow): Parameters<typeof claimFacts>[0] {
  return {
    id: row.id(0),
    aspect: row.text(2) as ClaimAspect,
    value: row.text(3) ?? '',
    countryCode: row.text(4),
    statedOn: boundsIn(row, 5),
  };
}

function evidenceOfRow(row: BinaryRow): EvidenceRow {
  return {
    id: row.id(0),
    kind: row.text(2) as EvidenceKind,
    bearing: row.text(3) as Bearing,
    names: row.text(4) as EvidenceNames,
    issuedBy: row.text(5),
    repeatsId: row.isNull(6) ? null : row.id(6),
    review: row.text(7) as Review,
    isWithdrawn: row.boolean(8),
    dated: boundsIn(row, 9),
  };
}

/** The bounds of a date in two fields of a row, null where there is none; an open side is null. */
export function boundsIn(row: BinaryRow, field: number): DateBounds | null {
  if (row.isNull(field)) return null;
  const day = (text: string | null): string | null => (text === null || text.endsWith('infinity') ? null : text);
  return { earliest: day(row.text(field)), latest: day(row.text(field + 1)) };
}
