import type { SheetColumn } from '../../shared/register-sheet.ts';
import { sheetColumns } from '../../shared/register-sheet.ts';
import { textColumns } from './sheet-columns.ts';

/**
 * The cells of a sheet, column by column: a number for each cell, and each different text once. Cells are trimmed and
 * in Unicode normal form C; an empty cell is the empty text, number 0.
 */
export class SheetTable {
  readonly #texts: string[] = [''];
  readonly #numberOf = new Map<string, number>([['', 0]]);
  readonly #cells = new Map<SheetColumn, GrowingNumbers>();
  readonly #rows = new GrowingNumbers();

  /** How many animals the sheet has; they are 0 .. length−1 in the order of the file. */
  get length(): number {
    return this.#rows.length;
  }

  /** How many different texts there are. */
  get textCount(): number {
    return this.#texts.length;
  }

  /** Adds an animal; columns left out are empty. @param row its row as a spreadsheet numbers it */
  add(row: number, cells: ReadonlyMap<SheetColumn, string>): void {
    const animal = this.#rows.length;
    this.#rows.push(row);
    for (const [column, text] of cells) {
      if (text === '') continue;
      let numbers = this.#cells.get(column);
      if (numbers === undefined) this.#cells.set(column, (numbers = new GrowingNumbers()));
      numbers.set(animal, this.#number(column, text));
    }
  }

  /** The row of an animal as a spreadsheet numbers it. */
  row(animal: number): number {
    return this.#rows.at(animal);
  }

  /** The text of a cell, empty where there is none. */
  text(column: SheetColumn, animal: number): string {
    return this.#texts[this.textNumber(column, animal)] ?? '';
  }

  /** The number of the text of a cell: the same text has the same number, save in columns of free text; 0 is empty. */
  textNumber(column: SheetColumn, animal: number): number {
    return this.#cells.get(column)?.at(animal) ?? 0;
  }

  /** The columns that hold anything, in the order of the vocabulary. */
  columnsInUse(): SheetColumn[] {
    return sheetColumns.filter((column) => this.#cells.has(column));
  }

  #number(column: SheetColumn, text: string): number {
    // Free text hardly ever repeats; looking it up would cost more memory than it saves.
    if (textColumns.has(column)) return this.#texts.push(text) - 1;
    let number = this.#numberOf.get(text);
    if (number === undefined) {
      number = this.#texts.push(text) - 1;
      this.#numberOf.set(text, number);
    }
    return number;
  }
}

/** Whole numbers from 0, as many as come. */
class GrowingNumbers {
  #values = new Uint32Array(256);
  length = 0;

  at(place: number): number {
    return place < this.length ? (this.#values[place] ?? 0) : 0;
  }

  push(value: number): void {
    this.set(this.length, value);
  }

  set(place: number, value: number): void {
    if (place >= this.#values.length) {
      const larger = new Uint32Array(Math.max(2 * this.#values.length, place + 1));
      larger.set(this.#values);
      this.#values = larger;
    }
    this.#values[place] = value;
    if (place >= this.length) this.length = place + 1;
  }
}
