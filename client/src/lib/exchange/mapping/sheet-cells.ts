import { columnOf } from '$shared/register-sheet.ts';
import { guessByName } from './heading-words.ts';
import { readText, type SheetEncoding } from './sheet-text.ts';

/** A sheet as its keeper wrote it. */
export interface SheetCells {
  readonly encoding: SheetEncoding;
  readonly delimiter: Delimiter;
  /** All rows of the file, also blank ones and what stands above the headings. */
  readonly rows: readonly (readonly string[])[];
  /** Place of the row of headings among the rows. */
  readonly headings: number;
}

export const delimiters = [',', ';', '\t'] as const;
export type Delimiter = (typeof delimiters)[number];

/** Largest sheet in bytes that is read here: beyond it a phone would run out of memory. */
export const largestRead = 32 * 1024 * 1024;

/** How many rows at most may stand above the headings: a title, a date, a blank row. */
const mostAbove = 10;

/**
 * Reads a sheet in whatever encoding and with whatever delimiter it was saved. Throws an `Error` that says what to mend where it
 * cannot be read as rows.
 */
export async function readCells(sheet: Blob): Promise<SheetCells> {
  const { text, encoding } = readText(new Uint8Array(await sheet.arrayBuffer()));
  // Loaded only where a sheet is taken.
  const { parse } = await import('csv-parse/browser/esm/sync');
  const told = /^\uFEFF?"?sep=([,;\t])"?(?:\r\n|\n|\r)/i.exec(text);
  const body = told ? text.slice(told[0].length) : text;
  const delimiter = (told?.[1] as Delimiter | undefined) ?? likeliest(body.slice(0, 65_536), parse);
  const options = { bom: true, relax_column_count: true, relax_quotes: true, skip_empty_lines: false };
  const rows = parse(body, { ...options, delimiter, record_delimiter: ['\r\n', '\n', '\r'] });
  return { encoding, delimiter, rows, headings: headingsAmong(rows) };
}

type Parse = (text: string, options: object) => string[][];

/** The delimiter under which the first rows name the most columns; among equals the one that makes the most cells. */
function likeliest(head: string, parse: Parse): Delimiter {
  let best: { delimiter: Delimiter; known: number; cells: number } = { delimiter: ',', known: 0, cells: 0 };
  for (const delimiter of delimiters) {
    const rows = firstRows(head, delimiter, parse);
    const row = rows[headingsAmong(rows)] ?? [];
    const known = row.filter(isNamed).length;
    if (row.length > 1 && (known > best.known || (known === best.known && row.length > best.cells)))
      best = { delimiter, known, cells: row.length };
  }
  return best.delimiter;
}

function firstRows(head: string, delimiter: Delimiter, parse: Parse): string[][] {
  try {
    return parse(head, {
      delimiter,
      bom: true,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
      record_delimiter: ['\r\n', '\n', '\r'],
      to: mostAbove + 1,
    });
  } catch {
    return [];
  }
}

/** The row that names the most columns; where none names any, the first that is not blank. */
function headingsAmong(rows: readonly (readonly string[])[]): number {
  let best = { at: Math.max(0, rows.findIndex(isWritten)), named: 0 };
  rows.slice(0, mostAbove + 1).forEach((row, at) => {
    const named = row.filter(isNamed).length;
    if (named > best.named) best = { at, named };
  });
  return best.at;
}

const isNamed = (heading: string): boolean => columnOf(heading) !== null || guessByName(heading) !== null;

/** Whether a row has anything in it. */
export function isWritten(row: readonly string[]): boolean {
  return row.some((cell) => cell.trim() !== '');
}
