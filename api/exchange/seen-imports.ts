import { hidden, owned } from '../people/visibility.ts';

/**
 * The SQL condition under which whoever asks may see an import, a row of register_import under this alias: its keeper and registrars
 * always, others unless something that it made is hidden from them, since its counts would tell of that
 * (individual_import_index, source_import_index).
 */
export function seenImport(alias: string): string {
  const own = owned(alias);
  if (own === 'true') return own;
  const made = (table: 'individual' | 'source'): string =>
    `exists (select from ${table} m where m.import_id = ${alias}.id and ${hidden(table, 'm')})`;
  return `(${own} or not (${made('individual')} or ${made('source')}))`;
}
