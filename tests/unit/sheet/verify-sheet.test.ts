import { base64url, FlattenedSign } from 'jose';
import { beforeAll, describe, expect, it } from 'vitest';
import { canonicalText } from '../../../shared/sheet/canonical-json.ts';
import { SHEET_TYPE, signSheet } from '../../../shared/sheet/sheet-file.ts';
import { publishedKeys, readPublishedKeys } from '../../../shared/sheet/sheet-keys.ts';
import { verifySheet, type SheetOutcome } from '../../../shared/sheet/verify-sheet.ts';
import { madeKey, madeSheet, type MadeKey } from '../../support/made-sheet.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const day = (text: string): number => Date.parse(`${text}T12:00:00Z`);

let key: MadeKey;
let other: MadeKey;
let written: string;

beforeAll(async () => {
  key = await madeKey();
  other = await madeKey();
  written = await signSheet(madeSheet(), key);
});

const outcomeOf = async (text: string | Uint8Array, keys = [key], now = day('2024-06-01')): Promise<SheetOutcome> =>
  (await verifySheet(typeof text === 'string' ? bytes(text) : text, keys, now)).outcome;

/** Signs anything as a sheet is signed. */
async function signed(
  sheet: unknown,
  header: object = { alg: 'EdDSA', kid: key.kid, typ: SHEET_TYPE },
): Promise<string> {
  const jws = await new FlattenedSign(bytes(canonicalText(sheet)))
    .setProtectedHeader(header as { alg: string })
    .sign(key.privateKey);
  return canonicalText({ protected: jws.protected, sheet, signature: jws.signature });
}

describe('a sheet as it was handed out', () => {
  it('is genuine, and says what it said', async () => {
    const verdict = await verifySheet(bytes(written), [other, key], day('2024-06-01'));
    expect(verdict).toMatchObject({ outcome: 'genuine', kid: key.kid });
    expect(verdict.sheet).toEqual(madeSheet());
  });

  it('is a flattened JWS with its payload beside it, which any library for JWS can check', async () => {
    const { sheet, signature, protected: header } = JSON.parse(written) as Record<string, string>;
    const input = bytes(`${header}.${base64url.encode(canonicalText(sheet))}`);
    const raw = new Uint8Array(base64url.decode(key.x));
    const publicKey = await crypto.subtle.importKey('raw', raw, 'Ed25519', false, ['verify']);
    expect(
      await crypto.subtle.verify(
        'Ed25519',
        publicKey,
        new Uint8Array(base64url.decode(signature ?? '')),
        new Uint8Array(input),
      ),
    ).toBe(true);
  });

  it('stays genuine when its key is used no more, and until the end of its last day', async () => {
    const retired = { ...key, usedUntil: '2024-05-02T00:00:00.000Z' };
    expect(await outcomeOf(written, [other, retired] as MadeKey[], day('2044-05-01'))).toBe('genuine');
    const limited = await signSheet(madeSheet({ validUntil: '2024-12-31' }), key);
    expect(await outcomeOf(limited, [key], Date.parse('2024-12-31T23:59:59.999Z'))).toBe('genuine');
    expect(await outcomeOf(limited, [key], Date.parse('2025-01-01T00:00:00Z'))).toBe('expired');
  });

  it('is told from one whose key was not in use when it says that it was issued', async () => {
    const before = { ...key, usedFrom: '2024-05-01T11:00:00.000Z' };
    const after = { ...key, usedUntil: '2024-05-01T09:00:00.000Z' };
    for (const one of [before, after]) expect(await outcomeOf(written, [one])).toBe('key-out-of-use');
  });

  it('is of nobody known where the key is not among those given', async () => {
    expect(await outcomeOf(written, [other])).toBe('unknown-key');
    expect(await outcomeOf(written, [])).toBe('unknown-key');
  });
});

