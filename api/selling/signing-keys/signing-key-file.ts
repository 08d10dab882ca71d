import { generateKeyPairSync, randomUUID } from 'node:crypto';
import { link, mkdir, open, readFile, rename, rm, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import { Problem } from '../../platform/problem.ts';
import {
  noSigningKey,
  readSigningKey,
  type SigningKey,
  type SigningSettings,
} from '../../platform/signing-settings.ts';
import { say } from '../../platform/say.ts';

/** 503: the service has no key to sign with; the message says why and what to do, and nothing of the key. */
export class SigningKeyProblem extends Problem {
  constructor(detail: string) {
    super('unavailable', 503, 'Sheets cannot be signed now', detail);
  }
}

/**
 * The private key that this copy of the service signs with, read anew each time, so that a key that was replaced beside it is seen. Where
 * none is there and none was set, one is made: readable by the user of the service alone, whole or not at all; of several copies that
 * start at once on one folder, all take the one that came first.
 *
 * @throws SigningKeyProblem where it is missing, no key, open to others, or cannot be written
 */
export async function openSigningKey(settings: SigningSettings): Promise<SigningKey> {
  if (settings.signingKey !== null) return settings.signingKey;
  const { signingKeyFile: path, isSigningKeyMade } = settings;
  const found = await readKeyFile(path);
  if (found !== null) return found;
  if (!isSigningKeyMade)
    throw new SigningKeyProblem(say`There is no file ${path}. Put the private key there, or correct SIGNING_KEY_FILE.`);
  await writeKeyFile(path, async (made) => {
    // unlike a renaming this leaves a file alone that another copy made meanwhile
    await link(made, path).catch((error: unknown) => {
      if (codeOf(error) !== 'EEXIST') throw error;
    });
    await rm(made);
  });
  const made = await readKeyFile(path);
  if (made === null) throw new SigningKeyProblem(say`The private key that was written to ${path} is gone again.`);
  return made;
}

/** Makes a new key and puts it in the place of the present one. @throws SigningKeyProblem where it cannot be written */
export async function replaceSigningKey(settings: SigningSettings): Promise<SigningKey> {
  await writeKeyFile(settings.signingKeyFile, (made) => rename(made, settings.signingKeyFile));
  return openSigningKey(settings);
}

/** The key in a file; null where there is no file. */
async function readKeyFile(path: string): Promise<SigningKey | null> {
  try {
    const { mode } = await stat(path);
    // Windows has no such bits; there the folder says who may read
    if (process.platform !== 'win32' && (mode & 0o077) !== 0)
      throw new SigningKeyProblem(
        say`Others than its owner may read or change the private key in ${path} (mode ${(mode & 0o777).toString(8)}). If nobody did, run: chmod 600 ${path}. Else make a new one.`,
      );
    const key = readSigningKey(await readFile(path, 'utf8'));
    if (key === null) throw new SigningKeyProblem(say`The file ${path} ${noSigningKey}`);
    return key;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    if (error instanceof Problem) throw error;
    throw new SigningKeyProblem(say`The private key in ${path} cannot be read (${codeOf(error)}).`);
  }
}

/** Writes a new key beside its place, forces it to the disk, and hands the name over to be put there. */
async function writeKeyFile(path: string, put: (made: string) => Promise<void>): Promise<void> {
  const beside = `${path}.${randomUUID()}`;
  try {
    await mkdir(dirname(path), { recursive: true, mode: 0o700 });
    const file = await open(beside, 'wx', 0o600);
    try {
      await file.writeFile(newKey());
      await file.sync();
    } finally {
      await file.close();
    }
    await put(beside);
  } catch (error) {
    await rm(beside, { force: true });
    throw new SigningKeyProblem(
      say`A private key could not be written to ${path} (${codeOf(error)}). Let the service write there, or set SIGNING_KEY.`,
    );
  }
}

const newKey = (): string =>
  generateKeyPairSync('ed25519').privateKey.export({ format: 'pem', type: 'pkcs8' }).toString();

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : 'an unknown fault';
