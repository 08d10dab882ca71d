import type { EntityManager } from 'typeorm';
import type { KeptForm } from '../../platform/journal-entry.ts';
import { dateColumns } from '../../platform/dates.ts';
import { NotFoundProblem } from '../../platform/problem.ts';
import { Individual } from '../individuals/individual.entity.ts';
import { originOf } from '../individuals/individual-origin.ts';
import { requireStanding } from '../standing.queries.ts';
import { refuseImpossibleClutch, refuseImpossibleIndividual } from '../warnings/impossible.queries.ts';
import { asKept, keptEntities, type RecordKind } from './kept-form.queries.ts';
import {
  writeKeptLosses,
  writeKeptMembers,
  writeKeptParents,
  writeKeptRanges,
  writeKeptWarnings,
} from './kept-rows.ts';

/** The records that a record names, and the tables they are in. */
const named = {
  speciesId: 'species',
  lineId: 'line',
  sourceId: 'source',
  clutchId: 'clutch',
  pairingId: 'pairing',
  individualId: 'individual',
} as const;

/**
 * Writes a state of a record back as `asKept` gave it, under the rules of the register: dates and ranks in time are found anew, the
 * version is raised, and what it names must stand. Callers hold the lock of the lineage and that of the record, and have noted
 * the change (`lockForChange`).
 *
 * @throws InvalidProblem where it names what was withdrawn, LoopProblem, and what the database refuses
 */
export async function writeAsKept(manager: EntityManager, kind: RecordKind, id: string, form: KeptForm): Promise<void> {
  const current = await asKept(manager, kind, id);
  if (!current) throw new NotFoundProblem(kind, id);
  const isOther = (property: string): boolean =>
    JSON.stringify(current.form[property] ?? null) !== JSON.stringify(form[property] ?? null);
  for (const [property, table] of Object.entries(named))
    if (property in form && isOther(property))
      await requireStanding(manager, table, form[property] as string | null, `/${property}`);
  await writeColumns(manager, kind, id, form, isOther);
  if (kind === 'species' && isOther('ranges')) await writeKeptRanges(manager, id, form);
  if (kind === 'pairing' && isOther('members')) await writeKeptMembers(manager, id, current.form, form);
  if (kind === 'clutch' && isOther('losses')) await writeKeptLosses(manager, id, form);
  if (kind === 'clutch' && (isOther('candidates') || isOther('pairs'))) await writeKeptParents(manager, id, form);
  if ((kind === 'individual' || kind === 'clutch') && isOther('warnings'))
    await writeKeptWarnings(manager, kind, id, form);
  if (kind === 'individual') await refuseImpossibleIndividual(manager, id);
  if (kind === 'clutch') await refuseImpossibleClutch(manager, id, '/laid');
}

/** Every column that is another; the version goes up even where none is, since rows that belong to the record may be. */
async function writeColumns(
  manager: EntityManager,
  kind: RecordKind,
  id: string,
  form: KeptForm,
  isOther: (property: string) => boolean,
): Promise<void> {
  const columns = manager.dataSource.getMetadata(keptEntities[kind]).columns;
  const has = (property: string): boolean => columns.some(({ propertyName }) => propertyName === property);
  const patch: Record<string, unknown> = { updatedAt: new Date() };
  for (const { propertyName: property, type } of columns) {
    if (!(property in form) || !isOther(property)) continue;
    const value = form[property] ?? null;
    if (has(`${property}Earliest`)) Object.assign(patch, dateColumns(property, value as string | null));
    else if (type === 'timestamptz') patch[property] = value === null ? null : new Date(value as string);
    else if (kind === 'individual' && property === 'clutchId')
      Object.assign(patch, await originOf(manager, { id } as Individual, value as string | null));
    else patch[property] = value;
  }
  await manager.update(keptEntities[kind], { id }, patch);
}
