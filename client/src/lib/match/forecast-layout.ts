import type { ForecastCourse, ForecastFigure } from '../api/types.ts';
import { fractionAxis, rootAxis, type Axis } from '../charts/years/axes.ts';

/** Sizes of the chart in CSS pixels. */
export const forecastSizes = {
  ruler: 84,
  narrowRuler: 34,
  head: 66,
  foot: 10,
  gap: 40,
  between: 26,
  pitch: 46,
  /** Between two courses of one generation. */
  step: 11,
  widest: 856,
  narrow: 560,
} as const;

export type ForecastKind = 'diversity' | 'inbreeding';

/** The order in which courses are drawn and named, whatever order they came in. */
export const courseOrder = ['plan', 'today', 'random'] as const;
export type CourseKind = ForecastCourse['course'];

/** A strip of the ladder with one kind of figure. */
export interface ForecastTrack {
  kind: ForecastKind;
  left: number;
  width: number;
  /** Top of its ladder. */
  top: number;
  axis: Axis;
}

/** A generation on the ladder. */
export interface ForecastRung {
  generation: number;
  /** Middle of the generation, from the top of the ladder. */
  y: number;
}

/** A figure of one generation of a course: its interval and its mean, across. */
export interface ForecastMark {
  generation: number;
  x: number;
  from: number;
  to: number;
  /** From the top of the chart. */
  y: number;
}

/** One course in one track. */
export interface ForecastCurve {
  course: CourseKind;
  kind: ForecastKind;
  /** A line through the means. */
  path: string;
  marks: ForecastMark[];
}

export interface ForecastLayout {
  width: number;
  height: number;
  ladder: number;
  /** Width of the strip in which generations are named. */
  ruler: number;
  isNarrow: boolean;
  rungs: ForecastRung[];
  tracks: ForecastTrack[];
  curves: ForecastCurve[];
}

/**
 * Lays a forecast out: generations run down one ladder, gene diversity and F stand side by side as tracks of it; on narrow screens one
 * below the other. Each course has a line of its own within a generation, so that intervals never hide each other.
 *
 * @param width of the frame in pixels
 */
export function layoutForecast(courses: readonly ForecastCourse[], width: number): ForecastLayout {
  const { foot, pitch, narrow, widest } = forecastSizes;
  const full = Math.max(288, Math.min(widest, width));
  const isNarrow = full < narrow;
  const ordered = courseOrder.flatMap((kind) => courses.filter(({ course }) => course === kind));
  const generations = [...new Set(ordered.flatMap((course) => course.generations.map(({ generation }) => generation)))];
  const rungs = generations.sort((a, b) => a - b).map((generation, at) => ({ generation, y: (at + 0.5) * pitch }));
  const ladder = rungs.length * pitch;
  const ruler = isNarrow ? forecastSizes.narrowRuler : forecastSizes.ruler;
  const tracks = tracksOf(ordered, { full, ruler, ladder, isNarrow });
  const lowest = Math.max(...tracks.map(({ top }) => top));
  return {
    width: full,
    height: lowest + ladder + foot,
    ladder,
    ruler,
    isNarrow,
    rungs,
    tracks,
    curves: tracks.flatMap((track) =>
      ordered.map((course, at) => curveOf(course, track, rungs, at - (ordered.length - 1) / 2)),
    ),
  };
}

function tracksOf(
  courses: readonly ForecastCourse[],
  { full, ruler, ladder, isNarrow }: { full: number; ruler: number; ladder: number; isNarrow: boolean },
): ForecastTrack[] {
  const { head, gap, between } = forecastSizes;
  // the last tick's text stands half beyond its track
  const free = full - ruler - 14;
  const width = isNarrow ? free : Math.floor((free - gap) / 2);
  const figures = (kind: ForecastKind): ForecastFigure[] =>
    courses.flatMap(({ generations }) => generations.map((generation) => generation[kind]));
  const least = Math.min(1, ...figures('diversity').map(({ from }) => from));
  const greatest = Math.max(0, ...figures('inbreeding').map(({ to }) => to));
  const second = isNarrow
    ? { left: ruler, top: head + ladder + between + head }
    : { left: ruler + width + gap, top: head };
  return [
    { kind: 'diversity', left: ruler, width, top: head, axis: fractionAxis(ruler, width, least) },
    { kind: 'inbreeding', ...second, width, axis: rootAxis(second.left, width, greatest) },
  ];
}

function curveOf(
  { course, generations }: ForecastCourse,
  { kind, top, axis }: ForecastTrack,
  rungs: readonly ForecastRung[],
  offset: number,
): ForecastCurve {
  const placeOf = new Map(rungs.map(({ generation, y }) => [generation, y]));
  const marks = [...generations]
    .sort((one, other) => one.generation - other.generation)
    .map((generation): ForecastMark => {
      const { mean, from, to } = generation[kind];
      return {
        generation: generation.generation,
        x: round(axis.x(mean)),
        from: round(axis.x(from)),
        to: round(axis.x(to)),
        y: top + (placeOf.get(generation.generation) ?? 0) + offset * forecastSizes.step,
      };
    });
  return { course, kind, path: marks.map(({ x, y }, at) => `${at === 0 ? 'M' : 'L'}${x} ${y}`).join(''), marks };
}

const round = (value: number): number => Math.round(value * 10) / 10;
