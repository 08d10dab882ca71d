import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sexes, statuses } from '../../shared/vocabulary.ts';
import {
  addressOf,
  anyAnimal,
  choicesOf,
  filtersOf,
  isNarrowed,
  sentenceOf,
  sorts,
  type RegisterFilters,
} from '$lib/records/register-filters.ts';
import { boundFrom, dependsOnFigures, written } from '$lib/records/figure-bounds.ts';

const read = (address: string): RegisterFilters => filtersOf(new URL(address, 'http://club.test').searchParams);
const say = (filters: RegisterFilters): string =>
  `${sentenceOf(filters)
    .map((part) => part.before + part.words)
    .join('')}.`;

describe('the sentence of the register', () => {
  it('says that everything is shown', () => {
    expect(say(anyAnimal as RegisterFilters)).toBe(
      'Animals that are living, dead or gone, of any sex, of any species, of any line, hatched at any time, kept by anyone, in order of number.',
    );
    expect(sentenceOf(anyAnimal as RegisterFilters).some((part) => part.isSet)).toBe(false);
  });

  it('says what an address asks for, and marks what is set', () => {
    const filters = read(
      '/register?status=alive&sex=female&line=Quebrada+Honda&hatchedFrom=2022&sort=hatched&order=desc',
    );
    expect(say(filters)).toBe(
      'Animals that are alive, female, of any species, of Quebrada Honda, hatched in 2022 or later, kept by anyone, in order of hatching, youngest first.',
    );
    expect(
      sentenceOf(filters)
        .filter((part) => part.isSet)
        .map((part) => part.name),
    ).toEqual(['status', 'sex', 'line', 'hatched', 'sort']);
  });

  it.each([
    ['hatchedFrom=2020&hatchedTo=2020', 'in 2020'],
    ['hatchedTo=2019', 'in 2019 or earlier'],
    ['hatchedFrom=2018&hatchedTo=2020', 'from 2018 to 2020'],
  ])('says years as people do: %s', (query, words) => {
    expect(sentenceOf(read(`/register?${query}`)).find((part) => part.name === 'hatched')?.words).toBe(words);
  });
});

describe('figures in the sentence', () => {
  const partOf = (query: string): string[] =>
    sentenceOf(read(`/register?${query}`))
      .filter((part) => part.isSet)
      .map((part) => part.before + part.words);

  it.each([
    ['inbreedingFrom=0.0625', ', with F at least 6.25\u202f%'],
    ['inbreedingTo=0', ', with F 0\u202f%'],
    ['inbreedingFrom=0.01&inbreedingTo=0.0625', ', with F 1 to 6.25\u202f%'],
    ['depthFrom=3', ', with depth at least 3'],
    ['depthFrom=1', ', with depth at least 1'],
    ['depthTo=0', ', with depth 0'],
    ['depthFrom=2&depthTo=4', ', with depth 2 to 4'],
    ['meanKinshipTo=0.078', ', with mean kinship at most 7.8\u202f%'],
    ['tracedShareFrom=1', ', traced 100\u202f%'],
    ['tracedShareFrom=0.5&tracedShareTo=0.5', ', traced 50\u202f%'],
  ])('are said as they are bounded: %s', (query, words) => {
    expect(partOf(query)).toEqual([words]);
  });

  it('are left out where they are not bounded, or not by what a bound can be', () => {
    expect(partOf('inbreedingFrom=2&depthTo=1.5&meanKinshipTo=-1&tracedShareFrom=much&depthFrom=99999')).toEqual([]);
  });

  it('are written per cent and kept as fractions, with every digit', () => {
    for (let hundredths = 0; hundredths <= 10_000; hundredths++) {
      const text = String(hundredths / 100);
      const read = boundFrom('inbreeding', text);
      expect('bound' in read && written('inbreeding', read.bound)).toBe(text);
    }
    expect(boundFrom('inbreeding', ' 6,25 % ')).toEqual({ bound: '0.0625' });
    expect(boundFrom('depth', '3')).toEqual({ bound: '3' });
  });

  it.each([
    ['inbreeding', '101'],
    ['tracedShare', 'much'],
    ['meanKinship', '-1'],
    ['depth', '2.5'],
    ['depth', '10001'],
  ] as const)('a bound of %s cannot be %s, and the reader is told what can', (figure, text) => {
    expect(boundFrom(figure, text)).toEqual({ problem: expect.stringContaining('such as') as unknown });
  });

  it('tell that the list depends on them', () => {
    expect(dependsOnFigures(read('/register?sort=code&status=alive'))).toBe(false);
    expect(dependsOnFigures(read('/register?sort=meanKinship'))).toBe(true);
    expect(dependsOnFigures(read('/register?depthTo=0'))).toBe(true);
  });
});

describe('the address of the register', () => {
  it('holds every filter and gives it back', () => {
    const year = fc.constantFrom('', '1994', '2022');
    const share = fc.constantFrom('', '0', '0.0625', '1');
    const generations = fc.constantFrom('', '0', '3', '10000');
    const word = fc.string({ maxLength: 12 }).map((text) => text.trim());
    const filters = fc.record<RegisterFilters>({
      q: word,
      status: fc.constantFrom('' as const, ...statuses),
      sex: fc.constantFrom('' as const, ...sexes),
      species: word,
      line: word,
      keeper: word,
      hatchedFrom: year,
      hatchedTo: year,
      inbreedingFrom: share,
      inbreedingTo: share,
      depthFrom: generations,
      depthTo: generations,
      meanKinshipFrom: share,
      meanKinshipTo: share,
      tracedShareFrom: share,
      tracedShareTo: share,
      sort: fc.constantFrom(...sorts),
      order: fc.constantFrom('asc' as const, 'desc' as const),
      after: word,
    });
    fc.assert(
      fc.property(filters, (some) => {
        expect(read(addressOf(some, { after: some.after }))).toEqual(some);
      }),
    );
  });

  it('is short while nothing is set', () => {
    expect(addressOf({ ...anyAnimal })).toBe('/register');
  });

  it('begins at the first page when a filter changes', () => {
    const later = { ...anyAnimal, after: 'cursor', status: 'alive' } as RegisterFilters;
    expect(addressOf(later, { sex: 'male' })).toBe('/register?status=alive&sex=male');
  });

  it('reads as "any" what it does not know, rather than break', () => {
    expect(read('/register?status=asleep&sex=both&sort=size&hatchedFrom=soon')).toEqual(anyAnimal);
  });

  it('tells a narrowed list from an ordered one', () => {
    expect(isNarrowed(read('/register?sort=code&order=desc'))).toBe(false);
    expect(isNarrowed(read('/register?q=IH'))).toBe(true);
  });
});

describe('the choices of a part', () => {
  it('lead to sentences that say them', () => {
    for (const name of ['status', 'sex', 'sort'] as const)
      for (const choice of choicesOf(name)) {
        const words = sentenceOf({ ...anyAnimal, ...choice.change }).find((part) => part.name === name)?.words;
        expect(words).toBe(choice.words);
      }
  });
});
