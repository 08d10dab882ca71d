import { firstVisits, orderInBands, type Cell } from './band-order.ts';
import { animalItem, linkItems, type Item, type Link } from './chart-items.ts';
import type { EventTimes } from './event-times.ts';
import { measures } from './measures.ts';
import type { PedigreeGraph } from './pedigree-graph.ts';
import { leadThroughRows, placeInRows, rowHeights, type RowHeights } from './row-places.ts';
import { rowsByTime, sides, type Row } from './rows.ts';
import { ticks, type Tick } from './time-scale.ts';

/** Places of everything in a chart of rows. */
export interface RowLayout {
  items: Item[];
  itemOf: Map<string, Item>;
  links: Link[];
  ticks: Tick[];
  width: number;
  height: number;
}

/** Lays a large pedigree out in rows by time; founders stand each for itself, so that each is near its young. */
export function layoutInRows(
  graph: PedigreeGraph,
  shares: Map<string, number>,
  times: EventTimes,
  leastWidth: number,
): RowLayout {
  const items = buildItems(graph);
  const itemOf = new Map(items.flatMap((item) => item.members.map((id) => [id, item] as const)));
  const visits = firstVisits(graph, itemOf);
  const rows = rowsByTime(graph, times, items, itemOf, visits);
  const rowOf = new Map(rows.flatMap((row, at) => row.items.map((item) => [item, at] as const)));
  const { links } = linkItems(graph, shares, itemOf);
  const cells = orderInBands(items, links, visits, (item) => rowOf.get(item) ?? 0);
  placeInRows(cells);
  const heights = rowHeights(cells);
  for (const item of items) item.y = heights[rowOf.get(item) ?? 0]?.line ?? 0;
  const width = moveRightOfRuler(cells, leastWidth);
  leadThroughRows(links, cells, heights);
  const height = (heights[heights.length - 1]?.bottom ?? 0) + measures.bottom;
  return { items, itemOf, links, ticks: times.dated ? rulerOf(rows, heights) : [], width, height };
}

function buildItems(graph: PedigreeGraph): Item[] {
  const items: Item[] = [];
  for (const id of graph.individuals.keys()) {
    if (graph.birthClutch.has(id)) continue;
    const source = graph.sourceOf.get(id);
    items.push(animalItem(graph, `founder ${id}`, [id], source === undefined ? {} : { source }, 0, 'narrow'));
  }
  for (const [clutch, young] of graph.youngOf)
    items.push(animalItem(graph, `clutch ${clutch}`, [...young], { clutch }, 0));
  return items;
}

function moveRightOfRuler(rows: readonly Cell[][], leastWidth: number): number {
  const all = rows.flat();
  const left = Math.min(...all.map((cell) => cell.x + (cell.item ? sides(cell.item)[0] : 0)));
  const right = Math.max(...all.map((cell) => cell.x + (cell.item ? sides(cell.item)[1] : 0)));
  const spare = Math.max(0, leastWidth - measures.ruler - measures.right - (right - left));
  const shift = measures.ruler + 8 - left + spare / 2;
  for (const cell of all) {
    cell.x += shift;
    if (cell.item) cell.item.x = cell.x;
  }
  return Math.max(leastWidth, right + shift + measures.right);
}

/** Years beside the rows: a row reaches from its first time at its upper edge to its last one at its lower edge. */
function rulerOf(rows: readonly Row[], heights: readonly RowHeights[]): Tick[] {
  const points = rows.flatMap(({ from, to }, at) => {
    const { top = 0, bottom = 0 } = heights[at] ?? {};
    return [
      { year: from, y: top + 8 },
      { year: to, y: bottom - 8 },
    ];
  });
  const first = points[0];
  const last = points[points.length - 1];
  if (!first || !last) return [];
  const y = (year: number): number => {
    const after = points.findIndex((point) => point.year >= year);
    const [low, high] = [points[after - 1], points[after]];
    if (!high) return last.y;
    if (!low || high.year === low.year) return high.y;
    return low.y + ((high.y - low.y) * (year - low.year)) / (high.year - low.year);
  };
  return ticks(first.year, Math.max(last.year, first.year + 0.5), y);
}
