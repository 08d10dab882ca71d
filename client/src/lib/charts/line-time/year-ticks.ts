import type { LineLayout } from './line-layout.ts';

/** A year on the ladder. */
export interface YearTick {
  readonly year: number;
  /** From the top of the plane, in its units. */
  readonly y: number;
  /** Every fifth of those that are written. */
  readonly isStrong: boolean;
}

const steps = [1, 2, 5, 10, 20, 25, 50, 100, 200, 500];
/** Least distance between two written years on the screen, in pixels. */
const APART = 22;

/** The years that are written beside a line drawn at a scale, as far as the plane reaches. */
export function yearTicks({ firstYear, perYear, height }: LineLayout, scale: number): YearTick[] {
  const step = steps.find((one) => one * perYear * scale >= APART) ?? 1000;
  const ticks: YearTick[] = [];
  for (let year = Math.ceil(firstYear / step) * step; (year - firstYear) * perYear <= height; year += step)
    ticks.push({ year, y: (year - firstYear) * perYear, isStrong: year % (step * 5) === 0 });
  return ticks;
}
