import type { Standing } from '$shared/vocabulary.ts';
import { fractionAxis, rootAxis, type Axis } from './axes.ts';
import { placeNames, streamsOf, type Stream, type StreamName } from './source-streams.ts';
import type { YearRow, YearsData } from './year-rows.ts';

/** Sizes of the chart in CSS pixels. */
export const yearSizes = { ruler: 50, head: 64, foot: 10, gap: 34, between: 30, widest: 856 } as const;

export type TrackKind = 'sources' | 'inbreeding' | 'diversity' | 'young';

/** A strip of the ladder with one kind of figure. */
export interface Track {
  kind: TrackKind;
  left: number;
  width: number;
  /** Panel that it stands in: wide screens have one, narrow ones two, one below the other. */
  panel: number;
}

/** A year on the ladder. */
export interface Rung {
  year: number;
  /** Middle of the year, from the top of its panel's ladder. */
  y: number;
  strong: boolean;
  /** Whether there is room to write beside it. */
  isWritten: boolean;
  /** The animals hatched in it; null where none of the set did. */
  row: YearRow | null;
}

export interface YearsLayout {
  width: number;
  height: number;
  /** Height of a year. */
  pitch: number;
  /** Top of each panel's ladder. */
  panels: number[];
  ladder: number;
  rungs: Rung[];
  tracks: Track[];
  streams: Stream[];
  names: StreamName[];
  inbreeding: Axis;
  diversity: Axis;
}

/** A stream's pattern: what stands for its standing. */
export const patternOf = (standing: Standing): string => `url(#q-${standing})`;

/**
 * Lays the years of a set out: time runs down one ladder with its tracks side by side; below 640 px the sources stand in a panel
 * of their own above the others.
 *
 * @param width of the frame in pixels
 */
export function layoutYears(data: YearsData, width: number): YearsLayout {
  const first = data.rows[0]?.year ?? 0;
  const last = data.rows[data.rows.length - 1]?.year ?? first - 1;
  const count = Math.max(0, last - first + 1);
  const pitch = Math.min(30, Math.max(5, Math.round(760 / Math.max(1, count))));
  const full = Math.max(288, Math.min(yearSizes.widest, width));
  const tracks = full < 640 ? twoPanels(full) : onePanel(full);
  const ladder = count * pitch;
  const panel = yearSizes.head + ladder + yearSizes.foot;
  const panels = full < 640 ? [yearSizes.head, panel + yearSizes.between + yearSizes.head] : [yearSizes.head];
  const rungs = rungsOf(data.rows, first, count, pitch);
  const [sources, inbreeding, diversity] = (['sources', 'inbreeding', 'diversity'] as const).map((kind) =>
    trackOf(tracks, kind),
  ) as [Track, Track, Track];
  const streams = streamsOf(data, rungs, pitch, sources);
  return {
    width: full,
    height: (panels[panels.length - 1] ?? 0) + ladder + yearSizes.foot,
    pitch,
    panels,
    ladder,
    rungs,
    tracks,
    streams,
    names: placeNames(streams, pitch),
    inbreeding: rootAxis(
      inbreeding.left,
      inbreeding.width,
      Math.max(0, ...data.rows.map((row) => row.inbreeding.greatest ?? 0)),
    ),
    diversity: fractionAxis(diversity.left, diversity.width, Math.min(1, ...data.rows.map((row) => row.geneDiversity))),
  };
}

/** The track of a kind; every layout has each kind once. */
export function trackOf(tracks: readonly Track[], kind: TrackKind): Track {
  const found = tracks.find((track) => track.kind === kind);
  if (!found) throw new Error(`The chart has no track of ${kind}.`);
  return found;
}

function onePanel(full: number): Track[] {
  const { ruler, gap } = yearSizes;
  const young = 44;
  const free = full - ruler - young - 3 * gap;
  const parts = [0.5, 0.29, 0.21].map((part) => Math.floor(free * part));
  return alongside(0, ruler, gap, [
    ['sources', parts[0] ?? 0],
    ['inbreeding', parts[1] ?? 0],
    ['diversity', parts[2] ?? 0],
    ['young', young],
  ]);
}

function twoPanels(full: number): Track[] {
  const { ruler } = yearSizes;
  const [gap, young] = [22, 42];
  const free = full - ruler - young - 2 * gap;
  return [
    { kind: 'sources', left: ruler, width: full - ruler - 4, panel: 0 },
    ...alongside(1, ruler, gap, [
      ['inbreeding', Math.floor(free * 0.6)],
      ['diversity', Math.floor(free * 0.4)],
      ['young', young],
    ]),
  ];
}

function alongside(panel: number, from: number, gap: number, widths: [TrackKind, number][]): Track[] {
  let left = from;
  return widths.map(([kind, width]) => {
    const track = { kind, left, width, panel };
    left += width + gap;
    return track;
  });
}

/** Every year from the first to the last, those without young as well: time has no gaps. */
function rungsOf(rows: readonly YearRow[], first: number, count: number, pitch: number): Rung[] {
  const byYear = new Map(rows.map((row) => [row.year, row]));
  const step = [1, 2, 5, 10, 20, 50].find((one) => one * pitch >= 15) ?? 100;
  return Array.from({ length: count }, (_, at) => {
    const year = first + at;
    const strong = year % 5 === 0;
    return { year, y: (at + 0.5) * pitch, strong, isWritten: year % step === 0, row: byYear.get(year) ?? null };
  });
}
