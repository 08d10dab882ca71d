import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { Visibility } from '../../shared/vocabulary.ts';
import type { Acting } from '../platform/acting.ts';
import { writeEntry } from '../platform/journal-entry.ts';
import type { Page, PageQuery } from '../platform/paging.ts';
import { InvalidProblem } from '../platform/problem.ts';
import { lockPedigree } from '../platform/revision.ts';
import { inTransaction } from '../platform/transaction.ts';
import { allowLongWork, insertImport, listImports, tellPlanner } from './import.queries.ts';
import type { CreatedCounts, ImportView, PastImportView } from './import.view.ts';
import { readKnowledge } from './knowledge.queries.ts';
import { warnOfImplausible } from './plausibility-warnings.ts';
import { writePlan } from './plan-writer.ts';
import type { ProblemList } from './problem-list.ts';
import type { ReceivedSheet } from './receive-sheet.ts';
import { type SheetPlan, planSheet } from './sheet-plan.ts';
import type { Sheet } from './sheet-reader.ts';
import { SheetReport } from './sheet-report.ts';
import { say } from '../platform/say.ts';

/** From here on a sheet changes the register so much that old statistics mislead. */
const manyRows = 1000;

/** Takes register sheets into the register, whole or not at all. */
@Injectable()
export class ImportsService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /**
   * Writes a sheet in one transaction. Two sheets at once wait for each other, so that the second sees what the first wrote.
   *
   * @param visibility of the animals and sources that it makes
   * @throws InvalidProblem with every problem of the sheet; then nothing is written
   */
  take(keeper: Acting, sheet: ReceivedSheet, visibility: Visibility): Promise<ImportView> {
    return inTransaction(this.dataSource, async (manager) => {
      await allowLongWork(manager);
      await lockPedigree(manager);
      const plan = await this.understand(manager, keeper, sheet);
      const view = viewOf(plan, sheet.warnings);
      const id = await insertImport(manager, keeper.id, view, sheet.sha256);
      await writePlan(manager, plan, keeper.id, id, visibility);
      if (plan.table.length >= manyRows) await tellPlanner(manager);
      await writeEntry(manager, {
        action: 'imported',
        kind: 'import',
        recordId: id,
        ownerId: keeper.id,
        before: null,
        after: { rows: view.rows, created: view.created, warnings: view.warningCount, sheetSha256: sheet.sha256 },
      });
      return { ...view, id };
    });
  }

  /** Checks a sheet and tells what it would make. @throws InvalidProblem as `take` does */
  async check(keeper: Acting, sheet: Sheet): Promise<ImportView> {
    return viewOf(await this.understand(this.dataSource.manager, keeper, sheet), sheet.warnings);
  }

  /** Imports of the past, newest first. */
  list(query: PageQuery): Promise<Page<PastImportView>> {
    return listImports(this.dataSource.manager, query);
  }

  private async understand(manager: EntityManager, keeper: Acting, sheet: Sheet): Promise<SheetPlan> {
    const knowledge = await readKnowledge(manager, keeper.id, sheet.table);
    const plan = await planSheet(sheet, knowledge);
    if (plan === null) throw refusal(sheet.problems);
    await warnOfImplausible(plan, knowledge, new SheetReport(sheet.table, sheet.problems, sheet.warnings));
    return plan;
  }
}

/** The answer that names all problems of a sheet. */
function refusal(problems: ProblemList): InvalidProblem {
  const errors = problems.list().map(({ row, column, detail }) => ({
    ...(row > 0 ? { row } : {}),
    ...(column === '' ? {} : { column }),
    detail,
  }));
  const total = problems.total;
  const shown = errors.length < total ? say` The first ${errors.length} are listed.` : '';
  const count = total === 1 ? say`The sheet has 1 problem` : say`The sheet has ${total} problems`;
  return new InvalidProblem(say`${count}; nothing was stored.${shown}`, errors, { problemCount: total });
}

function viewOf(plan: SheetPlan, warnings: ProblemList): ImportView {
  const created = countsOf(plan);
  return { id: null, rows: plan.table.length, created, warnings: warnings.list(), warningCount: warnings.total };
}

/** How many records a plan makes. */
export function countsOf(plan: SheetPlan): CreatedCounts {
  return {
    individuals: plan.table.length,
    clutches: plan.clutches.filter(({ existing }) => existing === null).length,
    sources: plan.sources.filter(({ existing }) => existing === null).length,
    lines: plan.lines.filter(({ id }) => id === null).length,
    species: plan.speciesIds.filter((id) => id === null).length,
  };
}
