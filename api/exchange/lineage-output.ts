import type { PedigreeDepth } from '../lineage/kernel/depth.ts';
import type { Inbreeding } from '../lineage/kernel/inbreeding.ts';
import { inbreedingOf } from '../lineage/kernel/inbreeding.ts';
import { kinshipByRows } from '../lineage/kernel/kinship-by-rows.ts';
import { kinshipMatrix } from '../lineage/kernel/kinship.ts';
import type { Pedigree } from '../lineage/kernel/pedigree.ts';
import type { SheetPlan } from './sheet-plan.ts';

/** Columns of the figures, as outside programs rely on them. */
const figureColumns = 'code,inbreeding,inbreedingLeast,inbreedingGreatest,depth,fullDepth,generationEquivalents';

/**
 * The figures of all animals as CSV, one row an animal in the order of the file. Numbers are the shortest decimals that are
 * read back as the same double.
 */
export function* figuresAsCsv(
  { table, pedigree }: Pick<SheetPlan, 'table' | 'pedigree'>,
  inbreeding: Inbreeding,
  { depth, fullDepth, generationEquivalents }: PedigreeDepth,
): Generator<string> {
  yield `${figureColumns}\n`;
  for (let animal = 0; animal < table.length; animal++) {
    const { expected, least, greatest } = inbreedingOf(pedigree, inbreeding, animal);
    const depths = `${depth[animal] ?? 0},${fullDepth[animal] ?? 0},${generationEquivalents[animal] ?? 0}`;
    yield `${csvCell(table.text('code', animal))},${expected},${least},${greatest},${depths}\n`;
  }
}

/** The kinship matrix of all animals as CSV: codes in the header row and in the first column, in the order of the file. */
export function* kinshipAsCsv(
  { table, pedigree }: Pick<SheetPlan, 'table' | 'pedigree'>,
  inbreeding: Inbreeding,
): Generator<string> {
  const everybody = Int32Array.from({ length: table.length }, (_, animal) => animal);
  const codes = Array.from(everybody, (animal) => csvCell(table.text('code', animal)));
  yield `code,${codes.join(',')}\n`;
  let animal = 0;
  for (const row of rowsOf(pedigree, inbreeding, everybody)) yield `${codes[animal++] ?? ''},${row.join(',')}\n`;
}

/** Most animals whose whole matrix is held (128 MB): it is exactly symmetric and costs half as much as rows one by one. */
const mostHeld = 4_000;

function* rowsOf(pedigree: Pedigree, inbreeding: Inbreeding, individuals: Int32Array): Generator<Float64Array> {
  const size = individuals.length;
  if (size > mostHeld) {
    yield* kinshipByRows(pedigree, inbreeding, individuals);
    return;
  }
  const matrix = kinshipMatrix(pedigree, inbreeding, individuals);
  for (let row = 0; row < size; row++) yield matrix.subarray(row * size, (row + 1) * size);
}

/** A cell of a CSV file (RFC 4180). */
function csvCell(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
