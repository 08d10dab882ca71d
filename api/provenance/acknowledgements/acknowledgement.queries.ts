import type { EntityManager } from 'typeorm';
import { forMembers } from '../../people/visibility.ts';
import { isId } from '../../platform/ids.ts';
import { decodeCursor, encodeCursor, toPage, type Page } from '../../platform/paging.ts';
import type { Kind } from '../../register/change.ts';
import { Conditions, countWhere, orderBy, type SortColumn } from '../../register/keyset.ts';
import { recordColumns, toRecordView, type RecordRow } from '../../register/record.view.ts';
import { seenIn } from '../../register/seen-records.ts';
import type { AcknowledgementQuery } from './acknowledgement.dto.ts';
import type { AcknowledgementView } from './acknowledgement.view.ts';
import { FlagAcknowledgement } from './flag-acknowledgement.entity.ts';
import { KnownFlags, type KnownFlag } from './known-flags.ts';

type AcknowledgementRow = RecordRow &
  Omit<AcknowledgementView, 'createdAt' | 'updatedAt' | 'withdrawn'> & { readonly sort: string };

const inOrder: readonly SortColumn[] = [{ sql: 'a.id', type: 'uuid' }];

const select = (): string => `
  select ${recordColumns('a')}, ${forMembers('k.name')} as keeper, ${forMembers('a.keeper_id')} as "keeperId",
    a.individual_id as "individualId", a.line_id as "lineId", a.code, a.reason, cardinality(a.record_ids) as causes, a.id::text as sort
  from flag_acknowledgement a join keeper k on k.id = a.keeper_id`;

/** One acknowledgement by its id (primary key), or null where there is none or it may not be seen. */
export async function findAcknowledgement(manager: EntityManager, id: string): Promise<AcknowledgementView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<AcknowledgementRow[]>(
    `${select()} where a.id = $1 and ${seenIn.flag_acknowledgement('a')}`,
    [id],
  );
  return row ? toAcknowledgementView(row) : null;
}

/** Acknowledgements as the functions that change records know them. */
export const acknowledgementKind: Kind<FlagAcknowledgement, AcknowledgementView> = {
  word: 'acknowledgement',
  entity: FlagAcknowledgement,
  find: findAcknowledgement,
};

/** A page of acknowledgements that stand, in the order in which they were made: flag_acknowledgement_unique, else the primary key. */
export async function listAcknowledgements(
  manager: EntityManager,
  query: AcknowledgementQuery,
): Promise<Page<AcknowledgementView>> {
  const conditions = new Conditions();
  conditions.add('a.withdrawn_at is null');
  conditions.add(seenIn.flag_acknowledgement('a'));
  for (const [column, id] of [
    ['individual_id', query.individualId],
    ['line_id', query.lineId],
  ] as const)
    if (id !== undefined) {
      const bound = conditions.bind(id);
      conditions.add(`coalesce(a.individual_id, a.line_id) = ${bound} and a.${column} = ${bound}`);
    }
  const total = query.total ? await countWhere(manager, 'flag_acknowledgement a', conditions) : undefined;
  if (query.after !== undefined)
    conditions.addAfter(inOrder, decodeCursor('acknowledged', inOrder.length, query.after), false);
  const rows = await manager.query<AcknowledgementRow[]>(
    `${select()} where ${conditions.sql} order by ${orderBy(inOrder, false)} limit ${query.limit + 1}`,
    conditions.parameters,
  );
  return toPage(rows, query.limit, toAcknowledgementView, (row) => encodeCursor('acknowledged', [row.sort]), total);
}

function toAcknowledgementView(row: AcknowledgementRow): AcknowledgementView {
  const { keeper, keeperId, individualId, lineId, code, reason, causes } = row;
  return { ...toRecordView(row), keeper, keeperId, individualId, lineId, code, reason, causes };
}

const known = (): string => `
  select a.id, a.version, coalesce(a.individual_id, a.line_id) as "subjectId", a.individual_id is not null as "isOfAnimal", a.code,
    ${forMembers('k.name')} as by, a.created_at as at, ${forMembers('a.reason')} as reason, a.record_ids as "recordIds"
  from flag_acknowledgement a join keeper k on k.id = a.keeper_id`;

/** What is acknowledged of some animals and lines that whoever asks was found to see (flag_acknowledgement_unique). */
export async function readKnownFlags(manager: EntityManager, subjectIds: readonly string[]): Promise<KnownFlags> {
  return toKnownFlags(
    await manager.query<KnownRow[]>(
      `${known()} where a.withdrawn_at is null and coalesce(a.individual_id, a.line_id) = any($1::uuid[])`,
      [subjectIds],
    ),
  );
}

/** What is acknowledged of a line, and of those of its animals that whoever asks may see, by one statement. */
export async function readKnownFlagsOfLine(manager: EntityManager, lineId: string): Promise<KnownFlags> {
  return toKnownFlags(
    await manager.query<KnownRow[]>(
      `${known()} left join individual i on i.id = a.individual_id
       where a.withdrawn_at is null and coalesce(a.line_id, i.line_id) = $1 and ${seenIn.flag_acknowledgement('a')}`,
      [lineId],
    ),
  );
}

type KnownRow = Omit<KnownFlag, 'at'> & { readonly at: Date };

const toKnownFlags = (rows: readonly KnownRow[]): KnownFlags =>
  new KnownFlags(rows.map((row) => ({ ...row, at: row.at.toISOString() })));
