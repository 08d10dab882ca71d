import type { ProblemList } from './problem-list.ts';
import type { SheetColumn } from '../../shared/register-sheet.ts';
import { headerOf } from '../../shared/register-sheet.ts';
import { longestCell, longestIn, textColumns } from './sheet-columns.ts';
import type { HeaderCell } from './sheet-header.ts';
import { columnLetters, readHeader } from './sheet-header.ts';
import { SheetTable } from './sheet-table.ts';
import { say } from '../platform/say.ts';

/** Most animals in one sheet. */
const mostRows = 1_000_000;

/**
 * Takes the rows of a sheet one by one, the header first, and fills a table with them.
 *
 * Rows are numbered as a spreadsheet shows them: blank rows count, a row whose cells contain line breaks counts once.
 */
export class SheetRows {
  readonly table = new SheetTable();
  readonly #problems: ProblemList;
  readonly #warnings: ProblemList;
  readonly #cells = new Map<SheetColumn, string>();
  #header: HeaderCell[] | null = null;
  #row = 0;
  /** Set once nothing that follows can be read. */
  stopped = false;

  constructor(problems: ProblemList, warnings: ProblemList) {
    this.#problems = problems;
    this.#warnings = warnings;
  }

  /** The row that was taken last; 0 before the first. */
  get row(): number {
    return this.#row;
  }

  /** Whether a header row has been read. */
  get hasHeader(): boolean {
    return this.#header !== null;
  }

  /** Takes the next row. */
  take(record: readonly string[]): void {
    if (this.stopped) return;
    this.#row += 1;
    if (record.every((cell) => cell.trim() === '')) return;
    if (this.#header === null) {
      this.#header = readHeader(this.#row, record, this.#problems, this.#warnings);
      this.stopped = this.#header === null;
      return;
    }
    if (this.table.length >= mostRows) {
      this.#problems.add(
        this.#row,
        '',
        say`A sheet may hold ${mostRows} animals at most. Divide it into several files.`,
      );
      this.stopped = true;
      return;
    }
    this.#takeAnimal(record, this.#header);
  }

  #takeAnimal(record: readonly string[], header: readonly HeaderCell[]): void {
    if (!this.#fits(record, header.length)) return;
    this.#cells.clear();
    let kept = '';
    for (const [place, { column, header: name }] of header.entries()) {
      const raw = record[place] ?? '';
      if (raw === '') continue;
      const cell = this.#clean(raw, column, name === '' ? columnLetters(place) : name);
      if (cell === '') continue;
      if (column !== null) this.#cells.set(column, cell);
      else if (name !== '') kept += `${kept === '' ? '' : '\n'}${name}: ${cell}`;
      else
        this.#problems.add(
          this.#row,
          columnLetters(place),
          say`This cell stands in a column without a header. Name the column in row 1.`,
        );
    }
    if (kept !== '') this.#keepAsNotes(kept);
    this.table.add(this.#row, this.#cells);
  }

  #fits(record: readonly string[], columns: number): boolean {
    const surplus = record.slice(columns).some((cell) => cell.trim() !== '');
    if (record.length >= columns && !surplus) return true;
    this.#problems.add(
      this.#row,
      '',
      say`This row has ${record.length} cells, the header has ${columns}. Look for a delimiter too many or too few; a cell that contains one must stand in quotation marks.`,
    );
    return false;
  }

  /** The cell as it is kept: trimmed, in normal form C; empty where it has a problem, which is then noted. */
  #clean(raw: string, column: SheetColumn | null, name: string): string {
    const most = column === null ? longestCell : longestIn(column);
    // Nearly all cells of nearly all sheets are words of plain letters, already as they should be.
    if (raw.length <= most && plainWords.test(raw)) return raw;
    const isText = column === null || textColumns.has(column);
    const cell = isText
      ? raw.replace(/\r\n?/g, '\n').normalize('NFC').trim()
      : raw.normalize('NFC').trim().replace(/\s+/g, ' ');
    const fault = faultOf(raw, cell, most);
    if (fault === null) return cell;
    this.#problems.add(this.#row, column === null ? name : headerOf(column), fault);
    return '';
  }

  #keepAsNotes(kept: string): void {
    const notes = this.#cells.get('notes');
    const together = notes === undefined ? kept : `${notes}\n${kept}`;
    const most = longestIn('notes');
    if (together.length <= most) this.#cells.set('notes', together);
    else
      this.#problems.add(
        this.#row,
        'notes',
        say`With the columns that are kept as notes, the notes have ${together.length} characters; at most ${most} fit. Shorten them.`,
      );
  }
}

const plainWords = /^[!#-~]+(?: [!#-~]+)*$/;

/** What is wrong with a cell, null where nothing is. */
function faultOf(raw: string, cell: string, most: number): string | null {
  if (raw.includes('\uFFFD') || raw.includes('\0'))
    return say`This cell contains bytes that are not UTF-8 text. Save the sheet as CSV in UTF-8 ("CSV UTF-8" in most spreadsheet programs).`;
  if (swallowedRows(raw)) return say`A quotation mark in this cell is not closed where the cell ends. ${quoting}`;
  // Spaces of every kind are dealt with before; what remains of the control characters was never typed by a person.
  if (/[\x01-\x08\x0b\x0c\x0e-\x1f\x7f]/.test(cell))
    return say`This cell contains a control character. Type its content anew.`;
  return cell.length > most
    ? say`This cell has ${cell.length} characters; at most ${most} fit here. Shorten it.`
    : null;
}

/**
 * Whether a cell looks like several rows between two quotation marks, the first of which was never closed. The reader lets
 * marks inside a cell stand, so it would take the rows for the text of one cell.
 */
function swallowedRows(raw: string): boolean {
  const between = raw.startsWith('"') ? (/^"([^"]*)"/.exec(raw)?.[1] ?? '') : '';
  return /[\r\n]/.test(between) && /[,;\t]/.test(between);
}

/** How to quote, for every problem with quotation marks. */
export const quoting = say`Put the whole cell into quotation marks and double each one inside it, or leave them out.`;
