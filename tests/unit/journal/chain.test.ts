import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import { describe, expect, it } from 'vitest';
import { beginning, hashOfSeal, type SealedContent } from '../../../api/journal/chain.ts';

/** The sample of RFC 8785, 3.2.2 and 3.2.3, written down from memory. */
const sample = String.raw`{
  "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
  "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
  "literals": [null, true, false]
}`;
const canonicalSample =
  '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],' +
  String.raw`"string":"€$\u000f\nA'B\"\\\\\"/"}`;

/** The sorting sample of RFC 8785, 3.2.3: by UTF-16 code units. */
const sorted = ['\r', '1', '\u0080', 'ö', '€', '\u{1F600}', '\uFB33'];

const entry: SealedContent = {
  id: '01a00000-0000-7000-8000-000000000001',
  at: '2024-05-01T10:00:00.000Z',
  keeperId: null,
  via: 'service',
  requestId: null,
  action: 'changed',
  kind: 'individual',
  recordId: '01a00000-0000-7000-8000-000000000002',
  recordVersion: 2,
  ownerId: null,
  visibility: 'club',
  before: { notes: 'ä', number: 0.1 },
  after: { number: 1e21, notes: null },
  reason: null,
  reversesId: null,
  aboutIds: [],
};

/** The same, written by hand as RFC 8785 has it: keys in order, no spaces, numbers as ECMAScript writes them. */
const written =
  '{"entry":{"aboutIds":[],"action":"changed","after":{"notes":null,"number":1e+21},"at":"2024-05-01T10:00:00.000Z",' +
  '"before":{"notes":"ä","number":0.1},"id":"01a00000-0000-7000-8000-000000000001","keeperId":null,"kind":"individual",' +
  '"ownerId":null,"reason":null,"recordId":"01a00000-0000-7000-8000-000000000002","recordVersion":2,"requestId":null,' +
  `"reversesId":null,"via":"service","visibility":"club"},"previousHash":"${'0'.repeat(64)}","sequence":1}`;

describe('the canonical form', () => {
  it('is that of the sample of RFC 8785', () => {
    expect(canonicalize(JSON.parse(sample))).toBe(canonicalSample);
  });

  it('sorts names as RFC 8785 does', () => {
    const object = Object.fromEntries([...sorted].reverse().map((name) => [name, 0]));
    expect(Object.keys(JSON.parse(canonicalize(object) ?? '') as object).filter((name) => name !== '1')).toEqual(
      sorted.filter((name) => name !== '1'),
    );
  });
});

describe('the hash of a seal', () => {
  it('is the SHA-256 of the canonical text of place, hash before, and entry', () => {
    expect(hashOfSeal(1, beginning, entry)).toBe(createHash('sha256').update(written, 'utf8').digest('hex'));
  });

  it('is another as soon as anything is', () => {
    const hash = hashOfSeal(1, beginning, entry);
    const others = [
      hashOfSeal(2, beginning, entry),
      hashOfSeal(1, 'f'.repeat(64), entry),
      ...Object.keys(entry).map((column) => hashOfSeal(1, beginning, { ...entry, [column]: 'other' })),
    ];
    expect(new Set([hash, ...others]).size).toBe(1 + others.length);
  });
});
