import { acting } from '../../platform/acting.ts';
import type { JournalKind } from '../../journal/journal-kinds.ts';
import { say } from '../../platform/say.ts';

/** What the journal has to know of keys: administrators read of them. Nothing about a key is undone. */
export const signingKeyKind: JournalKind = {
  kind: 'signing_key',
  seen: (id) =>
    acting().roles.includes('administrator') ? `exists (select from signing_key s where s.id = ${id})` : 'false',
  titles: async (manager, ids) => {
    const rows = await manager.query<{ id: string; kid: string }[]>(
      'select id, kid from signing_key where id = any($1)',
      [ids],
    );
    return new Map(rows.map(({ id, kid }) => [id, kid.slice(0, 8)]));
  },
  hidden: say`a key`,
};
