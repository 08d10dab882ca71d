import { occurrenceTerms, type OccurrenceTerm, type OccurrenceTerms } from './darwin-core-terms.ts';

/**
 * A record of Simple Darwin Core as CSV (RFC 4180): the names of the terms, then one row. A text that a spreadsheet would take for a
 * formula has an apostrophe before it; JSON has it unaltered.
 */
export function simpleCsv(occurrence: OccurrenceTerms): string {
  const names = Object.keys(occurrenceTerms) as OccurrenceTerm[];
  return `${names.join(',')}\r\n${names.map((name) => cell(occurrence[name])).join(',')}\r\n`;
}

function cell(value: string | number | undefined): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return String(value);
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
