import type { EntityManager } from 'typeorm';
import { acting } from '../platform/acting.ts';
import type { JournalKind } from './journal-kinds.ts';

/** What concerns a person is read by that person and by administrators. */
const concerns = (id: string): string => {
  const who = acting();
  if (!who.roles.includes('administrator')) return `(${id} = '${who.id}')`;
  return `exists (select from keeper k where k.id = ${id})`;
};

/** Names of keepers are known to every member (primary key). */
async function keeperNames(manager: EntityManager, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await manager.query<{ id: string; name: string }[]>('select id, name from keeper where id = any($1)', [
    ids,
  ]);
  return new Map(rows.map(({ id, name }) => [id, name]));
}

/** The kinds of the people room. Links and tokens are no kinds of their own here: nobody but those concerned reads of them. */
export const peopleKinds: readonly JournalKind[] = [
  { kind: 'keeper', seen: concerns, titles: keeperNames },
  {
    kind: 'club',
    // there is one, and it has no id
    seen: (id) => `(${id} is null)`,
    titles: () => Promise.resolve(new Map()),
  },
];
