import { open } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { JsonProblem, readJson, SHEET_BYTES_MOST } from '../../../shared/sheet/canonical-json.ts';
import { ShapeProblem } from '../../../shared/sheet/shape.ts';
import { readPublishedKeys, type SheetKey } from '../../../shared/sheet/sheet-keys.ts';
import { reportVerdict } from '../../../shared/sheet/verdict-report.ts';
import { verifySheet } from '../../../shared/sheet/verify-sheet.ts';

/* Checks a provenance sheet on the command line: the same code as the service and the browser, no server and no network. */

const usage = `Usage: npm run --silent sheet:verify -- sheet.json [--keys keys.json]

Tells whether a provenance sheet is genuine, by its bytes and the public keys of the register that issued it.

  sheet.json        the file as it was handed out
  --keys keys.json  the public keys, saved from /.well-known/jwks.json of that register; keys.json if left out
  --help            print this

The exit status is 0 for a sheet that is genuine and valid by its date, 1 for any other file, 2 where it could not be checked.
`;

/** What was asked for cannot be done; the message says why. */
class UsageError extends Error {}

/** Checks a file and prints what it is. Gives the exit status: 0 genuine, 1 not so, 2 not checked. */
async function run(args: readonly string[]): Promise<number> {
  const options = readOptions(args);
  if (options === null) {
    console.log(usage);
    return 0;
  }
  const keys = await readKeys(options.keys);
  const verdict = await verifySheet(await bytesOf(options.file), keys);
  // a file of anybody must not speak to the terminal
  const lines = reportVerdict(verdict)
    .map((line) => line.replace(/\p{Cc}/gu, '�'))
    .join('\n');
  if (verdict.outcome === 'genuine') console.log(lines);
  else console.error(lines);
  return verdict.outcome === 'genuine' ? 0 : 1;
}

function readOptions(args: readonly string[]): { readonly file: string; readonly keys: string } | null {
  try {
    const options = {
      keys: { type: 'string', default: 'keys.json' },
      help: { type: 'boolean', default: false, short: 'h' },
    } as const;
    const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true });
    if (values.help) return null;
    const [file] = positionals;
    if (file === undefined || positionals.length > 1) throw new Error('Name one sheet to check');
    return { file, keys: values.keys };
  } catch (error) {
    const wrong = error instanceof Error ? (error.message.split('. ')[0] ?? '') : String(error);
    throw new UsageError(`${wrong}.\n\n${usage}`);
  }
}

async function readKeys(path: string): Promise<SheetKey[]> {
  const bytes = await bytesOf(path);
  try {
    return await readPublishedKeys(readJson(bytes).value);
  } catch (error) {
    if (error instanceof JsonProblem || error instanceof ShapeProblem)
      throw new UsageError(`${path} does not hold the public keys of a register. ${error.message}`);
    throw error;
  }
}

/** The bytes of a file; of one that is larger than any sheet, one more than the largest has. */
async function bytesOf(path: string): Promise<Uint8Array> {
  try {
    const file = await open(path, 'r');
    try {
      const bytes = new Uint8Array(SHEET_BYTES_MOST + 1);
      let length = 0;
      for (let read = 1; read > 0 && length < bytes.length; length += read)
        read = (await file.read(bytes, length, bytes.length - length, null)).bytesRead;
      return bytes.subarray(0, length);
    } finally {
      await file.close();
    }
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'an unknown fault';
    const advice = code === 'ENOENT' ? 'there is no such file' : code;
    throw new UsageError(`${path} cannot be read: ${advice}.`);
  }
}

run(process.argv.slice(2)).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    console.error(error instanceof UsageError ? error.message : error);
    process.exitCode = 2;
  },
);
