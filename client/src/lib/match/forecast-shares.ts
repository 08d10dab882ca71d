import { standings, type Standing } from '$shared/vocabulary.ts';
import type { ForecastCourse, PlanForecast } from '../api/types.ts';
import { originName } from '../records/source-parts.ts';
import { courseOrder, type CourseKind } from './forecast-layout.ts';

/** Origins that are drawn by themselves; the others together. */
export const drawnMost = 9;

/** Where genes of the breeders begin, numbered as the drawing, its key and the table number it. */
export interface NumberedShare {
  readonly number: number;
  readonly key: string;
  readonly name: string;
  readonly href: string | null;
  readonly standing: Standing;
  /** The largest share that it has among the breeders of any course, 0 to 1. */
  readonly share: number;
}

/** Shares of one generation in the order of the origins; `year` is the generation, as streams name it. */
export interface ShareRow {
  readonly year: number;
  readonly shares: number[];
  /** Of all origins that have no number. */
  readonly othersShare: number;
  /** Between what 95 of 100 outcomes lie, in the order of the origins. */
  readonly intervals: { from: number; to: number }[];
}

export interface CourseShares {
  readonly course: CourseKind;
  readonly rows: ShareRow[];
}

/** Founder shares of the next generations, as drawing and table tell them. */
export interface ForecastShares {
  readonly origins: NumberedShare[];
  readonly courses: CourseShares[];
}

/**
 * The shares of a forecast, whatever order its parts came in: origins by standing, then by their share of the breeders, then by name.
 *
 * @param most origins that keep a number, those with the largest shares; all others are put together
 */
export function forecastShares(
  { origins, courses }: Pick<PlanForecast, 'origins' | 'courses'>,
  most: number,
): ForecastShares {
  const ordered = courseOrder.flatMap((kind) => courses.filter(({ course }) => course === kind));
  const named = origins.map((origin, at) => ({
    at,
    ...originName(origin),
    standing: origin.standing,
    share: greatestShare(ordered, at),
  }));
  const bySize = [...named].sort((one, other) => other.share - one.share || compare(one.key, other.key));
  const kept = bySize
    .slice(0, most)
    .sort(
      (one, other) =>
        standings.indexOf(one.standing) - standings.indexOf(other.standing) ||
        other.share - one.share ||
        compare(one.name, other.name) ||
        compare(one.key, other.key),
    );
  return {
    origins: kept.map(({ key, name, href, standing, share }, place) => ({
      number: place + 1,
      key,
      name,
      href,
      standing,
      share,
    })),
    courses: ordered.map(({ course, generations }) => ({
      course,
      rows: [...generations]
        .sort((one, other) => one.generation - other.generation)
        .map((generation) =>
          rowOf(
            generation,
            kept.map(({ at }) => at),
          ),
        ),
    })),
  };
}

function rowOf({ generation, shares }: ForecastCourse['generations'][number], kept: readonly number[]): ShareRow {
  const means = kept.map((at) => shares[at]?.mean ?? 0);
  const rest = 1 - means.reduce((sum, share) => sum + share, 0);
  return {
    year: generation,
    shares: means,
    // what rounding leaves is no origin
    othersShare: rest > 1e-9 ? rest : 0,
    intervals: kept.map((at) => ({ from: shares[at]?.from ?? 0, to: shares[at]?.to ?? 0 })),
  };
}

/** The largest share that an origin has among the breeders of any course. */
function greatestShare(courses: readonly ForecastCourse[], at: number): number {
  return Math.max(
    0,
    ...courses.flatMap(({ generations }) =>
      generations.filter(({ generation }) => generation === 0).map(({ shares }) => shares[at]?.mean ?? 0),
    ),
  );
}

const compare = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);
