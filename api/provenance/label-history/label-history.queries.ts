import type { EntityManager } from 'typeorm';
import type { LabelKind, SourceKind } from '../../../shared/vocabulary.ts';
import { viewer } from '../../platform/acting.ts';
import { isId } from '../../platform/ids.ts';
import { forMembers, seen } from '../../people/visibility.ts';
import { seenIn } from '../../register/seen-records.ts';
import { parseRegistryNumber } from '../../../shared/registry-number.ts';

/** Most rows of one kind that a history is made of; one more is read to tell that there are more. */
export const HISTORY_MOST = 300;

export interface AnimalRow {
  readonly id: string;
  readonly number: string;
  readonly code: string | null;
  readonly lineId: string | null;
  readonly sourceId: string | null;
  readonly createdAt: Date;
  readonly keeper: string | null;
}

export interface LineRow {
  readonly id: string;
  readonly name: string;
  readonly labelKind: LabelKind;
  readonly createdAt: Date;
  readonly keeper: string | null;
}

export interface SourceRow {
  readonly id: string;
  readonly kind: SourceKind;
  readonly date: string | null;
  readonly label: string | null;
  readonly receivedFrom: string | null;
}

/** An entry of the journal about an animal or a line, as far as it tells of a label. */
export interface EntryRow {
  readonly id: string;
  readonly recordId: string;
  readonly at: Date;
  readonly keeper: string | null;
  readonly reason: string | null;
  readonly isAdding: boolean;
  /** The line of an animal, the name of a line, or the value of a claim; before and after. */
  readonly from: string | null;
  readonly to: string | null;
}

export interface ClaimRow {
  readonly id: string;
  readonly value: string;
  readonly statedBy: string | null;
  readonly keeper: string | null;
  readonly createdAt: Date;
  readonly withdrawnAt: Date | null;
  readonly withdrawnReason: string | null;
}

export interface VerdictRow {
  readonly id: string;
  readonly claim: string;
  readonly reference: string;
  readonly review: 'accepted' | 'rejected';
  readonly reviewer: string | null;
  readonly reviewedAt: Date;
  readonly reviewReason: string | null;
  readonly withdrawnAt: Date | null;
  readonly withdrawnReason: string | null;
}

/** An animal by its id or registry number, or null where there is none that may be seen (primary key, individual_number_unique). */
export async function findAnimal(manager: EntityManager, name: string): Promise<AnimalRow | null> {
  const serial = isId(name) ? null : parseRegistryNumber(name);
  if (!isId(name) && serial === null) return null;
  const [row] = await manager.query<AnimalRow[]>(
    `select i.id, i.number::text, i.code, i.line_id as "lineId", i.source_id as "sourceId", i.created_at as "createdAt", ${forMembers('k.name')} as keeper
     from individual i join keeper k on k.id = i.keeper_id
     where ${serial === null ? 'i.id = $1' : 'i.number = $1'} and ${seen('individual', 'i')}`,
    [serial ?? name],
  );
  return row ?? null;
}

/** Lines by their ids (primary key). */
export function readLines(manager: EntityManager, ids: readonly string[]): Promise<LineRow[]> {
  return manager.query<LineRow[]>(
    `select l.id, l.name, l.label_kind as "labelKind", l.created_at as "createdAt", ${forMembers('k.name')} as keeper
     from line l left join keeper k on k.id = l.keeper_id where l.id = any($1) and ${seenIn.line('l')}`,
    [ids.filter(isId)],
  );
}

const sources = (): string => `
  select s.id, s.kind, s.date, s.label_as_received as label, ${forMembers('s.received_from')} as "receivedFrom"
  from source s where s.withdrawn_at is null and ${seenIn.source('s')}`;

/** A source by its id, in a list; none where it may not be seen (primary key). */
export function readSource(manager: EntityManager, id: string | null): Promise<SourceRow[]> {
  return id === null ? Promise.resolve([]) : manager.query<SourceRow[]>(`${sources()} and s.id = $1`, [id]);
}

