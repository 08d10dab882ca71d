import { dateBounds } from '../../shared/edtf.ts';

const msPerDay = 86_400_000;

/** First and last day that an EDTF date may mean, as the columns hold them. Throws where the scenario has a slip. */
export function boundsOf(text: string): { earliest: string; latest: string } {
  const bounds = dateBounds(text);
  if (!bounds) throw new Error(`the scenario has a date that is no EDTF date: ${text}`);
  return { earliest: bounds.earliest ?? '-infinity', latest: bounds.latest ?? 'infinity' };
}

/** The three columns of a vague date. */
export function dateColumns(column: string, text: string | null): Record<string, string | null> {
  const bounds = text === null ? { earliest: null, latest: null } : boundsOf(text);
  return { [column]: text, [`${column}_earliest`]: bounds.earliest, [`${column}_latest`]: bounds.latest };
}

/** The day in the middle of what a date may mean (its known end where it is open): good enough to reckon ages with. */
export function middleOf(text: string): string {
  const { earliest, latest } = boundsOf(text);
  if (earliest === '-infinity') return latest;
  if (latest === 'infinity') return earliest;
  const from = Date.parse(earliest);
  return dayOf(from + (Date.parse(latest) - from) / 2);
}

export function addDays(day: string, days: number): string {
  return dayOf(Date.parse(day) + days * msPerDay);
}

export function addYears(day: string, years: number): string {
  return addDays(day, Math.round(years * 365.25));
}

export function daysFrom(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / msPerDay);
}

export const isDay = (text: string): boolean => /^\d{4}-\d{2}-\d{2}$/.test(text);

/** The later of two days. */
export const later = (a: string, b: string): string => (a > b ? a : b);

function dayOf(instant: number): string {
  return new Date(instant).toISOString().slice(0, 10);
}
