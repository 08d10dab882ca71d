import { In, type EntityManager } from 'typeorm';
import { ChangedSince, type EntryToUndo } from '../../journal/journal-kinds.ts';
import { authorize } from '../../people/permissions.ts';
import { dateColumns } from '../../platform/dates.ts';
import { ConflictProblem, NotFoundProblem } from '../../platform/problem.ts';
import { Individual } from '../individuals/individual.entity.ts';
import { noteChanges, sayOfChange } from '../kept/note-change.ts';
import { requireStanding } from '../standing.queries.ts';
import { lockAnimals } from './together.queries.ts';
import { say } from '../../platform/say.ts';

/** What a change of several animals can change of each, and what of it is a vague date. */
const fields = ['sex', 'sexBasis', 'sexedOn', 'status', 'died', 'outOfWater', 'lineId', 'visibility'] as const;
const dates: readonly string[] = ['sexedOn', 'died', 'outOfWater'];

/**
 * Makes the fields of animals what they were before entries of one request, in a few statements however many they are: most of them were the same
 * before. 404 and 403 as for each change, 409 where one was withdrawn, ChangedSince where one was changed again. Callers hold the lineage.
 */
export async function undoFields(manager: EntityManager, entries: readonly EntryToUndo[]): Promise<void> {
  const ids = entries.map(({ recordId }) => recordId);
  const rows = await lockAnimals(manager, ids);
  for (const { id, recordId, recordVersion } of entries) {
    const row = rows.get(recordId);
    if (!row) throw new NotFoundProblem(say`animal`, recordId);
    authorize('change', 'individual', row);
    if (row.version !== recordVersion) throw new ChangedSince(recordId, recordVersion, id);
    if (row.withdrawn)
      throw new ConflictProblem(say`One of the animals was withdrawn. Restore it before you take this back.`);
  }
  await noteChanges(manager, 'individual', ids);
  for (const [patch, those] of byPatch(entries)) {
    const before = JSON.parse(patch) as Record<string, string | null>;
    await requireStanding(manager, 'line', before['lineId'], '/lineId');
    await manager.update(Individual, { id: In(those) }, { ...columnsOf(before), updatedAt: new Date() });
  }
  for (const { id, recordId } of entries) sayOfChange(manager, recordId, { reversesId: id });
}

/** The animals that become the same again, by what they become. */
function byPatch(entries: readonly EntryToUndo[]): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const { recordId, before, after } of entries) {
    const changed = fields.filter((field) => (before?.[field] ?? null) !== (after?.[field] ?? null));
    const patch = JSON.stringify(Object.fromEntries(changed.map((field) => [field, before?.[field] ?? null])));
    found.set(patch, [...(found.get(patch) ?? []), recordId]);
  }
  return found;
}

function columnsOf(before: Readonly<Record<string, string | null>>): object {
  return Object.fromEntries(
    Object.entries(before).flatMap(([field, value]) =>
      dates.includes(field) ? Object.entries(dateColumns(field, value)) : [[field, value]],
    ),
  );
}
