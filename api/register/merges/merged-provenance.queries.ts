import type { EntityManager } from 'typeorm';
import type { FilledColumns, JoinedClaim } from './moved.ts';
import { idsOf } from './merged-rows.queries.ts';

/** A row of a table as JSON has it, by the names of its columns. */
type Row = Readonly<Record<string, string | number | null>>;

/** A standing claim of the duplicate that the kept record has as well. */
export interface SameClaims {
  readonly kept: Row & { readonly id: string };
  readonly duplicate: Row & { readonly id: string };
}

/** What both records are claimed to be, pair by pair (claim_individual_index, claim_unique). */
export async function findSameClaims(
  manager: EntityManager,
  keptId: string,
  duplicateId: string,
): Promise<SameClaims[]> {
  return manager.query<SameClaims[]>(
    `select to_jsonb(k) as kept, to_jsonb(d) as duplicate from claim d
     join claim k on k.individual_id = $1 and k.withdrawn_at is null and k.aspect = d.aspect and lower(k.value) = lower(d.value)
     where d.individual_id = $2 and d.withdrawn_at is null order by d.id`,
    [keptId, duplicateId],
  );
}

/** Gives all evidence of one claim to another, withdrawn pieces too, and names it (evidence_claim_index). */
export async function moveEvidence(manager: EntityManager, from: string, to: string): Promise<string[]> {
  return idsOf(
    manager,
    'update evidence set claim_id = $2, version = version + 1, updated_at = now() where claim_id = $1 returning id',
    [from, to],
  );
}

/** Gives evidence back to the claim that it came with (primary key). */
export async function moveEvidenceBack(manager: EntityManager, { id, keptId, evidence }: JoinedClaim): Promise<void> {
  await manager.query(
    `update evidence set claim_id = $2, version = version + 1, updated_at = now()
     where id = any($1::uuid[]) and claim_id = $3`,
    [evidence, id, keptId],
  );
}

/** Withdraws a claim in favour of the same one of another animal, with which it is from now on (primary key). */
export async function withdrawInFavour(
  manager: EntityManager,
  id: string,
  individualId: string,
  { at, reason }: { readonly at: string; readonly reason: string },
): Promise<void> {
  await manager.query(
    `update claim set individual_id = $2, withdrawn_at = $3, withdrawn_reason = $4, version = version + 1, updated_at = now()
     where id = $1`,
    [id, individualId, at, reason],
  );
}

/** Gives a claim back to the animal that it came with; it stands again unless somebody withdrew it since (primary key). */
export async function bringClaimBack(
  manager: EntityManager,
  { id, withdrawnAt }: JoinedClaim,
  individualId: string,
): Promise<void> {
  await manager.query(
    `update claim set individual_id = $2, version = version + 1, updated_at = now(),
       withdrawn_at = case when withdrawn_at = $3 then null else withdrawn_at end,
       withdrawn_reason = case when withdrawn_at = $3 then null else withdrawn_reason end
     where id = $1`,
    [id, individualId, withdrawnAt],
  );
}

/** A claim as it stands (primary key). */
export async function readClaimRow(manager: EntityManager, id: string): Promise<Row> {
  const [row] = await manager.query<{ row: Row }[]>('select to_jsonb(c) as row from claim c where c.id = $1', [id]);
  if (!row) throw new Error('a claim is never destroyed');
  return row.row;
}

/** Writes columns of a claim, which are named by our own lists (primary key). */
export async function writeClaimColumns(
  manager: EntityManager,
  id: string,
  columns: FilledColumns | Readonly<Record<string, null>>,
): Promise<void> {
  const names = Object.keys(columns);
  if (names.length === 0) return;
  await manager.query(
    `update claim c set ${names.map((name) => `${name} = r.${name}`).join(', ')}, version = c.version + 1, updated_at = now()
     from jsonb_populate_record(null::claim, $2::jsonb) r where c.id = $1`,
    [id, JSON.stringify(columns)],
  );
}

/** The condition for acknowledged flags, a table known as r, that another animal has no standing one of the same code of. */
export const notAcknowledgedOf = (individual: string): string =>
  `(r.withdrawn_at is not null or r.code not in (select code from flag_acknowledgement where individual_id = ${individual} and withdrawn_at is null))`;

/** Standing evidence brought since claims were joined that goes back to evidence which came with the other one (evidence_claim_index). */
export async function repeatedAcross(
  manager: EntityManager,
  joined: readonly JoinedClaim[],
): Promise<{ id: string; reference: string }[]> {
  return manager.query<{ id: string; reference: string }[]>(
    `select e.id, e.reference from evidence e
     where e.claim_id = any($1::uuid[]) and e.withdrawn_at is null and e.repeats_id is not null
       and (e.id = any($2::uuid[])) <> (e.repeats_id = any($2::uuid[])) order by e.id`,
    [joined.map(({ keptId }) => keptId), joined.flatMap(({ evidence }) => evidence)],
  );
}