/** The sources that animals of a line, of those that may be seen, came from, the oldest first (individual_line_index). */
export function readSourcesOfLine(manager: EntityManager, lineId: string): Promise<SourceRow[]> {
  return manager.query<SourceRow[]>(
    `${sources()} and s.id in (select i.source_id from individual i where i.line_id = $1 and i.withdrawn_at is null and ${seen('individual', 'i')})
     order by s.date_earliest nulls last, s.id limit ${HISTORY_MOST + 1}`,
    [lineId],
  );
}

/**
 * Entries of records in which a property changed, or that tell of their adding, the oldest first (journal_entry_record_index): those that
 * whoever asks could read, so that a private state stays so. The caller has made sure that they may see the records.
 */
export function readEntriesOf(
  manager: EntityManager,
  kind: 'individual' | 'line' | 'claim',
  ids: readonly string[],
  property: 'lineId' | 'name' | 'value',
): Promise<EntryRow[]> {
  if (ids.length === 0) return Promise.resolve([]);
  return manager.query<EntryRow[]>(
    `select e.id, e.record_id as "recordId", e.at, ${forMembers('k.name')} as keeper, ${forMembers('e.reason')} as reason, e.before is null as "isAdding",
       e.before->>'${property}' as "from", e.after->>'${property}' as "to"
     from journal_entry e left join keeper k on k.id = e.keeper_id
     where e.record_id = any($1) and e.kind = '${kind}' and ${readableEntry('e')} and e.after is not null
       and (e.before is null or e.before->>'${property}' is distinct from e.after->>'${property}')
     order by e.id limit ${HISTORY_MOST + 1}`,
    [ids],
  );
}

/** The stricter one of before and after must allow it. */
function readableEntry(alias: string): string {
  const who = viewer();
  if (who === null) return `${alias}.visibility = 'public'`;
  return who.roles.includes('registrar')
    ? 'true'
    : `(${alias}.visibility <> 'private' or ${alias}.owner_id = '${who.id}')`;
}

/** Claims about any of these records that may be seen, withdrawn ones too, the oldest first (claim_source_index, claim_line_index, claim_individual_index). */
export function readClaims(
  manager: EntityManager,
  about: {
    readonly individualId: string | null;
    readonly lineIds: readonly string[];
    readonly sourceIds: readonly string[];
  },
): Promise<ClaimRow[]> {
  return manager.query<ClaimRow[]>(
    `select c.id, c.value, ${forMembers('c.stated_by')} as "statedBy", ${forMembers('k.name')} as keeper, c.created_at as "createdAt",
       c.withdrawn_at as "withdrawnAt", ${forMembers('c.withdrawn_reason')} as "withdrawnReason"
     from claim c join keeper k on k.id = c.keeper_id
     where (c.individual_id = $1 or c.line_id = any($2) or c.source_id = any($3)) and ${seenIn.claim('c')}
     order by c.id limit ${HISTORY_MOST + 1}`,
    [about.individualId, about.lineIds, about.sourceIds],
  );
}

/** Evidence of claims that was reviewed, the oldest first (evidence_claim_index). To a stranger none. */
export function readVerdicts(manager: EntityManager, claimIds: readonly string[]): Promise<VerdictRow[]> {
  return manager.query<VerdictRow[]>(
    `select e.id, c.value as claim, e.reference, e.review, r.name as reviewer, e.reviewed_at as "reviewedAt", e.review_reason as "reviewReason",
       e.withdrawn_at as "withdrawnAt", e.withdrawn_reason as "withdrawnReason"
     from evidence e join claim c on c.id = e.claim_id left join keeper r on r.id = e.reviewer_id
     where e.claim_id = any($1) and e.review <> 'pending' and ${seenIn.evidence('e')}
     order by e.id limit ${HISTORY_MOST + 1}`,
    [claimIds],
  );
}
