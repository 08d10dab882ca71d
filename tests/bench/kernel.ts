import { pathToFileURL } from 'node:url';
import { computeInbreeding } from '../../api/lineage/kernel/inbreeding.ts';
import { benchQuestions } from './kernel-questions.ts';
import { benchScale } from './kernel-scale.ts';
import { buildShape, SHAPES, type Shape } from './kernel-shapes.ts';
import { medianOf } from './stopwatch.ts';
import { raceTextbook, type Race } from './textbook-race.ts';
import { Textbook } from './textbook.ts';

/** One line of the bench table. */
export interface KernelRow extends Partial<Race> {
  readonly what: string;
  readonly animals: number;
  /** Median of the runs. */
  readonly milliseconds: number;
  /** What it must not exceed, where something is promised. */
  readonly budget: number | string;
}

/** Milliseconds promised for the inbreeding of all. */
const BUDGETS = new Map([
  ['2 000 lines x 500', 400],
  ['100 000 closed, 400 breeders', 150],
  ['2 000 lines x 500, 2 % crosses', 1500],
]);

/** Measures the kernel on the shapes, checks the result against the textbook method, and returns the rows of a table. */
export async function benchKernel(): Promise<KernelRow[]> {
  const textbook = Textbook.compile();
  const rows: KernelRow[] = [];
  for (const shape of SHAPES) {
    rows.push(measureShape(shape, textbook));
    await new Promise(setImmediate); // lets an interrupted bench end between two shapes
  }
  textbook?.remove();
  return [...rows, ...benchQuestions()];
}

function measureShape(shape: Shape, textbook: Textbook | null): KernelRow {
  const pedigree = buildShape(shape);
  const { milliseconds, result } = medianOf(() => computeInbreeding(pedigree));
  return {
    what: `F of all: ${shape.name}`,
    animals: pedigree.clutchOf.length,
    milliseconds,
    budget: BUDGETS.get(shape.name) ?? '',
    ...raceTextbook(pedigree, result, milliseconds, textbook),
  };
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const print = (rows: readonly object[]): void => {
    const rounded = (value: unknown): unknown => (typeof value === 'number' ? Number(value.toPrecision(3)) : value);
    console.table(
      rows.map((row) => Object.fromEntries(Object.entries(row).map(([name, value]) => [name, rounded(value)]))),
    );
  };
  print(await benchKernel());
  print(await benchScale());
}
