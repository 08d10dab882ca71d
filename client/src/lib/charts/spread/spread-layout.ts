import type { InbreedingSpread } from '../../api/types.ts';
import { percent, percentRange } from '../../ui/figures.ts';
import { rootAxis, type AxisTick } from '../years/axes.ts';

/** A value or a bin of the drawing. */
export interface SpreadColumn {
  x: number;
  width: number;
  y: number;
  height: number;
  /** Its part of all assignments, 0 to 1. */
  share: number;
  /** F in words. */
  words: string;
  /** Its share above the column; empty where it would touch another. */
  text: string;
}

export interface SpreadLayout {
  width: number;
  height: number;
  /** Where the columns stand. */
  base: number;
  ticks: AxisTick[];
  columns: SpreadColumn[];
  /** Least to greatest over the own candidates. */
  range: { from: number; to: number; y: number };
  expected: number;
}

/** Rows of the drawing from its top, in pixels: room for texts, the columns, the axis with its texts, the range. */
const [textRow, columnRow, axisRow, rangeRow] = [18, 104, 26, 26];
const side = 14;
/** Width of a column that is one value. */
const single = 9;
const leastHeight = 1.5;
const character = 6.4;

/** Lays the distribution of F out on an axis of its square root, which ends at 1/4, or at 1/2 or 1 where a value needs it. */
export function layoutSpread(spread: InbreedingSpread, width: number): SpreadLayout {
  const greatest = Math.max(spread.greatest, spread.inbreeding.greatest);
  const axis = rootAxis(side, Math.max(60, width - 2 * side), greatest);
  const base = textRow + columnRow;
  const parts = partsOf(spread);
  const top = Math.max(...parts.map(({ share }) => share), Number.MIN_VALUE);
  const texts = new FreeRoom();
  const columns = parts.map(({ from, to, share, words }): SpreadColumn => {
    const height = share === 0 ? 0 : Math.max(leastHeight, (share / top) * columnRow);
    const isSingle = spread.values !== null;
    const left = isSingle ? axis.x(from) - single / 2 : axis.x(from);
    const columnWidth = isSingle ? single : Math.max(0.5, axis.x(to) - left);
    return { x: left, width: columnWidth, y: base - height, height, share, words, text: '' };
  });
  // the largest first: they say most
  for (const column of [...columns].sort((one, other) => other.share - one.share)) {
    const text = percent(column.share);
    if (spread.values !== null && texts.take(column.x + column.width / 2, text.length * character)) column.text = text;
  }
  const { least, greatest: most, expected } = spread.inbreeding;
  return {
    width,
    height: base + axisRow + rangeRow,
    base,
    ticks: axis.ticks,
    columns,
    range: { from: axis.x(least), to: axis.x(most), y: base + axisRow + 12 },
    expected: axis.x(expected),
  };
}

function partsOf({ values, bins }: InbreedingSpread): { from: number; to: number; share: number; words: string }[] {
  if (values) return values.map(({ value, share }) => ({ from: value, to: value, share, words: percent(value) }));
  return (bins ?? []).map(({ from, to, share }) => ({ from, to, share, words: percentRange(from, to) }));
}

/** Stretches of a row that are taken already. */
class FreeRoom {
  readonly #taken: [number, number][] = [];

  take(middle: number, width: number): boolean {
    const [from, to] = [middle - width / 2 - 3, middle + width / 2 + 3];
    if (this.#taken.some(([left, right]) => from < right && to > left)) return false;
    this.#taken.push([from, to]);
    return true;
  }
}
