import type { Item } from './chart-items.ts';
import type { EventTimes } from './event-times.ts';
import { measures } from './measures.ts';
import type { PedigreeGraph } from './pedigree-graph.ts';

/** What happened between two times, drawn side by side. */
export interface Row {
  items: Item[];
  /** First and last time of it, in decimal years. */
  from: number;
  to: number;
}

interface Event {
  item: Item;
  year: number;
  width: number;
  /** Rank among founders that came at the same time, taken in turns, so that each of their rows reaches from end to end. */
  turn: number;
}

/**
 * Parts a large pedigree into rows by time: each holds what happened after the row above it and before the row below it, and no row holds
 * a parent and its young. A row is filled up to the width at which the whole is somewhat wider than high.
 *
 * @param visits order from left to right that decides between what happened at the same time
 */
export function rowsByTime(
  graph: PedigreeGraph,
  times: EventTimes,
  items: readonly Item[],
  itemOf: ReadonlyMap<string, Item>,
  visits: ReadonlyMap<Item, number>,
): Row[] {
  const width = rowWidth(items);
  const rows: Row[] = [];
  const rowOf = new Map<Item, Row>();
  let used = Infinity;
  for (const event of inTurns(items, times, visits, width)) {
    const last = rows[rows.length - 1];
    const parents = graph.parentsOf.get(event.item.clutch ?? '') ?? [];
    const standsUnder = parents.some(({ parent }) => rowOf.get(itemOf.get(parent) ?? event.item) === last);
    const isFull = used + event.width > width;
    const row = last && !isFull && !standsUnder ? last : { items: [], from: event.year, to: event.year };
    if (row !== last) {
      rows.push(row);
      used = 0;
    }
    row.items.push(event.item);
    row.to = event.year;
    rowOf.set(event.item, row);
    used += event.width;
  }
  return rows;
}

function rowWidth(items: readonly Item[]): number {
  const all = items.reduce((sum, item) => sum + widthOf(item), 0);
  const widest = Math.max(...items.map(widthOf));
  return Math.max(measures.leastRow, widest, Math.sqrt(all * measures.rowPitch * measures.aspect));
}

/** Room that an item takes in a row, with the gap beside it. */
function widthOf(item: Item): number {
  const [left, right] = sides(item);
  return right - left + measures.gap;
}

/** Left and right end of an item, relative to its x. */
export function sides(item: Item): [number, number] {
  return [
    Math.min(...item.extents.map((extent) => extent.left)),
    Math.max(...item.extents.map((extent) => extent.right)),
  ];
}

function inTurns(
  items: readonly Item[],
  times: EventTimes,
  visits: ReadonlyMap<Item, number>,
  rowWidthOfAll: number,
): Event[] {
  const place = (item: Item): number => visits.get(item) ?? 0;
  const events = items.map((item): Event => {
    const time = item.clutch === null ? times.founders.get(item.members[0] ?? '') : times.clutches.get(item.clutch);
    return { item, year: time?.year ?? 0, width: widthOf(item), turn: 0 };
  });
  const together = new Map<number, Event[]>();
  for (const event of events.sort((a, b) => a.year - b.year || place(a.item) - place(b.item)))
    together.set(event.year, [...(together.get(event.year) ?? []), event]);
  for (const group of together.values()) {
    const turns = Math.ceil(group.reduce((sum, event) => sum + event.width, 0) / rowWidthOfAll);
    group.forEach((event, at) => (event.turn = at % turns));
  }
  return events.sort((a, b) => a.year - b.year || a.turn - b.turn || place(a.item) - place(b.item));
}
