import type { SheetColumn } from '../../shared/register-sheet.ts';

/** Columns that hold free text: line breaks inside a cell are kept there, elsewhere they become spaces. */
export const textColumns: ReadonlySet<SheetColumn> = new Set(['notes', 'labelStandingNote']);

/** Most characters a cell may hold; every column that is not named here takes `longestCell`. */
const longest: Partial<Record<SheetColumn, number>> = {
  code: 40,
  clutch: 40,
  source: 40,
  species: 120,
  line: 120,
  notes: 10_000,
};

/** Most characters of a cell, headers and columns unknown to the register included. */
export const longestCell = 2_000;

/** Most characters a cell of this column may hold. */
export function longestIn(column: SheetColumn): number {
  return longest[column] ?? longestCell;
}
