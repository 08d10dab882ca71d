import type { EntityManager } from 'typeorm';
import type { JournalAction } from '../../../shared/vocabulary.ts';
import { ChangedSince, type EntryToUndo } from '../../journal/journal-kinds.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { lockForChange } from '../change.ts';
import { Clutch } from '../clutches/clutch.entity.ts';
import { individualKind } from '../individuals/individuals.service.ts';
import { leaveEntryToCaller } from '../kept/note-change.ts';
import { noteRaised, youngAsKept, type KeptYoung } from '../kept/note-raised.ts';
import { restoreRecord, withdrawRecord } from '../withdrawal.service.ts';

/** The young of an entry are withdrawn together; 409 where one was changed since, or others need one. */
export async function undoRaising(manager: EntityManager, entry: EntryToUndo): Promise<void> {
  await turnYoung(manager, entry, 'raising-undone', (id) =>
    withdrawRecord(manager, individualKind, id, 'any', 'Raising it was undone'),
  );
}

/** The young of an entry are restored together; 409 where one was changed since, or needs what was withdrawn. */
export async function raiseAgain(manager: EntityManager, entry: EntryToUndo): Promise<void> {
  await turnYoung(manager, entry, 'raising-restored', (id) => restoreRecord(manager, individualKind, id, 'any'));
}

async function turnYoung(
  manager: EntityManager,
  entry: EntryToUndo,
  action: JournalAction,
  turn: (id: string) => Promise<void>,
): Promise<void> {
  await lockPedigree(manager);
  const young = (entry.after?.['young'] ?? []) as readonly KeptYoung[];
  const ids = young.map(({ individualId }) => individualId);
  // one entry tells of all of them
  for (const id of ids) leaveEntryToCaller(manager, id);
  for (const { individualId, version } of young) {
    const animal = await lockForChange(manager, individualKind, individualId, 'any');
    if (animal.version !== version) throw new ChangedSince(individualId, version);
  }
  const before = await youngAsKept(manager, ids);
  for (const id of ids) await turn(id);
  const clutch = await manager.findOneByOrFail(Clutch, { id: entry.recordId });
  await noteRaised(manager, clutch, ids, { action, reversesId: entry.id, before });
}
