/** A sheet as far as the reader of its problems needs it: the header and the cells of single rows. */
export interface SheetRows {
  header: string[];
  /** Cells by row number as a spreadsheet shows it: the header is row 1. */
  rows: Map<number, string[]>;
}

const largestShown = 8 * 1024 * 1024;

/** Reads the wanted rows of a sheet; null where the sheet is too large to show beside its problems or cannot be read. */
export async function readRows(sheet: Blob, wanted: ReadonlySet<number>): Promise<SheetRows | null> {
  if (sheet.size > largestShown) return null;
  // Loaded only when a sheet has problems.
  const { parse } = await import('csv-parse/browser/esm/sync');
  const text = await sheet.text();
  try {
    const records = parse(text, {
      bom: true,
      delimiter: delimiterOf(text),
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
    });
    const rows = new Map<number, string[]>();
    for (const row of wanted) {
      const cells = records[row - 1];
      if (cells) rows.set(row, cells);
    }
    return { header: records[0] ?? [], rows };
  } catch {
    return null;
  }
}

/** Comma, semicolon or tab: whichever the first line has most of. */
function delimiterOf(text: string): string {
  const first = text.slice(0, text.indexOf('\n') === -1 ? undefined : text.indexOf('\n'));
  const count = (mark: string): number => first.split(mark).length;
  return [',', ';', '\t'].reduce((best, mark) => (count(mark) > count(best) ? mark : best));
}

/** Whether two header words mean the same column: case, spaces, dashes and underscores do not matter. */
export function isSameColumn(a: string, b: string): boolean {
  const bare = (word: string): string => word.toLowerCase().replace(/[\s_-]/g, '');
  return bare(a) === bare(b);
}
