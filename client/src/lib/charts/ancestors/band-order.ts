import { memberOffset, type Item, type Link } from './chart-items.ts';
import { measures } from './measures.ts';
import { parentLinks, type PedigreeGraph } from './pedigree-graph.ts';
import { separate } from './separate.ts';

/** One thing in one band: an item, or a place where a stream passes through the band. */
export interface Cell {
  item: Item | null;
  link: Link | null;
  band: number;
  position: number;
  /** Where its neighbours of the band swept before would have it. */
  wish: number;
  x: number;
  up: Segment[];
  down: Segment[];
}

/** A piece of a stream from one band to the next. */
interface Segment {
  upper: Cell;
  lower: Cell;
  /** Member of the upper item that the stream leaves, for animals side by side. */
  member: string | null;
}

/**
 * First guess of every item's x. Items lie in bands by height; after their order inside the bands places are drawn towards their
 * neighbours. The result is written into `x` of the items and lanes.
 */
export function guessInBands(graph: PedigreeGraph, items: Item[], links: Link[], itemOf: Map<string, Item>): void {
  const top = Math.min(...items.map((item) => item.y));
  const bandOf = (item: Item): number => Math.floor((item.y - top) / measures.band);
  guessPlaces(orderInBands(items, links, firstVisits(graph, itemOf), bandOf));
}

/**
 * The order from left to right of items in bands, with a cell in each band that a stream only passes through. Starting from the order
 * `visits`, it is improved by going up and down with barycentres, keeping the order with the fewest crossings.
 *
 * @param bandOf the band of an item, from 0 at the top; a parent's is less than its young's
 */
export function orderInBands(
  items: Item[],
  links: Link[],
  visits: ReadonlyMap<Item, number>,
  bandOf: (item: Item) => number,
): Cell[][] {
  const bands = buildCells(items, links, visits, bandOf);
  let best = snapshot(bands);
  let fewest = crossings(bands);
  const rounds = items.length > 150 ? 8 : 16;
  for (let round = 0; round < rounds && fewest > 0; round++) {
    sweep(bands, round % 2 === 0 ? 'up' : 'down');
    const now = crossings(bands);
    if (now < fewest) {
      fewest = now;
      best = snapshot(bands);
    }
  }
  restore(best);
  return bands;
}

/** Items in the order in which a walk up from the root meets them: sires left, dams right. */
export function firstVisits(graph: PedigreeGraph, itemOf: Map<string, Item>): Map<Item, number> {
  const visits = new Map<Item, number>();
  const entered = new Set<string>();
  const walk = (id: string): void => {
    if (entered.has(id)) return;
    entered.add(id);
    const links = parentLinks(graph, id);
    const half = Math.ceil(links.length / 2);
    for (const link of links.slice(0, half)) walk(link.parent);
    const item = itemOf.get(id);
    if (item && !visits.has(item)) visits.set(item, visits.size);
    for (const link of links.slice(half)) walk(link.parent);
  };
  walk(graph.root);
  for (const id of graph.individuals.keys()) walk(id);
  return visits;
}

function buildCells(
  items: Item[],
  links: Link[],
  visits: ReadonlyMap<Item, number>,
  bandOf: (item: Item) => number,
): Cell[][] {
  const bands: (Cell[] | undefined)[] = [];
  const add = (cell: Cell) => (bands[cell.band] ??= []).push(cell);
  const cells = new Map<Item, Cell>();
  const blank = (band: number, start: number) => ({ band, position: start, wish: start, x: 0, up: [], down: [] });
  for (const item of items) {
    const cell: Cell = { item, link: null, ...blank(bandOf(item), visits.get(item) ?? 0) };
    cells.set(item, cell);
    add(cell);
  }
  for (const link of links) {
    const upper = cells.get(link.upper);
    const lower = cells.get(link.lower);
    if (!upper || !lower) continue;
    let above = upper;
    for (let band = upper.band + 1; band <= lower.band; band++) {
      const ratio = (band - upper.band) / (lower.band - upper.band);
      const start = upper.position + (lower.position - upper.position) * ratio * 0.5;
      const cell: Cell = band === lower.band ? lower : { item: null, link, ...blank(band, start) };
      if (cell !== lower) add(cell);
      const segment = { upper: above, lower: cell, member: above === upper ? link.link.parent : null };
      above.down.push(segment);
      cell.up.push(segment);
      above = cell;
    }
  }
  const filled = Array.from(bands, (band) => band ?? []);
  for (const band of filled) number(band.sort((a, b) => a.position - b.position));
  return filled;
}

function number(band: Cell[]): void {
  band.forEach((cell, index) => (cell.position = index));
}

/** Place of a stream's upper end, in fractions of a position where animals stand side by side. */
function port(segment: Segment): number {
  const members = segment.upper.item?.members ?? [];
  if (segment.member === null || members.length < 2) return segment.upper.position;
  return segment.upper.position + (members.indexOf(segment.member) + 0.5) / members.length - 0.5;
}

function sweep(bands: Cell[][], direction: 'up' | 'down'): void {
  const order = direction === 'down' ? bands : [...bands].reverse();
  for (const band of order) {
    for (const cell of band) cell.wish = barycentre(cell, direction);
    band.sort((a, b) => a.wish - b.wish || a.position - b.position);
    number(band);
    if (direction === 'up') for (const cell of band) orderMembers(cell);
  }
}

