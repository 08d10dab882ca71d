import { In, type EntityManager } from 'typeorm';
import type { EntryToUndo, Undo } from '../../journal/journal-kinds.ts';
import { ConflictProblem } from '../../platform/problem.ts';
import { Merge } from './merge.entity.ts';
import { mergeAgain, undoMerge } from './merges.service.ts';
import { say } from '../../platform/say.ts';

/** The journal's way to undo a merging. */
export const undoMerging: Undo = async (manager, entry) => {
  await undoMerge(manager, (await mergeOf(manager, entry)).id, entry.id);
};

/** The journal's way to undo the undoing of a merging: both records are merged again, with all that names the duplicate by now. */
export const undoUnmerging: Undo = async (manager, entry) => {
  await mergeAgain(manager, await mergeOf(manager, entry), entry.id);
};

/** The merging that an entry tells of stands among the records that it is about. */
async function mergeOf(manager: EntityManager, { aboutIds }: EntryToUndo): Promise<Merge> {
  const merge = await manager.findOneBy(Merge, { id: In([...aboutIds]) });
  if (!merge) throw new ConflictProblem(say`The merging that this entry tells of is not there.`);
  return merge;
}
