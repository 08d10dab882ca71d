import type { EntityManager } from 'typeorm';
import type { JournalKind, NameOf } from '../../journal/journal-kinds.ts';
import { privateAnimal } from '../../register/private-records.ts';
import { seenTransfer } from './seen-transfers.ts';
import { transferUndo } from './transfer-undo.ts';
import { say } from '../../platform/say.ts';

/** Transfers by their ids (primary key). */
async function titles(manager: EntityManager, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await manager.query<{ id: string; count: number; to: string | null }[]>(
    `select t.id, k.name as to, (select count(*)::integer from transfer_animal a where a.transfer_id = t.id) as count
     from transfer t left join keeper k on k.id = t.to_id where t.id = any($1) and ${seenTransfer('t')}`,
    [ids],
  );
  return new Map(
    rows.map(({ id, count, to }) => {
      const animals = count === 1 ? say`1 animal` : say`${count} animals`;
      return [id, to === null ? say`departure of ${animals}` : say`transfer of ${animals} to ${to}`];
    }),
  );
}

const textOf = (value: unknown): string => (typeof value === 'string' ? value : '');
const named = (nameOf: NameOf, kind: string, id: unknown): string => nameOf(kind, textOf(id));

/** Words between the two keepers are theirs; that there are some is told to whoever may read the entry. */
const between = (): string => say`told to the two of them`;

/** What the journal has to know of transfers. */
export const transferKind: JournalKind = {
  kind: 'transfer',
  seen: (id) => `exists (select from transfer r where r.id = ${id} and ${seenTransfer('r')})`,
  titles,
  hidden: say`a transfer`,
  dates: ['date'],
  words: { leftTo: between, note: between, reason: between },
  rows: {
    animals: {
      field: 'animals',
      line: ({ individualId, keeperId, status, returned }, nameOf) => {
        const animal = named(nameOf, 'individual', individualId);
        const keeper = named(nameOf, 'keeper', keeperId);
        if (status === 'gone') return say`${animal}: with ${keeper}, gone`;
        const back = textOf(returned);
        return back === '' ? say`${animal}: with ${keeper}` : say`${animal}: with ${keeper}, back since ${back}`;
      },
    },
    stays: {
      field: 'stays',
      // the days of an animal that may not be seen are not told
      line: ({ individualId, pairingId, left }, nameOf) => {
        const animal = named(nameOf, 'individual', individualId);
        if (animal === privateAnimal) return animal;
        const pairing = named(nameOf, 'pairing', pairingId);
        return left === null
          ? say`${animal} in ${pairing}, goes on`
          : say`${animal} in ${pairing}, until ${textOf(left)}`;
      },
    },
  },
  undo: transferUndo,
};
