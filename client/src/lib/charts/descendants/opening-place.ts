import type { DescendantLayout } from './descendant-layout.ts';

/** The frame in which a chart is moved, in pixels of the drawing: how wide it is, and what of it the ruler covers at its left. */
export interface Frame {
  width: number;
  ruler: number;
}

/** What is not to be cut by an edge, from left to right, and how badly it is missed. */
interface Box {
  left: number;
  right: number;
  weight: number;
}

const air = 4;

/**
 * How far a chart wider than its frame is moved when it opens, in pixels of the drawing: the animal asked about in sight, as near to the
 * middle as it can be with no symbol cut at the left edge, nor words if that can be.
 */
export function openingPlace({ items, eggs, width }: DescendantLayout, frame: Frame): number {
  const most = width - frame.width;
  const [root] = items;
  if (most <= 0 || !root) return 0;
  const clamp = (place: number): number => Math.max(0, Math.min(most, place));
  const wished = clamp(root.x + 24 - (frame.width + frame.ruler) / 2);
  const boxes: Box[] = [
    ...items.map(({ kind, x }) => ({
      left: x - (kind === 'folded' ? 24 : 14),
      right: x + (kind === 'folded' ? 24 : 14),
      weight: 100,
    })),
    ...items.flatMap(({ kind, x }) => (kind === 'folded' ? [] : [{ left: x + 14, right: x + 84, weight: 12 }])),
    ...eggs.map(({ x, room }) => ({ left: x - 6, right: x + 9 + room, weight: 10 })),
  ];
  const asked: Box = { left: root.x - 36, right: root.x + 84, weight: 1000 };
  const places = [0, most, wished, ...boxes.map(({ left }) => clamp(left - frame.ruler - air))];
  const cost = (place: number): number => {
    const [left, right] = [place + frame.ruler, place + frame.width];
    const cutLeft = boxes.filter((box) => box.left < left && left < box.right);
    const cutRight = boxes.filter((box) => box.left < right && right < box.right);
    const isOut = asked.left < left || asked.right > right;
    const sum = (cut: readonly Box[]): number => cut.reduce((all, { weight }) => all + weight, 0);
    return (
      (isOut ? asked.weight : 0) + sum(cutLeft) + sum(cutRight) / 8 + (Math.abs(place - wished) / frame.width) * 20
    );
  };
  return places.reduce((best, place) => (cost(place) < cost(best) ? place : best), wished);
}