describe('a changed sheet', () => {
  it('is never taken for genuine, whichever byte is changed, left out, doubled or followed by another', async () => {
    const file = bytes(written);
    const taken: string[] = [];
    const seen = new Set<SheetOutcome>();
    const look = async (changed: Uint8Array, what: string): Promise<void> => {
      const outcome = await outcomeOf(changed);
      seen.add(outcome);
      if (outcome === 'genuine' || outcome === 'expired') taken.push(what);
    };
    for (let place = 0; place < file.length; place++) {
      const own = file[place] ?? 0;
      for (const flipped of [own ^ 1, own ^ 0x20, own ^ 0x80])
        await look(file.with(place, flipped), `byte ${place} as ${flipped}`);
      const [before, after] = [file.slice(0, place), file.slice(place)];
      await look(Uint8Array.of(...before, ...after.slice(1)), `without byte ${place}`);
      await look(Uint8Array.of(...before, own, ...after), `byte ${place} twice`);
      await look(Uint8Array.of(...before, 0x20, ...after), `a space before byte ${place}`);
    }
    await look(Uint8Array.of(...file, 0x0a), 'a line end behind it');
    expect(taken).toEqual([]);
    expect([...seen].sort()).toEqual(['changed', 'malformed', 'not-canonical', 'unknown-key']);
  }, 120_000);

  it('says of one that was only laid out anew that its content holds', async () => {
    const pretty = JSON.stringify(JSON.parse(written), null, 2);
    const verdict = await verifySheet(bytes(pretty), [key], day('2024-06-01'));
    expect(verdict.outcome).toBe('not-canonical');
    expect(verdict.words).toContain('still what was signed');
    const changed = pretty.replace('EA-7', 'EA-8');
    expect((await verifySheet(bytes(changed), [key])).words).toContain('may have been changed');
  });

  it('cannot borrow the signature of another sheet, nor be signed by another key under the name of ours', async () => {
    const one = JSON.parse(written) as object;
    const forged = { ...one, sheet: madeSheet({ keeper: 'Somebody else' }) };
    expect(await outcomeOf(canonicalText(forged))).toBe('changed');
    const byOther = await signSheet(madeSheet(), { kid: key.kid, privateKey: other.privateKey });
    expect(await outcomeOf(byOther)).toBe('changed');
  });
});

describe('what is no sheet', () => {
  it.each([
    ['nothing', ''],
    ['a list', '[]'],
    ['a sheet without a signature', '{"protected":"e30","sheet":{}}'],
    ['other JSON', '{"a":1}'],
  ])('is told: %s', async (_, text) => {
    expect(await outcomeOf(text)).toBe('malformed');
  });

  it('is told where the header wants another algorithm, another type, or more than we know', async () => {
    const header = { alg: 'EdDSA', kid: key.kid, typ: SHEET_TYPE };
    expect(await outcomeOf(await signed(madeSheet(), header))).toBe('genuine');
    for (const odd of [
      { ...header, typ: 'JWT' },
      { ...header, jku: 'https://evil.example' },
      { alg: 'EdDSA', kid: key.kid },
    ])
      expect(await outcomeOf(await signed(madeSheet(), odd))).toBe('malformed');
    const unsigned = canonicalText({
      protected: base64url.encode(canonicalText({ alg: 'none', kid: key.kid, typ: SHEET_TYPE })),
      sheet: madeSheet(),
      signature: 'A'.repeat(86),
    });
    expect(await outcomeOf(unsigned)).toBe('malformed');
  });

  it.each([
    ['a field that is not known', { ...madeSheet(), more: 1 }],
    ['a field that is missing', { ...madeSheet(), cautions: undefined }],
    ['another version', { ...madeSheet(), version: 2 }],
    ['a day that is not in the calendar', { ...madeSheet(), validUntil: '2024-02-30' }],
    ['a reference to nothing', { ...madeSheet(), ancestors: [] }],
    ['no animal', { ...madeSheet(), animals: [] }],
    ['a record twice', { ...madeSheet(), animals: [...madeSheet().animals, ...madeSheet().animals] }],
  ])('is told, though it is signed: %s', async (_, sheet) => {
    const verdict = await verifySheet(bytes(await signed(sheet)), [key]);
    expect(verdict).toMatchObject({ outcome: 'malformed', sheet: null });
  });
});

describe('the published keys', () => {
  it('are read as they were published, and what stands beside them is left alone', async () => {
    const published = publishedKeys([key, { ...other, usedUntil: '2024-01-01T00:00:00.000Z' }]);
    const read = await readPublishedKeys({ ...published, more: 1 });
    expect(read.map(({ kid }) => kid)).toEqual([key.kid, other.kid]);
    expect(await outcomeOf(written, read as MadeKey[])).toBe('genuine');
  });

  it('are refused where a key goes under the name of another one, or is of another kind', async () => {
    const [one] = publishedKeys([key]).keys;
    for (const odd of [
      { ...one, kid: other.kid },
      { ...one, kty: 'RSA' },
      { ...one, x: undefined },
      { ...one, usedFrom: 'once' },
    ])
      await expect(readPublishedKeys({ keys: [odd] })).rejects.toThrow(/keys\/0/u);
  });
});
