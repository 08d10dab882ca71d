import type { DateBounds } from '../../shared/edtf.ts';
import { dateBounds } from '../../shared/edtf.ts';
import type { SheetColumn } from '../../shared/register-sheet.ts';
import type { SheetReport } from './sheet-report.ts';
import type { SheetTable } from './sheet-table.ts';
import { say } from '../platform/say.ts';

/** The dates of a sheet, each different text read once. */
export class DateCells {
  readonly #table: SheetTable;
  readonly #read = new Map<number, DateBounds | null>();

  constructor(table: SheetTable) {
    this.#table = table;
  }

  /** The calendar days that a cell may mean; null where it is empty or no date. */
  bounds(column: SheetColumn, animal: number): DateBounds | null {
    const number = this.#table.textNumber(column, animal);
    if (number === 0) return null;
    let bounds = this.#read.get(number);
    if (bounds === undefined) {
      bounds = dateBounds(this.#table.text(column, animal));
      this.#read.set(number, bounds);
    }
    return bounds;
  }

  /** Refuses the cell where it is neither empty nor a date. */
  check(column: SheetColumn, animal: number, report: SheetReport): void {
    if (this.#table.textNumber(column, animal) === 0 || this.bounds(column, animal) !== null) return;
    const text = this.#table.text(column, animal);
    report.refuse(animal, column, say`"${text.slice(0, 60)}" is no date that can be read. ${dateRemedy(text)}`);
  }
}

/** What to write instead: the dates that the text may mean, where it is written in a usual way. */
function dateRemedy(text: string): string {
  const meant = [...new Set(readings(text))].filter((day) => dateBounds(day) !== null);
  if (meant.length > 0) return say`Write ${meant.join(' or ')}.`;
  return say`Write year-month-day such as 2021-04-12, or 2021-04, 2021, 1994~ (about), 199X, 1993/1996.`;
}

function readings(text: string): string[] {
  const yearFirst = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})\.?$/.exec(text);
  if (yearFirst) return [day(yearFirst[1], yearFirst[2], yearFirst[3])];
  const yearLast = /^(\d{1,2})([-/.])(\d{1,2})[-/.](\d{4})$/.exec(text);
  if (yearLast) {
    const dayFirst = day(yearLast[4], yearLast[3], yearLast[1]);
    return yearLast[2] === '.' ? [dayFirst] : [dayFirst, day(yearLast[4], yearLast[1], yearLast[3])];
  }
  const monthOfYear = /^(\d{1,2})[-/.](\d{4})$/.exec(text);
  if (monthOfYear) return [`${monthOfYear[2] ?? ''}-${two(monthOfYear[1])}`];
  const about = /^(?:~|ca\.?|circa|about|c\.)\s*(\d{4})$/i.exec(text);
  if (about) return [`${about[1] ?? ''}~`];
  // A day number as spreadsheets count them when a date was saved as a plain number: 1 is 1900-01-01, 1900 counted as a leap year.
  if (/^[234]\d{4}$/.test(text))
    return [new Date(Date.UTC(1899, 11, 30) + Number(text) * 86_400_000).toISOString().slice(0, 10)];
  return [];
}

const two = (digits: string | undefined): string => (digits ?? '').padStart(2, '0');
const day = (year: string | undefined, month: string | undefined, date: string | undefined): string =>
  `${year ?? ''}-${two(month)}-${two(date)}`;
