/**
 * Ids as an address on paper carries them: the 16 bytes of a UUID in base64url (RFC 4648), 22 characters in place of 36, so that the
 * code of the address has fewer and larger squares.
 */

const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** The short form of an id. */
export function shortId(id: string): string {
  let bits = BigInt(`0x${id.replaceAll('-', '')}`) << 4n;
  let text = '';
  for (let place = 0; place < 22; place++) {
    text = (alphabet[Number(bits & 63n)] ?? '') + text;
    bits >>= 6n;
  }
  return text;
}

/** The id of a short form; null where the text is none. */
export function idOfShort(text: string): string | null {
  if (!/^[\w-]{22}$/.test(text)) return null;
  let bits = 0n;
  for (const letter of text) bits = (bits << 6n) | BigInt(alphabet.indexOf(letter));
  // the last four bits carry nothing
  if ((bits & 15n) !== 0n) return null;
  const hex = (bits >> 4n).toString(16).padStart(32, '0');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}
