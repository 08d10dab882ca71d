import type { AncestorLayout } from './ancestor-layout.ts';
import { measures } from './measures.ts';
import { verticalPath, type Point, type Stream } from './streams.ts';

/** The land that a lit loop encloses, and the place inside it where a sentence has room. */
export interface Island {
  path: string;
  /** Middle of the widest free place; null when the island is too narrow for words. */
  label: Point | null;
}

const words = { halfWidth: 76, halfHeight: 30 };

/** The island between the outermost lit ways from an ancestor down to the root; null when both ways are one. */
export function islandOf(layout: AncestorLayout, from: string, lit: Set<string>): Island | null {
  const left = outermost(layout, from, lit, -1);
  const right = outermost(layout, from, lit, 1);
  const root = layout.animals.find((placed) => placed.animal.id === layout.graph.root);
  if (!root || left.length === 0 || right.length === 0 || left.every((point, i) => point === right[i])) return null;
  const back = verticalPath([...right].reverse()).replace('M', 'L');
  return { path: `${verticalPath(left)}${back}Z`, label: freePlace(layout, left, right) };
}

function outermost(layout: AncestorLayout, from: string, lit: Set<string>, side: -1 | 1): Point[] {
  const leaving = new Map<string, Stream[]>();
  for (const stream of layout.streams)
    if (lit.has(stream.key)) leaving.set(stream.from, [...(leaving.get(stream.from) ?? []), stream]);
  const points: Point[] = [];
  for (let at = from; at !== layout.graph.root;) {
    const next = (leaving.get(at) ?? []).sort((a, b) => side * (sideOf(b) - sideOf(a)))[0];
    if (!next) return [];
    points.push(...next.points);
    at = next.to;
  }
  return points;
}

function sideOf(stream: Stream): number {
  return stream.points.reduce((sum, point) => sum + point.x, 0) / stream.points.length;
}

/** X of a way at a height, near enough to place words. */
function xAt(points: Point[], y: number): number | null {
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1];
    const b = points[i];
    if (!a || !b || y < a.y || y > b.y || a.y === b.y) continue;
    const part = (y - a.y) / (b.y - a.y);
    return a.x + (b.x - a.x) * part * part * (3 - 2 * part);
  }
  return null;
}

function freePlace(layout: AncestorLayout, left: Point[], right: Point[]): Point | null {
  let best: { point: Point; room: number } | null = null;
  const first = left[0]?.y ?? 0;
  const last = left[left.length - 1]?.y ?? 0;
  for (let y = first + words.halfHeight; y < last - words.halfHeight; y += 8) {
    const heights = [y - words.halfHeight, y, y + words.halfHeight];
    const from = Math.max(...heights.map((height) => xAt(left, height) ?? Infinity)) + words.halfWidth + 12;
    const to = Math.min(...heights.map((height) => xAt(right, height) ?? -Infinity)) - words.halfWidth - 12;
    if (from > to || (best && to - from <= best.room)) continue;
    const point = { x: (from + to) / 2, y };
    if (isFree(layout, point)) best = { point, room: to - from };
  }
  return best?.point ?? null;
}

function isFree(layout: AncestorLayout, { x, y }: Point): boolean {
  const box = {
    left: x - words.halfWidth,
    right: x + words.halfWidth,
    top: y - words.halfHeight,
    bottom: y + words.halfHeight,
  };
  const clear = layout.animals.every(
    (placed) =>
      placed.x - measures.textLeft > box.right ||
      placed.x + measures.textRight < box.left ||
      placed.y - measures.mark > box.bottom ||
      placed.y + measures.below + measures.probability < box.top,
  );
  return (
    clear &&
    layout.streams.every((stream) =>
      [box.top, y, box.bottom].every((height) => {
        const at = xAt(stream.points, height);
        return at === null || at < box.left || at > box.right;
      }),
    )
  );
}
