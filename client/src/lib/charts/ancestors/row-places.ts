import type { Cell } from './band-order.ts';
import { eggOffset, memberOffset, type Item, type Link, type RowWay } from './chart-items.ts';
import { measures, streamWidth } from './measures.ts';
import { sides } from './rows.ts';
import { separate } from './separate.ts';

const rounds = 36;
/** How strongly a piece of a stream is drawn straight: between two animals, at an animal's end, past rows only. */
const strengths = { short: 1, end: 2, past: 6 };
/** How strongly everything is drawn to the middle, so that rows keep together. */
const together = 0.25;

/**
 * Places of all cells inside rows whose order is settled: as near to their parents and young as the neighbours in the row allow, streams
 * past several rows as straight as possible. Writes `x` of the cells and of their items.
 */
export function placeInRows(rows: readonly Cell[][]): void {
  const distances = rows.map((row) =>
    row.map((cell, at) => {
      const next = row[at + 1];
      return next ? rightOf(cell) - leftOf(next) + ((cell.item ?? next.item) ? measures.gap : measures.laneGap) : 0;
    }),
  );
  rows.forEach((row, at) => {
    let x = 0;
    row.forEach((cell, place) => {
      cell.x = x;
      x += distances[at]?.[place] ?? 0;
    });
    for (const cell of row) cell.x -= x / 2;
  });
  const pulls = rows.map((row) => row.map(pullsOf));
  const weights = pulls.map((row) => row.map((all) => all.reduce((sum, { weight }) => sum + weight, together)));
  for (let round = 0; round < rounds; round++) {
    for (let step = 0; step < rows.length; step++) {
      const at = round % 2 === 0 ? rows.length - 1 - step : step;
      const weight = weights[at] ?? [];
      const wished = pulls[at]?.map((all, place) => wishOf(all, weight[place] ?? 1)) ?? [];
      const placed = separate(wished, distances[at] ?? [], weight);
      rows[at]?.forEach((cell, place) => (cell.x = placed[place] ?? 0));
    }
  }
  for (const cell of rows.flat()) if (cell.item) cell.item.x = cell.x;
}

function leftOf({ item, link }: Cell): number {
  return item ? sides(item)[0] : -streamWidth(link?.share ?? 0) / 2;
}

function rightOf({ item, link }: Cell): number {
  return item ? sides(item)[1] : streamWidth(link?.share ?? 0) / 2;
}

/** What draws a cell: the place of another one, so much beside it, so strongly. */
interface Pull {
  other: Cell;
  offset: number;
  weight: number;
}

function pullsOf(cell: Cell): Pull[] {
  const egg = cell.item ? eggOffset(cell.item) : 0;
  const pull = (other: Cell, offset: number): Pull => {
    const weight = cell.item && other.item ? strengths.short : cell.item || other.item ? strengths.end : strengths.past;
    return { other, offset, weight };
  };
  const up = cell.up.map(({ upper, member }) =>
    pull(upper, (member !== null && upper.item ? memberOffset(upper.item, member) : 0) - egg),
  );
  const down = cell.down.map(({ lower, member }) =>
    pull(
      lower,
      (lower.item ? eggOffset(lower.item) : 0) - (member !== null && cell.item ? memberOffset(cell.item, member) : 0),
    ),
  );
  return [...up, ...down];
}

/** Where a cell would stand by its pulls, which weigh so much with the one to the middle. */
function wishOf(all: readonly Pull[], weightOfAll: number): number {
  let sum = 0;
  for (const { other, offset, weight } of all) sum += (other.x + offset) * weight;
  return sum / weightOfAll;
}

/** Upper and lower edge of each row, and the line on which its symbols stand. */
export interface RowHeights {
  top: number;
  line: number;
  bottom: number;
}

/** Heights of rows: each as high as what stands in it, with more room below it the further the streams there go aside. */
export function rowHeights(rows: readonly Cell[][]): RowHeights[] {
  let y: number = measures.top;
  return rows.map((row) => {
    const extents = row.flatMap((cell) => cell.item?.extents ?? []);
    const above = Math.max(14, ...extents.map((extent) => -extent.top));
    const below = Math.max(measures.below, ...extents.map((extent) => extent.bottom));
    const heights = { top: y, line: y + above, bottom: y + above + below };
    const aside = Math.max(0, ...row.flatMap((cell) => cell.down.map(({ lower }) => Math.abs(lower.x - cell.x))));
    y = heights.bottom + Math.min(measures.mostBend, measures.leastBend + aside * 0.08);
    return heights;
  });
}

/** Writes into the links how their streams pass the rows between their ends; called once the cells have their places. */
export function leadThroughRows(links: readonly Link[], rows: readonly Cell[][], heights: readonly RowHeights[]): void {
  const edge = (row: number): RowHeights => heights[row] ?? { top: 0, line: 0, bottom: 0 };
  const rowOf = new Map<Item, number>();
  const past = new Map<Link, RowWay['past']>();
  for (const { item, link, band, x } of rows.flat()) {
    if (item) rowOf.set(item, band);
    if (link) past.set(link, [...(past.get(link) ?? []), { x, top: edge(band).top, bottom: edge(band).bottom }]);
  }
  for (const link of links)
    link.way = {
      leaves: edge(rowOf.get(link.upper) ?? 0).bottom,
      enters: edge(rowOf.get(link.lower) ?? 0).top,
      past: past.get(link) ?? [],
    };
}
