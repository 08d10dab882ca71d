import type { DataSource } from 'typeorm';
import type { KeptForm } from '../../../api/platform/journal-entry.ts';

/** An entry as the database has it. */
export interface StoredEntry {
  readonly id: string;
  readonly action: string;
  readonly kind: string;
  readonly recordId: string | null;
  readonly recordVersion: number | null;
  readonly via: string;
  readonly keeper: string | null;
  readonly visibility: string;
  readonly reason: string | null;
  readonly reversesId: string | null;
  readonly before: KeptForm | null;
  readonly after: KeptForm | null;
}

/** Entries that meet an SQL condition, oldest first. */
export function storedEntries(
  dataSource: DataSource,
  condition: string,
  parameters: readonly unknown[],
): Promise<StoredEntry[]> {
  return dataSource.query<StoredEntry[]>(
    `select e.id, e.action, e.kind, e.record_id as "recordId", e.record_version as "recordVersion", e.via, k.name as keeper,
       e.visibility, e.reason, e.reverses_id as "reversesId", e.before, e.after
     from journal_entry e left join keeper k on k.id = e.keeper_id where ${condition} order by e.id`,
    [...parameters],
  );
}
