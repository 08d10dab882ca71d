import { describe, expect, it } from 'vitest';
import { AnimalDraft } from '$lib/records/animal-draft.svelte.ts';

function typed(): AnimalDraft {
  const draft = new AnimalDraft();
  draft.code = ' IH-97 ';
  draft.speciesId = 'species';
  draft.sex = 'female';
  draft.sexBasis = 'eggs';
  draft.sexedOn = '2023';
  draft.origin = 'source';
  draft.sourceId = 'source';
  draft.clutchId = 'chosen before the mind was changed';
  draft.hatched = '2022-03';
  return draft;
}

describe('an animal as typed', () => {
  it('is sent with one origin only, trimmed, and null for what is not known', () => {
    expect(typed().body()).toMatchObject({
      code: 'IH-97',
      sourceId: 'source',
      clutchId: null,
      outOfWater: null,
      lineId: null,
    });
  });

  it('says nothing of how the sex was seen once it is not sexed, and of death only for the dead', () => {
    const draft = typed();
    draft.sex = 'unsexed';
    draft.died = '2024';
    expect(draft.body()).toMatchObject({ sexBasis: null, sexedOn: null, died: null });
    draft.status = 'died';
    expect(draft.body()).toMatchObject({ died: '2024' });
  });

  it('tells what is missing or unreadable, by the pointers of the service', () => {
    const draft = typed();
    draft.speciesId = '';
    draft.sourceId = '';
    draft.hatched = '12.3.2022';
    expect(Object.keys(draft.problems()).sort()).toEqual(['/hatched', '/sourceId', '/speciesId']);
    expect(typed().problems()).toEqual({});
  });

  it('keeps species and origin for the next one and clears what is its own', () => {
    const draft = typed();
    draft.next();
    expect(draft.body()).toMatchObject({
      code: null,
      sex: 'unsexed',
      speciesId: 'species',
      sourceId: 'source',
      hatched: '2022-03',
    });
  });

  it('comes back as it was left', () => {
    const again = new AnimalDraft();
    again.restore(structuredClone(typed().capture()));
    expect(again.body()).toEqual(typed().body());
  });
});
