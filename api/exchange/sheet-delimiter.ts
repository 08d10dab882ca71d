import { parse } from 'csv-parse/sync';
import { columnOf } from '../../shared/register-sheet.ts';

const delimiters = [',', ';', '\t'] as const;

/**
 * Finds out which of comma, semicolon and tab divides the cells of a sheet: the one under which the header names the most
 * columns of a register sheet. Where the header has a single column, one that the beginning of the file does not hold at all.
 *
 * @param head the beginning of the sheet, at least its header row
 */
export function guessDelimiter(head: Buffer): string {
  let best = { delimiter: '', known: 0, cells: 1 };
  for (const delimiter of delimiters) {
    const headers = firstRow(head, delimiter);
    if (headers.length === 0) return delimiter; // nothing but blank rows under this one
    const known = headers.filter((header) => columnOf(header) !== null).length;
    if (headers.length > 1 && (known > best.known || (known === best.known && headers.length > best.cells)))
      best = { delimiter, known, cells: headers.length };
  }
  if (best.delimiter !== '') return best.delimiter;
  return delimiters.find((delimiter) => !head.includes(delimiter)) ?? ',';
}

/** The cells of the first row that is not blank; a single one where a quotation mark stays open. */
function firstRow(head: Buffer, delimiter: string): string[] {
  try {
    const options = { delimiter, relax_quotes: true, relax_column_count: true, skip_records_with_empty_values: true };
    const rows = parse(head, { ...options, record_delimiter: ['\r\n', '\n', '\r'], to: 1 });
    return rows[0] ?? [];
  } catch {
    return [''];
  }
}
