import { dateInWords, isDate } from '$shared/edtf.ts';
import { writingTag } from '../words/language.ts';

/** What is wrong with a typed date, in words, or undefined where it is empty or reads well. */
export function dateProblem(text: string): string | undefined {
  const typed = text.trim();
  if (typed === '' || isDate(typed)) return undefined;
  return `“${typed}” is no date the register can read. Write year-month-day (2021-04-12), or as much as is known: 2021-04, 2021, 2021~ for about, 2019/2021 for between.`;
}

/** A date said in words where the words say more than the date itself. */
export function dateBeside(text: string): string | undefined {
  const typed = text.trim();
  if (typed === '' || !isDate(typed)) return undefined;
  const words = /^\d{4}-\d{2}(-\d{2})?[~?%]?$/.test(typed) ? dayInWords(typed) : dateInWords(typed);
  return words === typed ? undefined : words;
}

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
