import { columnOf, dateColumns, headerKey, headerOf, type SheetColumn } from '$shared/register-sheet.ts';
import type { ProblemPlace } from '../../api/problem.ts';
import { understood } from './cell-values.ts';
import { csvFile, csvRow, csvSheet } from './csv-text.ts';
import { readDate, type DateOrder } from './date-order.ts';
import type { Target } from './guess-columns.ts';
import { isWritten, type SheetCells } from './sheet-cells.ts';

/** What was decided about the columns of a sheet. */
export interface Mapping {
  /** What each column of the sheet becomes, by its place. */
  readonly targets: readonly Target[];
  /** How the dates of a column are read, by its place, where they can mean several days. */
  readonly orders: readonly (DateOrder | undefined)[];
  /** The species of all rows, where no column says it; else empty. */
  readonly species: string;
  /** Rows that are left out, numbered as a spreadsheet shows them. */
  readonly without: readonly number[];
}

/**
 * The sheet with the columns, dates and words of the register, in UTF-8 with commas. Rows keep their numbers: what is left out, and
 * what stands above the headings, becomes a blank row.
 */
export function mappedSheet(cells: SheetCells, mapping: Mapping): Blob {
  const headings = mappedHeadings(cells.rows[cells.headings] ?? [], mapping);
  const kept = headings.flatMap((heading, at) => (heading === null ? [] : [at]));
  const hasSpecies = mapping.species !== '';
  const without = new Set(mapping.without);
  const lines = cells.rows.map((row, at) => {
    if (at === cells.headings)
      return csvRow([...headings.filter((heading) => heading !== null), ...(hasSpecies ? ['species'] : [])]);
    if (at < cells.headings || without.has(at + 1) || !isWritten(row)) return '';
    // A row that is too short or too long stays so, for the service to tell.
    const short = kept.filter((place) => place < row.length);
    const mapped = short.map((place) => mappedCell(row[place] ?? '', place, mapping));
    const surplus = row.slice(headings.length).some((cell) => cell.trim() !== '') ? row.slice(headings.length) : [];
    return csvRow([...mapped, ...(hasSpecies && short.length === kept.length ? [mapping.species] : []), ...surplus]);
  });
  return csvSheet(lines);
}

/** The heading of each column in the mapped sheet; null where it is left out. */
export function mappedHeadings(headings: readonly string[], { targets }: Mapping): (string | null)[] {
  const used = new Set<string>();
  return targets.map((target, at) => {
    if (target === 'out') return null;
    let name = target === 'own' ? ownHeading(headings[at] ?? '', at) : headerOf(target);
    if (used.has(headerKey(name))) name = `${name} (column ${letters(at)})`;
    used.add(headerKey(name));
    return name;
  });
}

/** Kept as notes, a column must not be taken for one of the register's. */
function ownHeading(heading: string, at: number): string {
  const plain = heading.trim();
  if (plain === '') return `column ${letters(at)}`;
  return columnOf(plain) === null ? plain : `sheet: ${plain}`;
}

function mappedCell(cell: string, at: number, { targets, orders }: Mapping): string {
  const target = targets[at];
  if (target === undefined || target === 'own' || target === 'out') return cell;
  return readCell(cell, target, orders[at]);
}

/** A cell as the register reads it in a column. */
export function readCell(cell: string, column: SheetColumn, order?: DateOrder): string {
  return dateColumns.includes(column) ? readDate(cell, order) : understood(column, cell);
}

/**
 * The numbers of the rows that problems are about; none where one of the problems is about the sheet itself, so that leaving rows out
 * would not mend it.
 */
export function refusedNumbers(cells: SheetCells, places: readonly ProblemPlace[]): number[] {
  const rows = new Set<number>();
  for (const { row } of places) {
    if (row === undefined || row <= cells.headings + 1) return [];
    rows.add(row);
  }
  return [...rows];
}

/** The first different cells of a column, as examples of what stands in it. */
export function samplesOf(cells: readonly string[], most: number): string[] {
  return [...new Set(cells.map((cell) => cell.trim()))].filter((cell) => cell !== '').slice(0, most);
}

/** The refused rows as their keeper wrote them, with what is wrong with each behind them. */
export function refusedRows(cells: SheetCells, places: readonly ProblemPlace[]): Blob {
  const wrong = new Map<number, string[]>();
  for (const { row, column, detail } of places)
    if (row !== undefined) wrong.set(row, [...(wrong.get(row) ?? []), column ? `${column}: ${detail}` : detail]);
  const width = cells.rows[cells.headings]?.length ?? 0;
  const line = (row: readonly string[], last: string): string =>
    csvRow([...row, ...Array.from({ length: Math.max(0, width - row.length) }, () => ''), last]);
  const rows = [...wrong]
    .sort(([a], [b]) => a - b)
    .flatMap(([number, problems]) => {
      const row = number === cells.headings + 1 ? undefined : cells.rows[number - 1];
      return row ? [line(row, problems.join(' '))] : [];
    });
  return csvFile([line(cells.rows[cells.headings] ?? [], 'what is wrong'), ...rows]);
}

/** The name that spreadsheets give a column: 0 is A, 26 is AA. */
export function letters(at: number): string {
  const last = String.fromCharCode(65 + (at % 26));
  return at < 26 ? last : letters(Math.floor(at / 26) - 1) + last;
}
