import type { EntityManager } from 'typeorm';
import { decodeCursor, encodeCursor, toPage, type CursorValue, type Page } from '../../platform/paging.ts';
import { Conditions, countWhere, orderBy, type SortColumn } from '../keyset.ts';
import type { IndividualQuery, IndividualSort } from './individual.dto.ts';
import { individualConditions } from './individual-filters.queries.ts';
import { readIndividualItems } from './individual.queries.ts';
import type { IndividualItemView } from './individual.view.ts';

interface Place {
  readonly id: string;
  /** The row's sort values as texts, as the cursor carries them. */
  readonly keys: CursorValue[];
}

const id: SortColumn = { sql: 'i.id', type: 'uuid' };
const number: SortColumn = { sql: 'i.number', type: 'bigint' };

/** Orders that an index of the animals themselves gives: individual_number_unique, individual_code_index, individual_hatched_index. */
const ownOrders = {
  number: [number],
  code: [{ sql: 'lower(i.code)', type: 'text' }, id],
  hatched: [{ sql: 'i.hatched_earliest', type: 'date' }, { sql: 'i.hatched_latest', type: 'date' }, id],
} satisfies Partial<Record<IndividualSort, readonly SortColumn[]>>;

/** Orders by the name of something an animal belongs to: the few names in order, and under each its animals by number. */
const groupOrders = {
  line: { table: 'line', name: 'name', column: 'i.line_id' },
  species: { table: 'species', name: 'scientific_name', column: 'i.species_id' },
  keeper: { table: 'keeper', name: 'name', column: 'i.keeper_id' },
} satisfies Partial<Record<IndividualSort, { table: string; name: string; column: string }>>;

/** A page of animals. Keyset paging: every page costs the same, however deep, at a million animals too. */
export async function listIndividuals(manager: EntityManager, query: IndividualQuery): Promise<Page<IndividualItemView>> {
  const conditions = await individualConditions(manager, query);
  const total = query.total ? await countWhere(manager, 'individual i', conditions) : undefined;
  const places = await findPlaces(manager, query, conditions);
  const items = new Map((await readIndividualItems(manager, places.map((place) => place.id))).map((item) => [item.id, item]));
  const rows = places.flatMap((place) => {
    const item = items.get(place.id);
    return item ? [{ item, keys: place.keys }] : [];
  });
  return toPage(rows, query.limit, (row) => row.item, (row) => encodeCursor(cursorName(query), row.keys), total);
}

const widthOf = (sort: IndividualSort): number => (sort === 'line' || sort === 'species' || sort === 'keeper' ? 3 : ownOrders[sort].length);

const cursorName = (query: IndividualQuery): string => `${query.sort} ${query.order}`;

/** The animals of a page: those that have the sort value, then those without it. */
async function findPlaces(manager: EntityManager, query: IndividualQuery, filters: Conditions): Promise<Place[]> {
  const { sort } = query;
  const after = query.after === undefined ? null : decodeCursor(cursorName(query), widthOf(sort), query.after);
  const wanted = query.limit + 1;
  const isAmongLast = after !== null && after[0] === null;
  const first = isAmongLast ? [] : await findWithValue(manager, query, filters.copy(), after, wanted);
  if (first.length === wanted || sort === 'number' || sort === 'species' || sort === 'keeper') return first;
  return [...first, ...(await findWithoutValue(manager, query, filters.copy(), isAmongLast ? after : null, wanted - first.length))];
}

async function findWithValue(
  manager: EntityManager,
  query: IndividualQuery,
  conditions: Conditions,
  after: CursorValue[] | null,
  wanted: number,
): Promise<Place[]> {
  const descending = query.order === 'desc';
  if (query.sort === 'line' || query.sort === 'species' || query.sort === 'keeper')
    return findInGroups(manager, groupOrders[query.sort], conditions, after, wanted, descending);
  const columns: readonly SortColumn[] = ownOrders[query.sort];
  const [leading] = columns;
  if (leading && query.sort !== 'number') conditions.add(`${leading.sql} is not null`);
  if (after) conditions.addAfter(columns, after, descending);
  return readPlaces(manager, columns, `from individual i where ${conditions.sql} order by ${orderBy(columns, descending)} limit ${wanted}`, conditions);
}

/** Each group gives at most a page of its animals, in the order of an index on (group, number), and the walk ends with the page. */
async function findInGroups(
  manager: EntityManager,
  group: { table: string; name: string; column: string },
  conditions: Conditions,
  after: CursorValue[] | null,
  wanted: number,
  descending: boolean,
): Promise<Place[]> {
  const direction = descending ? ' desc' : '';
  const groupConditions = new Conditions(conditions.parameters);
  conditions.add(`${group.column} = g.id`);
  if (after) {
    const [key, groupId, serial] = after.map((value) => groupConditions.bind(value));
    groupConditions.add(`(lower(t.${group.name}), t.id) ${descending ? '<=' : '>='} (${key}::text, ${groupId}::uuid)`);
    const everyNumber = descending ? '9223372036854775807' : '0';
    conditions.add(`i.number ${descending ? '<' : '>'} case when g.id = ${groupId}::uuid then ${serial}::bigint else ${everyNumber} end`);
  }
  const columns: readonly SortColumn[] = [{ sql: 'g.key', type: 'text' }, { sql: 'g.id', type: 'uuid' }, number];
  const from = `
    from (select t.id, lower(t.${group.name}) as key from ${group.table} t where ${groupConditions.sql}
        order by lower(t.${group.name})${direction}, t.id${direction} offset 0) g
      cross join lateral (select i.id, i.number from individual i where ${conditions.sql} order by i.number${direction} limit ${wanted}) i
    order by ${orderBy(columns, descending)} limit ${wanted}`;
  return readPlaces(manager, columns, from, conditions);
}

/** Animals without a code or a hatching date by id, those without a line by number. */
async function findWithoutValue(
  manager: EntityManager,
  query: IndividualQuery,
  conditions: Conditions,
  after: CursorValue[] | null,
  wanted: number,
): Promise<Place[]> {
  const descending = query.order === 'desc';
  const missing = { code: 'lower(i.code)', hatched: 'i.hatched_earliest', line: 'i.line_id' }[query.sort as 'code' | 'hatched' | 'line'];
  const last = query.sort === 'line' ? number : id;
  conditions.add(`${missing} is null`);
  if (after) conditions.addAfter([last], [after.at(-1)], descending);
  const places = await readPlaces(manager, [last], `from individual i where ${conditions.sql} order by ${orderBy([last], descending)} limit ${wanted}`, conditions);
  const nothing: null[] = new Array<null>(widthOf(query.sort) - 1).fill(null);
  return places.map((place) => ({ id: place.id, keys: [...nothing, ...place.keys] }));
}

async function readPlaces(manager: EntityManager, columns: readonly SortColumn[], from: string, conditions: Conditions): Promise<Place[]> {
  const keys = columns.map((column) => `${column.sql}::text`).join(', ');
  return manager.query<Place[]>(`select i.id, array[${keys}] as keys ${from}`, conditions.parameters);
}
