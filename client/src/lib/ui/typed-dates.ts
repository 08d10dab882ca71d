import { dateInWords } from '$shared/date-words.ts';
import { isDate } from '$shared/edtf.ts';
import { dayInWords } from './dates.ts';

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
