import type { EntityManager } from 'typeorm';
import { forMembers, isStranger, requireMember, seen } from '../../people/visibility.ts';
import { isId } from '../../platform/ids.ts';
import { decodeCursor, encodeCursor, toPage, type Page } from '../../platform/paging.ts';
import { Conditions, countWhere, likePattern, orderBy, type SortColumn } from '../keyset.ts';
import { recordColumns, toRecordView, type RecordRow } from '../record.view.ts';
import { sourceTitle } from '../titles.ts';
import type { SourceQuery } from './source.dto.ts';
import type { SourceView } from './source.view.ts';

type SourceRow = RecordRow &
  Omit<SourceView, 'title' | 'createdAt' | 'updatedAt' | 'withdrawn'> & { readonly sort: string };

/** Undated sources come last; the key is never null, so that one row comparison pages through all. */
const byDate: readonly SortColumn[] = [
  { sql: `coalesce(o.date_earliest, 'infinity')`, type: 'date' },
  { sql: 'o.id', type: 'uuid' },
];

const select = (): string => `
  select ${recordColumns('o')}, o.code, ${forMembers('k.name')} as keeper, ${forMembers('o.keeper_id')} as "keeperId", o.kind, o.date,
    ${forMembers('o.received_from')} as "receivedFrom", ${forMembers('o.received_by')} as "receivedBy", o.country_of_export as "countryOfExport", o.permit_references as "permitReferences",
    o.label_as_received as "labelAsReceived", o.label_note as "labelNote", o.base_kinship as "baseKinship", o.notes, o.visibility,
    (select count(*)::integer from individual i where i.source_id = o.id and i.withdrawn_at is null and ${seen('individual', 'i')}) as founders,
    coalesce(o.date_earliest, 'infinity')::text as sort
  from source o join keeper k on k.id = o.keeper_id`;

/** One source by its id (primary key; its animals by individual_source_index), or null where there is none or it may not be seen. */
export async function findSource(manager: EntityManager, id: string): Promise<SourceView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<SourceRow[]>(`${select()} where o.id = $1 and ${seen('source', 'o')}`, [id]);
  return row ? toSourceView(row) : null;
}

/** A page of sources, oldest first. A register has up to a few thousand: they are read and sorted. */
export async function listSources(manager: EntityManager, query: SourceQuery): Promise<Page<SourceView>> {
  const conditions = new Conditions();
  conditions.add('o.withdrawn_at is null');
  conditions.add(seen('source', 'o'));
  if (query.keeperId !== undefined) requireMember();
  if (query.visibility !== undefined) conditions.add(`o.visibility = ${conditions.bind(query.visibility)}`);
  if (query.kind !== undefined) conditions.add(`o.kind = ${conditions.bind(query.kind)}`);
  if (query.keeperId !== undefined) conditions.add(`o.keeper_id = ${conditions.bind(query.keeperId)}`);
  if (query.q !== undefined) {
    const pattern = conditions.bind(likePattern(query.q));
    const fields = ['code', 'label_as_received', ...(isStranger() ? [] : ['received_from', 'received_by'])].map(
      (field) => `lower(o.${field}) like ${pattern}`,
    );
    conditions.add(`(${fields.join(' or ')})`);
  }
  const total = query.total ? await countWhere(manager, 'source o', conditions) : undefined;
  if (query.after !== undefined) conditions.addAfter(byDate, decodeCursor('date', byDate.length, query.after), false);
  const rows = await manager.query<SourceRow[]>(
    `${select()} where ${conditions.sql} order by ${orderBy(byDate, false)} limit ${query.limit + 1}`,
    conditions.parameters,
  );
  return toPage(rows, query.limit, toSourceView, (row) => encodeCursor('date', [row.sort, row.id]), total);
}

function toSourceView(row: SourceRow): SourceView {
  return {
    ...toRecordView(row),
    title: sourceTitle(row),
    code: row.code,
    keeper: row.keeper,
    keeperId: row.keeperId,
    kind: row.kind,
    date: row.date,
    receivedFrom: row.receivedFrom,
    receivedBy: row.receivedBy,
    countryOfExport: row.countryOfExport,
    permitReferences: row.permitReferences,
    labelAsReceived: row.labelAsReceived,
    labelNote: row.labelNote,
    baseKinship: row.baseKinship,
    notes: row.notes,
    visibility: row.visibility,
    founders: row.founders,
  };
}
