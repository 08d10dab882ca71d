import { daysBetween, type DateBounds } from '../../../shared/edtf.ts';
import type { RangeFacts } from './facts.ts';
import { say } from '../../platform/say.ts';

const daysInMonth = 30.4375;
const daysInYear = 365.25;

export type SpanUnit = 'days' | 'months' | 'years';

const unitDays: Record<SpanUnit, number> = { days: 1, months: daysInMonth, years: daysInYear };

/** A length of time that two vague dates leave open; null where a side is open. */
export interface Span {
  readonly least: number | null;
  readonly greatest: number | null;
}

/** Time between two dates in a unit (months of 30.4375 days, years of 365.25), null where a date is not given. */
export function spanBetween(from: DateBounds | null, to: DateBounds | null, unit: SpanUnit): Span | null {
  return from && to ? spanIn(unit, daysBetween(from, to)) : null;
}

/** A number of days in a unit (months of 30.4375 days, years of 365.25), null where it is not known. */
export function spanIn(unit: SpanUnit, days: Span | null): Span | null {
  if (days === null) return null;
  const { least, greatest } = days;
  const size = unitDays[unit];
  return { least: least === null ? null : least / size, greatest: greatest === null ? null : greatest / size };
}

/** The least that a profile knows of: the least ever seen, else the least usual. */
export function leastKnown(range: RangeFacts): number | null {
  return range.extremeLeast ?? range.usualLeast;
}

/** The most that a profile knows of: the most ever seen, else the most usual. */
export function mostKnown(range: RangeFacts): number | null {
  return range.extremeMost ?? range.usualMost;
}

/** Whether a time is certainly shorter than a bound. */
export function isCertainlyShorter(span: Span | null, least: number | null): boolean {
  return span?.greatest !== null && span?.greatest !== undefined && least !== null && span.greatest < least;
}

/** Whether a time is certainly longer than a bound. */
export function isCertainlyLonger(span: Span | null, most: number | null): boolean {
  return span?.least !== null && span?.least !== undefined && most !== null && span.least > most;
}

/** A number with its unit, at most one decimal: "1 month", "5.5 months". */
export function amount(value: number, unit: string): string {
  const shown = Math.round(value * 10) / 10;
  return say`${shown} ${shown === 1 ? unit.replace(/s$/, '') : unit}`;
}

/** A time in words, whole numbers where it is long: "5 months", "5 to 7 months", "at least 5 months". */
export function spanInWords(span: Span, unit: SpanUnit): string {
  const least = span.least === null ? null : Math.floor(Math.max(0, span.least));
  const greatest = span.greatest === null ? null : Math.floor(Math.max(0, span.greatest));
  if (least === null && greatest === null) return say`an unknown number of ${unit}`;
  if (least === null) return say`at most ${amount(greatest ?? 0, unit)}`;
  if (greatest === null) return say`at least ${amount(least, unit)}`;
  return least === greatest ? amount(least, unit) : say`${least} to ${amount(greatest, unit)}`;
}

/** What a profile says, in words: "usual is 60 to 110 days, 45 to 150 were seen". */
export function rangeInWords(range: RangeFacts, unit: string): string {
  const usual = sideInWords(range.usualLeast, range.usualMost);
  const extreme = sideInWords(range.extremeLeast, range.extremeMost);
  if (usual !== null && extreme !== null) return say`usual is ${usual} ${unit}, known is ${extreme}`;
  return usual === null ? say`known is ${extreme ?? say`nothing`} ${unit}` : say`usual is ${usual} ${unit}`;
}

function sideInWords(least: number | null, most: number | null): string | null {
  if (least === null) return most === null ? null : say`up to ${most}`;
  if (most === null) return say`${least} or more`;
  return least === most ? String(least) : say`${least} to ${most}`;
}
