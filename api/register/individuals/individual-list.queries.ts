import type { EntityManager } from 'typeorm';
import { decodeCursor, encodeCursor, toPage, type CursorValue, type Page } from '../../platform/paging.ts';
import { Conditions, countWhere, orderBy, type SortColumn } from '../keyset.ts';
import { findPlaces, inOrder, readPlaces, type Order, type Place } from '../places.queries.ts';
import { figureColumns } from './figure-columns.ts';
import type { FigureSort, IndividualQuery, IndividualSort } from './individual.dto.ts';
import { figureBounds, individualConditions } from './individual-filters.queries.ts';
import { readIndividualItems } from './individual.queries.ts';
import type { IndividualItemView } from './individual.view.ts';

/** Most animals that are sorted, rather than looked for along the index of an order. */
const sortedMost = 5000;

/** Animals that a search walks through in the order of the list; what fewer have than fill a page is found by its index and sorted. */
const walkedMost = 4000;

type GroupSort = 'line' | 'species' | 'keeper';

const id: SortColumn = { sql: 'i.id', type: 'uuid' };
const number: SortColumn = { sql: 'i.number', type: 'bigint' };

/** Orders that an index of the animals gives: individual_number_unique, individual_code_index, individual_hatched_index; among the living
 * individual_living_number_index and its like. */
const ownOrders: Record<Exclude<IndividualSort, GroupSort | FigureSort>, readonly SortColumn[]> = {
  number: [number],
  code: [{ sql: 'lower(i.code)', type: 'text' }, id],
  hatched: [{ sql: 'i.hatched_earliest', type: 'date' }, { sql: 'i.hatched_latest', type: 'date' }, id],
};

/** Orders by the name of something that an animal belongs to: the few names in order, under each its animals by number. */
const groups: Record<GroupSort, { readonly table: string; readonly name: string; readonly column: string }> = {
  line: { table: 'line', name: 'name', column: 'i.line_id' },
  species: { table: 'species', name: 'scientific_name', column: 'i.species_id' },
  keeper: { table: 'keeper', name: 'name', column: 'i.keeper_id' },
};
const groupKey: SortColumn = { sql: 'g.key', type: 'text' };
const groupId: SortColumn = { sql: 'g.id', type: 'uuid' };
const groupColumns: readonly SortColumn[] = [groupKey, groupId, number];

/** A page of animals. Keyset paging: every page costs the same, however deep, at a million animals too. */
export async function listIndividuals(
  manager: EntityManager,
  query: IndividualQuery,
): Promise<Page<IndividualItemView>> {
  const { sort, order, limit } = query;
  const cursorName = `${sort} ${order}`;
  const columns = columnsOf(sort);
  const after = query.after === undefined ? null : decodeCursor(cursorName, columns.length, query.after);
  const filters = await individualConditions(manager, query);
  const places = isGroupSort(sort)
    ? await findInGroups(manager, query, sort, filters, after, limit + 1)
    : isFigureSort(sort)
      ? await findByFigure(manager, sort, order === 'desc', filters, after, limit + 1, {
          areFew: await isFew(manager, query, filters),
          areLiving: query.status === 'alive',
        })
      : await findInOwnOrder(manager, query, ownOrder(columns, sort, order), filters, after, limit + 1);
  const items = await readIndividualItems(
    manager,
    places.map((place) => place.id),
  );
  const total = query.total ? await countWhere(manager, 'individual i', filters) : undefined;
  return toPage(
    inOrder(places, items),
    limit,
    (row) => row.item,
    (row) => encodeCursor(cursorName, row.keys),
    total,
  );
}

/** Ids of the animals that a list would show under the same filters, in the order of their numbers, at most so many. */
export async function findIndividualIds(
  manager: EntityManager,
  query: IndividualQuery,
  most: number,
): Promise<string[]> {
  const conditions = await individualConditions(manager, query);
  const limit = conditions.bind(most);
  const rows = await manager.query<{ id: string }[]>(
    `select i.id from individual i where ${conditions.sql} order by i.number limit ${limit}`,
    conditions.parameters,
  );
  return rows.map((row) => row.id);
}

const isGroupSort = (sort: IndividualSort): sort is GroupSort => sort in groups;
const isFigureSort = (sort: IndividualSort): sort is FigureSort => sort in figureColumns;

function columnsOf(sort: IndividualSort): readonly SortColumn[] {
  if (isGroupSort(sort)) return groupColumns;
  return isFigureSort(sort) ? figureOrder(sort) : ownOrders[sort];
}

