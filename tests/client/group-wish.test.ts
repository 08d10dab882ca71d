import { describe, expect, it } from 'vitest';
import type { Group, GroupMember } from '../../client/src/lib/api/types.ts';
import { groupGrid } from '../../client/src/lib/match/group-grid.ts';
import { groupAddress, groupQuestion, groupSize, groupWishOf } from '../../client/src/lib/match/group-wish.ts';
import { scoreInWords } from '../../client/src/lib/match/group-words.ts';

describe('what is asked of a group', () => {
  it('stands in the address, and is read back from it', () => {
    const wish = {
      animals: ['1351-5', '1124-5'],
      line: '',
      size: '1.2',
      inbreedingTo: '0.0625',
      weight: '2',
      crossLines: true,
      disputed: false,
    };
    const address = groupAddress(wish);
    expect(address).toBe('/match/group?animals=1351-5,1124-5&size=1.2&inbreedingTo=0.0625&weight=2&crossLines=true');
    expect(groupWishOf(new URL(address, 'http://club').searchParams)).toEqual(wish);
    expect(groupAddress(groupWishOf(new URLSearchParams()))).toBe('/match/group');
  });

  it('names each animal once, and takes a limit that it does not know for the usual one', () => {
    const wish = groupWishOf(new URLSearchParams('animals=a,b,,a&inbreedingTo=9&crossLines=perhaps'));
    expect([wish.animals, wish.inbreedingTo, wish.crossLines]).toEqual([['a', 'b'], '0.125', false]);
  });

  it('has a size as the trade writes it, with or without unsexed ones', () => {
    expect(['1.2', ' 2.3 ', '1.2.0', '6.6'].map(groupSize)).toEqual([
      { males: 1, females: 2 },
      { males: 2, females: 3 },
      { males: 1, females: 2 },
      { males: 6, females: 6 },
    ]);
    expect(['', '0.2', '1', '7.1', '1.2.1', 'a.b'].map(groupSize)).toEqual([null, null, null, null, null, null]);
    const wish = groupWishOf(new URLSearchParams('animals=a,b&size=many'));
    expect(groupQuestion(wish)).toEqual({
      individuals: ['a', 'b'],
      inbreedingTo: 0.125,
      weight: 1,
      crossLines: false,
      disputed: false,
    });
  });
});

const member = (code: string, sex: 'male' | 'female'): GroupMember => ({
  id: code,
  code,
  number: `${code}-1`,
  sex,
  isPrivate: false,
  line: null,
  keeper: 'Ines Haldorf',
  meanKinship: 0.1,
  excluded: null,
});
const [a, b, x, y] = [member('A', 'male'), member('B', 'male'), member('X', 'female'), member('Y', 'female')];
const range = (expected: number, least = expected, greatest = expected) => ({ expected, least, greatest });
const young = (...figures: [number, number?, number?]) => ({
  ...range(...figures),
  ...{ nothingKnown: false, depth: 3, fullDepth: 2 },
});
const group: Group = {
  males: [a, b],
  females: [x, y],
  unsexed: [],
  rows: [{ inbreeding: [young(0.25), young(0.125)] }, { inbreeding: [young(0.0625, 0, 0.125), young(0)] }],
  score: { inbreeding: range(0.109375, 0, 0.25), youngMeanKinship: 0.1, cost: 0.209375, pairs: 4, nothingKnown: 0 },
  takeOut: [],
  add: [],
  best: null,
  noBest: null,
  warnings: [],
  asOf: { revision: 1, at: '' },
};

describe('the grid of a group', () => {
  it('goes least related first on both sides, whatever order the answer has', () => {
    const { males, females, cells } = groupGrid(group, 0.125);
    expect([males, females].map((side) => side.map(({ code }) => code))).toEqual([
      ['B', 'A'],
      ['Y', 'X'],
    ]);
    expect(cells.map((row) => row.map(({ expected }) => expected))).toEqual([
      [0, 0.0625],
      [0.125, 0.25],
    ]);
    expect(cells.flat().map(({ isAbove }) => isAbove)).toEqual([false, false, false, true]);
  });

  it('begins with the best group, and says of each pair all that its cell shows', () => {
    const best = { males: [a], females: [y], score: group.score as NonNullable<Group['score']>, warnings: [] };
    const { cells } = groupGrid({ ...group, best }, 0.0625);
    expect(cells[0]?.[0]?.words).toBe(
      'A and Y: young 12.5\u202f% inbred, depth 2 of 3, over the limit, in the best group',
    );
    expect(cells[1]?.[1]?.words).toBe(
      'B and X: young 6.3\u202f% inbred, 0 to 12.5\u202f% by who the parents were, depth 2 of 3',
    );
    expect(cells[1]?.[1]?.range).toBe('0 to 12.5');
  });

  it('never calls a pair unrelated of which nothing is known', () => {
    const blind = { ...young(0), nothingKnown: true, fullDepth: 1 };
    const rows = [{ inbreeding: [young(0.25), young(0.125)] }, { inbreeding: [young(0), blind] }];
    const found = groupGrid({ ...group, rows }, 0.125).cells.flat();
    expect(found.filter(({ isBlind }) => isBlind).map(({ words }) => words)).toEqual([
      'B and Y: nothing known, depth 1 of 3',
    ]);
  });
});

describe('a group in words', () => {
  it('says what the young would be, and which sex is missing', () => {
    expect(scoreInWords(group)).toBe(
      '2.2, 4 pairs: the young would be 10.9\u202f% inbred, 0 to 25\u202f% by who breeds with whom; their mean kinship with the line 10\u202f%.',
    );
    const score = group.score as NonNullable<Group['score']>;
    expect(scoreInWords({ ...group, score: { ...score, nothingKnown: 1 } })).toContain('with nothing known of 1 pair;');
    expect(scoreInWords({ ...group, score: { ...score, nothingKnown: 4 } })).toMatch(
      /^2\.2, 4 pairs: nothing is known of the inbreeding of the young; /,
    );
    expect(scoreInWords({ males: [], females: [x], score: null })).toContain('no male');
  });
});
