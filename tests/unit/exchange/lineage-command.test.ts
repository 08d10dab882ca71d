import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { containing, some } from './matchers.ts';

/* The command as it is built (`npm run build:api`), in a process of its own. */

const command = fileURLToPath(new URL('../../../dist/api/exchange/lineage-command.js', import.meta.url));

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'linekeeper-lineage-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

interface Outcome {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

async function lineage(args: readonly string[], input = ''): Promise<Outcome> {
  const child = spawn(process.execPath, [command, ...args]);
  child.stdin.on('error', () => undefined); // a command that reads no input closes it
  child.stdin.end(input);
  const closed = once(child, 'close') as Promise<[number | null]>;
  const [out, err, [status]] = await Promise.all([text(child.stdout), text(child.stderr), closed]);
  return { status, out, err };
}

async function saved(sheet: string): Promise<string> {
  const file = join(folder, 'register.csv');
  await writeFile(file, sheet);
  return file;
}

const columns = 'code,inbreeding,inbreedingLeast,inbreedingGreatest,depth,fullDepth,generationEquivalents\n';

describe('figures', () => {
  test('one row an animal, in the order of the file, codes quoted where they must be', async () => {
    const file = await saved('sire;code;dam\n"C, 1";X;D\n;A;\n;B;\nA;"C, 1";B\nA;"D ""d""";B\nA;D;B\n');
    expect(await lineage([file])).toEqual({
      status: 0,
      out: `${columns}X,0.25,0.25,0.25,2,2,2\nA,0,0,0,0,0,0\nB,0,0,0,0,0,0\n"C, 1",0,0,0,1,1,1\n"D ""d""",0,0,0,1,1,1\nD,0,0,0,1,1,1\n`,
      err: '',
    });
  });

  test('numbers keep every digit, standard input is read for -', async () => {
    const { out, status } = await lineage(
      ['-'],
      'code,sire,dam,parents\nA,,,\nB,,,\nC,A,B,\nD,A,B,\nE,A/C/?,B/D,\nF,,,C/D/E\n',
    );
    expect(status).toBe(0);
    const lastRow = out.trim().split('\n').at(-1)?.split(',').map(Number) ?? [];
    // Worked by hand: φ(C,D) = 1/4; φ(E,·) = ½ Σ w φ(k,·) over A 1/3, C 1/3, B 1/2, D 1/2; F of the young of a group is the mean over its pairs.
    const withC = 0.5 * ((0.25 + 0.5) / 3 + (0.25 + 0.25) / 2);
    const withD = 0.5 * ((0.25 + 0.25) / 3 + (0.25 + 0.5) / 2);
    expect(lastRow[1]).toBeCloseTo((0.25 + withC + withD) / 3, 12);
    expect([lastRow[2], lastRow[3]]).toEqual(
      [Math.min(0.25, withC, withD), Math.max(0.25, withC, withD)].map((value) => expect.closeTo(value, 12) as unknown),
    );
    expect(String(lastRow[1]).length).toBeGreaterThan(15);
  });

  test('the Habsburg pedigree comes out to 1e-12 (values: tests/reference/habsburg.json)', async () => {
    const file = await readFile(new URL('../../reference/habsburg.json', import.meta.url), 'utf8');
    const { cases } = JSON.parse(file) as {
      cases: {
        pedigree: { id: string; sire: string | null; dam: string | null }[];
        expected: { inbreeding: Record<string, { decimal: number }> };
      }[];
    };
    for (const { pedigree, expected } of cases) {
      const rows = pedigree.map(({ id, sire, dam }) => `${id}\t${sire ?? ''}\t${dam ?? '?'}`);
      const { out } = await lineage(['-'], `Code\tSire\tDam\n${rows.join('\n')}\n`);
      const figures = new Map(out.split('\n').map((line) => [line.split(',')[0], Number(line.split(',')[1])]));
      for (const [id, { decimal }] of Object.entries(expected.inbreeding))
        expect(Math.abs((figures.get(id) ?? NaN) - decimal), id).toBeLessThan(1e-12);
    }
  });

  test('a source with a base kinship counts', async () => {
    const { out } = await lineage(['-'], 'code,source,source base kinship,sire,dam\nA,S,0.25,,\nB,S,,,\nC,,,A,B\n');
    expect(out).toBe(`${columns}A,0.25,0.25,0.25,0,0,0\nB,0.25,0.25,0.25,0,0,0\nC,0.25,0.25,0.25,1,1,1\n`);
  });
});

describe('kinship', () => {
  test('a matrix with codes in the header row and the first column', async () => {
    const { out, status } = await lineage(['--kinship', '-'], 'code,sire,dam\nC,A,B\nA,,\nB,,\n');
    expect([status, out]).toEqual([0, 'code,C,A,B\nC,0.5,0.25,0.25\nA,0.25,0.5,0\nB,0.25,0,0.5\n']);
  });

  test('rows of a matrix too large to hold are the same figures', async () => {
    // Even numbers are sires, odd ones dams.
    const rows = Array.from({ length: 4_100 }, (_, place) =>
      place < 4 ? `N${place},,` : `N${place},N${even(place)},N${even(place) + 1}`,
    );
    const sheet = `code,sire,dam\n${rows.join('\n')}\n`;
    const { out, status } = await lineage(['--kinship', '-'], sheet);
    expect(status).toBe(0);
    const lines = out.trimEnd().split('\n');
    expect(lines).toHaveLength(4_101);
    const small = await lineage(['--kinship', '-'], `${sheet.split('\n').slice(0, 501).join('\n')}\n`);
    const smallLines = small.out.trimEnd().split('\n');
    for (const place of [1, 7, 123, 500]) {
      const large = lines[place]?.split(',').slice(1, 501).map(Number) ?? [];
      const held = smallLines[place]?.split(',').slice(1).map(Number) ?? [];
      expect(large.length).toBe(500);
      expect(Math.max(...large.map((value, column) => Math.abs(value - (held[column] ?? NaN))))).toBeLessThan(1e-12);
    }
  });
});

/** An even number of an animal that stands, with the one after it, before a place. */
const even = (place: number): number => 2 * ((place * 7919) % Math.floor(place / 2));

describe('what goes wrong', () => {
  test('problems of the sheet go to standard error with row and column, nothing is printed', async () => {
    const file = await saved('code,sex,sire\nA,f,\nB,,A\nB,,nobody\n');
    const { status, out, err } = await lineage([file]);
    expect([status, out]).toEqual([1, '']);
    expect(err.trimEnd().split('\n')).toEqual([
      expect.stringMatching(/^row 3, column sire: A \(row 2\) is female/),
      expect.stringMatching(/^row 4, column code: The code B stands in row 3 too/),
      expect.stringMatching(/^row 4, column sire: nobody is neither in this file/),
    ]);
  });

  test('a file that is not there', async () => {
    const { status, err } = await lineage([join(folder, 'nothing.csv')]);
    expect([status, err]).toEqual([1, expect.stringContaining('The sheet cannot be read')]);
  });

  test.each([[['--kin', 'x.csv']], [[]], [['a.csv', 'b.csv']]])('wrong use %j', async (args) => {
    const { status, out, err } = await lineage(args);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain('Usage: npm run --silent lineage');
  });

  test('help', async () => {
    expect(await lineage(['--help'])).toEqual({ status: 0, out: containing('Usage:'), err: '' });
  });

  test('a reader that stops early is no failure', async () => {
    const file = await saved(`code\n${Array.from({ length: 50_000 }, (_, place) => `N-${place}\n`).join('')}`);
    const child = spawn(process.execPath, [command, file]);
    const err = text(child.stderr);
    child.stdout.once('data', () => child.stdout.destroy());
    const [status] = (await once(child, 'close')) as [number | null];
    expect([status, await err]).toEqual([0, '']);
  });
});

test('timings are one line of JSON on standard error', async () => {
  const { err, status } = await lineage(['-', '--timings'], 'code,sire\nA,\nB,A\n');
  expect(status).toBe(0);
  expect(JSON.parse(err)).toEqual({
    rows: 2,
    readSeconds: some(Number),
    computeSeconds: some(Number),
    method: 'frontier',
  });
});
