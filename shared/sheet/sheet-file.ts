import { base64url, FlattenedSign, type CryptoKey } from 'jose';
import { canonicalText, firstDifference, JsonProblem, readJson } from './canonical-json.ts';
import { object, oneOf, ShapeProblem, text } from './shape.ts';
import type { SheetDocument } from './sheet-document.ts';

/** What a signed sheet says of itself (`typ` of RFC 7515). */
export const SHEET_TYPE = 'linekeeper-provenance-sheet+jws';

/**
 * A sheet file is a flattened JWS (RFC 7515, 7.2.2) of which the payload is detached (appendix F) and stands beside it, readable, as `sheet`:
 * `{"protected": …, "sheet": {…}, "signature": …}`, the whole in canonical form (RFC 8785). The payload that was signed is the
 * canonical text of `sheet`.
 */
export interface SheetFile {
  readonly protected: string;
  readonly kid: string;
  readonly sheet: unknown;
  readonly signature: string;
}

/**
 * Signs a sheet with Ed25519 (RFC 8037).
 *
 * @returns the text of its file, whose UTF-8 bytes are the file
 */
export async function signSheet(
  sheet: SheetDocument,
  key: { readonly kid: string; readonly privateKey: CryptoKey },
): Promise<string> {
  const payload = new TextEncoder().encode(canonicalText(sheet));
  const signed = await new FlattenedSign(payload)
    .setProtectedHeader({ alg: 'EdDSA', kid: key.kid, typ: SHEET_TYPE })
    .sign(key.privateKey);
  return canonicalText({ protected: signed.protected, sheet, signature: signed.signature });
}

/** A file that is no sheet, or not the one that was handed out. */
export class SheetFileProblem extends Error {
  constructor(
    readonly kind: 'malformed' | 'not-canonical',
    message: string,
    /** What could be read of it all the same. */
    readonly found: SheetFile | null = null,
  ) {
    super(message);
  }
}

const envelope = object({
  protected: text(1000),
  sheet: (value) => value,
  signature: text(86, { least: 86 }),
});
const header = object({ alg: oneOf(['EdDSA']), kid: text(43, { least: 43 }), typ: oneOf([SHEET_TYPE]) });

/**
 * Takes a sheet file apart; nothing is verified yet.
 *
 * @throws SheetFileProblem where it is no sheet file, or is not written the one way that it can be
 */
export function readSheetFile(bytes: Uint8Array): SheetFile {
  try {
    const { value, text: written } = readJson(bytes);
    const parts = envelope(value);
    const file = { ...parts, kid: readHeader(parts.protected).kid };
    requireBase64url(parts.signature, '/signature');
    const place = firstDifference(written, canonicalText(value));
    if (place === null) return file;
    throw new SheetFileProblem(
      'not-canonical',
      `From byte ${place} on it is not written as it was handed out: a program or a person wrote it anew.`,
      file,
    );
  } catch (error) {
    if (error instanceof JsonProblem || error instanceof ShapeProblem)
      throw new SheetFileProblem('malformed', error.message);
    throw error;
  }
}

/** Algorithm, key and type, exactly those three, written the one way. */
function readHeader(part: string): { readonly kid: string } {
  const { value, text: written } = readJson(requireBase64url(part, '/protected'));
  if (written !== canonicalText(value)) throw new ShapeProblem('/protected is not in canonical form.');
  return header(value, '/protected');
}

/** Base64url (RFC 7515, 2) as it is written: its last character has bits that decoders overlook, which must be 0. */
function requireBase64url(part: string, place: string): Uint8Array {
  try {
    const bytes = base64url.decode(part);
    if (base64url.encode(bytes) === part) return bytes;
  } catch {
    // told below
  }
  throw new ShapeProblem(`${place} is not base64url.`);
}
