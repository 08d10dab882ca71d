import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { signSheet } from '../../../shared/sheet/sheet-file.ts';
import { publishedKeys } from '../../../shared/sheet/sheet-keys.ts';
import { madeKey, madeSheet, type MadeKey } from '../../support/made-sheet.ts';

/* The command as it is built (`npm run build:api`), in a process of its own. */

const command = fileURLToPath(new URL('../../../dist/api/selling/sheets/verify-command.js', import.meta.url));

let folder: string;
let key: MadeKey;
let written: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'linekeeper-verify-'));
  key = await madeKey();
  written = await signSheet(madeSheet(), key);
  await save('keys.json', JSON.stringify(publishedKeys([await madeKey(), key])));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const save = (name: string, content: string): Promise<void> => writeFile(join(folder, name), content);

/** Runs it in the folder, without anything of the surroundings. */
async function verify(...args: string[]): Promise<{ status: number | null; out: string; err: string }> {
  const child = spawn(process.execPath, [command, ...args], {
    cwd: folder,
    env: {},
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const closed = once(child, 'close') as Promise<[number | null]>;
  const [out, err, [status]] = await Promise.all([text(child.stdout), text(child.stderr), closed]);
  return { status, out, err };
}

describe('checking a sheet without a server', () => {
  it('ends with 0 for a genuine one, and says what it tells, and what it cannot know', async () => {
    await save('sheet.json', written);
    const { status, out, err } = await verify('sheet.json');
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toContain('It is genuine');
    expect(out).toContain('PS-1001-2 of Circle of Frogs (an invented club), issued on 2024-05-01 for Ø. Ambleside');
    expect(out).toContain('“Quebrada Sonora”: 50 % documented · 50 % unknown; F 6.25 % at a depth of 3');
    expect(out).toContain('https://register.example.org/s/abc');
  });

  it.each([
    ['was changed', () => written.replace('EA-7', 'EA-8'), 'It was changed after it was signed'],
    ['was laid out anew', () => JSON.stringify(JSON.parse(written), null, 1), 'not written as it was handed out'],
    ['is none', () => 'hello', 'This is no provenance sheet'],
    ['is empty', () => '', 'This is no provenance sheet'],
    ['is too large', () => ' '.repeat(1_000_001), 'larger than 1 MB'],
  ])('ends with 1 for one that %s', async (_, content, told) => {
    await save('sheet.json', content());
    const { status, out, err } = await verify('sheet.json', '--keys', 'keys.json');
    expect({ status, out }).toEqual({ status: 1, out: '' });
    expect(err).toContain(told);
    expect(err).not.toContain('Ambleside');
  });

  it('ends with 1 for one that is over, and for one of another register', async () => {
    await save('sheet.json', await signSheet(madeSheet({ validUntil: '2024-06-01' }), key));
    expect(await verify('sheet.json')).toMatchObject({ status: 1, out: '' });
    await save('sheet.json', await signSheet(madeSheet(), await madeKey()));
    const { status, err } = await verify('sheet.json');
    expect(status).toBe(1);
    expect(err).toContain('not among the keys that it was checked with');
  });

  it('hands no signs of a file on that would speak to the terminal', async () => {
    await save('sheet.json', '{"protected":"e30","sheet":{},"signature":"","\\u001b[2Jmore":1}');
    const { err } = await verify('sheet.json');
    expect(err).toContain('[2Jmore');
    expect(err).not.toContain('\u001b');
  });

  it.each([
    ['there is no such sheet', ['none.json'], 'none.json cannot be read: there is no such file'],
    ['there are no keys', ['keys.json', '--keys', 'none.json'], 'none.json cannot be read'],
    ['the keys are none', ['keys.json', '--keys', 'bad.json'], 'does not hold the public keys'],
    ['nothing is named', [], 'Name one sheet'],
    ['two are named', ['keys.json', 'keys.json'], 'Name one sheet'],
    ['an option is not known', ['keys.json', '--key', 'x'], 'Usage'],
  ])('ends with 2 where %s', async (_, args, told) => {
    await save('bad.json', '{"keys":[{"kty":"RSA"}]}');
    const { status, out, err } = await verify(...args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(told);
  });

  it('says how it is used', async () => {
    expect(await verify('--help')).toMatchObject({ status: 0, err: '' });
  });
});
