/** The columns of a register sheet, by the names that this room uses for them. */
export const sheetColumns = [
  'code',
  'species',
  'line',
  'sex',
  'sire',
  'dam',
  'parents',
  'clutch',
  'source',
  'sourceKind',
  'sourceDate',
  'sourceBaseKinship',
  'countryOfExport',
  'label',
  'labelStandingNote',
  'laid',
  'hatched',
  'outOfWater',
  'died',
  'status',
  'notes',
] as const;
export type SheetColumn = (typeof sheetColumns)[number];

/** The header of a column as keepers write it and as problems name it: `outOfWater` is "out of water". */
export function headerOf(column: SheetColumn): string {
  return column.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);
}

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

const columnOfKey = new Map<string, SheetColumn>(sheetColumns.map((column) => [column.toLowerCase(), column]));

/** What two headers have in common that mean the same column: neither case nor spaces, dashes or underscores count. */
export function headerKey(header: string): string {
  return header
    .normalize('NFC')
    .toLowerCase()
    .replace(/[\s_\-‐-―]+/g, '');
}

/** The column that a header names, or null where the register knows no such column. */
export function columnOf(header: string): SheetColumn | null {
  return columnOfKey.get(headerKey(header)) ?? null;
}
