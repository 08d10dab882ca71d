import type { EntityManager } from 'typeorm';
import type { ClientBase } from 'pg';
import type { Visibility } from '../../shared/vocabulary.ts';
import type { CopyValue } from './copy-rows.ts';
import { copyRows } from './copy-rows.ts';
import {
  PlannedRecords,
  candidateTarget,
  clutchTarget,
  individualTarget,
  lineTarget,
  pairTarget,
  sourceTarget,
  speciesTarget,
} from './planned-records.ts';
import type { SheetPlan } from './sheet-plan.ts';

/**
 * Writes all records of a plan by COPY, each with the import that brought it, in an order in which every reference finds what it names. Must run inside a
 * transaction that holds the lock of the pedigree. The candidates of all clutches are one statement, as the rules of the
 * schema ask.
 */
export async function writePlan(
  manager: EntityManager,
  plan: SheetPlan,
  keeperId: string,
  importId: string,
  visibility: Visibility,
): Promise<void> {
  const client = await connectionOf(manager);
  const records = new PlannedRecords(plan, keeperId, importId, visibility);
  const steps: readonly (readonly [string, Iterable<readonly CopyValue[]>])[] = [
    [speciesTarget, records.species()],
    [lineTarget, records.lines()],
    [sourceTarget, records.sources()],
    [clutchTarget, records.clutches()],
    [individualTarget, records.individuals()],
    [candidateTarget, records.candidates()],
    [pairTarget, records.pairs()],
  ];
  for (const [target, rows] of steps) await copyRows(client, target, rows);
}

/** The driver's own connection of a transaction: TypeORM knows no COPY. */
async function connectionOf(manager: EntityManager): Promise<ClientBase> {
  if (!manager.queryRunner?.isTransactionActive) throw new Error('a plan is written inside a transaction');
  return (await manager.queryRunner.connect()) as ClientBase;
}
