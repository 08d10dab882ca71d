import { daysFrom } from '../../today/days.ts';
import { stationsOf, type Station, type TimedClutch } from './clutch-stations.ts';
import { threadsOf, type Thread } from './clutch-threads.ts';
import { rulerTicks, type RulerTick } from './ruler-ticks.ts';
import { separate, timelineLabels, type TimelineLabel } from './timeline-labels.ts';

/** A station on the page; pixels from the top of the drawing. */
export interface PlacedStation extends Station {
  readonly y: number;
  /** First and last possible day; both at `y` where it is one day or none. */
  readonly from: number;
  readonly to: number;
}

export interface TimelineLayout {
  readonly height: number;
  /** The ruler: from its first to its last day; what lies outside is not to scale. */
  readonly rulerTop: number;
  readonly rulerBottom: number;
  readonly ticks: readonly RulerTick[];
  readonly stations: readonly PlacedStation[];
  readonly threads: readonly Thread[];
  /** How many eggs each thread is. */
  readonly perThread: number;
  /** Half of a symbol's width, such that symbols do not touch. */
  readonly markSize: number;
  /** The window in which the next thing is expected. */
  readonly window: { readonly top: number; readonly bottom: number } | null;
  readonly now: number | null;
  readonly labels: readonly TimelineLabel[];
  /** Where words begin, and the threads before them end. */
  readonly wordsLeft: number;
  readonly threadsRight: number;
}

/** Room of the ruler at the left, in pixels. */
export const RULER = 58;
const TOP = 14;
const RULER_HEIGHT = 250;
/** Below this width words take more lines: the threads stand closer, the ruler is taller. */
const NARROW = 360;
const NARROW_RULER_HEIGHT = 320;
/** Between two things of which one has no day. */
const UNDATED = 52;

/**
 * Draws a clutch from egg to froglet: time runs down beside a ruler of days, each egg is a thread that ends where it was lost, goes on to
 * today, or ends in a froglet. A day that nobody noted lies between its neighbours, off the ruler's scale.
 * Null where no day of it is known.
 *
 * @param on the day that it is looked at, YYYY-MM-DD
 * @param width pixels, at least 240
 */
export function layoutTimeline(clutch: TimedClutch, on: string, width: number): TimelineLayout | null {
  const stations = inOrder(stationsOf(clutch));
  const dated = stations.flatMap(({ bounds }) => bounds ?? []);
  const first = dated[0]?.earliest;
  if (first === undefined) return null;
  const goesOn = clutch.stage === 'egg' || clutch.stage === 'water';
  const noted = [...dated.map(({ latest }) => latest), ...(clutch.expected ? [clutch.expected.to] : [])].sort();
  const lastNoted = noted.at(-1) ?? first;
  const span = Math.max(daysFrom(first, lastNoted), 10);
  const age = daysFrom(first, on);
  const isNowOnRuler = goesOn && age >= 0 && age <= span * 1.6;
  const days = Math.max(span, isNowOnRuler ? age : 0);
  const leading = stations.findIndex(({ bounds }) => bounds !== null);
  const rulerTop = TOP + leading * UNDATED;
  const isNarrow = width < NARROW;
  const rulerHeight = isNarrow ? NARROW_RULER_HEIGHT : RULER_HEIGHT;
  const rulerBottom = rulerTop + rulerHeight;
  const at = (day: string): number => rulerTop + (daysFrom(first, day) / days) * rulerHeight;

  let beyond = rulerBottom;
  const now = isNowOnRuler ? at(on) : null;
  const placed = placeStations(stations, at, rulerTop, now, () => (beyond += UNDATED));
  const nowBeyond = goesOn && age > 0 && !isNowOnRuler ? (beyond += UNDATED) : null;
  const nowY = now ?? nowBeyond;
  const window = clutch.expected
    ? { top: at(clutch.expected.from), bottom: at(clutch.expected.to) + rulerHeight / days }
    : null;
  const { threads, perThread, markSize } = threadsOf(clutch, placed, {
    left: RULER + (isNarrow ? 18 : 24),
    room: isNarrow ? 50 : Math.min(170, width * 0.3),
    last: nowY ?? beyond,
    at,
  });
  const threadsRight = Math.max(...threads.map(({ x }) => x)) + 10;
  const wordsLeft = threadsRight + 26;
  const labels = separate(timelineLabels(clutch, placed, { window, now: nowY }, on, width - wordsLeft));
  const height = Math.max(beyond + 16, ...labels.map(({ bottom }) => bottom));
  return {
    height,
    rulerTop,
    rulerBottom,
    ticks: rulerTicks(first, days, rulerHeight).map((tick) => ({ ...tick, y: tick.y + rulerTop })),
    stations: placed,
    threads,
    perThread,
    markSize,
    window,
    now: nowY,
    labels,
    wordsLeft,
    threadsRight,
  };
}

/** Takes from vague days what the stations before and after them rule out. */
function inOrder(stations: readonly Station[]): Station[] {
  const tight = stations.map((station) => ({ ...station }));
  let least = '';
  for (const station of tight) {
    if (!station.bounds) continue;
    const earliest = station.bounds.earliest > least ? station.bounds.earliest : least;
    station.bounds = { earliest, latest: station.bounds.latest > earliest ? station.bounds.latest : earliest };
    least = earliest;
  }
  let most = '9999';
  for (const station of tight.reverse()) {
    if (!station.bounds) continue;
    const latest = station.bounds.latest < most ? station.bounds.latest : most;
    station.bounds = { latest, earliest: station.bounds.earliest < latest ? station.bounds.earliest : latest };
    most = latest;
  }
  return tight.reverse();
}

function placeStations(
  stations: readonly Station[],
  at: (day: string) => number,
  rulerTop: number,
  now: number | null,
  below: () => number,
): PlacedStation[] {
  const ys = stations.map(({ bounds }) => (bounds ? (at(bounds.earliest) + at(bounds.latest)) / 2 : null));
  const firstDated = ys.findIndex((y) => y !== null);
  return stations.map((station, index) => {
    const known = ys[index] ?? null;
    if (known !== null && station.bounds)
      return { ...station, y: known, from: at(station.bounds.earliest), to: at(station.bounds.latest) };
    const y = placeUndated(ys, index, firstDated, rulerTop, now, below);
    ys[index] = y;
    return { ...station, y, from: y, to: y };
  });
}

function placeUndated(
  ys: readonly (number | null)[],
  index: number,
  firstDated: number,
  rulerTop: number,
  now: number | null,
  below: () => number,
): number {
  if (index < firstDated) return rulerTop - (firstDated - index) * UNDATED;
  const previous = ys[index - 1] ?? rulerTop;
  const next = ys.slice(index + 1).findIndex((y) => y !== null);
  const until = next === -1 ? now : (ys[index + 1 + next] ?? null);
  if (until === null) return below();
  const between = next === -1 ? ys.length - index : next + 1;
  return previous + (until - previous) / (between + 1);
}
