import fc from 'fast-check';

/** Texts that break careless programs: as a name, a date, a number, SQL, HTML, a path, or as Unicode. */
export const hostileTexts = [
  '',
  ' ',
  '\0',
  'a\0b',
  '\ud800',
  'frog\udfff',
  '\ufeff',
  '\u202etxt.exe',
  '\u0130\u0131\u00df',
  'x'.repeat(100_000),
  "'; drop table individual; --",
  "' or '1'='1",
  '%_\\',
  '\\x00',
  '${7*7}{{7*7}}',
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  '../../../../etc/passwd',
  '%2e%2e%2f',
  '__proto__',
  'constructor',
  'hasOwnProperty',
  'NaN',
  'Infinity',
  '1e400',
  '-0',
  '00000000-0000-0000-0000-000000000000',
  'ffffffff-ffff-ffff-ffff-ffffffffffff',
  '1-0',
  '999999999999999999-0',
  '2021-13',
  '2021-02-30',
  '-9999',
  '99999-01-01',
  '../..',
  'Y99999',
  '199X~',
  'infinity',
  'epoch',
  '=1+1',
  'null',
  '[]',
  '{}',
];

const hostileText = fc.oneof(
  // what JSON can hold and a database cannot
  fc.constantFrom('\0', 'a\0b', '\ud800', 'frog\udfff'),
  fc.constantFrom(...hostileTexts),
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.string({ maxLength: 20 }),
);

const hostileNumber = fc.oneof(
  fc.constantFrom(0, -1, 1, -0, 0.5, 2 ** 31, -(2 ** 31) - 1, 2 ** 53, 1e21, 1e308, 5e-324, 1e-7, 32768, 2147483648),
  fc.double({ noNaN: true }),
  fc.integer(),
);

const hostileKey = fc.constantFrom(
  '__proto__',
  'constructor',
  'toString',
  'then',
  'id',
  'version',
  'keeperId',
  '',
  '\0',
  '$where',
);

/** Any value at all that JSON can hold. */
export const hostileValue: fc.Arbitrary<unknown> = fc.oneof(
  { weight: 6, arbitrary: hostileText },
  { weight: 4, arbitrary: hostileNumber },
  { weight: 2, arbitrary: fc.constantFrom(null, true, false) },
  { weight: 1, arbitrary: fc.constantFrom([], {}, [[]], [null], [{}], { length: 1e9 }) },
  { weight: 1, arbitrary: fc.array(hostileText, { maxLength: 4 }) },
  {
    weight: 1,
    arbitrary: fc.nat(40).map((depth) => JSON.parse('['.repeat(depth) + ']'.repeat(depth) || 'null') as unknown),
  },
  { weight: 1, arbitrary: entriesOf(hostileKey, hostileText) },
  { weight: 1, arbitrary: fc.integer({ min: 100, max: 3000 }).map((length) => Array.from({ length }, () => '1-1')) },
);

/** An object whose keys may be names that JavaScript itself uses: they are own keys, as JSON.parse makes them. */
export function entriesOf(key: fc.Arbitrary<string>, value: fc.Arbitrary<unknown>): fc.Arbitrary<object> {
  return fc
    .array(fc.tuple(key, value), { maxLength: 3 })
    .map(
      (entries) =>
        JSON.parse(
          `{${entries.map(([name, held]) => `${JSON.stringify(name)}:${JSON.stringify(held)}`).join(',')}}`,
        ) as object,
    );
}

/** A text that can stand in a header: what HTTP itself refuses never reaches the service. */
export const headerText = fc.oneof(
  fc.constantFrom('*', '""', '"1"', 'W/"1"', '"999999999999"', '"1", "2"', ',,,', '\t', '"', "'; --", 'x'.repeat(4000)),
  fc.string({ maxLength: 30 }).map((text) => text.replace(/[^\x20-\x7e]/g, '?').trim()),
);
