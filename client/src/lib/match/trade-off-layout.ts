import type { TradeOffPoint, WeightEffect } from './trade-off-effect.ts';

/** A place of the curve: all weights whose best plans come to the same. */
export interface CurvePoint {
  readonly x: number;
  readonly y: number;
  /** Which weights, `1` or `0.5 to 2`; empty where it would touch another's. */
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

export interface CurveLayout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly points: readonly CurvePoint[];
  readonly path: string;
  /** Where the weight of the slider lies: a place, or the stretch between two. */
  readonly lit: string;
  readonly litEnds: readonly { x: number; y: number }[];
  /** Ends of both axes, in the unit of the figures. */
  readonly inbreeding: readonly [number, number];
  readonly meanKinship: readonly [number, number];
}

const sizes = { width: 340, height: 210, left: 52, right: 78, top: 26, bottom: 40 } as const;
const same = 1e-9;

/**
 * Lays out what more of the one costs of the other: mean F of the young across, their mean kinship with the line upwards, each from the
 * least to the greatest that the weights give.
 */
export function layoutCurve(points: readonly TradeOffPoint[], effect: WeightEffect): CurveLayout {
  const { width, height, left, top } = sizes;
  const [right, bottom] = [width - sizes.right, height - sizes.bottom];
  const across = endsOf(points.map(({ inbreeding }) => inbreeding));
  const upwards = endsOf(points.map(({ meanKinship }) => meanKinship));
  const place = ({ inbreeding, meanKinship }: TradeOffPoint): { x: number; y: number } => ({
    x: round(left + 12 + part(inbreeding, across) * (right - left - 24)),
    y: round(bottom - 12 - part(meanKinship, upwards) * (bottom - top - 24)),
  });
  const groups: TradeOffPoint[][] = [];
  for (const point of points) {
    const last = groups.at(-1);
    const [first] = last ?? [];
    const isSame =
      first &&
      Math.abs(first.inbreeding - point.inbreeding) < same &&
      Math.abs(first.meanKinship - point.meanKinship) < same;
    if (last && isSame) last.push(point);
    else groups.push([point]);
  }
  const laid = groups.flatMap((group): CurvePoint[] => {
    const [first, last] = [group[0], group.at(-1)];
    if (!first || !last) return [];
    const at = place(first);
    const text = first === last ? String(first.weight) : `${first.weight} to ${last.weight}`;
    return [{ ...at, text, from: first.weight, to: last.weight }];
  });
  const litEnds = [effect.below, effect.above].flatMap((point) => (point ? [place(point)] : []));
  return {
    ...sizes,
    right,
    bottom,
    points: legible(laid),
    path: lineThrough(laid),
    lit: lineThrough(litEnds),
    litEnds,
    inbreeding: across,
    meanKinship: upwards,
  };
}

const character = 7;
const lineHeight = 14;

/** Leaves out texts that would touch one before; both ends of the curve come first. */
function legible(points: readonly CurvePoint[]): CurvePoint[] {
  const boxOf = ({ x, y, text }: CurvePoint): { from: number; to: number; y: number } => ({
    from: x,
    to: x + text.length * character + 8,
    y,
  });
  const order = [...points.slice(0, 1), ...points.slice(1).slice(-1), ...points.slice(1, -1)];
  const taken: { from: number; to: number; y: number }[] = [];
  const written = new Set<CurvePoint>();
  for (const point of order) {
    const box = boxOf(point);
    const isFree = taken.every(
      (other) => Math.abs(other.y - box.y) >= lineHeight || other.to <= box.from || other.from >= box.to,
    );
    if (!isFree) continue;
    taken.push(box);
    written.add(point);
  }
  return points.map((point) => (written.has(point) ? point : { ...point, text: '' }));
}

const endsOf = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)];

/** Where a value lies between two ends, 0 to 1; in the middle where they are the same. */
const part = (value: number, [least, greatest]: readonly [number, number]): number =>
  greatest - least < same ? 0.5 : (value - least) / (greatest - least);

const lineThrough = (places: readonly { x: number; y: number }[]): string =>
  places.map(({ x, y }, at) => `${at === 0 ? 'M' : 'L'}${x} ${y}`).join('');

const round = (value: number): number => Math.round(value * 10) / 10;
