import type { LineLayout } from './line-layout.ts';
import type { View } from './source-titles.ts';

/** Size of the frame that a line is seen through, in CSS pixels. */
export interface Frame {
  readonly width: number;
  readonly height: number;
}

/** Room at the left of the frame for the years, and around a line that is seen whole. */
export const RULER = 48;
const AROUND = 14;
/** Greatest scale, and the greatest at which a small line is shown whole. */
const CLOSEST = 6;
const CLOSEST_WHOLE = 1.4;
/** Part of the frame that may stay empty beyond an edge of the line. */
const EDGE = 0.15;
/** Scale at which an animal that was found is looked at. */
const READING = 1.5;

/** The whole line in its frame. */
export function wholeView({ width, height }: LineLayout, frame: Frame): View {
  const free = { width: Math.max(40, frame.width - RULER - AROUND), height: Math.max(40, frame.height - 2 * AROUND) };
  const k = Math.min(CLOSEST_WHOLE, free.width / width, free.height / height);
  return { k, x: RULER + (free.width - k * width) / 2, y: AROUND + Math.max(0, (free.height - k * height) / 2) };
}

/** Height of a frame of a width in which the whole line is as large as can be. */
export function heightFor({ width, height }: LineLayout, frameWidth: number): number {
  const k = Math.min(CLOSEST_WHOLE, Math.max(40, frameWidth - RULER - AROUND) / width);
  return Math.round(height * k) + 2 * AROUND;
}

/** Keeps a view within reach: not smaller than whole, and with part of the line in the middle of the frame. */
export function keptView(layout: LineLayout, frame: Frame, view: View): View {
  const whole = wholeView(layout, frame);
  const k = Math.min(CLOSEST, Math.max(whole.k, view.k));
  if (k <= whole.k) return whole;
  const keep = (at: number, from: number, size: number, length: number): number =>
    length <= size - from
      ? Math.min(Math.max(at, from), size - length)
      : Math.min(from + (size - from) * EDGE, Math.max(at, size - length - (size - from) * EDGE));
  return {
    k,
    x: keep(view.x, RULER, frame.width, layout.width * k),
    y: keep(view.y, 0, frame.height, layout.height * k),
  };
}

/** The view closer or further by a factor, with the point of the frame at `x`, `y` staying where it is. */
export function zoomed(layout: LineLayout, frame: Frame, view: View, factor: number, x: number, y: number): View {
  const k = Math.min(CLOSEST, Math.max(wholeView(layout, frame).k, view.k * factor));
  const by = k / view.k;
  return keptView(layout, frame, { k, x: x - (x - view.x) * by, y: y - (y - view.y) * by });
}

/** The view moved by so many pixels. */
export function panned(layout: LineLayout, frame: Frame, view: View, x: number, y: number): View {
  return keptView(layout, frame, { k: view.k, x: view.x + x, y: view.y + y });
}

/** A view in which an animal stands in the middle, close enough to read its kin; closer views stay as close as they are. */
export function viewOf(layout: LineLayout, frame: Frame, view: View, animal: number): View {
  const k = Math.max(view.k, Math.min(READING, CLOSEST));
  const [x, y] = [layout.animals.x[animal] ?? 0, layout.animals.y[animal] ?? 0];
  return keptView(layout, frame, {
    k,
    x: (RULER + frame.width) / 2 - x * k,
    y: frame.height / 2 - y * k,
  });
}

/** The view moved just as far as an animal needs to be well inside the frame. */
export function viewWith(layout: LineLayout, frame: Frame, view: View, animal: number): View {
  const x = (layout.animals.x[animal] ?? 0) * view.k + view.x;
  const y = (layout.animals.y[animal] ?? 0) * view.k + view.y;
  const near = 48;
  const inside = (at: number, from: number, to: number): number => (at < from ? from - at : at > to ? to - at : 0);
  return panned(layout, frame, view, inside(x, RULER + near, frame.width - near), inside(y, near, frame.height - near));
}

/** The animal nearest to a point of the frame within so many pixels; null where none is. */
export function animalAt(layout: LineLayout, view: View, x: number, y: number, within: number): number | null {
  let [best, least] = [-1, (within / view.k) ** 2];
  const [px, py] = [(x - view.x) / view.k, (y - view.y) / view.k];
  for (let animal = 0; animal < layout.animals.x.length; animal++) {
    const way = ((layout.animals.x[animal] ?? 0) - px) ** 2 + ((layout.animals.y[animal] ?? 0) - py) ** 2;
    if (way < least) [best, least] = [animal, way];
  }
  return best < 0 ? null : best;
}