/** Whether the animals asked for lie within bounds, or belong to a line or source, and are so few that sorting them is the cheapest. */
async function isFew(manager: EntityManager, query: IndividualQuery, filters: Conditions): Promise<boolean> {
  if (hasBounds(query) && (await areFewWithinBounds(manager, query))) return true;
  if (query.lineId === undefined && query.line === undefined && query.sourceId === undefined) return false;
  return areFew(manager, 'individual i', filters);
}

async function areFew(manager: EntityManager, from: string, conditions: Conditions): Promise<boolean> {
  const [row] = await manager.query<{ few: boolean }[]>(
    `select count(*) <= ${sortedMost} as few from (select from ${from} where ${conditions.sql} limit ${sortedMost + 1}) found`,
    conditions.parameters,
  );
  return row?.few ?? false;
}

const hasBounds = (query: IndividualQuery): boolean => figureBounds(new Conditions(), query).length > 0;

/** Whether so few animals lie within the bounds of figures that they are best sorted (individual_figures_inbreeding_index and its like). */
function areFewWithinBounds(manager: EntityManager, query: IndividualQuery): Promise<boolean> {
  const conditions = new Conditions();
  for (const bound of figureBounds(conditions, query)) conditions.add(bound);
  return areFew(manager, 'individual_figures b', conditions);
}

/** The figure, then the animal, as the index of the figure has them. */
function figureOrder(sort: FigureSort, areFew = false): SortColumn[] {
  const { sql, type } = figureColumns[sort];
  const figure = { sql: `f.${sql}`, type };
  return [areFew ? offIndex(figure) : figure, { sql: 'f.individual_id', type: 'uuid' }];
}

/** Another expression of the same value, so that rows are found by their filters and sorted, not looked for along the index of the order. */
const offIndex = ({ sql, type }: SortColumn): SortColumn => ({
  sql: type === 'text' ? `(${sql} || '')` : `(${sql} + 0)`,
  type,
});

/**
 * Animals in the order of a stored figure, those without it last, by their ids. An animal whose figures are not written yet has no row, or
 * one that does not know yet whether it lives: only while a change is not settled, and only then is the register searched for them.
 */
async function findByFigure(
  manager: EntityManager,
  sort: FigureSort,
  isDescending: boolean,
  filters: Conditions,
  after: CursorValue[] | null,
  wanted: number,
  { areFew, areLiving }: { areFew: boolean; areLiving: boolean },
): Promise<Place[]> {
  const [row] = await manager.query<{ waits: boolean }[]>(
    'select exists (select from lineage_change where not settled) as waits',
  );
  const waits = row?.waits ?? true;
  const order = { from: 'individual_figures f join individual i on i.id = f.individual_id', id: 'i.id', isDescending };
  const isAmongLast = after !== null && after[0] === null;
  const withValue = { ...order, columns: figureOrder(sort, areFew), isFirstNullable: false };
  const valued = filters.copy();
  valued.add(`f.${figureColumns[sort].sql} is not null`);
  // says nothing new, but the index of the living among the figures is found by it
  if (areLiving && !areFew && !waits) valued.add('f.is_living');
  const first = isAmongLast ? [] : await findPlaces(manager, withValue, valued, after, wanted);
  if (first.length === wanted) return first;
  const without = filters.copy();
  without.add(`f.${figureColumns[sort].sql} is null`);
  const from = waits ? 'individual i left join individual_figures f on f.individual_id = i.id' : order.from;
  const last = { ...order, from, columns: [id], isFirstNullable: false };
  const rest = await findPlaces(manager, last, without, isAmongLast ? after.slice(-1) : null, wanted - first.length);
  return [...first, ...rest.map((place) => ({ id: place.id, keys: [null, ...place.keys] }))];
}

function ownOrder(columns: readonly SortColumn[], sort: IndividualSort, order: 'asc' | 'desc'): Order {
  return {
    from: 'individual i',
    id: 'i.id',
    columns,
    isFirstNullable: sort !== 'number',
    isDescending: order === 'desc',
  };
}

/**
 * Animals in an order of their own. Nobody can tell beforehand how rare a fragment or a figure is, and where the planner thinks it common it
 * walks through all animals: so some thousand are walked through first, along the index of the order, which fills a page of what is common;
 * what they do not hold is found by the indexes of the search or of the figures and sorted, unless too many lie within the bounds.
 */
async function findInOwnOrder(
  manager: EntityManager,
  query: IndividualQuery,
  order: Order,
  filters: Conditions,
  after: CursorValue[] | null,
  wanted: number,
): Promise<Place[]> {
  const isAmongLast = order.isFirstNullable && after !== null && after[0] === null;
  const isSearched = query.q !== undefined;
  if (isAmongLast || !(isSearched || hasBounds(query))) return findPlaces(manager, order, filters, after, wanted);
  const near = await individualConditions(manager, query, 'one by one');
  const first = await findPlaces(
    manager,
    { ...order, from: `${walked(order, query, near, after)} i`, isFirstNullable: false },
    near,
    after,
    wanted,
  );
  if (first.length === wanted) return first;
  const isSorted = isSearched || (await areFewWithinBounds(manager, query));
  const columns = isSorted ? order.columns.map((column, at) => (at === 0 ? offIndex(column) : column)) : order.columns;
  return findPlaces(manager, { ...order, columns }, filters, after, wanted);
}

