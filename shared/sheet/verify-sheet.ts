import { base64url, flattenedVerify, importJWK } from 'jose';
import { canonicalText, JsonProblem } from './canonical-json.ts';
import { ShapeProblem } from './shape.ts';
import { readSheetDocument, type SheetDocument } from './sheet-document.ts';
import { readSheetFile, SheetFileProblem, type SheetFile } from './sheet-file.ts';
import type { SheetKey } from './sheet-keys.ts';

/** What a sheet file can turn out to be. */
export const sheetOutcomes = [
  'genuine',
  'expired',
  'changed',
  'unknown-key',
  'key-out-of-use',
  'not-canonical',
  'malformed',
] as const;
export type SheetOutcome = (typeof sheetOutcomes)[number];

/** What was found of a sheet file without asking anybody. */
export interface SheetVerdict {
  readonly outcome: SheetOutcome;
  /** The same in a plain sentence or two. */
  readonly words: string;
  /** What the file says; to be believed only where it is genuine or expired. Null where it cannot be read. */
  readonly sheet: SheetDocument | null;
  /** The key that it names; null where it cannot be read. */
  readonly kid: string | null;
}

/** Clocks of several copies of a service may differ by this much. */
const CLOCKS_MS = 300_000;

/**
 * Finds out what a sheet file is, by its bytes and the public keys of registers alone: whether every byte is as it was signed, by which key,
 * and whether the day until which it is valid has passed. That a sheet was revoked or replaced only its register can tell.
 *
 * @param now the moment to judge by, milliseconds since 1970
 */
export async function verifySheet(
  bytes: Uint8Array,
  keys: readonly SheetKey[],
  now: number = Date.now(),
): Promise<SheetVerdict> {
  try {
    return await verdictOn(readSheetFile(bytes), keys, now);
  } catch (error) {
    if (!(error instanceof SheetFileProblem)) throw error;
    const { kind, message, found } = error;
    const holds = found !== null && (await isSigned(found, keys));
    const content = holds
      ? ' What it says is still what was signed; ask for the file itself.'
      : ' What it says may have been changed.';
    return {
      outcome: kind,
      words: kind === 'malformed' ? `This is no provenance sheet: ${message}` : `${message}${content}`,
      sheet: found === null ? null : sheetIn(found),
      kid: found?.kid ?? null,
    };
  }
}

async function verdictOn(file: SheetFile, keys: readonly SheetKey[], now: number): Promise<SheetVerdict> {
  const sheet = sheetIn(file);
  const verdict = (outcome: SheetOutcome, words: string): SheetVerdict => ({ outcome, words, sheet, kid: file.kid });
  const key = keys.find(({ kid }) => kid === file.kid);
  if (!key)
    return verdict(
      'unknown-key',
      `It is signed with the key ${file.kid}, which is not among the keys that it was checked with. Another register may have issued it; so may anybody.`,
    );
  if (!(await isSigned(file, [key])))
    return verdict('changed', 'It was changed after it was signed, or was never signed: do not rely on it.');
  if (sheet === null) return verdict('malformed', `This is no provenance sheet that is known here: ${whyNot(file)}`);
  const issued = Date.parse(sheet.issued);
  const until = key.usedUntil === null ? Infinity : Date.parse(key.usedUntil);
  if (issued < Date.parse(key.usedFrom) - CLOCKS_MS || issued > until + CLOCKS_MS)
    return verdict(
      'key-out-of-use',
      `It says that it was issued on ${sheet.issued.slice(0, 10)}, when its key was not in use: do not rely on it.`,
    );
  if (sheet.validUntil !== null && now >= Date.parse(`${sheet.validUntil}T00:00:00Z`) + 86_400_000)
    return verdict('expired', `It is genuine, but was valid until ${sheet.validUntil} only. Ask for a new one.`);
  return verdict('genuine', 'It is genuine: not a character was changed since it was signed.');
}

/** Whether one of the keys signed what the file says. */
async function isSigned(file: SheetFile, keys: readonly SheetKey[]): Promise<boolean> {
  const key = keys.find(({ kid }) => kid === file.kid);
  if (!key) return false;
  const publicKey = await importJWK({ kty: 'OKP', crv: 'Ed25519', x: key.x }, 'EdDSA');
  const payload = base64url.encode(canonicalText(file.sheet));
  return flattenedVerify({ protected: file.protected, payload, signature: file.signature }, publicKey, {
    algorithms: ['EdDSA'],
  }).then(
    () => true,
    () => false,
  );
}

function sheetIn(file: SheetFile): SheetDocument | null {
  try {
    return readSheetDocument(file.sheet);
  } catch (error) {
    if (error instanceof ShapeProblem || error instanceof JsonProblem) return null;
    throw error;
  }
}

function whyNot(file: SheetFile): string {
  try {
    readSheetDocument(file.sheet);
    return '';
  } catch (error) {
    return error instanceof Error ? error.message : '';
  }
}
