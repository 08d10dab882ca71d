import { columnOf, dateColumns, headerOf, type SheetColumn } from '$shared/register-sheet.ts';
import type { ColumnMemory, RememberedColumn } from './column-memory.ts';
import { dateOrdersOf, readDate, type DateOrder } from './date-order.ts';
import { guessColumns, type Reason, type Target } from './guess-columns.ts';
import { bareHeading } from './heading-words.ts';
import { letters, readCell, samplesOf, type Mapping } from './mapped-sheet.ts';
import { isWritten, type SheetCells } from './sheet-cells.ts';

/** How many cells of a column stand beside its choice. */
const samplesShown = 3;

/** What one column of a keeper's sheet is. */
export class ColumnChoice {
  readonly at: number;
  readonly heading: string;
  /** All cells below the heading. */
  readonly cells: readonly string[];
  readonly samples: readonly string[];
  target = $state<Target>('own');
  reason = $state<Reason>('none');
  #order = $state<DateOrder | ''>('');

  readonly isDates = $derived(this.target !== 'own' && this.target !== 'out' && dateColumns.includes(this.target));
  readonly orders = $derived.by(() => (this.isDates ? dateOrdersOf(this.cells) : { possible: [], example: '' }));

  constructor(at: number, heading: string, cells: readonly string[]) {
    this.at = at;
    this.heading = heading;
    this.cells = cells;
    this.samples = samplesOf(cells, samplesShown);
  }

  /** The order of its dates: as chosen, or the only one that fits; empty where a keeper must say. */
  get order(): DateOrder | '' {
    if (this.orders.example === '') return '';
    const [only, ...others] = this.orders.possible;
    return only !== undefined && others.length === 0 ? only : this.#order;
  }
  set order(order: DateOrder | '') {
    this.#order = order;
  }

  /** Whether a keeper must say in which order the dates are written. */
  readonly mustSayOrder = $derived(this.orders.example !== '' && this.orders.possible.length !== 1);

  /** How the register reads a cell of it. */
  read(cell: string): string {
    return this.target === 'own' || this.target === 'out' ? cell : readCell(cell, this.target, this.order || undefined);
  }

  /** The heading, or the letter that a spreadsheet gives the column. */
  get name(): string {
    return this.heading === '' ? `column ${letters(this.at)}` : this.heading;
  }
}

/** What the columns of a sheet are: guessed first, then as the keeper says. */
export class ColumnChoices {
  readonly cells: SheetCells;
  readonly columns: readonly ColumnChoice[];
  readonly #memory: ColumnMemory;
  /** How many columns the headings name, blank ones at the end left out. */
  readonly #width: number;
  species = $state('');

  constructor(cells: SheetCells, memory: ColumnMemory) {
    this.cells = cells;
    this.#memory = memory;
    const headings = (cells.rows[cells.headings] ?? []).map((heading) => heading.trim().replace(/\s+/g, ' '));
    const below = cells.rows.slice(cells.headings + 1).filter(isWritten);
    this.#width = headings.length;
    const columns = headings.map(
      (heading, at) =>
        new ColumnChoice(
          at,
          heading,
          below.map((row) => row[at] ?? ''),
        ),
    );
    const guesses = guessColumns(
      headings,
      columns.map((column) => column.cells),
      memory.columns,
    );
    for (const column of columns) {
      Object.assign(column, guesses[column.at]);
      column.order = memory.columns.get(bareHeading(column.heading))?.order ?? '';
    }
    // A column without heading and without cells is none.
    this.columns = columns.filter((column) => column.heading !== '' || column.samples.length > 0);
  }

  /** How many rows below the headings are not blank. */
  get rows(): number {
    return this.columns[0]?.cells.length ?? 0;
  }

  /** Whether the sheet is as the register writes it, so that nobody has to be asked. */
  get isPlain(): boolean {
    const first = this.cells.rows.findIndex(isWritten);
    return (
      this.cells.encoding === 'UTF-8' &&
      first === this.cells.headings &&
      this.columns.every(
        (column) =>
          columnOf(column.heading) === column.target &&
          column.cells.every((cell) => !column.isDates || cell.trim() === '' || readDate(cell) === cell.trim()),
      )
    );
  }

  /** Columns that say the same as another one. */
  isTwice(column: ColumnChoice): boolean {
    if (column.target === 'own' || column.target === 'out') return false;
    return this.columns.some((other) => other !== column && other.target === column.target);
  }

  has(target: SheetColumn): boolean {
    return this.columns.some((column) => column.target === target);
  }

  /** What keeps the sheet from being checked, in a sentence each. */
  readonly faults = $derived.by(() => {
    const faults: string[] = [];
    if (!this.has('code')) faults.push('Say which column holds the codes of the animals.');
    if (!this.has('species') && this.species.trim() === '')
      faults.push('Say which column holds the species, or write it once for all rows.');
    for (const column of this.columns) {
      if (column.mustSayOrder && column.order === '')
        faults.push(`Say in which order “${column.name}” writes its dates.`);
      if (this.isTwice(column) && column.target !== 'own' && column.target !== 'out')
        faults.push(`“${column.name}” is not the only column that is ${headerOf(column.target)}.`);
    }
    return faults;
  });

  /**
   * What was decided, for the sheet that is sent.
   *
   * @param without numbers of rows that are left out
   */
  mapping(without: readonly number[] = []): Mapping {
    const columns = Array.from({ length: this.#width }, (_, at) => this.columns.find((column) => column.at === at));
    return {
      targets: columns.map((column) => column?.target ?? 'out'),
      orders: columns.map((column) => column?.order || undefined),
      species: this.has('species') ? '' : this.species.trim(),
      without,
    };
  }

  /** Remembers the choices for the next sheet of this keeper. */
  remember(): void {
    const choices = this.columns
      .filter(({ heading }) => heading !== '')
      .map((column): [string, RememberedColumn] => [
        bareHeading(column.heading),
        { target: column.target, order: column.order || undefined },
      ]);
    this.#memory.keep(choices);
  }

  /** The keeper's own name of a column of the register, for problems that are told of it. */
  nameOf(header: string): string {
    const target = columnOf(header);
    const column = this.columns.find((each) => each.target === target);
    return column && target !== null && columnOf(column.heading) !== target ? `${column.heading} (${header})` : header;
  }
}
