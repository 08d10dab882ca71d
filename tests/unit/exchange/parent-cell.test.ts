import { describe, expect, test } from 'vitest';
import { namesIn, readCandidates } from '../../../api/exchange/parent-cell.ts';

const read = (text: string, codes: readonly string[] = []): ReturnType<typeof readCandidates> =>
  readCandidates(text, (name) => codes.includes(name));

describe('a cell of candidate parents', () => {
  test.each([
    ['', []],
    ['EA-01', [['EA-01', null]]],
    ['?', [['?', null]]],
    [
      'EA-01/EA-02',
      [
        ['EA-01', null],
        ['EA-02', null],
      ],
    ],
    [
      ' EA-01 / EA-02 /?',
      [
        ['EA-01', null],
        ['EA-02', null],
        ['?', null],
      ],
    ],
    [
      'EA-01:0.7/EA-02:0.3',
      [
        ['EA-01', 0.7],
        ['EA-02', 0.3],
      ],
    ],
    [
      'EA-01 : 0,7 / ?:.3',
      [
        ['EA-01', 0.7],
        ['?', 0.3],
      ],
    ],
    ['EA-01:1', [['EA-01', 1]]],
  ])('%j', (text, expected) => {
    const { candidates, faults } = read(text);
    expect(faults).toEqual([]);
    expect(candidates.map(({ name, weight }) => [name, weight])).toEqual(expected);
  });

  test('a code may contain a slash or a colon: what is a code as it stands is that code', () => {
    expect(read('2021/03', ['2021/03']).candidates).toEqual([{ name: '2021/03', weight: null }]);
    expect(read('A:1/B:2', ['A:1', 'B:2']).candidates.map(({ name }) => name)).toEqual(['A:1', 'B:2']);
    expect(read('2021/03/B', ['2021/03', 'B']).candidates.map(({ name }) => name)).toEqual(['2021/03', 'B']);
    expect(read('?:0.2/2021/03:0.8', ['2021/03']).candidates).toEqual([
      { name: '?', weight: 0.2 },
      { name: '2021/03', weight: 0.8 },
    ]);
    expect(read('A:1:0.4/B:0.6', ['A:1']).candidates).toEqual([
      { name: 'A:1', weight: 0.4 },
      { name: 'B', weight: 0.6 },
    ]);
  });

  test.each([
    ['A:0.7/B:0.2', 'sum to 0.9, not to 1'],
    ['A:0.7', 'sum to 0.7'],
    ['A:0.333/B:0.333/C:0.333', 'sum to 0.999'],
    ['A:0.7/B', 'some have none'],
    ['A:1.2/B:0.3', 'out of range'],
    ['A:-0.2/B:1', 'out of range'],
    ['A:0/B:1', 'out of range'],
    ['A:70/B:30', 'write 0.7 for 70 %'],
    ['A:1e-300/B:1', 'out of range'],
    ['A:x/B:0.3', 'is no number'],
    ['A:/B:1', 'is no number'],
    [':0.3/B:0.7', 'no code'],
    ['A//B', 'a code is missing'],
    ['A/', 'a code is missing'],
    [Array.from({ length: 51 }, (_, place) => `A${place}`).join('/'), 'at most 50'],
  ])('%j is refused', (text, said) => {
    expect(read(text).faults.join(' ')).toContain(said);
  });

  test('weights may miss 1 by what few decimals lose', () => {
    expect(read('A:0.3333333/B:0.3333333/C:0.3333334').faults).toEqual([]);
    expect(read('A:0.3333333/B:0.3333333/C:0.3333333').faults).toEqual([]);
  });

  test('all names that it may contain are known beforehand', () => {
    const names = ['EA-01', 'EA-01:0.7', 'EA-01:0.7/ ?:0.3', 'EA-01:0.7/?', 'EA-01:0.7/?:0.3', '?:0.3'];
    expect([...namesIn('EA-01:0.7/ ?:0.3')].sort()).toEqual(names.sort());
  });
});
