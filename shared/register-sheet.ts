/** The columns of a register sheet, by the names that the code uses for them. */
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

/** Columns that hold dates. */
export const dateColumns: readonly SheetColumn[] = ['laid', 'hatched', 'outOfWater', 'died', 'sourceDate'];

/** The header of a column as keepers write it and as problems name it: `outOfWater` is "out of water". */
export function headerOf(column: SheetColumn): string {
  return column.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);
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
