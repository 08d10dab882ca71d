import { daysFrom } from '../../today/days.ts';
import { writingTag } from '../../words/language.ts';

/** A day or a month on the ruler of a timeline. */
export interface RulerTick {
  /** Pixels from the ruler's top. */
  readonly y: number;
  readonly text: string;
}

/** Least distance of two written ticks, in pixels. */
const APART = 26;
const monthSteps = [1, 2, 3, 6, 12, 24, 60, 120];
const dayOfMonth = new Intl.DateTimeFormat(writingTag, { day: 'numeric', month: 'short', timeZone: 'UTC' });
const month = new Intl.DateTimeFormat(writingTag, { month: 'short', timeZone: 'UTC' });

/**
 * Ticks of a ruler: Mondays where weeks have room, else months, every so many of them; January says its year.
 *
 * @param first its first day, YYYY-MM-DD
 * @param days how many days it is long
 * @param height how many pixels
 */
export function rulerTicks(first: string, days: number, height: number): RulerTick[] {
  const perDay = height / days;
  return perDay * 7 >= APART ? mondays(first, days, perDay) : months(first, days, perDay);
}

function mondays(first: string, days: number, perDay: number): RulerTick[] {
  const begin = new Date(`${first}T00:00:00Z`);
  const ticks: RulerTick[] = [];
  for (let day = (8 - begin.getUTCDay()) % 7; day <= days; day += 7) {
    const date = new Date(begin.getTime() + day * 86_400_000);
    ticks.push({ y: day * perDay, text: dayOfMonth.format(date) });
  }
  return ticks;
}

function months(first: string, days: number, perDay: number): RulerTick[] {
  const step = monthSteps.find((one) => one * 30.4 * perDay >= APART) ?? 240;
  const year = Number(first.slice(0, 4));
  const ticks: RulerTick[] = [];
  for (let at = step >= 12 ? -((year * 12) % step) : 0; ; at += step) {
    const date = new Date(Date.UTC(year, at, 1));
    const day = daysFrom(first, date.toISOString().slice(0, 10));
    if (day > days) return ticks;
    if (day < 0) continue;
    ticks.push({
      y: day * perDay,
      text: date.getUTCMonth() === 0 ? String(date.getUTCFullYear()) : month.format(date),
    });
  }
}
