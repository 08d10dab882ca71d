import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dateInWords } from '../../../shared/date-words.ts';
import { dateBounds, daysBetween, isCertainlyBefore, isDate } from '../../../shared/edtf.ts';

describe('a vague date', () => {
  it.each([
    // forms of ISO 8601-2:2019 level 1
    ['2021-04-12', '2021-04-12', '2021-04-12'],
    ['2021-04', '2021-04-01', '2021-04-30'],
    ['2024-02', '2024-02-01', '2024-02-29'],
    ['1994', '1994-01-01', '1994-12-31'],
    ['1994~', '1994-01-01', '1994-12-31'],
    ['1994?', '1994-01-01', '1994-12-31'],
    ['199X', '1990-01-01', '1999-12-31'],
    ['2004-XX', '2004-01-01', '2004-12-31'],
    ['2021-21', '2021-01-01', '2021-12-31'],
    ['1993/1996', '1993-01-01', '1996-12-31'],
    ['1993/..', '1993-01-01', null],
    ['../1995-06', null, '1995-06-30'],
    ['1993/', '1993-01-01', null],
  ])('%s may mean %s to %s', (text, earliest, latest) => {
    expect(dateBounds(text)).toEqual({ earliest, latest });
  });

  it.each([
    '',
    ' ',
    '12.04.2021',
    '2021-4-1',
    '2021-02-30',
    '2023-02-29',
    '2021-13',
    '../..',
    '/',
    '1996/1993',
    'Y17000',
    '0021',
    '9999',
    '1994 ',
    'about 1994',
    '{1994,1995}',
    '1994/1995/1996',
    '2021-04-12T10:00',
    '-1994',
  ])('"%s" is none', (text) => {
    expect(isDate(text)).toBe(false);
  });

  it('is a calendar day exactly where the calendar has one', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1700, max: 2199 }),
        fc.integer({ min: 0, max: 13 }),
        fc.integer({ min: 0, max: 32 }),
        (year, month, day) => {
          const text = `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
          const date = new Date(Date.UTC(year, month - 1, day));
          const exists =
            date.getUTCMonth() === month - 1 && date.getUTCDate() === day && date.getUTCFullYear() === year;
          expect(isDate(text)).toBe(exists);
        },
      ),
    );
  });

  it('is certainly before another only where no reading says otherwise', () => {
    const on = (text: string) => dateBounds(text) ?? expect.fail(text);
    expect(isCertainlyBefore(on('1994'), on('1995-01-01'))).toBe(true);
    expect(isCertainlyBefore(on('199X'), on('1995'))).toBe(false);
    expect(isCertainlyBefore(on('1990/..'), on('2020'))).toBe(false);
    expect(daysBetween(on('2021-04-12'), on('2021-04'))).toEqual({ least: -11, greatest: 18 });
    expect(daysBetween(on('2021/..'), on('2022'))).toEqual({ least: null, greatest: 729 });
  });

  it.each([
    ['1994~', 'about 1994'],
    ['199X', 'the 1990s'],
    ['19XX', 'the 1900s'],
    ['1993/1996', '1993 to 1996'],
    ['1993/..', 'since 1993'],
    ['../1995', 'before or in 1995'],
    ['2004-XX', '2004'],
    ['1994?', '1994, uncertain'],
    ['2021-04-12', '2021-04-12'],
  ])('%s reads "%s"', (text, words) => {
    expect(dateInWords(text)).toBe(words);
  });
});
