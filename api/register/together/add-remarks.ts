import type { EntityManager } from 'typeorm';
import type { Acting } from '../../platform/acting.ts';
import { dateColumns } from '../../platform/dates.ts';
import { newId } from '../../platform/ids.ts';
import { noteAddedMany } from '../kept/note-change.ts';
import { Observation } from '../observations/observation.entity.ts';
import type { RemarkTogether } from './together.dto.ts';

/** Adds the same remark of the acting keeper to each of the animals. Callers hold the animals. */
export async function addRemarks(
  manager: EntityManager,
  keeper: Acting,
  { observedOn, ...remark }: RemarkTogether,
  animalIds: readonly string[],
): Promise<void> {
  const rows = animalIds.map((individualId) => ({
    ...remark,
    id: newId(),
    keeperId: keeper.id,
    individualId,
    ...dateColumns('observedOn', observedOn),
  }));
  if (rows.length === 0) return;
  await manager.insert(Observation, rows);
  noteAddedMany(
    manager,
    'observation',
    rows.map(({ id }) => id),
  );
}
