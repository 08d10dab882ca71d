import { describe, expect, it } from 'vitest';
import type { IndividualItem } from '../../../client/src/lib/api/types.ts';
import { printedAddition } from '../../../client/src/lib/charts/addition.ts';
import { quartersOf } from '../../../client/src/lib/match/quarters.ts';
import { buildGrid, secondLine, sidesOf } from '../../../client/src/routes/match/kinship-table.ts';
import { leastRelatedInWords } from '../../../client/src/routes/match/least-related.ts';

function animal(code: string, sex: IndividualItem['sex']): IndividualItem {
  return {
    id: code,
    code,
    number: `${code}-1`,
    sex,
    version: 1,
    createdAt: '',
    updatedAt: '',
    withdrawn: null,
    species: 'Epipedobates anthonyi',
    speciesId: 's',
    line: null,
    lineId: null,
    labelKind: null,
    status: 'alive',
    hatched: null,
    outOfWater: null,
    keeper: 'Ines Haldorf',
    keeperId: 'k',
    visibility: 'club',
  };
}

/** Kinships by "row column"; pairs that are not named are unrelated. */
function grid(animals: IndividualItem[], kinships: Record<string, number>, unknown: string[] = []) {
  const young = (a: string, b: string) => {
    if (a === b) return null;
    const expected = kinships[`${a} ${b}`] ?? kinships[`${b} ${a}`] ?? 0;
    const nothingKnown = expected === 0 && [a, b].some((one) => unknown.includes(one));
    return { ...{ expected, least: expected, greatest: expected }, ...{ nothingKnown, depth: 5, fullDepth: 2 } };
  };
  const figures = new Map(
    animals.map(({ id }) => [
      id,
      { inbreeding: { nothingKnown: unknown.includes(id) }, standings: [], depth: 4, meanKinship: 0.035 },
    ]),
  );
  return buildGrid(animals, new Map(), young, figures);
}

describe('the kinship grid', () => {
  it('puts males down, females across, and unsexed animals where they were put or on the shorter side', () => {
    const animals = [animal('M', 'male'), animal('U', 'unsexed'), animal('V', 'unsexed')];
    expect(Object.fromEntries(sidesOf(animals, new Map()))).toEqual({ M: 'row', U: 'column', V: 'row' });
    expect(sidesOf(animals, new Map([['U', 'row']])).get('U')).toBe('row');
  });

  it('is sorted least related first on both sides', () => {
    const animals = [animal('A', 'male'), animal('B', 'male'), animal('X', 'female'), animal('Y', 'female')];
    const made = grid(animals, { 'A X': 0.25, 'A Y': 0.125, 'B X': 0.0625, 'B Y': 0 });
    expect(made.rows.map((one) => one.animal.code)).toEqual(['B', 'A']);
    expect(made.columns.map((one) => one.animal.code)).toEqual(['Y', 'X']);
    expect(made.cells.map((row) => row.map((cell) => cell.expected))).toEqual([
      [0, 0.0625],
      [0.125, 0.25],
    ]);
  });

  it('tells depth and mean kinship at the heads, and below a true 0 its depth', () => {
    const animals = [animal('A', 'male'), animal('X', 'female'), animal('Y', 'female')];
    const made = grid(animals, { 'A X': 0.25 }, ['Y']);
    expect([...made.rows, ...made.columns].map(({ told }) => told)).toEqual([
      ['mk 3.5\u202f%', 'depth 4'],
      ['mk 3.5\u202f%', 'origin unknown'],
      ['mk 3.5\u202f%', 'depth 4'],
    ]);
    expect(made.cells.flat().map(secondLine)).toEqual(['', '']);
    expect(grid(animals, {}).cells.flat().map(secondLine)).toEqual(['depth 2 of 5', 'depth 2 of 5']);
  });

  it('fills a disc by quarters at 0, 1/32, 1/16 and 1/8', () => {
    expect([0, 0.001, 1 / 32, 0.032, 1 / 16, 0.07, 1 / 8, 0.126].map(quartersOf)).toEqual([0, 1, 1, 2, 2, 3, 3, 4]);
  });
});

describe('the sentence above the grid', () => {
  const [a, b, x, y] = [animal('A', 'male'), animal('B', 'male'), animal('X', 'female'), animal('Y', 'female')];

  it('names the less related of two possible mates', () => {
    expect(leastRelatedInWords(grid([a, x, y], { 'A X': 0.125, 'A Y': 1 / 64 }))).toBe(
      'Of these, Y is the least related to A: their young would be 1.6\u202f% inbred; X: 12.5\u202f%.',
    );
  });

  it('says so when two are equal', () => {
    expect(leastRelatedInWords(grid([a, x, y], { 'A X': 0.125, 'A Y': 0.125 }))).toBe(
      'X and Y are equally little related to A: their young would be 12.5\u202f% inbred.',
    );
  });

  it('names the least and the most related pair of a larger grid', () => {
    const made = grid([a, b, x, y], { 'A X': 0.25, 'A Y': 0.125, 'B X': 0.0625, 'B Y': 0.03125 });
    expect(leastRelatedInWords(made)).toBe(
      'Of these, B and Y are the least related: their young would be 3.1\u202f% inbred; the most related are A and X: 25\u202f%.',
    );
  });

  it('never calls an animal of unknown origin unrelated', () => {
    expect(leastRelatedInWords(grid([a, x, y], { 'A Y': 0.0625 }, ['X']))).toBe(
      'Y and A: their young would be 6.3\u202f% inbred. Of X no ancestor is recorded: nothing known, which is not unrelated.',
    );
  });
});

it('prints the parts of an addition so that they add up to its total', () => {
  // Together 3.76 %, printed 3.8 %.
  const parts = [0.0125, 0.0125, 0.01255, 0.00005].map((part) => ({ words: '', how: '', part }));
  const printed = printedAddition(parts).map((addend) => addend.printed);
  expect(printed).toEqual(['1.3\u202f%', '1.2\u202f%', '1.3\u202f%', 'under 0.1\u202f%']);
});
