import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeCursor, encodeCursor, toPage } from '../../../api/platform/paging.ts';
import { InvalidProblem } from '../../../api/platform/problem.ts';

describe('a cursor', () => {
  it('comes back as it went out', () => {
    const value = fc.oneof(
      fc.string().filter((text) => !text.includes('\0')),
      fc.integer(),
      fc.constant(null),
    );
    fc.assert(
      fc.property(fc.array(value, { maxLength: 4 }), (values) => {
        expect(decodeCursor('code', values.length, encodeCursor('code', values))).toEqual(values);
      }),
    );
  });

  it('of another list, of another order or of somebody else is refused, never a fault', () => {
    for (const text of [
      '',
      'x',
      '!!!',
      'bnVsbA',
      encodeCursor('number', ['1', 'a']),
      encodeCursor('code', ['1']),
      Buffer.from('[\"code\",{},1]').toString('base64url'),
    ])
      expect(() => decodeCursor('code', 2, text)).toThrow(InvalidProblem);
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(() => decodeCursor('code', 2, text)).toThrow(InvalidProblem);
      }),
    );
  });
});

it('a page ends with null where no row is left over', () => {
  const page = (rows: number[]) =>
    toPage(
      rows,
      2,
      (row) => row,
      (row) => `after ${row}`,
    );
  expect(page([1, 2, 3])).toEqual({ items: [1, 2], next: 'after 2' });
  expect(page([1, 2])).toEqual({ items: [1, 2], next: null });
  expect(page([])).toEqual({ items: [], next: null });
});
