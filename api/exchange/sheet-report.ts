import type { ProblemList } from './problem-list.ts';
import type { SheetColumn } from '../../shared/register-sheet.ts';
import { headerOf } from '../../shared/register-sheet.ts';
import type { SheetTable } from './sheet-table.ts';

/** Notes problems and warnings at the cell of an animal. */
export class SheetReport {
  readonly #table: SheetTable;
  readonly #problems: ProblemList;
  readonly #warnings: ProblemList;

  constructor(table: SheetTable, problems: ProblemList, warnings: ProblemList) {
    this.#table = table;
    this.#problems = problems;
    this.#warnings = warnings;
  }

  /** The sheet cannot be taken because of this cell. */
  refuse(animal: number, column: SheetColumn, detail: string): void {
    this.#problems.add(this.#table.row(animal), headerOf(column), detail);
  }

  /** The sheet can be taken, but somebody should look at this cell. */
  warn(animal: number, column: SheetColumn, detail: string): void {
    this.#warnings.add(this.#table.row(animal), headerOf(column), detail);
  }

  /** How many problems there are so far. */
  get problems(): number {
    return this.#problems.total;
  }
}
