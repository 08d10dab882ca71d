import type { EntityManager } from 'typeorm';
import type { JournalKind } from '../../journal/journal-kinds.ts';

async function titles(manager: EntityManager, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await manager.query<{ id: string; name: string }[]>(
    'select id, name from other_register where id = any($1::uuid[])',
    [ids],
  );
  return new Map(rows.map(({ id, name }) => [id, name]));
}

/** What the journal has to know of registers of other clubs. Its changes are undone by their own routes. */
export const otherRegisterKind: JournalKind = {
  kind: 'other_register',
  seen: (id) => `exists (select from other_register o where o.id = ${id})`,
  titles,
};
