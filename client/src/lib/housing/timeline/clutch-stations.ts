import { dateBounds, daysBetween, type DateBounds } from '$shared/edtf.ts';
import type { Clutch } from '../../api/types.ts';
import { dayInWords, daysInWords } from '../../ui/dates.ts';
import { counted } from '../../ui/figures.ts';

/** What of a clutch its timeline tells. */
export type TimedClutch = Pick<
  Clutch,
  'laid' | 'hatchedOn' | 'eggs' | 'hatched' | 'outOfWater' | 'losses' | 'stage' | 'expected'
> & { young: readonly Pick<Clutch['young'][number], 'sex' | 'status' | 'hatched' | 'outOfWater'>[] };

/** Where every egg of a clutch passes, if it comes so far. */
export interface Station {
  readonly kind: 'laid' | 'hatched' | 'out' | 'ended';
  /** First and last possible day, YYYY-MM-DD; null where no day was noted. */
  readonly bounds: DayBounds | null;
  readonly what: string;
  readonly when: string;
  /** How long after the station before it; empty where that is not known. */
  readonly after: string;
}

export interface DayBounds {
  readonly earliest: string;
  readonly latest: string;
}

interface Noted {
  readonly bounds: DateBounds;
  readonly words: string;
}

/**
 * The stations of a clutch in their order: laid, hatched, out of the water, or that nothing came of it. Days that the clutch does not say
 * are those of its young; a day is not guessed.
 */
export function stationsOf(clutch: TimedClutch): Station[] {
  const { stage, eggs, hatched, outOfWater, young } = clutch;
  const hatching = noted(clutch.hatchedOn) ?? span(young.map((animal) => animal.hatched));
  const leaving = span(young.map((animal) => animal.outOfWater));
  const laying = noted(clutch.laid);
  const found: Station[] = [
    station('laid', eggs === null ? 'Laid, eggs not counted' : `${counted(eggs, ['egg', 'eggs'])} laid`, laying, null),
  ];
  if (stage === 'ended' && !hatching && (hatched ?? 0) === 0) {
    found.push(station('ended', 'Nothing came of it', null, null));
    return found;
  }
  const hasHatched = stage === 'water' || stage === 'out' || hatching !== null || (hatched ?? 0) > 0;
  if (hasHatched)
    found.push(station('hatched', hatched === null ? 'Hatched, not counted' : `${hatched} hatched`, hatching, laying));
  if (stage === 'out' || leaving !== null || (outOfWater ?? 0) > 0)
    found.push(
      station(
        'out',
        outOfWater === null ? 'Out of the water' : `${outOfWater} out of the water`,
        leaving,
        hatching ?? laying,
      ),
    );
  return found;
}

function station(kind: Station['kind'], what: string, day: Noted | null, before: Noted | null): Station {
  return {
    kind,
    bounds: day ? closed(day.bounds) : null,
    what,
    when: day ? day.words : 'day not noted',
    after: day && before ? afterInWords(before.bounds, day.bounds) : '',
  };
}

function noted(text: string | null): Noted | null {
  const bounds = text === null ? null : dateBounds(text);
  return text === null || bounds === null ? null : { bounds, words: dayInWords(text) };
}

/** From the first to the last of some dates. */
function span(texts: readonly (string | null)[]): Noted | null {
  const dates = [...new Set(texts)].flatMap((text) => noted(text) ?? []);
  const [only] = dates;
  if (only === undefined || dates.length === 1) return only ?? null;
  const earliest = dates.map(({ bounds }) => bounds.earliest ?? '').sort()[0] ?? '';
  const latest =
    dates
      .map(({ bounds }) => bounds.latest ?? '9999')
      .sort()
      .at(-1) ?? '9999';
  const bounds = { earliest: earliest || null, latest: latest === '9999' ? null : latest };
  return {
    bounds,
    words: bounds.earliest && bounds.latest ? daysInWords(bounds.earliest, bounds.latest) : 'on several days',
  };
}

/** A date that is open on a side stands where it is closed. */
function closed({ earliest, latest }: DateBounds): DayBounds | null {
  const day = earliest ?? latest;
  return day === null ? null : { earliest: day, latest: latest ?? day };
}

function afterInWords(from: DateBounds, to: DateBounds): string {
  const { least, greatest } = daysBetween(from, to);
  if (least === null || greatest === null || greatest < 0) return '';
  const from0 = Math.max(0, least);
  if (from0 === greatest) return greatest === 0 ? '' : `after ${counted(greatest, ['day', 'days'])}`;
  // beyond this the words say less than the drawing
  return greatest - from0 > 120 ? '' : `after ${from0} to ${greatest} days`;
}
