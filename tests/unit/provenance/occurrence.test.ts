import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isoDate } from '../../../api/provenance/darwin-core/occurrence-terms.ts';
import { simpleCsv } from '../../../api/provenance/darwin-core/simple-csv.ts';
import { parse } from 'csv-parse/sync';

describe('a date of Darwin Core', () => {
  it.each([
    ['2021-04-12', '2021-04-12'],
    ['2021-04', '2021-04'],
    ['1994', '1994'],
    ['1994~', '1994-01-01/1994-12-31'],
    ['199X', '1990-01-01/1999-12-31'],
    ['2021-21', '2021-01-01/2021-12-31'],
    ['1993/1996', '1993-01-01/1996-12-31'],
    ['1993/..', null],
    ['../1995', null],
  ])('for %s is %s', (date, iso) => {
    expect(isoDate(date)).toBe(iso);
  });
});

describe('Simple Darwin Core', () => {
  it('is read back as it was written, whatever the words', () => {
    const words = fc.string({ minLength: 1 }).filter((text) => !/^[=+\-@\t\r]/.test(text));
    fc.assert(
      fc.property(words, words, (locality, verbatimLocality) => {
        const [names = [], values = []] = parse(simpleCsv({ locality, verbatimLocality, decimalLatitude: -3.5 }), {
          record_delimiter: '\r\n',
        });
        const row = Object.fromEntries(names.map((name, column) => [name, values[column]]));
        expect(row).toMatchObject({ locality, verbatimLocality, decimalLatitude: '-3.5', occurrenceID: '' });
      }),
    );
  });

  it('holds no formula for a spreadsheet', () => {
    for (const locality of ['=1+1', '+1', '-1', '@a', '\t=1'])
      expect(simpleCsv({ locality })).toContain(`'${locality}`);
  });
});
