import type { EntityManager } from 'typeorm';
import type { JournalAction } from '../../../shared/vocabulary.ts';
import { ChangedSince, type EntryToUndo, type JournalKind, type Undo } from '../../journal/journal-kinds.ts';
import { acting } from '../../platform/acting.ts';
import { newId } from '../../platform/ids.ts';
import { writeEntry } from '../../platform/journal-entry.ts';
import { ConflictProblem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { individualKind } from '../individuals/individuals.service.ts';
import { pairingKind } from '../pairings/pairings.service.ts';
import { undoFields } from './undo-fields.ts';
import { undoRemarks } from './undo-remarks.ts';
import { undoOf, type AnyKind } from '../undo/undo-change.ts';
import { entriesOfRequest } from '../undo/entries-of-request.queries.ts';
import { say } from '../../platform/say.ts';

const kinds: Readonly<Record<string, AnyKind>> = {
  individual: individualKind,
  pairing: pairingKind,
};
/** Kinds that are undone together, in a few statements. */
const undoneTogether = ['observation'];

/** Stays that lead somewhere: an animal leaves the one place before it lives in the other, so they go first when they are undone. */
const openStays = (form: EntryToUndo['after']): number =>
  ((form?.['members'] ?? []) as readonly { readonly left: string | null }[]).filter(({ left }) => left === null).length;
const gained = ({ before, after }: EntryToUndo): number => openStays(after) - openStays(before);

/** Everything that the request did is undone, and told as one again. */
function undoTogether(action: JournalAction): Undo {
  return async (manager, entry) => {
    await lockPedigree(manager);
    const entries = await entriesOfRequest(manager, entry.id, [...Object.keys(kinds), ...undoneTogether]);
    if (entries.length === 0) throw new ConflictProblem(say`Nothing of this change can be found any more.`);
    await writeEntry(manager, {
      action,
      kind: entry.kind,
      recordId: newId(),
      ownerId: acting().id,
      visibility: await visibilityOf(manager, entry.id),
      before: null,
      after: entry.after,
      reversesId: entry.id,
    });
    const isOfFields = (one: EntryToUndo): boolean => one.kind === 'individual' && one.action === 'changed';
    const isRemark = (one: EntryToUndo): boolean => one.kind === 'observation' && one.action !== 'changed';
    const others = entries.filter((one) => !isOfFields(one) && !isRemark(one));
    // pairings before animals, as they are locked for every change
    for (const one of others.sort((a, b) => gained(b) - gained(a))) await undoOne(manager, one);
    await undoFields(manager, entries.filter(isOfFields));
    await undoRemarks(manager, entries.filter(isRemark));
  };
}

async function undoOne(manager: EntityManager, entry: EntryToUndo): Promise<void> {
  const kind = kinds[entry.kind];
  const undo: Partial<Record<JournalAction, Undo>> = kind ? undoOf(kind) : {};
  try {
    await undo[entry.action]?.(manager, entry);
  } catch (error) {
    if (error instanceof ChangedSince) throw new ChangedSince(error.recordId, error.sinceVersion, entry.id);
    throw error;
  }
}

async function visibilityOf(manager: EntityManager, id: string): Promise<'club' | 'private'> {
  const [row] = await manager.query<{ visibility: 'club' | 'private' }[]>(
    'select visibility from journal_entry where id = $1',
    [id],
  );
  return row?.visibility ?? 'private';
}

/** Whoever may read the entry knows of the change; there is no record of it but the journal (journal_entry_record_index). */
const seenChange = (id: string): string => {
  const who = acting();
  const isOpen = who.roles.includes('registrar') ? 'true' : `(b.visibility <> 'private' or b.owner_id = '${who.id}')`;
  return `exists (select from journal_entry b where b.record_id = ${id} and b.kind = 'change_together' and ${isOpen})`;
};

/** What the journal has to know of changes of several animals. */
export const togetherKind: JournalKind = {
  kind: 'change_together',
  hidden: say`animals of somebody else`,
  seen: seenChange,
  titles: async (manager, ids) => {
    const rows = await manager.query<{ id: string; animals: string }[]>(
      `select b.record_id as id, b.after ->> 'animals' as animals from journal_entry b
       where b.record_id = any($1) and b.kind = 'change_together' and ${seenChange('b.record_id')}`,
      [ids],
    );
    return new Map(rows.map(({ id, animals }) => [id, animals === '1' ? say`one animal` : say`${animals} animals`]));
  },
  undo: {
    'changed-together': undoTogether('together-undone'),
    'together-undone': undoTogether('together-restored'),
    'together-restored': undoTogether('together-undone'),
  },
};
