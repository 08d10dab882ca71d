import type { EntityManager } from 'typeorm';
import type { SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { readKnowledge } from '../knowledge.queries.ts';
import type { KnownAnimal } from '../knowledge.ts';
import { warnOfImplausible } from '../plausibility-warnings.ts';
import { ProblemList } from '../problem-list.ts';
import { planSheet, type SheetPlan } from '../sheet-plan.ts';
import { SheetReport } from '../sheet-report.ts';
import { SheetRows } from '../sheet-rows.ts';
import type { ToldAnimal } from './foreign-keys.ts';
import { ForeignCodes, ForeignRowProblem, foreignRows, type ForeignRows } from './foreign-rows.ts';
import { readStanding, withStanding, type ForeignStanding } from './foreign-standing.ts';
import type { BelievedRegister } from './other-registers.queries.ts';
import { say } from '../../platform/say.ts';

/** What a sheet of another register would bring. */
export interface ForeignPlan {
  /** Null where everything on it is known already. */
  readonly plan: SheetPlan | null;
  readonly codes: ForeignCodes;
  /** Animals that come in, in the order of the plan. */
  readonly incoming: readonly ToldAnimal[];
  /** Animals that are here already, by ref. */
  readonly known: ReadonlyMap<string, KnownAnimal>;
  /** Refs of clutches and sources that are here already. */
  readonly knownRefs: ReadonlySet<string>;
  readonly warnings: readonly { readonly ref: string | null; readonly detail: string }[];
}

/**
 * Finds out what a sheet would bring: recognises what is here, and plans the rest as a register sheet, by its rules.
 *
 * @param named ids of records here by refs of the sheet, as the keeper says
 * @throws InvalidProblem naming what stands against it
 */
export async function planForeignSheet(
  manager: EntityManager,
  keeperId: string,
  register: BelievedRegister,
  sheet: SheetDocument,
  prefix: string,
  named: ReadonlyMap<string, string>,
): Promise<ForeignPlan> {
  const codes = new ForeignCodes(prefix, sheet.number);
  const standing = await readStanding(manager, register.id, sheet, named);
  const rows = rowsOf(sheet, register.name, codes, standing);
  const knownRefs = new Set([...standing.clutches.keys(), ...standing.sources.keys()]);
  const found = { codes, incoming: rows.animals, known: standing.animals, knownRefs };
  if (rows.animals.length === 0) return { ...found, plan: null, warnings: [] };
  const problems = new ProblemList();
  const warnings = new ProblemList();
  const taken = new SheetRows(problems, warnings);
  for (const record of rows.records) taken.take(record);
  const about = (row: number): string | null => rows.animals[row - 2]?.ref ?? null;
  const { table } = taken;
  const knowledge = withStanding(await readKnowledge(manager, keeperId, table), codes, sheet, standing);
  const plan = problems.total > 0 ? null : await planSheet({ table, problems, warnings }, knowledge);
  if (plan === null) throw refusal(problems, about);
  await warnOfImplausible(plan, knowledge, new SheetReport(table, problems, warnings));
  return { ...found, plan, warnings: warnings.list().map(({ row, detail }) => ({ ref: about(row), detail })) };
}

function rowsOf(sheet: SheetDocument, name: string, codes: ForeignCodes, standing: ForeignStanding): ForeignRows {
  try {
    return foreignRows(
      sheet,
      name,
      codes,
      ({ ref }) => standing.animals.has(ref),
      ({ ref }) => standing.clutches.has(ref),
    );
  } catch (error) {
    if (!(error instanceof ForeignRowProblem)) throw error;
    throw new InvalidProblem(say`This sheet cannot be taken in.`, [{ pointer: '/file', detail: error.message }]);
  }
}

function refusal(problems: ProblemList, about: (row: number) => string | null): InvalidProblem {
  const errors = problems.list().map(({ row, detail }) => {
    const ref = about(row);
    return { pointer: '/file', detail: ref === null ? detail : `${ref}: ${detail}` };
  });
  return new InvalidProblem(say`This sheet cannot be taken in; nothing was stored.`, errors);
}
