import { describe, expect, it } from 'vitest';
import { explainedFigures } from '../../client/src/lib/figures/explained-figures.ts';
import { figureHelp } from '../../client/src/lib/figures/figure-help.ts';
import { filtersOf, measuresAddress } from '../../client/src/lib/records/register-filters.ts';
import {
  choiceInWords,
  choiceOf,
  lineAddress,
  memberFilters,
  usualChoice,
} from '../../client/src/lib/sets/line-choice.ts';
import { setFigures } from '../../client/src/lib/sets/set-figures.ts';
import { inventedSet } from './charts/invented-set.ts';

const set = inventedSet({ seed: 1, sources: 4, from: 2010, to: 2020 });
const figure = (figures: ReturnType<typeof setFigures>, name: string) =>
  figures.flat().find((one) => one.name === name);

describe('which members of a line are measured', () => {
  it('stands in the address and is read back from it', () => {
    const choice = { of: 'all', keeper: 'Orla & Co', hatchedFrom: '2019', hatchedTo: '2022' } as const;
    const address = lineAddress('l1', choice);
    expect(address).toBe('/lines/l1?of=all&keeper=Orla+%26+Co&hatchedFrom=2019&hatchedTo=2022');
    expect(choiceOf(new URL(address, 'http://club').searchParams)).toEqual(choice);
  });

  it('is the living ones unless the address says otherwise', () => {
    expect(lineAddress('l1', usualChoice)).toBe('/lines/l1');
    expect(choiceOf(new URLSearchParams('of=nonsense&hatchedFrom=soon'))).toEqual(usualChoice);
    expect(memberFilters('l1', usualChoice)).toMatchObject({ lineId: 'l1', status: 'alive' });
  });

  it('is said in words', () => {
    expect(choiceInWords(usualChoice)).toBe('the living');
    expect(choiceInWords({ of: 'all', keeper: 'Orla', hatchedFrom: '2020', hatchedTo: '' })).toBe(
      'all members, kept by Orla, hatched in 2020 or later',
    );
  });

  it('may be whatever the register shows, without the order of the list', () => {
    const filters = filtersOf(new URLSearchParams('keeper=Orla&status=alive&sort=code&order=desc&after=x'));
    const address = new URL(measuresAddress(filters), 'http://club');
    expect(address.pathname).toBe('/measures');
    expect(Object.fromEntries(address.searchParams)).toEqual({ keeper: 'Orla', status: 'alive' });
  });
});

describe('the figures of a set', () => {
  it('are nine, each explained, with those of all members beside them', () => {
    const figures = setFigures(set, { ...set, geneDiversity: 0.9 }).flat();
    expect(figures).toHaveLength(9);
    for (const { name } of figures) expect(figureHelp[name].source).not.toBe('');
    expect(figures.find((one) => one.name === 'gene-diversity')?.rests).toContain('all members 90\u202f%');
  });

  it('are told in words and never as 0 where nothing is known', () => {
    const blind = {
      ...set,
      nothingKnown: set.animals,
      inbreeding: { animals: 0, mean: null, least: null, greatest: null },
      effectiveSize: { animals: 0, increase: null, effectiveSize: null, standardError: null, note: 'No animal …' },
    };
    for (const { value } of setFigures(blind, null).flat()) expect(value).toMatch(/^(nothing|too little) known$/);
  });

  it('say that the effective size is undefined where no inbreeding is recorded', () => {
    const none = { animals: 8, increase: 0, effectiveSize: null, standardError: null, note: 'No inbreeding …' };
    const figures = setFigures({ ...set, effectiveSize: none }, null);
    expect(figure(figures, 'effective-size')?.value).toBe('undefined');
    expect(figure(figures, 'increase')?.value).toBe('0\u202f%');
  });
});

it('every figure has its unit, range, source, caution and a worked example with a result', () => {
  for (const name of explainedFigures) {
    const { what, unit, range, source, caution, example } = figureHelp[name];
    for (const words of [what, unit, range, source, caution, example.given]) expect(words.length).toBeGreaterThan(3);
    expect(example.rows.length).toBeGreaterThan(1);
  }
});
