import { once } from 'node:events';
import { createReadStream } from 'node:fs';
import { parseArgs } from 'node:util';
import { pedigreeDepth } from '../lineage/kernel/depth.ts';
import type { Inbreeding } from '../lineage/kernel/inbreeding.ts';
import { computeInbreeding } from '../lineage/kernel/inbreeding.ts';
import { nothingKnown } from './knowledge.ts';
import { figuresAsCsv, kinshipAsCsv } from './lineage-output.ts';
import type { ProblemList } from './problem-list.ts';
import type { SheetPlan } from './sheet-plan.ts';
import { planSheet } from './sheet-plan.ts';
import { readSheet } from './sheet-reader.ts';

/* The figures of a register sheet on the command line: the same reader and the same kernel as the service, no server. */

const usage = `Usage: npm run --silent lineage -- register.csv [--kinship] [--timings]

Reads a register sheet and prints one row of figures an animal as CSV, in the order of the file.

  register.csv  the sheet; - reads standard input
  --kinship     print the kinship matrix instead
  --timings     print {rows, readSeconds, computeSeconds, method} as one line of JSON to standard error
  --help        print this

Problems of the sheet go to standard error with row and column; the exit status is then 1.
`;

interface Options {
  readonly file: string;
  readonly kinship: boolean;
  readonly timings: boolean;
}

/** The options of the command, or what is wrong with them; null where help is wanted. */
function readOptions(args: readonly string[]): Options | string | null {
  try {
    const boolean = { type: 'boolean', default: false } as const;
    const options = { kinship: boolean, timings: boolean, help: { ...boolean, short: 'h' } } as const;
    const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true });
    if (values.help) return null;
    const [file] = positionals;
    if (file === undefined) return 'Name the register sheet to read.';
    if (positionals.length > 1) return 'Name one register sheet only.';
    return { file, kinship: values.kinship, timings: values.timings };
  } catch (error) {
    return error instanceof Error ? (error.message.split('. ')[0] ?? '') : String(error);
  }
}

/** Does the work of the command and gives its exit status: 0 done, 1 problems in the sheet, 2 wrong use. */
async function run(args: readonly string[]): Promise<number> {
  const options = readOptions(args);
  if (options === null || typeof options === 'string') {
    if (options === null) await write(process.stdout, [usage]);
    else await write(process.stderr, [`${options}\n\n${usage}`]);
    return options === null ? 0 : 2;
  }
  const started = performance.now();
  const sheet = await readSheet(bytesOf(options.file)).catch((error: unknown) => {
    throw new Error(`The sheet cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  });
  const plan = await planSheet(sheet, nothingKnown);
  if (plan === null) {
    await write(process.stderr, problemLines(sheet.problems));
    return 1;
  }
  // A person at the screen is told what to look at; programs get nothing on standard error that they did not ask for.
  if (process.stderr.isTTY)
    for (const { row, column, detail } of sheet.warnings.list())
      process.stderr.write(`Note: row ${row}, column ${column}: ${detail}\n`);
  await compute(plan, options, (performance.now() - started) / 1000);
  return 0;
}

async function compute(plan: SheetPlan, { kinship, timings }: Options, readSeconds: number): Promise<void> {
  const started = performance.now();
  const inbreeding = computeInbreeding(plan.pedigree);
  const depth = pedigreeDepth(plan.pedigree, inbreeding.order);
  const computeSeconds = (performance.now() - started) / 1000;
  await write(process.stdout, kinship ? kinshipAsCsv(plan, inbreeding) : figuresAsCsv(plan, inbreeding, depth));
  if (!timings) return;
  const times = { rows: plan.table.length, readSeconds, computeSeconds, method: methodOf(inbreeding) };
  await write(process.stderr, [`${JSON.stringify(times)}\n`]);
}

function methodOf({ method }: Inbreeding): string {
  const used = [...(method.frontier > 0 ? ['frontier'] : []), ...(method.trace > 0 ? ['trace'] : [])];
  return used.length === 0 ? 'none' : used.join('+');
}

function bytesOf(file: string): AsyncIterable<Uint8Array> {
  return file === '-' ? process.stdin : createReadStream(file, { highWaterMark: 1_048_576 });
}

function* problemLines(problems: ProblemList): Generator<string> {
  const shown = problems.list();
  for (const { row, column, detail } of shown) {
    const place = [...(row > 0 ? [`row ${row}`] : []), ...(column === '' ? [] : [`column ${column}`])].join(', ');
    yield `${place === '' ? '' : `${place}: `}${detail}\n`;
  }
  if (problems.total > shown.length) yield `${problems.total - shown.length} further problems are not listed.\n`;
}

/** Writes texts in pieces of a useful size, no faster than the reader takes them. */
async function write(stream: NodeJS.WriteStream, texts: Iterable<string>): Promise<void> {
  let piece = '';
  for (const text of texts) {
    piece += text;
    if (piece.length < 65_536) continue;
    if (!stream.write(piece)) await once(stream, 'drain');
    piece = '';
  }
  await new Promise<void>((resolve) => {
    stream.write(piece, () => resolve());
  });
}

// Whoever reads the output may stop early, as `head` does; that is no failure of ours.
for (const stream of [process.stdout, process.stderr])
  stream.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1));

run(process.argv.slice(2)).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
    process.exitCode = 1;
  },
);
