import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  animalsOf,
  parentErrors,
  probabilities,
  type Candidate,
  type ParentAnimal,
  type Parents,
} from '../../../api/register/clutches/parents.ts';
import { clutchTitle, sourceTitle } from '../../../api/register/titles.ts';

const animal = (id: string, sex: ParentAnimal['sex'] = 'unsexed'): ParentAnimal => ({ id, number: id, sex, tier: 0 });
const candidate = (of: ParentAnimal | null): Candidate => ({ animal: of, weight: 1, reason: null });
const pair = (a: ParentAnimal, b: ParentAnimal) => ({ a, b, weight: 1, reason: null });

describe('weights become probabilities', () => {
  it('that sum to 1 as closely as the database wants, and are never 0, whatever weights the API takes', () => {
    const weight = fc.double({ min: 0.000001, max: 1_000_000, noNaN: true });
    fc.assert(
      fc.property(fc.array(weight, { minLength: 1, maxLength: 200 }), (weights) => {
        const odds = probabilities(weights.map((value) => ({ weight: value })));
        expect(Math.abs(odds.reduce((sum, value) => sum + value, 0) - 1)).toBeLessThan(1e-9);
        expect(Math.min(...odds)).toBeGreaterThan(0);
      }),
    );
  });

  it('in the same proportions', () => {
    expect(probabilities([{ weight: 3 }, { weight: 1 }])).toEqual([0.75, 0.25]);
    expect(probabilities([])).toEqual([]);
  });
});

describe('possible parents', () => {
  it('are each animal once, over both sides or all pairs', () => {
    const [a, b, c] = [animal('a'), animal('b'), animal('c')];
    const lists: Parents = { mode: 'lists', sires: [candidate(a), candidate(null)], dams: [candidate(b)] };
    expect(animalsOf(lists).map((found) => found.id)).toEqual(['a', 'b']);
    expect(animalsOf({ mode: 'pairs', pairs: [pair(a, b), pair(b, c)] }).map((found) => found.id)).toEqual([
      'a',
      'b',
      'c',
    ]);
  });

  it('give every error at its place at once', () => {
    const [male, female, unsexed] = [animal('m', 'male'), animal('f', 'female'), animal('u')];
    const lists: Parents = {
      mode: 'lists',
      sires: [candidate(female), candidate(unsexed), candidate(unsexed)],
      dams: [candidate(male), candidate(unsexed)],
    };
    expect(parentErrors(lists).map((error) => error.pointer)).toEqual([
      '/sires/0/individualId',
      '/sires/2/individualId',
      '/dams/0/individualId',
      '/dams/1/individualId',
    ]);
    const pairs: Parents = {
      mode: 'pairs',
      pairs: [pair(male, male), pair(male, unsexed), pair(unsexed, male), pair(male, animal('n', 'male'))],
    };
    expect(parentErrors(pairs).map((error) => error.pointer)).toEqual(['/pairs/0/b', '/pairs/2', '/pairs/3']);
  });
});

describe('what people call', () => {
  it.each([
    [{ laid: '2021-04-12', code: 'C-1' }, 'clutch of 2021-04-12'],
    [{ laid: '1994~', code: null }, 'clutch of about 1994'],
    [{ laid: null, code: 'C-1' }, 'clutch C-1'],
    [{ laid: null, code: null }, 'clutch without a date'],
  ])('a clutch %o', (clutch, title) => {
    expect(clutchTitle(clutch)).toBe(title);
  });

  it.each([
    [{ kind: 'import', date: '1994~' }, 'Import, about 1994'],
    [{ kind: 'wild-collection', date: '199X' }, 'Wild collection, the 1990s'],
    [{ kind: 'purchase', date: null }, 'Purchase'],
    [{ kind: 'unknown', date: '1993/1996' }, 'Source of unknown kind, 1993 to 1996'],
  ] as const)('a source %o', (source, title) => {
    expect(sourceTitle(source)).toBe(title);
  });
});
