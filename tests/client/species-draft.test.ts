import { describe, expect, it } from 'vitest';
import { SpeciesDraft } from '$lib/species/species-draft.svelte.ts';
import { rangeInWords } from '$lib/species/species-words.ts';

const species = {
  id: '1',
  version: 1,
  createdAt: '',
  updatedAt: '',
  withdrawn: null,
  keeperId: null,
  keeper: null,
  scientificName: 'Aa bbb',
  commonName: null,
  citesAppendix: null,
  nativeRange: ['EC'],
  ranges: [
    {
      trait: 'eggs-per-clutch' as const,
      usualLeast: 10,
      usualMost: 30,
      extremeLeast: null,
      extremeMost: 44,
      unit: 'eggs' as const,
      source: 'common practice',
    },
  ],
};

describe('the profile of a species', () => {
  it('is sent as it was read where nothing is typed', () => {
    expect(new SpeciesDraft(species).body).toEqual({
      scientificName: 'Aa bbb',
      commonName: null,
      citesAppendix: null,
      nativeRange: ['EC'],
      ranges: [
        {
          trait: 'eggs-per-clutch',
          extremeLeast: null,
          usualLeast: 10,
          usualMost: 30,
          extremeMost: 44,
          source: 'common practice',
        },
      ],
    });
  });

  it('asks for the source of a range, for values that grow, and for codes of countries', () => {
    const draft = new SpeciesDraft(species);
    const [hatching] = draft.ranges;
    if (!hatching) throw new Error('a profile has a row for each range');
    hatching.values.usualLeast = '14';
    hatching.values.usualMost = '12,5';
    draft.nativeRange = 'ec, Peru';
    expect(draft.pointerOf(hatching)).toBe('/ranges/0');
    expect(draft.problems()).toEqual({
      '/nativeRange': 'Write the two letters of each country, with spaces between them, such as EC PE.',
      '/ranges/0': 'The values must grow from the least ever known to the greatest ever known.',
      '/ranges/0/source': 'Write where this is published, or “common practice”.',
    });
    hatching.values.usualMost = '16,5';
    hatching.source = 'common practice';
    draft.nativeRange = 'ec, pe';
    expect(draft.problems()).toEqual({});
    expect(draft.body).toMatchObject({ nativeRange: ['EC', 'PE'], ranges: [{ usualLeast: 14, usualMost: 16.5 }, {}] });
  });

  it('says a range in words, also where one end is open', () => {
    expect([rangeInWords(1, 2), rangeInWords(2, 2), rangeInWords(null, 2), rangeInWords(1, null)]).toEqual([
      ...['1 to 2', '2', 'up to 2', 'from 1'],
    ]);
    expect(rangeInWords(null, null)).toBe('');
  });
});
