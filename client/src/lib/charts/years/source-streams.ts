import type { Standing } from '$shared/vocabulary.ts';
import type { Rung } from './years-layout.ts';
import type { NumberedOrigin, YearRow } from './year-rows.ts';

/** The stretch of a stream in one year of hatching. */
export interface StreamStep {
  y: number;
  left: number;
  right: number;
}

/** An origin's part in the genes of the young, year by year. */
export interface Stream {
  /** Number of the origin; 0 for all further origins together. */
  number: number;
  name: string;
  standing: Standing;
  steps: StreamStep[];
  /** Closed outlines, one for each run of years of hatching that follow one another. */
  paths: string[];
  /** Outlines across the years in which nothing hatched. */
  bridges: string[];
}

/** The number of an origin, and its name where there is room, written inside its stream. */
export interface StreamName {
  number: number;
  text: string;
  x: number;
  y: number;
  /** Half the room that it takes. */
  halfWidth: number;
}

/** What streams are drawn of: years, or generations that stand for them. */
export interface StreamsData {
  readonly origins: readonly Pick<NumberedOrigin, 'number' | 'name' | 'standing'>[];
  readonly rows: readonly Pick<YearRow, 'year' | 'shares' | 'othersShare'>[];
}

const character = 6.6;
const lineHeight = 15;

/** The streams of the origins, side by side in the order of their numbers, as wide as their shares of the young of each year. */
export function streamsOf(
  { origins, rows }: StreamsData,
  rungs: readonly Pick<Rung, 'year' | 'y'>[],
  pitch: number,
  { left, width }: { left: number; width: number },
): Stream[] {
  const places = new Map(rungs.map((rung) => [rung.year, rung.y]));
  const all = [
    ...origins.map(({ number, name, standing }) => ({ number, name, standing })),
    ...(rows.some((row) => row.othersShare > 0)
      ? [{ number: 0, name: 'further origins', standing: 'unknown' as Standing }]
      : []),
  ];
  const edges = rows.map((row) => {
    let at = left;
    return all.map((_, place) => {
      const from = at;
      at += width * (place < origins.length ? (row.shares[place] ?? 0) : row.othersShare);
      return [from, at] as const;
    });
  });
  const half = Math.max(1.5, pitch * 0.26);
  return all.map((origin, place) => {
    const steps = rows.map((row, at): StreamStep => {
      const [from, to] = edges[at]?.[place] ?? [left, left];
      return { y: places.get(row.year) ?? 0, left: from, right: to };
    });
    return { ...origin, steps, ...outlines(steps, pitch, half) };
  });
}

/** Outlines of a stream, cut where it carries nothing and where years without young lie between. */
function outlines(steps: readonly StreamStep[], pitch: number, half: number): { paths: string[]; bridges: string[] } {
  const paths: string[] = [];
  const bridges: string[] = [];
  let run: StreamStep[] = [];
  const end = (): void => {
    if (run.some((step) => step.right > step.left)) paths.push(outline(run, half));
    run = [];
  };
  steps.forEach((step, at) => {
    const before = steps[at - 1];
    if (before) {
      const carries = before.right > before.left || step.right > step.left;
      const follows = step.y - before.y < pitch * 1.5;
      if (!follows && carries) bridges.push(outline([before, step], half, true));
      if (!follows || !carries) end();
    }
    run.push(step);
  });
  end();
  return { paths, bridges };
}

/** A closed outline down the left edge and up the right one; `between` leaves the years themselves out. */
function outline(steps: readonly StreamStep[], half: number, between = false): string {
  const first = steps[0];
  if (!first) return '';
  const down = steps.map((step) => [step.left, step.y] as const);
  const up = [...steps].reverse().map((step) => [step.right, step.y] as const);
  return `${edge('M', down, half, 1, between)}${edge('L', up, half, -1, between)}Z`;
}

function edge(
  start: 'M' | 'L',
  points: readonly (readonly [number, number])[],
  half: number,
  way: 1 | -1,
  between: boolean,
): string {
  const ends = between ? half : -half;
  let text = '';
  points.forEach(([x, y], at) => {
    const before = points[at - 1];
    const enter = at === 0 ? y + way * ends : y - way * half;
    const leave = at === points.length - 1 ? y - way * ends : y + way * half;
    if (before) {
      const from = before[1] + way * half;
      const middle = (from + enter) / 2;
      text += `C${round(before[0])} ${round(middle)} ${round(x)} ${round(middle)} ${round(x)} ${round(enter)}`;
    } else text += `${start}${round(x)} ${round(enter)}`;
    if (!between) text += `V${round(leave)}`;
  });
  return text;
}

/** Writes each stream's number, with its name where that fits, in its widest year that has room; no two texts touch. */
export function placeNames(streams: readonly Stream[], pitch: number): StreamName[] {
  const placed: StreamName[] = [];
  const tallEnough = (name: StreamName): boolean =>
    placed.every(
      (other) =>
        Math.abs(other.y - name.y) >= lineHeight || Math.abs(other.x - name.x) >= other.halfWidth + name.halfWidth,
    );
  for (const stream of streams) {
    const number = stream.number === 0 ? '' : String(stream.number);
    const texts = [[number, stream.name].filter(Boolean).join('  '), number].filter(Boolean);
    const found = texts
      .flatMap((text) => widestFirst(stream.steps).map((step) => nameAt(stream, step, text, pitch)))
      .find((name) => name !== null && tallEnough(name));
    if (found) placed.push(found);
  }
  return placed;
}

function nameAt({ number, steps }: Stream, step: StreamStep, text: string, pitch: number): StreamName | null {
  const halfWidth = (text.length * character) / 2 + 4;
  // where a year is lower than the text, its neighbours must leave room as well
  const near = steps.filter((other) => Math.abs(other.y - step.y) < lineHeight / 2 + pitch / 2);
  const left = Math.max(...near.map((other) => other.left));
  const right = Math.min(...near.map((other) => other.right));
  if (right - left < 2 * halfWidth) return null;
  return { number, text, x: (left + right) / 2, y: step.y, halfWidth };
}

const widestFirst = (steps: readonly StreamStep[]): StreamStep[] =>
  [...steps].sort((one, other) => other.right - other.left - (one.right - one.left) || one.y - other.y);

const round = (value: number): number => Math.round(value * 10) / 10;
