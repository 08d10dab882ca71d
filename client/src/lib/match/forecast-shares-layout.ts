import { placeNames, streamsOf, type Stream, type StreamName } from '../charts/years/source-streams.ts';
import { forecastSizes, type CourseKind, type ForecastRung } from './forecast-layout.ts';
import type { ForecastShares } from './forecast-shares.ts';

/** The streams of one course. */
export interface ShareTrack {
  readonly course: CourseKind;
  readonly left: number;
  readonly width: number;
  /** Top of its ladder. */
  readonly top: number;
  readonly streams: Stream[];
  readonly names: StreamName[];
}

export interface SharesLayout {
  readonly width: number;
  readonly height: number;
  readonly ladder: number;
  readonly ruler: number;
  readonly isNarrow: boolean;
  readonly rungs: ForecastRung[];
  readonly tracks: ShareTrack[];
}

const [head, gap, narrowBelow] = [34, 22, 640];

/**
 * Lays founder shares out: generations run down one ladder with a track for each course beside it, in which streams are as wide as the
 * shares of their origins; on narrow screens one track below the other.
 *
 * @param width of the frame in pixels
 */
export function layoutShares({ origins, courses }: ForecastShares, width: number): SharesLayout {
  const { pitch, foot, widest } = forecastSizes;
  const full = Math.max(288, Math.min(widest, width));
  const isNarrow = full < narrowBelow;
  const ruler = isNarrow ? forecastSizes.narrowRuler : forecastSizes.ruler;
  const generations = [...new Set(courses.flatMap(({ rows }) => rows.map(({ year }) => year)))].sort((a, b) => a - b);
  const rungs = generations.map((generation, at) => ({ generation, y: (at + 0.5) * pitch }));
  const ladder = rungs.length * pitch;
  const free = full - ruler - 2;
  const beside = isNarrow ? 1 : Math.max(1, courses.length);
  const each = Math.floor((free - gap * (beside - 1)) / beside);
  const tracks = courses.map(({ course, rows }, at): ShareTrack => {
    const left = isNarrow ? ruler : ruler + at * (each + gap);
    const top = head + (isNarrow ? at * (ladder + head + gap) : 0);
    const places = rungs.map(({ generation, y }) => ({ year: generation, y }));
    const streams = streamsOf({ origins, rows }, places, pitch, { left, width: each });
    return { course, left, width: each, top, streams, names: placeNames(streams, pitch) };
  });
  const lowest = Math.max(head, ...tracks.map(({ top }) => top));
  return { width: full, height: lowest + ladder + foot, ladder, ruler, isNarrow, rungs, tracks };
}