/** SQL for the animals, or the living, that come next in an order, whether they meet the other filters or not. */
function walked(
  { from, columns, isFirstNullable, isDescending }: Order,
  { status }: IndividualQuery,
  filters: Conditions,
  after: CursorValue[] | null,
): string {
  const next = new Conditions(filters.parameters);
  if (status === 'alive') next.add("i.status = 'alive' and i.withdrawn_at is null");
  if (isFirstNullable && columns[0]) next.add(`${columns[0].sql} is not null`);
  if (after) next.addAfter(columns, after, isDescending);
  return `(select i.* from ${from} where ${next.sql} order by ${orderBy(columns, isDescending)} limit ${walkedMost})`;
}

/**
 * The animals of the groups in order, then those that belong to none, by number. A search that few animals meet is answered
 * by them alone, sorted; anything else by a walk through the groups.
 */
async function findInGroups(
  manager: EntityManager,
  query: IndividualQuery,
  sort: GroupSort,
  filters: Conditions,
  after: CursorValue[] | null,
  wanted: number,
): Promise<Place[]> {
  const isDescending = query.order === 'desc';
  const isAmongLast = after !== null && after[0] === null;
  const isNarrow = query.q !== undefined || query.code !== undefined || query.number !== undefined;
  const find = isNarrow ? sortGroups : walkGroups;
  const first = isAmongLast ? [] : await find(manager, sort, isDescending, filters.copy(), after, wanted);
  if (first.length === wanted || sort !== 'line') return first;
  const without = filters.copy();
  without.add('i.line_id is null');
  const order = { from: 'individual i', id: 'i.id', columns: [number], isFirstNullable: false, isDescending };
  const rest = await findPlaces(manager, order, without, isAmongLast ? after.slice(-1) : null, wanted - first.length);
  return [...first, ...rest.map((place) => ({ id: place.id, keys: [null, null, ...place.keys] }))];
}

/** All animals that meet a search, sorted by their group's name (individual_code_trigram and the indexes of the filters). */
async function sortGroups(
  manager: EntityManager,
  sort: GroupSort,
  isDescending: boolean,
  filters: Conditions,
  after: CursorValue[] | null,
  wanted: number,
): Promise<Place[]> {
  const { table, name, column } = groups[sort];
  const columns = [{ ...groupKey, sql: `lower(g.${name})` }, groupId, number];
  const from = `individual i join ${table} g on g.id = ${column}`;
  return findPlaces(
    manager,
    { from, id: 'i.id', columns, isFirstNullable: false, isDescending },
    filters,
    after,
    wanted,
  );
}

/**
 * Each group gives at most a page of its animals, in the order of an index on (group, number), and the walk ends with the page
 * (individual_line_index, individual_species_index, individual_keeper_index).
 */
async function walkGroups(
  manager: EntityManager,
  sort: GroupSort,
  isDescending: boolean,
  conditions: Conditions,
  after: CursorValue[] | null,
  wanted: number,
): Promise<Place[]> {
  const { table, name, column } = groups[sort];
  const direction = isDescending ? ' desc' : '';
  const groupConditions = new Conditions(conditions.parameters);
  conditions.add(`${column} = g.id`);
  if (after) {
    const [key, group, serial] = after.map((value) => groupConditions.bind(value));
    groupConditions.add(`(lower(t.${name}), t.id) ${isDescending ? '<=' : '>='} (${key}::text, ${group}::uuid)`);
    const beginning = isDescending ? '9223372036854775807' : '0';
    conditions.add(
      `i.number ${isDescending ? '<' : '>'} case when g.id = ${group}::uuid then ${serial}::bigint else ${beginning} end`,
    );
  }
  // "offset 0" keeps the groups in their order and the animals of each behind them
  const from = `
    from (select t.id, lower(t.${name}) as key from ${table} t where ${groupConditions.sql}
        order by lower(t.${name})${direction}, t.id${direction} offset 0) g
      cross join lateral (select i.id, i.number from individual i where ${conditions.sql} order by i.number${direction} limit ${wanted}) i
    order by ${orderBy(groupColumns, isDescending)} limit ${wanted}`;
  return readPlaces(manager, 'i.id', groupColumns, from, conditions);
}
