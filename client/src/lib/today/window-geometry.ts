import type { ClutchItem } from '../api/types.ts';
import { daysFrom } from './days.ts';

/** A window of days drawn on a line that begins on the day that is counted from; places from 0 to `width`. */
export interface WindowDrawing {
  /** Where the window opens and closes. */
  readonly opens: number;
  readonly closes: number;
  /** Where the day is that it is looked at; null where it lies before the start. */
  readonly now: number | null;
  /** Whole days since the start, and how many the window is past; 0 while it is not. */
  readonly day: number | null;
  readonly late: number;
  /** Whether the window has opened. */
  readonly isOpen: boolean;
}

/**
 * Draws what is expected of a clutch: the line goes from the start to the end of the window, or to today where that is later. Null where
 * nothing is expected.
 */
export function drawWindow(
  { expected }: Pick<ClutchItem, 'expected'>,
  on: string,
  width: number,
): WindowDrawing | null {
  if (!expected) return null;
  const start = expected.since;
  const [opens, closes, day] = [daysFrom(start, expected.from), daysFrom(start, expected.to), daysFrom(start, on)];
  const last = Math.max(closes + 1, day, 1);
  const at = (days: number): number => Math.round((Math.max(0, Math.min(last, days)) / last) * width * 10) / 10;
  return {
    opens: at(opens),
    // the last day counts whole
    closes: at(closes + 1),
    now: day < 0 ? null : at(day),
    day: day < 0 ? null : day,
    late: Math.max(0, day - closes),
    isOpen: day >= opens,
  };
}
