import parse, { Date as ExtendedDay, Season } from 'edtf';
import { isOpen } from './date-words.ts';

/**
 * Dates as history left them: EDTF strings of ISO 8601-2:2019 level 1 (`1994`, `1994~`, `199X`, `1993/1996`, `2021-04-12`).
 * The grammar is the edtf library's; this module adds the calendar bounds that sorting and comparing need.
 */

/** First and last calendar day (`YYYY-MM-DD`) that a date may mean; null where it is open on that side. */
export interface DateBounds {
  readonly earliest: string | null;
  readonly latest: string | null;
}

const calendarDay = /^(\d{4})-(\d{2})-(\d{2})$/;
const yearMin = 1700;
const yearMax = 2199;

/**
 * Bounds of an EDTF string, or null where the text is no EDTF level 1 date between the years 1700 and 2199.
 * A season may mean any day of its year, since the seasons of the two hemispheres differ. `?`, `~` and `%` do not widen.
 */
export function dateBounds(text: string): DateBounds | null {
  const day = calendarDay.exec(text);
  if (day) return isCalendarDay(text) ? { earliest: text, latest: text } : null;
  if (text.length > 40 || !/^[\d.X~?%/-]+$/.test(text) || text.includes('Y')) return null;
  const slash = text.indexOf('/');
  if (slash === -1) return pointBounds(text);
  const from = text.slice(0, slash);
  const to = text.slice(slash + 1);
  if (isOpen(from) && isOpen(to)) return null;
  const first = isOpen(from) ? { earliest: null, latest: null } : pointBounds(from);
  const last = isOpen(to) ? { earliest: null, latest: null } : pointBounds(to);
  if (!first || !last) return null;
  if (first.earliest !== null && last.latest !== null && first.earliest > last.latest) return null;
  return { earliest: first.earliest, latest: last.latest };
}

/** Whether a text is an EDTF level 1 date that the register takes. */
export function isDate(text: string): boolean {
  return dateBounds(text) !== null;
}

/** Whether a date certainly lies before another: its last possible day is before the other's first. */
export function isCertainlyBefore(a: DateBounds, b: DateBounds): boolean {
  return a.latest !== null && b.earliest !== null && a.latest < b.earliest;
}

/** Least and greatest number of days from one date to another (either may be negative), null where a side is open. */
export function daysBetween(from: DateBounds, to: DateBounds): { least: number | null; greatest: number | null } {
  return { least: span(from.latest, to.earliest), greatest: span(from.earliest, to.latest) };
}

function pointBounds(text: string): DateBounds | null {
  const day = calendarDay.exec(text);
  if (day) return isCalendarDay(text) ? { earliest: text, latest: text } : null;
  const known = parsed.get(text);
  if (known !== undefined) return known;
  const bounds = parsePoint(text);
  if (parsed.size >= PARSED_MOST) parsed.clear();
  parsed.set(text, bounds);
  return bounds;
}

/** Vague dates already parsed: a register holds few different ones, and the grammar takes most of a millisecond for each. */
const parsed = new Map<string, DateBounds | null>();
const PARSED_MOST = 2000;

function parsePoint(text: string): DateBounds | null {
  try {
    const date = parse(text, { level: 1 });
    // By class, not by `type`: that is the class's name, which a minified client has shortened.
    const isSeason = date instanceof Season;
    if (!isSeason && !(date instanceof ExtendedDay)) return null;
    const year = text.slice(0, 4);
    const bounds = isSeason
      ? { earliest: `${year}-01-01`, latest: `${year}-12-31` }
      : { earliest: toDay(date.min), latest: toDay(date.max) };
    return isYearTaken(bounds.earliest) && isYearTaken(bounds.latest) ? bounds : null;
  } catch {
    return null;
  }
}

function isCalendarDay(text: string): boolean {
  const instant = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(instant) && toDay(instant) === text && isYearTaken(text);
}

const isYearTaken = (day: string): boolean => Number(day.slice(0, 4)) >= yearMin && Number(day.slice(0, 4)) <= yearMax;

const toDay = (instant: number): string => new Date(instant).toISOString().slice(0, 10);

function span(from: string | null, to: string | null): number | null {
  return from === null || to === null ? null : Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000);
}
