import { isDate } from '$shared/edtf.ts';

/** In which order a date such as 03/04/25 names its parts. */
export const dateOrders = ['day-first', 'month-first', 'year-first'] as const;
export type DateOrder = (typeof dateOrders)[number];

/** What the dates of one column allow. */
export interface DateOrders {
  /** Orders under which every date of the column is a day of the calendar; empty where no one order fits them all. */
  readonly possible: readonly DateOrder[];
  /** The first date that only some orders fit; empty where the order does not matter. */
  readonly example: string;
}

/** Which orders the dates of a column allow. Dates that say themselves what they mean (2021-04-12, 12 April 2021) do not count. */
export function dateOrdersOf(cells: readonly string[]): DateOrders {
  let possible: readonly DateOrder[] = dateOrders;
  let example = '';
  const seen = new Set<string>();
  for (const cell of cells) {
    const text = withoutTime(cell);
    if (text === '' || seen.has(text) || !isNumeric(text)) continue;
    seen.add(text);
    if (readPlain(text) !== null) continue;
    const fitting = dateOrders.filter((order) => dayBy(text, order) !== null);
    if (fitting.length === 0) continue;
    const left = possible.filter((order) => fitting.includes(order));
    if (example === '' || left.length < possible.length) example = text;
    possible = left;
  }
  return { possible, example };
}

/**
 * A date as keepers write it, as the register does: `12.4.2021`, `12 Apr 2021` and `ca. 1994` become `2021-04-12`, `2021-04-12` and
 * `1994~`. What cannot be read is given back as it is.
 *
 * @param order how a date of three numbers is read; left out, only where it can mean one thing
 */
export function readDate(cell: string, order?: DateOrder): string {
  const text = withoutTime(cell);
  if (text === '') return '';
  const plain = readPlain(text);
  if (plain !== null) return plain;
  const orders = order === undefined ? dateOrders : [order];
  const days = new Set(orders.map((each) => dayBy(text, each)).filter((day) => day !== null));
  const [day] = days;
  return days.size === 1 && day !== undefined ? day : cell;
}

/** Whether a cell is a date in some order. */
export function looksLikeDate(cell: string): boolean {
  const text = withoutTime(cell);
  return readPlain(text) !== null || dateOrders.some((order) => dayBy(text, order) !== null);
}

const withoutTime = (cell: string): string =>
  cell.trim().replace(/[T ]\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?\s*(?:Z|[AP]M|[+-]\d{2}:?\d{2})?$/i, '');

const three = /^(\d{1,4})([-/. ])\s*(\d{1,2})[-/. ]\s*(\d{1,4})\.?$/;
const isNumeric = (text: string): boolean => three.test(text);

/** What can be read without knowing an order. */
function readPlain(text: string): string | null {
  if (isDate(text)) return text;
  const year = /^(?:~|≈|ca\.?|circa|c\.|about|approx\.?|um|etwa|hacia|aprox\.?|alrededor de)\s*(\d{4})$/i.exec(text);
  if (year) return `${year[1] ?? ''}~`;
  const month = /^(\d{1,2})[-/.](\d{4})$/.exec(text);
  if (month) return asDate(`${month[2] ?? ''}-${two(month[1])}`);
  const named = /^(?:(\d{1,2})[\s.-]*(?:de\s+)?)?(\p{Letter}{3,})\.?[\s.,/-]*(?:de\s+)?(\d{4}|\d{2})$/iu.exec(text);
  if (named) return namedDay(named[1], named[2] ?? '', named[3] ?? '');
  const american = /^(\p{Letter}{3,})\.?\s+(\d{1,2}),?\s+(\d{4})$/iu.exec(text);
  if (american) return namedDay(american[2], american[1] ?? '', american[3] ?? '');
  const yearFirst = /^(\d{4})[-/. ]\s*(\d{1,2})[-/. ]\s*(\d{1,2})\.?$/.exec(text);
  if (yearFirst) return asDate(`${yearFirst[1] ?? ''}-${two(yearFirst[2])}-${two(yearFirst[3])}`);
  return serialDay(text);
}

/** A day as spreadsheets count them, where a date was saved as a plain number: 1 is 1900-01-01, and 1900 counts as a leap year. */
function serialDay(text: string): string | null {
  if (!/^[234]\d{4}$/.test(text)) return null;
  return new Date(Date.UTC(1899, 11, 30) + Number(text) * 86_400_000).toISOString().slice(0, 10);
}

/** The day that three numbers mean in an order; null where there is no such day. */
function dayBy(text: string, order: DateOrder): string | null {
  const [, first, mark, second, last] = three.exec(text) ?? [];
  if (first === undefined || second === undefined || last === undefined || first.length > 2) return null;
  if (last.length === 3 || (last.length === 4 && order === 'year-first')) return null;
  // With points, a date is written day first wherever it is written so.
  if (mark === '.' && order !== 'day-first') return null;
  if (order === 'year-first') return last.length <= 2 ? asDate(`${century(first)}-${two(second)}-${two(last)}`) : null;
  const [day, month] = order === 'day-first' ? [first, second] : [second, first];
  return asDate(`${century(last)}-${two(month)}-${two(day)}`);
}

const months = [
  'jan ene january januar janner jaenner enero',
  'feb february februar febrero',
  'mar mrz march marz maerz marzo',
  'apr abr april abril',
  'may mai mayo',
  'jun june juni junio',
  'jul july juli julio',
  'aug ago august agosto',
  'sep sept set september septiembre setiembre',
  'oct okt october oktober octubre',
  'nov november noviembre',
  'dec dez dic december dezember diciembre',
].map((names) => names.split(' '));

function namedDay(day: string | undefined, name: string, year: string): string | null {
  const bare = name
    .normalize('NFD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase();
  const month = months.findIndex((names) => names.includes(bare));
  if (month === -1) return null;
  const start = `${century(year)}-${two(String(month + 1))}`;
  return asDate(day === undefined ? start : `${start}-${two(day)}`);
}

/** A year of two digits is one of the last hundred, next year included. */
function century(year: string): string {
  if (year.length === 4) return year;
  const newest = new Date().getFullYear() + 1;
  const value = Number(year) + Math.floor(newest / 100) * 100;
  return String(value > newest ? value - 100 : value);
}

const two = (digits: string | undefined): string => (digits ?? '').padStart(2, '0');
const asDate = (text: string): string | null => (isDate(text) ? text : null);
