import { csvRow } from '../../platform/csv.ts';
import { occurrenceTerms, type OccurrenceTerm, type OccurrenceTerms } from './darwin-core-terms.ts';

/** A record of Simple Darwin Core as CSV: the names of the terms, then one row. JSON has every text unaltered. */
export function simpleCsv(occurrence: OccurrenceTerms): string {
  const names = Object.keys(occurrenceTerms) as OccurrenceTerm[];
  return csvRow(names) + csvRow(names.map((name) => occurrence[name]));
}
