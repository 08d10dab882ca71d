import type { LineOverTime } from '$lib/api/types.ts';
import type { LineLayout } from './line-layout.ts';
import { sizes } from './line-sizes.ts';

/** How the plane lies on the screen: a point p of it stands at p · k + x (or y). */
export interface View {
  readonly k: number;
  readonly x: number;
  readonly y: number;
}

/** A title on the screen: the middle of its baseline. */
export interface PlacedTitle {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly family: number;
}

/** Width of a letter of a title in pixels, and the height of a line. */
const LETTER = 6.3;
const HEIGHT = 15;

/**
 * Names of sources above their founders, where they fit into the frame and over no other name: sources with more founders first.
 */
export function placeTitles(
  { sources }: LineOverTime,
  { families }: LineLayout,
  view: View,
  frame: { width: number; height: number },
): PlacedTitle[] {
  const size = (family: number): number => (families.start[family + 1] ?? 0) - (families.start[family] ?? 0);
  const wanted = families.id
    .flatMap((_, family) => (families.kind[family] === 'source' ? [family] : []))
    .sort((one, other) => size(other) - size(one) || one - other);
  const placed: (PlacedTitle & { half: number })[] = [];
  for (const family of wanted) {
    const text = sources[families.place[family] ?? -1]?.title ?? '';
    const half = (text.length * LETTER) / 2 + 3;
    const y = ((families.y[family] ?? 0) - sizes.bracket) * view.k + view.y - 3;
    const middle = (families.x[family] ?? 0) * view.k + view.x;
    if (y < 0 || y > frame.height || middle < -half || middle > frame.width + half) continue;
    const x = Math.min(Math.max(middle, half + 2), Math.max(half + 2, frame.width - half - 2));
    const isFree = placed.every((other) => Math.abs(other.y - y) > HEIGHT || Math.abs(other.x - x) > other.half + half);
    if (isFree) placed.push({ text, x, y: Math.max(y, HEIGHT), family, half });
  }
  return placed;
}
