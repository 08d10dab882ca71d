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

describe('the address of the register', () => {
  it('holds every filter and gives it back', () => {
    const year = fc.constantFrom('', '1994', '2022');
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
