import { calculateJwkThumbprint, CompactSign, compactVerify, importJWK, importPKCS8 } from 'jose';
import { createPrivateKey, sign } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { canonicalText, JsonProblem, readJson, SHEET_BYTES_MOST } from '../../../shared/sheet/canonical-json.ts';
import vectors from '../../reference/json-signatures.json' with { type: 'json' };

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** The number of which these are the 64 bits. */
function double(hexadecimal: string): number {
  return Buffer.from(hexadecimal, 'hex').readDoubleBE(0);
}

/** A raw Ed25519 secret as PKCS #8 (RFC 8410). */
const pkcs8 = (secret: string): Buffer => Buffer.from(`302e020100300506032b657004220420${secret}`, 'hex');

describe('canonical JSON', () => {
  it.each(vectors.canonicalNumbers.cases)('writes the double %s as %s (RFC 8785, appendix B)', (bits = '', written) => {
    expect(canonicalText(double(bits))).toBe(written);
  });

  it('has no form for what is no number (RFC 8785, 3.2.2.3)', () => {
    for (const bits of ['7fffffffffffffff', '7ff0000000000000', 'fff0000000000000'])
      expect(() => canonicalText([double(bits)])).toThrow(JsonProblem);
  });

  it.each(vectors.canonicalTexts.cases)('of %j is the published one', (given = '', canonical = '') => {
    expect(canonicalText(readJson(bytes(given)).value)).toBe(canonical);
    expect(canonicalText(readJson(bytes(canonical)).value)).toBe(canonical);
  });

  it('has no form for half a surrogate pair (RFC 8785, 3.2.2.2)', () => {
    expect(() => canonicalText(readJson(bytes('{"a":"\\ud83d"}')).value)).toThrow(JsonProblem);
  });

  it('shows a name that stands twice, and a name that other objects inherit', () => {
    for (const text of ['{"a":1,"a":1}', '{"a":1,"a":2}'])
      expect(canonicalText(readJson(bytes(text)).value)).not.toBe(text);
    const inherited = '{"__proto__":{"a":1},"constructor":2,"toJSON":3}';
    expect(canonicalText(readJson(bytes(inherited)).value)).toBe(inherited);
  });
});

describe('reading JSON', () => {
  it.each([
    ['a mark at the beginning', Uint8Array.of(0xef, 0xbb, 0xbf, 0x7b, 0x7d)],
    ['what is not UTF-8', Uint8Array.of(0x22, 0xff, 0x22)],
    ['UTF-16', new Uint8Array(Buffer.from('{}', 'utf16le'))],
    ['what is not JSON', bytes('{a:1}')],
    ['nothing', new Uint8Array()],
    ['a pile of brackets', bytes('['.repeat(100_000))],
    ['a pile of closed brackets', bytes('['.repeat(20) + ']'.repeat(20))],
    ['what is too large', bytes(`"${'a'.repeat(SHEET_BYTES_MOST)}"`)],
  ])('refuses %s', (_, given) => {
    expect(() => readJson(given)).toThrow(JsonProblem);
  });

  it('does not count brackets in texts', () => {
    expect(readJson(bytes(`["${'['.repeat(100)}\\"["]`)).value).toEqual([`${'['.repeat(100)}"[`]);
  });
});

describe('Ed25519', () => {
  it.each(vectors.ed25519.cases)('signs as RFC 8032 has it ($public)', async (vector) => {
    const key = createPrivateKey({ key: pkcs8(vector.secret), format: 'der', type: 'pkcs8' });
    expect(sign(null, Buffer.from(vector.message, 'hex'), key).toString('hex')).toBe(vector.signature);
    // the same key as the library for JWS has it signs the same
    const pem = key.export({ format: 'pem', type: 'pkcs8' }).toString();
    const imported = await importPKCS8(pem, 'EdDSA');
    const signed = await crypto.subtle.sign('Ed25519', imported, Buffer.from(vector.message, 'hex'));
    expect(Buffer.from(signed).toString('hex')).toBe(vector.signature);
    const jwk = key.export({ format: 'jwk' });
    expect(Buffer.from(jwk.x ?? '', 'base64url').toString('hex')).toBe(vector.public);
  });
});

describe('JWS with Ed25519 (RFC 8037, appendix A)', () => {
  const { d, x, thumbprint, payload, compact } = vectors.jws;
  const key = { kty: 'OKP', crv: 'Ed25519', x };

  it('names the key as published', async () => {
    expect(await calculateJwkThumbprint(key)).toBe(thumbprint);
  });

  it('makes the published signature, and takes it', async () => {
    const made = await new CompactSign(bytes(payload))
      .setProtectedHeader({ alg: 'EdDSA' })
      .sign(await importJWK({ ...key, d }, 'EdDSA'));
    expect(made).toBe(compact);
    const verified = await compactVerify(compact, await importJWK(key, 'EdDSA'));
    expect(new TextDecoder().decode(verified.payload)).toBe(payload);
  });
});
