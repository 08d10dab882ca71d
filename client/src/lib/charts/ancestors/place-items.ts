import { eggOffset, memberOffset, type Item, type Link } from './chart-items.ts';
import { measures } from './measures.ts';

interface Wish {
  item: Item;
  /** The item whose place it follows, with the offset to add, and how strongly. */
  near: { other: Item; offset: number; weight: number }[];
}

/**
 * Final x of all items: the order from left to right of the first guess is kept wherever two things share a height,
 * nothing overlaps, and within that everything is drawn towards its neighbours, thick streams strongest.
 */
export function placeItems(items: Item[], links: Link[]): void {
  const ordered = [...items].sort((a, b) => centre(a) - centre(b) || (a.key < b.key ? -1 : 1));
  const wishes = collectWishes(ordered, links);
  const distances = leastDistances(ordered);
  spread(
    ordered,
    ordered.map((item) => item.x),
    distances,
  );
  const rounds = items.length > 300 ? 30 : 60;
  for (let round = 0; round < rounds; round++) {
    const wanted = wishes.map(({ item, near }) => {
      const weight = near.reduce((sum, one) => sum + one.weight, 0);
      const sum = near.reduce((total, one) => total + (one.other.x + one.offset) * one.weight, 0);
      return weight > 0 ? item.x * 0.25 + (sum / weight) * 0.75 : item.x;
    });
    spread(ordered, wanted, distances);
  }
}

function centre(item: Item): number {
  return item.x + (item.members.length > 0 ? eggOffset(item) : 0);
}

function collectWishes(ordered: Item[], links: Link[]): Wish[] {
  const byItem = new Map<Item, Wish>(ordered.map((item) => [item, { item, near: [] }]));
  const tie = (upper: Item, lower: Item, shift: number, weight: number) => {
    byItem.get(lower)?.near.push({ other: upper, offset: shift, weight });
    byItem.get(upper)?.near.push({ other: lower, offset: -shift, weight });
  };
  for (const { link, upper, lower, lane, share } of links) {
    const out = memberOffset(upper, link.parent);
    const weight = 0.4 + 3 * share;
    if (!lane) tie(upper, lower, out - eggOffset(lower), weight);
    else {
      tie(upper, lane, out, weight);
      tie(lane, lower, -eggOffset(lower), weight);
    }
  }
  return ordered.map((item) => byItem.get(item) ?? { item, near: [] });
}

/** For each item, the items left of it at some shared height and the least distance between the two x. */
function leastDistances(ordered: Item[]): { left: number; distance: number }[][] {
  return ordered.map((item, index) => {
    const found: { left: number; distance: number }[] = [];
    for (let left = 0; left < index; left++) {
      const other = ordered[left];
      const distance = other ? needed(other, item) : null;
      if (distance !== null) found.push({ left, distance });
    }
    return found;
  });
}

function needed(left: Item, right: Item): number | null {
  let most: number | null = null;
  for (const a of left.extents)
    for (const b of right.extents)
      if (a.top < b.bottom && b.top < a.bottom) most = Math.max(most ?? -Infinity, a.right - b.left + measures.gap);
  return most;
}

/**
 * Mean of the two tightest packings around the wishes (one pushed from the left, one from the right): both keep every
 * distance, so their mean does, and neither side is favoured.
 */
function spread(ordered: Item[], wanted: number[], distances: { left: number; distance: number }[][]): void {
  const count = ordered.length;
  const fromLeft = new Float64Array(count);
  const fromRight = Float64Array.from(wanted);
  for (let index = 0; index < count; index++) {
    let x = wanted[index] ?? 0;
    for (const { left, distance } of distances[index] ?? []) x = Math.max(x, (fromLeft[left] ?? 0) + distance);
    fromLeft[index] = x;
  }
  for (let index = count - 1; index >= 0; index--)
    for (const { left, distance } of distances[index] ?? [])
      fromRight[left] = Math.min(fromRight[left] ?? 0, (fromRight[index] ?? 0) - distance);
  ordered.forEach((item, index) => (item.x = ((fromLeft[index] ?? 0) + (fromRight[index] ?? 0)) / 2));
}
