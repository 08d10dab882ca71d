import { In, type EntityManager } from 'typeorm';
import { ChangedSince, type EntryToUndo } from '../../journal/journal-kinds.ts';
import { authorize } from '../../people/permissions.ts';
import { NotFoundProblem } from '../../platform/problem.ts';
import { noteChanges, sayOfChange } from '../kept/note-change.ts';
import { Observation } from '../observations/observation.entity.ts';
import { seenOf } from '../seen-records.ts';

/**
 * Withdraws remarks that one request added, or restores those that its undo withdrew, in a few statements however many they are: nothing stands on
 * a remark, and it needs nothing that could be withdrawn. 404 and 403 as for each change, ChangedSince where one was changed again.
 */
export async function undoRemarks(manager: EntityManager, entries: readonly EntryToUndo[]): Promise<void> {
  if (entries.length === 0) return;
  const ids = entries.map(({ recordId }) => recordId);
  const rows = await lockRemarks(manager, ids);
  for (const { id, recordId, recordVersion } of entries) {
    const row = rows.get(recordId);
    if (!row) throw new NotFoundProblem('observation', recordId);
    authorize('change', 'observation', row);
    if (row.version !== recordVersion) throw new ChangedSince(recordId, recordVersion, id);
  }
  await noteChanges(manager, 'observation', ids);
  const idsOf = (isWithdrawn: boolean): string[] =>
    entries.filter(({ action }) => (action === 'withdrawn') === isWithdrawn).map(({ recordId }) => recordId);
  const [back, gone] = [idsOf(true), idsOf(false)];
  const now = new Date();
  if (back.length > 0)
    await manager.update(Observation, { id: In(back) }, { withdrawnAt: null, withdrawnReason: null, updatedAt: now });
  if (gone.length > 0) {
    const why = { withdrawnAt: now, withdrawnReason: 'Its entry was undone' };
    await manager.update(Observation, { id: In(gone) }, { ...why, updatedAt: now });
  }
  for (const { id, recordId } of entries) sayOfChange(manager, recordId, { reversesId: id });
}

/** Locks remarks in the order of their ids; those that may not be seen are left out (primary key). */
async function lockRemarks(manager: EntityManager, ids: readonly string[]): Promise<Map<string, Observation>> {
  const rows = await manager
    .createQueryBuilder(Observation, 'r')
    .setLock('pessimistic_write')
    .where('r.id = any(:ids::uuid[])', { ids })
    .andWhere(seenOf('observation', 'r'))
    .orderBy('r.id')
    .getMany();
  return new Map(rows.map((row) => [row.id, row]));
}
