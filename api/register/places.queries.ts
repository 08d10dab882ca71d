import type { EntityManager } from 'typeorm';
import type { CursorValue } from '../platform/paging.ts';
import { orderBy, type Conditions, type SortColumn } from './keyset.ts';

/** Where a row stands in the order of a list. */
export interface Place {
  readonly id: string;
  /** The row's sort values as texts, as the cursor carries them; null for the value that it lacks. */
  readonly keys: CursorValue[];
}

/** The order of a list over one table. */
export interface Order {
  /** The table and its alias, such as `clutch c`. */
  readonly from: string;
  /** Column of the row's id. */
  readonly id: string;
  /** Sort columns, the last of them unique and never null. */
  readonly columns: readonly SortColumn[];
  /** Whether the first column may be null; such rows come last, in either direction. */
  readonly isFirstNullable: boolean;
  readonly isDescending: boolean;
}

/**
 * The places of a page: first the rows that have the sort value, then those without it by the last column. Two plain range
 * scans, so that an index over the columns (and one that finds its nulls) answers each, however deep the page.
 */
export async function findPlaces(
  manager: EntityManager,
  order: Order,
  filters: Conditions,
  after: readonly CursorValue[] | null,
  wanted: number,
): Promise<Place[]> {
  const isAmongLast = after !== null && after[0] === null && order.isFirstNullable;
  const first = isAmongLast ? [] : await findWithValue(manager, order, filters.copy(), after, wanted);
  if (first.length === wanted || !order.isFirstNullable) return first;
  return [
    ...first,
    ...(await findWithoutValue(manager, order, filters.copy(), isAmongLast ? after : null, wanted - first.length)),
  ];
}

async function findWithValue(
  manager: EntityManager,
  order: Order,
  conditions: Conditions,
  after: readonly CursorValue[] | null,
  wanted: number,
): Promise<Place[]> {
  const { columns, isDescending } = order;
  if (order.isFirstNullable && columns[0]) conditions.add(`${columns[0].sql} is not null`);
  if (after) conditions.addAfter(columns, after, isDescending);
  return readPlaces(
    manager,
    order.id,
    columns,
    `from ${order.from} where ${conditions.sql} order by ${orderBy(columns, isDescending)} limit ${wanted}`,
    conditions,
  );
}

async function findWithoutValue(
  manager: EntityManager,
  order: Order,
  conditions: Conditions,
  after: readonly CursorValue[] | null,
  wanted: number,
): Promise<Place[]> {
  const [first] = order.columns;
  const last = order.columns.slice(-1);
  if (first) conditions.add(`${first.sql} is null`);
  if (after) conditions.addAfter(last, after.slice(-1), order.isDescending);
  const from = `from ${order.from} where ${conditions.sql} order by ${orderBy(last, order.isDescending)} limit ${wanted}`;
  const places = await readPlaces(manager, order.id, last, from, conditions);
  const nothing: null[] = new Array<null>(order.columns.length - 1).fill(null);
  return places.map((place) => ({ id: place.id, keys: [...nothing, ...place.keys] }));
}

/** Runs a page's statement, everything from `from` on being given, and reads ids and sort values. */
export async function readPlaces(
  manager: EntityManager,
  id: string,
  columns: readonly SortColumn[],
  from: string,
  conditions: Conditions,
): Promise<Place[]> {
  const keys = columns.map((column) => `${column.sql}::text`).join(', ');
  return manager.query<Place[]>(`select ${id} as id, array[${keys}] as keys ${from}`, conditions.parameters);
}

/** Puts what was read by id into the order of the places. */
export function inOrder<Item extends { readonly id: string }>(
  places: readonly Place[],
  items: readonly Item[],
): { item: Item; keys: CursorValue[] }[] {
  const byId = new Map(items.map((item) => [item.id, item]));
  return places.flatMap(({ id, keys }) => {
    const item = byId.get(id);
    return item ? [{ item, keys }] : [];
  });
}
