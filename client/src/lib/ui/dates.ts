import { dateInWords } from '$shared/date-words.ts';
import { writingTag } from '../words/language.ts';

/** Today as a calendar date of this device, `2026-11-25`. */
export function today(daysAgo = 0): string {
  const day = new Date();
  day.setDate(day.getDate() - daysAgo);
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

/** A day or month in words: `2021-04-12~` becomes "about 12 April 2021". */
export function dayInWords(text: string): string {
  const [, year = '', month = '', day, mark] = /^(\d{4})-(\d{2})(?:-(\d{2}))?([~?%])?$/.exec(text) ?? [];
  if (year === '') return dateInWords(text);
  const instant = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day ?? 1)));
  const said = (day ? wholeDay : wholeMonth).format(instant);
  if (mark === '~') return `about ${said}`;
  if (mark === '?') return `${said}, uncertain`;
  return mark === '%' ? `about ${said}, uncertain` : said;
}

/** Two calendar days in words, as short as they go: "6–11 December 2026". */
export function daysInWords(first: string, last: string): string {
  if (first === last) return dayInWords(last);
  // some browsers put thin spaces about the dash, others none
  return wholeDay.formatRange(new Date(first), new Date(last)).replace(/\s*–\s*/, '–');
}

const wholeDay = new Intl.DateTimeFormat(writingTag, { dateStyle: 'long', timeZone: 'UTC' });
const wholeMonth = new Intl.DateTimeFormat(writingTag, { year: 'numeric', month: 'long', timeZone: 'UTC' });
const weekday = new Intl.DateTimeFormat(writingTag, { weekday: 'long', timeZone: 'UTC' });

/** The weekday of a calendar day: "Wednesday". */
export const weekdayOf = (day: string): string => weekday.format(new Date(`${day}T00:00:00Z`));
