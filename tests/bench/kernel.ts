import { pathToFileURL } from 'node:url';
import { computeInbreeding, type Inbreeding } from '../../api/lineage/kernel/inbreeding.ts';
import { kinshipMatrix } from '../../api/lineage/kernel/kinship.ts';
import { meanKinship } from '../../api/lineage/kernel/mean-kinship.ts';
import type { Pedigree } from '../../api/lineage/kernel/pedigree.ts';
import { buildShape, SHAPES, type Shape } from './kernel-shapes.ts';
import { Textbook, TEXTBOOK_LIMIT } from './textbook.ts';

/** One line of the bench table. */
export interface KernelRow {
  readonly what: string;
  readonly animals: number;
  /** Median of the runs. */
  readonly milliseconds: number;
  /** The same by the compiled textbook method, the faster of list and heap; a word where there is no figure. */
  readonly textbookMilliseconds: number | string;
  /** Textbook by ours: above 1 we are faster. */
  readonly ratio: number | string;
}

const RUNS = 7;
/** Where the textbook method takes longer than this, one run is enough. */
const SLOW_MILLISECONDS = 3000;

/** Measures the kernel on the shapes, checks the result against the textbook method, and returns the rows of a table. */
export async function benchKernel(): Promise<KernelRow[]> {
  const textbook = Textbook.compile();
  const rows: KernelRow[] = [];
  for (const shape of SHAPES) {
    rows.push(measureShape(shape, textbook));
    await new Promise(setImmediate); // lets an interrupted bench end between two shapes
  }
  textbook?.remove();
  return [...rows, ...measureQuestions()];
}

function measureShape(shape: Shape, textbook: Textbook | null): KernelRow {
  const pedigree = buildShape(shape);
  const { milliseconds, result } = medianOf(() => computeInbreeding(pedigree));
  const row = { what: `F of all: ${shape.name}`, animals: pedigree.clutchOf.length, milliseconds };
  if (textbook === null) return { ...row, textbookMilliseconds: 'no C compiler', ratio: '' };
  textbook.give(pedigree);
  const times = (['list', 'heap'] as const).map((variant) => timeTextbook(textbook, variant, pedigree, result));
  const known = times.filter((time) => time !== null);
  if (known.length === 0)
    return {
      ...row,
      textbookMilliseconds: `over ${TEXTBOOK_LIMIT}`,
      ratio: `over ${Math.round(TEXTBOOK_LIMIT / milliseconds)}`,
    };
  const best = Math.min(...known);
  return { ...row, textbookMilliseconds: best, ratio: best / milliseconds };
}

function timeTextbook(
  textbook: Textbook,
  variant: 'list' | 'heap',
  pedigree: Pedigree,
  ours: Inbreeding,
): number | null {
  const times: number[] = [];
  for (let run = 0; run < RUNS; run++) {
    const measured = textbook.run(variant);
    if (measured === null) return null;
    const sum = pedigree.clutchOf.reduce((total, clutch) => total + (ours.clutchExpected[clutch] ?? 0), 0);
    if (Math.abs(measured.sum - sum) > 1e-6 * Math.max(1, sum))
      throw new Error(`The textbook method finds a sum of F of ${measured.sum}, the kernel of ${sum}.`);
    times.push(measured.milliseconds);
    if (measured.milliseconds > SLOW_MILLISECONDS) break;
  }
  return median(times);
}

/** What a keeper or the matching asks, on the closed population of 100 000. */
function measureQuestions(): KernelRow[] {
  const shape = SHAPES.find(({ lines, clutchSize }) => lines === 1 && clutchSize === 5);
  if (shape === undefined) throw new Error('The closed population is no longer among the shapes.');
  const pedigree = buildShape(shape);
  const inbreeding = computeInbreeding(pedigree);
  const animals = pedigree.clutchOf.length;
  const last500 = Int32Array.from({ length: 500 }, (_, place) => animals - 1 - place);
  const small = buildShape({ ...shape, animalsPerLine: 5000, breeders: 100 });
  const smallInbreeding = computeInbreeding(small);
  const everybody = Int32Array.from(small.clutchOf.keys());
  const row = (what: string, of: Pedigree, task: () => unknown): KernelRow => ({
    what,
    animals: of.clutchOf.length,
    milliseconds: medianOf(task).milliseconds,
    textbookMilliseconds: '',
    ratio: '',
  });
  return [
    row('kinship matrix of the last 500', pedigree, () => kinshipMatrix(pedigree, inbreeding, last500)),
    row('kinship matrix of all', small, () => kinshipMatrix(small, smallInbreeding, everybody)),
    row('mean kinship of all with the last 500', pedigree, () => meanKinship(pedigree, inbreeding, last500)),
  ];
}

function medianOf<Result>(task: () => Result): { milliseconds: number; result: Result } {
  let result = task(); // warms up the compiler, and is not counted
  const times: number[] = [];
  for (let run = 0; run < RUNS; run++) {
    const start = performance.now();
    result = task();
    times.push(performance.now() - start);
  }
  return { milliseconds: median(times), result };
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const rounded = (value: number | string): number | string =>
    typeof value === 'number' ? Number(value.toPrecision(3)) : value;
  const rows = await benchKernel();
  console.table(
    rows.map((row) => ({
      ...row,
      milliseconds: rounded(row.milliseconds),
      textbookMilliseconds: rounded(row.textbookMilliseconds),
      ratio: rounded(row.ratio),
    })),
  );
}
