import type { DescendantLayout } from './descendant-layout.ts';

/** A part of a drawing, from left to right in its pixels. */
export interface Strip {
  left: number;
  right: number;
}

/**
 * Cuts a drawing into strips for paper, each as wide as it can be within a bound. Every symbol and all words are whole in one strip; where
 * no cut is free of them, the next strip begins a little before the end of the last, as the sheets of a map do.
 *
 * @param left where the drawing begins, beside its ruler
 * @param most greatest width of a strip, in pixels
 */
export function stripsOf({ items, eggs, width }: DescendantLayout, left: number, most: number): Strip[] {
  const boxes = [
    ...items.map(({ kind, x, generation }) => ({
      left: x - (kind === 'folded' ? 24 : generation === 0 ? 37 : 14),
      right: x + (kind === 'folded' ? 24 : 84),
    })),
    ...eggs.map(({ x, room }) => ({ left: x - 6, right: x + 9 + room })),
  ];
  const strips: Strip[] = [];
  for (let from = left; ;) {
    const end = from + most;
    if (end >= width) return [...strips, { left: from, right: width }];
    const whole = boxes.filter((box) => box.left >= from && box.right <= end);
    const right = Math.max(from + most / 2, ...whole.map((box) => box.right));
    strips.push({ left: from, right });
    from = Math.min(right, ...boxes.filter((box) => box.right > right && box.left > from).map((box) => box.left));
  }
}
