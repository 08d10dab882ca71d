/** One tick of an axis that runs across. */
export interface AxisTick {
  x: number;
  /** Empty where its text would touch another's. */
  text: string;
}

export interface Axis {
  x(value: number): number;
  ticks: AxisTick[];
}

/** Kinships that keepers know by heart, with how they are written, the most telling first. */
const kinshipTicks: readonly (readonly [number, string])[] = [
  [0, '0'],
  [1 / 4, '1/4'],
  [1 / 16, '1/16'],
  [1, '1'],
  [1 / 64, '1/64'],
  [1 / 2, '1/2'],
  [1 / 8, '1/8'],
  [1 / 32, '1/32'],
];
/** Width of a character of the axis in pixels, and the air between two texts. */
const character = 6.4;
const air = 5;

/**
 * Axis of an inbreeding coefficient by its square root, so that 1/64 and 1/4 are both legible. It ends at 1/4, or at 1/2 or 1 where
 * a value needs it.
 *
 * @param left x of 0 in pixels
 * @param greatest the greatest value that it must hold, 0 to 1
 */
export function rootAxis(left: number, width: number, greatest: number): Axis {
  const end = [1 / 4, 1 / 2, 1].find((one) => one >= greatest - 1e-12) ?? 1;
  const x = (value: number): number => left + width * Math.sqrt(Math.min(end, Math.max(0, value)) / end);
  const ticks = kinshipTicks.filter(([value]) => value <= end).map(([value, text]) => ({ x: x(value), text }));
  return { x, ticks: legible(ticks) };
}

/** Plain axis of a fraction from `least` rounded down to 1, in per cent. */
export function fractionAxis(left: number, width: number, least: number): Axis {
  const step = [0.02, 0.05, 0.1, 0.25, 0.5].find((one) => (1 - least) / one <= 4) ?? 0.5;
  const start = Math.max(0, Math.floor((least + 1e-9) / step) * step);
  const span = Math.max(step, 1 - start);
  const x = (value: number): number => left + (width * (Math.min(1, Math.max(start, value)) - start)) / span;
  const count = Math.round(span / step);
  const values = Array.from({ length: count + 1 }, (_, at) => start + at * step);
  // both ends first: they say what the axis spans
  const ordered = [...values.slice(0, 1), ...values.slice(-1), ...values.slice(1, -1)];
  return { x, ticks: legible(ordered.map((value) => ({ x: x(value), text: String(Math.round(value * 100)) }))) };
}

/** Keeps the texts that fit, those that come first before the others; the ticks stay, from left to right. */
function legible(ticks: readonly AxisTick[]): AxisTick[] {
  const taken: [number, number][] = [];
  return ticks
    .map((tick) => {
      const half = (tick.text.length * character + air) / 2;
      const isFree = taken.every(([from, to]) => tick.x + half <= from || tick.x - half >= to);
      if (isFree) taken.push([tick.x - half, tick.x + half]);
      return isFree ? tick : { ...tick, text: '' };
    })
    .sort((one, other) => one.x - other.x);
}
