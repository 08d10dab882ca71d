import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../shared/registry-number.ts';
import { seen } from '../people/visibility.ts';
import { Conditions } from '../register/keyset.ts';
import { seenClutch } from '../register/seen-records.ts';
import { clutchTitle } from '../register/titles.ts';
import { readOpenWarnings } from '../register/warnings/warning.queries.ts';
import type { Asked } from './asked.ts';
import type { DueWarningsView, WarnedRecordView } from './today.view.ts';

/** Warnings are computed when they are asked for, so they are looked for in so many of the newest records of each kind. */
const LOOKED_AT = 200;

/** Records that look implausible, where nobody accepted that, among the newest (individual_keeper_index, clutch_keeper_index). */
export async function readDueWarnings(manager: EntityManager, asked: Asked): Promise<DueWarningsView> {
  const found = [...(await warnedAnimals(manager, asked)), ...(await warnedClutches(manager, asked))];
  return { items: found.slice(0, asked.limit), total: found.length, lookedAt: LOOKED_AT };
}

async function warnedAnimals(manager: EntityManager, asked: Asked): Promise<WarnedRecordView[]> {
  const conditions = standing('i', asked);
  conditions.add(seen('individual', 'i'));
  const rows = await manager.query<{ id: string; number: string; code: string | null }[]>(
    `select i.id, i.number::text, i.code from individual i where ${conditions.sql} order by i.number desc limit ${LOOKED_AT}`,
    conditions.parameters,
  );
  const warnings = await readOpenWarnings(
    manager,
    'individual',
    rows.map(({ id }) => id),
  );
  return rows.flatMap(({ id, number, code }) => {
    const own = warnings.get(id);
    return own ? [{ kind: 'animal', id, title: code ?? formatRegistryNumber(number), warnings: own }] : [];
  });
}

async function warnedClutches(manager: EntityManager, asked: Asked): Promise<WarnedRecordView[]> {
  const conditions = standing('c', asked);
  conditions.add(seenClutch('c'));
  const rows = await manager.query<{ id: string; laid: string | null; code: string | null }[]>(
    `select c.id, c.laid, c.code from clutch c where ${conditions.sql} and c.laid_earliest is not null
     order by c.laid_earliest desc, c.laid_latest desc, c.id desc limit ${LOOKED_AT}`,
    conditions.parameters,
  );
  const warnings = await readOpenWarnings(
    manager,
    'clutch',
    rows.map(({ id }) => id),
  );
  return rows.flatMap(({ id, laid, code }) => {
    const own = warnings.get(id);
    return own ? [{ kind: 'clutch', id, title: clutchTitle({ laid, code }), warnings: own }] : [];
  });
}

function standing(alias: string, asked: Asked): Conditions {
  const conditions = new Conditions();
  conditions.add(`${alias}.withdrawn_at is null`);
  if (asked.keeperId !== null) conditions.add(`${alias}.keeper_id = ${conditions.bind(asked.keeperId)}`);
  return conditions;
}
