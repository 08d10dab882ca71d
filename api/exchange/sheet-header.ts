import type { ProblemList } from './problem-list.ts';
import type { SheetColumn } from '../../shared/register-sheet.ts';
import { columnOf, headerKey, headerOf, sheetColumns } from '../../shared/register-sheet.ts';
import { longestCell } from './sheet-columns.ts';
import { say } from '../platform/say.ts';

/** What stands in one place of each row: a column of the register, a column kept as notes, or nothing. */
export interface HeaderCell {
  readonly column: SheetColumn | null;
  /** The header as the file has it, empty where the cell is. */
  readonly header: string;
}

/** Most columns of a sheet. */
const mostColumns = 100;

/**
 * Reads the header row. Problems: no `code` column, a column twice, too many columns. Columns that the register does not
 * know are reported as warnings, since their cells are kept as notes.
 *
 * @returns one entry a column, or null where the rows below cannot be read by this header
 */
export function readHeader(
  row: number,
  cells: readonly string[],
  problems: ProblemList,
  warnings: ProblemList,
): HeaderCell[] | null {
  const before = problems.total;
  const headers = cells.map((cell) => cell.normalize('NFC').trim().replace(/\s+/g, ' '));
  while (headers.at(-1) === '') headers.pop();
  if (headers.length > mostColumns)
    problems.add(row, '', say`The sheet has ${headers.length} columns; at most ${mostColumns} can be read.`);
  const header = headers.map((text) => ({ column: columnOf(text), header: text }));
  for (const { header: text } of header)
    if (text.length > longestCell || /[\0\uFFFD]/.test(text)) problems.add(row, '', unreadableHeader);
  if (problems.total > before) return null;
  refuseTwins(row, headers, problems);
  if (!header.some(({ column }) => column === 'code')) problems.add(row, 'code', missingCode(headers));
  if (problems.total > before) return null;
  for (const { column, header: text } of header)
    if (column === null && text !== '')
      warnings.add(row, text, say`"${text}" is no column of a register sheet; its cells are kept as notes.`);
  return header;
}

const unreadableHeader = say`The header row cannot be read as text. Save the sheet as CSV in UTF-8 ("CSV UTF-8" in most spreadsheet programs).`;

function missingCode(headers: readonly string[]): string {
  const found = headers.filter((header) => header !== '').map((header) => `"${header.slice(0, 40)}"`);
  const names = sheetColumns.slice(0, 6).map(headerOf).join(', ');
  return say`The sheet has no column "code". Row 1 must name the columns (${names}, …); found: ${found.length > 0 ? found.slice(0, 10).join(', ') : 'nothing'}.`;
}

function refuseTwins(row: number, headers: readonly string[], problems: ProblemList): void {
  const firstPlace = new Map<string, number>();
  headers.forEach((header, place) => {
    if (header === '') return;
    const key = headerKey(header);
    const first = firstPlace.get(key);
    if (first === undefined) firstPlace.set(key, place);
    else
      problems.add(
        row,
        header,
        say`Columns ${columnLetters(first)} and ${columnLetters(place)} are both "${headers[first] ?? ''}". Keep one of them or rename the other.`,
      );
  });
}

/** The name that spreadsheets give a column: 0 is A, 25 is Z, 26 is AA. */
export function columnLetters(place: number): string {
  const last = String.fromCharCode(65 + (place % 26));
  return place < 26 ? last : columnLetters(Math.floor(place / 26) - 1) + last;
}
