import { eggOffset, memberOffset, type Item, type Link } from './chart-items.ts';
import { measures } from './measures.ts';

/** A pull towards another item: `x` of the other plus `offset`, with a weight. */
interface Pull {
  other: number;
  offset: number;
  weight: number;
}

/** Two items that share some height, with the least distance between their x for either order. */
interface Neighbour {
  other: number;
  ifOtherLeft: number;
}

/** Movement in a round, in pixels, that no eye would see. */
const stillness = 0.25;

interface Board {
  items: Item[];
  pulls: Pull[][];
  neighbours: Neighbour[][];
}

/**
 * Final x of all items. Wherever two things share a height they are kept apart, in an order from left to right that
 * starts with the first guess and is improved as long as streams get shorter; within the order everything is drawn
 * towards its neighbours, thick streams strongest.
 */
export function placeItems(items: Item[], links: Link[]): void {
  const sorted = [...items].sort((a, b) => (a.key < b.key ? -1 : 1));
  const board = { items: sorted, pulls: collectPulls(sorted, links), neighbours: findNeighbours(sorted) };
  const rounds = items.length > 250 ? 40 : 80;
  let best = settle(
    board,
    Float64Array.from(sorted, centre),
    Float64Array.from(sorted, (item) => item.x),
    rounds,
  );
  let least = cost(board, best);
  for (let attempt = 0, alpha = 1; attempt < (items.length > 250 ? 12 : 30); attempt++) {
    const wished = best.map((x, index) => {
      const wish = wishOf(board, best, index);
      return x + (wish - x) * alpha;
    });
    const keys = wished.map((x, index) => x + offsetToCentre(sorted[index]));
    const tried = settle(board, keys, wished, rounds);
    const now = cost(board, tried);
    if (now < least - 0.5) {
      best = tried;
      least = now;
    } else if (alpha < 0.3) break;
    else alpha *= 0.6;
  }
  sorted.forEach((item, index) => (item.x = best[index] ?? 0));
}

function offsetToCentre(item: Item | undefined): number {
  return item && item.members.length > 0 ? eggOffset(item) : 0;
}

function centre(item: Item): number {
  return item.x + offsetToCentre(item);
}

function collectPulls(items: Item[], links: Link[]): Pull[][] {
  const index = new Map(items.map((item, at) => [item, at]));
  const pulls: Pull[][] = items.map(() => []);
  const tie = (upper: Item, lower: Item, shift: number, weight: number) => {
    const above = index.get(upper) ?? 0;
    const below = index.get(lower) ?? 0;
    pulls[below]?.push({ other: above, offset: shift, weight });
    pulls[above]?.push({ other: below, offset: -shift, weight });
  };
  for (const { link, upper, lower, lane, share } of links) {
    const out = memberOffset(upper, link.parent);
    const weight = 0.5 + 2 * share;
    if (!lane) tie(upper, lower, out - eggOffset(lower), weight);
    else {
      tie(upper, lane, out, weight);
      tie(lane, lower, -eggOffset(lower), weight);
    }
  }
  return pulls;
}

function findNeighbours(items: Item[]): Neighbour[][] {
  const found: Neighbour[][] = items.map(() => []);
  items.forEach((a, i) => {
    for (let j = i + 1; j < items.length; j++) {
      const b = items[j];
      if (!b) continue;
      const leftA = needed(a, b);
      if (leftA === null) continue;
      found[j]?.push({ other: i, ifOtherLeft: leftA });
      found[i]?.push({ other: j, ifOtherLeft: needed(b, a) ?? leftA });
    }
  });
  return found;
}

function needed(left: Item, right: Item): number | null {
  let most: number | null = null;
  const gap = left.members.length === 0 && right.members.length === 0 ? measures.laneGap : measures.gap;
  for (const a of left.extents)
    for (const b of right.extents)
      if (a.top < b.bottom && b.top < a.bottom) most = Math.max(most ?? -Infinity, a.right - b.left + gap);
  return most;
}

function wishOf({ pulls }: Board, places: Float64Array, index: number): number {
  let sum = 0;
  let weight = 0;
  for (const pull of pulls[index] ?? []) {
    sum += ((places[pull.other] ?? 0) + pull.offset) * pull.weight;
    weight += pull.weight;
  }
  return weight > 0 ? sum / weight : (places[index] ?? 0);
}

/** Sideways way of all streams, thick ones counting more, with a price on the width of the whole. */
function cost({ items, pulls }: Board, places: Float64Array): number {
  let sum = 0;
  let least = Infinity;
  let most = -Infinity;
  items.forEach((_, index) => {
    const x = places[index] ?? 0;
    least = Math.min(least, x);
    most = Math.max(most, x);
    for (const pull of pulls[index] ?? [])
      if (pull.other < index) sum += Math.abs((places[pull.other] ?? 0) + pull.offset - x) * pull.weight;
  });
  return sum + (most - least) * 2;
}

/** Places everything in the order of `keys`, starting from `wished`, and lets the pulls work for some rounds. */
function settle(board: Board, keys: Float64Array, wished: Float64Array, rounds: number): Float64Array {
  const order = board.items.map((_, index) => index);
  order.sort((a, b) => (keys[a] ?? 0) - (keys[b] ?? 0) || a - b);
  const rank = new Int32Array(order.length);
  order.forEach((item, at) => (rank[item] = at));
  const lefts = board.neighbours.map((near, index) =>
    near.filter((one) => (rank[one.other] ?? 0) < (rank[index] ?? 0)),
  );
  let places = spread(order, wished, lefts);
  for (let round = 0; round < rounds; round++) {
    const pulled = Float64Array.from(places, (x, index) => x * 0.2 + wishOf(board, places, index) * 0.8);
    const next = spread(order, pulled, lefts);
    const isStill = next.every((x, index) => Math.abs(x - (places[index] ?? 0)) < stillness);
    places = next;
    if (isStill) break;
  }
  return places;
}

/**
 * Mean of the two tightest packings around the wishes (one pushed from the left, one from the right): both keep every
 * distance, so their mean does, and neither side is favoured.
 */
function spread(order: number[], wished: Float64Array, lefts: Neighbour[][]): Float64Array {
  const fromLeft = Float64Array.from(wished);
  const fromRight = Float64Array.from(wished);
  for (const index of order)
    for (const { other, ifOtherLeft } of lefts[index] ?? [])
      fromLeft[index] = Math.max(fromLeft[index] ?? 0, (fromLeft[other] ?? 0) + ifOtherLeft);
  for (let at = order.length - 1; at >= 0; at--) {
    const index = order[at] ?? 0;
    for (const { other, ifOtherLeft } of lefts[index] ?? [])
      fromRight[other] = Math.min(fromRight[other] ?? 0, (fromRight[index] ?? 0) - ifOtherLeft);
  }
  return fromLeft.map((x, index) => (x + (fromRight[index] ?? 0)) / 2);
}
