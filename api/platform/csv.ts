/**
 * A row of CSV (RFC 4180) with its line break. A text that a spreadsheet would take for a formula has an apostrophe before it; what is
 * undefined or null is empty.
 */
export function csvRow(cells: readonly (string | number | null | undefined)[]): string {
  return `${cells.map(csvCell).join(',')}\r\n`;
}

function csvCell(value: string | number | null | undefined): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'number') return String(value);
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
