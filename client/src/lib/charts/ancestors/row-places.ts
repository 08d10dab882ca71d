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
  const cells = rows.flat();
  const pulls = allPulls(cells);
  const places = new Float64Array(cells.length);
  let end = 0;
  const spans = rows.map((row) => {
    const [from, distances] = [end, distancesIn(row)];
    end += row.length;
    let x = 0;
    for (let at = from; at < end; at++) {
      places[at] = x;
      x += distances[at - from] ?? 0;
    }
    for (let at = from; at < end; at++) places[at] = (places[at] ?? 0) - x / 2;
    return { from, to: end, distances, weights: pulls.weightOf.slice(from, end), wishes: new Float64Array(row.length) };
  });
  const upwards = [...spans].reverse();
  for (let round = 0; round < rounds; round++)
    for (const { from, to, distances, weights, wishes } of round % 2 === 0 ? upwards : spans) {
      for (let at = from; at < to; at++) wishes[at - from] = wishOf(pulls, places, at);
      places.set(separate(wishes, distances, weights), from);
    }
  cells.forEach((cell, at) => {
    cell.x = places[at] ?? 0;
    if (cell.item) cell.item.x = cell.x;
  });
}

/** From each cell of a row to the next, at least. */
function distancesIn(row: readonly Cell[]): number[] {
  return row.map((cell, at) => {
    const next = row[at + 1];
    return next ? rightOf(cell) - leftOf(next) + ((cell.item ?? next.item) ? measures.gap : measures.laneGap) : 0;
  });
}

function leftOf({ item, link }: Cell): number {
  return item ? sides(item)[0] : -streamWidth(link?.share ?? 0) / 2;
}

function rightOf({ item, link }: Cell): number {
  return item ? sides(item)[1] : streamWidth(link?.share ?? 0) / 2;
}

/**
 * What draws the cells: the place of another one, so much beside it, so strongly. The pulls of cell `at` stand from `first[at]` up to
 * `first[at + 1]`.
 */
interface Pulls {
  first: number[];
  /** Places of the other cells in the list of all. */
  other: number[];
  offset: number[];
  weight: number[];
  /** What those of one cell weigh in all, with the one to the middle. */
  weightOf: number[];
}

function allPulls(cells: readonly Cell[]): Pulls {
  const placeOf = new Map<Cell, number>();
  cells.forEach((cell, at) => placeOf.set(cell, at));
  const pulls: Pulls = { first: [0], other: [], offset: [], weight: [], weightOf: [] };
  for (const cell of cells) {
    const egg = cell.item ? eggOffset(cell.item) : 0;
    let ofAll = together;
    const pull = (other: Cell, offset: number): void => {
      const ends = (cell.item ? 1 : 0) + (other.item ? 1 : 0);
      const weight = ends === 2 ? strengths.short : ends === 1 ? strengths.end : strengths.past;
      pulls.other.push(placeOf.get(other) ?? 0);
      pulls.offset.push(offset);
      pulls.weight.push(weight);
      ofAll += weight;
    };
    for (const { upper, member } of cell.up)
      pull(upper, (member !== null && upper.item ? memberOffset(upper.item, member) : 0) - egg);
    for (const { lower, member } of cell.down) {
      const own = member !== null && cell.item ? memberOffset(cell.item, member) : 0;
      pull(lower, (lower.item ? eggOffset(lower.item) : 0) - own);
    }
    pulls.weightOf.push(ofAll);
    pulls.first.push(pulls.other.length);
  }
  return pulls;
}

/** Where a cell would stand by its pulls. */
function wishOf({ first, other, offset, weight, weightOf }: Pulls, places: Float64Array, cell: number): number {
  const end = first[cell + 1] ?? 0;
  let sum = 0;
  for (let at = first[cell] ?? 0; at < end; at++)
    sum += ((places[other[at] ?? 0] ?? 0) + (offset[at] ?? 0)) * (weight[at] ?? 0);
  return sum / (weightOf[cell] ?? 1);
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
