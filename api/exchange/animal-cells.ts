import type { DateBounds } from '../../shared/edtf.ts';
import { isCertainlyBefore } from '../../shared/edtf.ts';
import { dateColumns } from '../../shared/register-sheet.ts';
import type { Sex, Status } from '../../shared/vocabulary.ts';
import { statuses } from '../../shared/vocabulary.ts';
import { readSex, readStatus } from './cell-words.ts';
import { DateCells } from './date-cells.ts';
import type { SheetColumn } from '../../shared/register-sheet.ts';
import { headerOf } from '../../shared/register-sheet.ts';
import type { SheetReport } from './sheet-report.ts';
import type { SheetTable } from './sheet-table.ts';
import { say } from '../platform/say.ts';

/** What happens to an animal, in the order in which it must happen. */
const inOrder: readonly (readonly [SheetColumn, SheetColumn])[] = [
  ['laid', 'hatched'],
  ['laid', 'outOfWater'],
  ['laid', 'died'],
  ['hatched', 'outOfWater'],
  ['hatched', 'died'],
  ['outOfWater', 'died'],
];

/** What the cells of each animal say about itself: sex, status and dates. */
export class AnimalCells {
  readonly dates: DateCells;
  readonly #table: SheetTable;

  constructor(table: SheetTable) {
    this.#table = table;
    this.dates = new DateCells(table);
  }

  /** The sex of an animal; `unsexed` where the cell says nothing. */
  sex(animal: number): Sex {
    return readSex(this.#table.text('sex', animal)) ?? 'unsexed';
  }

  /** The status of an animal: without one, `died` where a date of death is given, else `alive`. */
  status(animal: number): Status {
    const text = this.#table.text('status', animal);
    return (text === '' ? null : readStatus(text)) ?? (this.#table.text('died', animal) === '' ? 'alive' : 'died');
  }

  /** When an animal hatched: what its own date and that of its laying leave possible. Null where nothing is recorded. */
  hatched(animal: number): DateBounds | null {
    const hatched = this.dates.bounds('hatched', animal);
    const laid = this.dates.bounds('laid', animal);
    if (laid === null) return hatched;
    const later = hatched?.earliest != null && (laid.earliest === null || hatched.earliest > laid.earliest);
    return { earliest: later ? hatched.earliest : laid.earliest, latest: hatched?.latest ?? null };
  }

  /** Refuses words and dates that cannot be read, and those of one row that contradict each other. */
  check(animal: number, report: SheetReport): void {
    const sex = this.#table.text('sex', animal);
    if (readSex(sex) === null)
      report.refuse(animal, 'sex', say`"${sex.slice(0, 60)}" is no sex. Write m, f or u, or male, female, unsexed.`);
    const status = this.#table.text('status', animal);
    if (status !== '' && readStatus(status) === null)
      report.refuse(
        animal,
        'status',
        say`"${status.slice(0, 60)}" is no status. Write ${statuses.join(', ')}, or leave it empty.`,
      );
    for (const column of dateColumns) this.dates.check(column, animal, report);
    if (this.#table.text('died', animal) !== '' && readStatus(status) !== null && readStatus(status) !== 'died')
      report.refuse(
        animal,
        'status',
        say`The status is ${status}, yet a date of death is given. Write died, or take the date out.`,
      );
    for (const [first, second] of inOrder) this.#checkOrder(animal, first, second, report);
  }

  #checkOrder(animal: number, first: SheetColumn, second: SheetColumn, report: SheetReport): void {
    const before = this.dates.bounds(first, animal);
    const after = this.dates.bounds(second, animal);
    if (before === null || after === null || !isCertainlyBefore(after, before)) return;
    const dates = say`${this.#table.text(second, animal)} is before ${this.#table.text(first, animal)}`;
    report.refuse(
      animal,
      second,
      say`"${headerOf(second)}" comes before "${headerOf(first)}" (${dates}). Correct one of the dates.`,
    );
  }
}
