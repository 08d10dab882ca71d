import type { EntityManager } from 'typeorm';
import { restoreUndone, undoImport } from './import-undo.service.ts';
import type { JournalKind } from '../journal/journal-kinds.ts';
import { seenImport } from './seen-imports.ts';
import { say } from '../platform/say.ts';

/** Sheets by their ids (primary key). */
async function titles(manager: EntityManager, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await manager.query<{ id: string; rows: number }[]>(
    `select id, rows from register_import r where id = any($1) and ${seenImport('r')}`,
    [ids],
  );
  return new Map(
    rows.map(({ id, rows: animals }) => [
      id,
      animals === 1 ? say`sheet of 1 animal` : say`sheet of ${animals} animals`,
    ]),
  );
}

/** What the journal has to know of imports. */
export const importKind: JournalKind = {
  kind: 'import',
  seen: (id) => `exists (select from register_import r where r.id = ${id} and ${seenImport('r')})`,
  titles,
  undo: {
    imported: (manager, { recordId, id }) => undoImport(manager, recordId, 'Undone from the journal.', id),
    'import-restored': (manager, { recordId, id }) => undoImport(manager, recordId, 'Undone from the journal.', id),
    'import-undone': (manager, { recordId, id }) => restoreUndone(manager, recordId, id),
  },
};
