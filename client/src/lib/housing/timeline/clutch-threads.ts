import { dateBounds } from '$shared/edtf.ts';
import { tadpolesLeft } from '../../today/today-words.ts';
import type { TimedClutch } from './clutch-stations.ts';
import type { PlacedStation, TimelineLayout } from './timeline-layout.ts';

/** What became of one egg, or of each of a few. */
export interface Thread {
  readonly x: number;
  /** From the laying through the hatching, as far as it came. */
  readonly points: readonly { readonly y: number; readonly isDated: boolean }[];
  readonly end: 'lost' | 'out' | 'goes-on';
  /** Of those that are out of the water: the symbol of an animal in the register. */
  readonly animal: { readonly sex: string; readonly isAlive: boolean } | null;
}

const MOST_THREADS = 40;

/**
 * The threads of a clutch, those that came farthest first. Of many eggs, each thread is several.
 *
 * @param place where the first thread runs, how wide all are, down to where those go that go on, and where a day is; pixels
 */
export function threadsOf(
  clutch: TimedClutch,
  stations: readonly PlacedStation[],
  place: { left: number; room: number; last: number; at: (day: string) => number },
): Pick<TimelineLayout, 'threads' | 'perThread' | 'markSize'> {
  const { eggs, hatched, outOfWater, young, stage } = clutch;
  const all = Math.max(eggs ?? 0, hatched ?? 0, outOfWater ?? 0, young.length, 1);
  const perThread = Math.ceil(all / MOST_THREADS);
  const count = Math.ceil(all / perThread);
  const share = (number: number): number => Math.min(count, Math.round(number / perThread));
  const [laid, hatch, out, ended] = (['laid', 'hatched', 'out', 'ended'] as const).map((kind) => {
    const station = stations.find((one) => one.kind === kind);
    return station && { y: station.y, isDated: station.bounds !== null };
  });
  const begin = laid ?? { y: place.last, isDated: false };
  const last = { y: place.last, isDated: true };
  const leaving = stations.find(({ kind }) => kind === 'out');
  const hatchedOnes = hatch ? share(hatched ?? all) : 0;
  const outOnes = out ? share(outOfWater ?? young.length) : 0;
  const left = stage === 'water' ? share(tadpolesLeft(clutch) ?? all) : 0;

  const wayOf = (index: number): Pick<Thread, 'points' | 'end'> => {
    if (ended) return { points: [begin, ended], end: 'lost' };
    if (!hatch) return { points: [begin, last], end: 'goes-on' };
    if (index >= hatchedOnes) return { points: [begin, hatch], end: 'lost' };
    if (out && index < outOnes) return { points: [begin, hatch, out], end: 'out' };
    if (index < outOnes + left) return { points: [begin, hatch, last], end: 'goes-on' };
    return { points: [begin, hatch, out ?? last], end: 'lost' };
  };
  const spacing = count === 1 ? 0 : Math.min(12, place.room / (count - 1));
  const threads = Array.from({ length: count }, (_, index): Thread => {
    const way = wayOf(index);
    const animal = way.end === 'out' ? young[index * perThread] : undefined;
    const day = animal?.outOfWater ? dateBounds(animal.outOfWater) : null;
    const points =
      day?.earliest && day.latest
        ? endingAt(way.points, (place.at(day.earliest) + place.at(day.latest)) / 2, leaving)
        : way.points;
    return {
      points,
      end: way.end,
      x: place.left + index * spacing,
      animal: animal ? { sex: animal.sex, isAlive: animal.status === 'alive' } : null,
    };
  });
  return { threads, perThread, markSize: count === 1 ? 4.6 : Math.min(4.6, spacing * 0.46) };
}

/** An animal whose own day is known left the water on that day, and not at the middle of all. */
function endingAt(points: Thread['points'], y: number, among: PlacedStation | undefined): Thread['points'] {
  const within = Math.max(among?.from ?? y, Math.min(among?.to ?? y, y));
  return [...points.slice(0, -1), { y: Math.max(points.at(-2)?.y ?? within, within), isDated: true }];
}
