import canonicalize from 'canonicalize';

/** Bytes that are no JSON of the kind that a sheet is made of; the message says what is wrong, and where. */
export class JsonProblem extends Error {}

/** Most bytes of a sheet file: a hundred times the sheet of one animal with all its ancestors. */
export const SHEET_BYTES_MOST = 1_000_000;

/** Most objects and lists inside each other; a sheet needs 7. */
const DEPTH_MOST = 16;

/**
 * The canonical text of a JSON value: names in order, no spaces, numbers as ECMAScript writes them (RFC 8785).
 *
 * @throws JsonProblem where it has none: a half of a surrogate pair, a number that is not finite
 */
export function canonicalText(value: unknown): string {
  try {
    const text = canonicalize(value);
    if (text === undefined) throw new Error('it is no JSON value');
    return text;
  } catch (error) {
    throw new JsonProblem(`It has no canonical form: ${error instanceof Error ? error.message : String(error)}.`);
  }
}

/** What bytes say as JSON, and their text. */
export interface ReadJson {
  readonly text: string;
  readonly value: unknown;
}

/**
 * Reads bytes as one JSON value: UTF-8 without a mark at its beginning, at most `SHEET_BYTES_MOST` bytes, at most 16 levels deep.
 * A name that stands twice in one object, and every other way to write the same value differently, shows as a difference from its
 * canonical text, so whoever compares the two has refused it.
 *
 * @throws JsonProblem
 */
export function readJson(bytes: Uint8Array): ReadJson {
  if (bytes.length > SHEET_BYTES_MOST) throw new JsonProblem(`It is larger than ${SHEET_BYTES_MOST / 1_000_000} MB.`);
  const text = decodeUtf8(bytes);
  requireShallow(text);
  try {
    return { text, value: JSON.parse(text) as unknown };
  } catch {
    throw new JsonProblem('It is not JSON.');
  }
}

function decodeUtf8(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new JsonProblem('It is not UTF-8 text.');
  }
}

/** Looked at before anything is parsed, so that no pile of brackets can exhaust whoever reads it. */
function requireShallow(text: string): void {
  let depth = 0;
  let isInString = false;
  for (let place = 0; place < text.length; place++) {
    const sign = text[place];
    if (isInString) {
      if (sign === '\\') place++;
      else if (sign === '"') isInString = false;
    } else if (sign === '"') isInString = true;
    else if (sign === '{' || sign === '[') {
      if (++depth > DEPTH_MOST) throw new JsonProblem(`It is more than ${DEPTH_MOST} levels deep.`);
    } else if (sign === '}' || sign === ']') depth--;
  }
}

/** The place of the first byte in which two texts differ, counted from 1; null where they do not. */
export function firstDifference(one: string, other: string): number | null {
  const [these, those] = [one, other].map((text) => new TextEncoder().encode(text));
  if (!these || !those) return null;
  for (let place = 0; place < Math.max(these.length, those.length); place++)
    if (these[place] !== those[place]) return place + 1;
  return null;
}
