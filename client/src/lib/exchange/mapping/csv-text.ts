/** A row as CSV writes it, with commas; cells that need it stand in quotation marks. */
export function csvRow(cells: readonly string[]): string {
  return cells.map((cell) => (/[",;\t\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join(',');
}

/** Rows as a CSV file in UTF-8, for the service. */
export function csvSheet(rows: readonly string[]): Blob {
  return new Blob([`${rows.join('\r\n')}\r\n`], { type: 'text/csv' });
}

/** The same for a reader, with the mark by which spreadsheet programs know UTF-8. */
export function csvFile(rows: readonly string[]): Blob {
  return new Blob(['\uFEFF', csvSheet(rows)], { type: 'text/csv' });
}