function barycentre(cell: Cell, direction: 'up' | 'down'): number {
  const near = direction === 'down' ? cell.up : cell.down;
  if (near.length === 0) return cell.position;
  let sum = 0;
  for (const segment of near) sum += direction === 'down' ? port(segment) : segment.lower.position;
  return sum / near.length;
}

function orderMembers(cell: Cell): void {
  const item = cell.item;
  if (!item || item.members.length < 2) return;
  const wished = new Map<string, number>();
  for (const member of item.members) {
    const own = cell.down.filter((segment) => segment.member === member);
    const sum = own.reduce((total, segment) => total + segment.lower.position, 0);
    wished.set(member, own.length > 0 ? sum / own.length : Infinity);
  }
  item.members.sort((a, b) => (wished.get(a) ?? 0) - (wished.get(b) ?? 0) || (a < b ? -1 : 1));
}

/** How many pairs of streams cross between two bands: pairs of which the left one above is the right one below. */
function crossings(bands: Cell[][]): number {
  let sum = 0;
  bands.forEach((band, at) => {
    const below = new Tally(bands[at + 1]?.length ?? 0);
    for (const cell of band)
      for (const segment of fromLeft(cell.down)) {
        sum += below.count - below.upTo(segment.lower.position);
        below.add(segment.lower.position);
      }
  });
  return sum;
}

/** Streams that leave one cell from left to right; those of another cell are all left or right of them. */
function fromLeft(streams: readonly Segment[]): readonly Segment[] {
  if (streams.length < 2) return streams;
  return [...streams].sort((a, b) => port(a) - port(b) || a.lower.position - b.lower.position);
}

/** Whole numbers below `size`, of which it can be told how many are no larger than one (a tree of sums, Fenwick 1994). */
class Tally {
  count = 0;
  readonly #sums: Int32Array;

  constructor(size: number) {
    this.#sums = new Int32Array(size + 1);
  }

  add(place: number): void {
    const sums = this.#sums;
    this.count++;
    for (let at = place + 1; at < sums.length; at += at & -at) sums[at] = (sums[at] ?? 0) + 1;
  }

  upTo(place: number): number {
    const sums = this.#sums;
    let found = 0;
    for (let at = place + 1; at > 0; at -= at & -at) found += sums[at] ?? 0;
    return found;
  }
}

interface Snapshot {
  bands: Cell[][];
  orders: Cell[][];
  members: Map<Item, string[]>;
}

function snapshot(bands: Cell[][]): Snapshot {
  const members = new Map<Item, string[]>();
  for (const cell of bands.flat()) if (cell.item) members.set(cell.item, [...cell.item.members]);
  return { bands, orders: bands.map((band) => [...band]), members };
}

function restore(kept: Snapshot): void {
  for (const [item, members] of kept.members) item.members = members;
  kept.bands.forEach((band, index) => {
    band.splice(0, band.length, ...(kept.orders[index] ?? []));
    number(band);
  });
}

function guessPlaces(bands: Cell[][]): void {
  const left = (cell: Cell) => Math.min(-4, ...(cell.item?.extents.map((extent) => extent.left) ?? []));
  const right = (cell: Cell) => Math.max(4, ...(cell.item?.extents.map((extent) => extent.right) ?? []));
  for (const band of bands) {
    let x = 0;
    for (const cell of band) {
      cell.x = x - left(cell);
      x = cell.x + right(cell) + measures.laneGap;
    }
    for (const cell of band) cell.x -= x / 2;
  }
  for (let round = 0; round < 40; round++) {
    for (const band of round % 2 === 0 ? [...bands].reverse() : bands) {
      const wished = band.map((cell) => drawn(cell));
      const distances = band.map((cell, index) => {
        const next = band[index + 1];
        return next ? right(cell) - left(next) + measures.laneGap : 0;
      });
      separate(wished, distances).forEach((x, index) => {
        const cell = band[index];
        if (cell) cell.x = x;
      });
    }
  }
  const lanes = new Map<Item, number[]>();
  for (const cell of bands.flat()) {
    if (cell.item) cell.item.x = cell.x;
    const lane = cell.link?.lane;
    if (lane) lanes.set(lane, [...(lanes.get(lane) ?? []), cell.x]);
  }
  for (const [lane, xs] of lanes) lane.x = xs.reduce((a, b) => a + b, 0) / xs.length;
}

/** Where a cell's neighbours above and below would like it. */
function drawn(cell: Cell): number {
  let sum = 0;
  let weight = 0;
  const egg = cell.item ? ((cell.item.members.length - 1) * measures.pitch) / 2 : 0;
  for (const segment of cell.up) {
    const offset = segment.member && segment.upper.item ? memberOffset(segment.upper.item, segment.member) : 0;
    sum += segment.upper.x + offset - egg;
    weight += 1;
  }
  for (const segment of cell.down) {
    const offset = segment.member && cell.item ? memberOffset(cell.item, segment.member) : 0;
    const lower = segment.lower.item ? ((segment.lower.item.members.length - 1) * measures.pitch) / 2 : 0;
    sum += segment.lower.x + lower - offset;
    weight += 1;
  }
  return weight > 0 ? sum / weight : cell.x;
}
