import type { JournalKind } from '../../journal/journal-kinds.ts';
import { formatSheetNumber, seenSheet } from './sheets.queries.ts';
import { say } from '../../platform/say.ts';

/** What the journal has to know of sheets. A signature cannot be undone: a sheet is revoked, and that stays, too. */
export const sheetKind: JournalKind = {
  kind: 'provenance_sheet',
  seen: (id) => `exists (select from provenance_sheet s where s.id = ${id} and ${seenSheet('s')})`,
  titles: async (manager, ids) => {
    const rows = await manager.query<{ id: string; number: string }[]>(
      `select s.id, s.number::text from provenance_sheet s where s.id = any($1::uuid[]) and ${seenSheet('s')}`,
      [ids],
    );
    return new Map(rows.map(({ id, number }) => [id, say`provenance sheet ${formatSheetNumber(number)}`]));
  },
  hidden: say`a provenance sheet`,
};
