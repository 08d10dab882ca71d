import { describe, expect, it } from 'vitest';
import type { PairingMember, Ref } from '$lib/api/types.ts';
import { ClutchDraft } from '$lib/housing/clutch-draft.svelte.ts';
import { clutchSentence, hatchingSentence } from '$lib/housing/clutch-words.ts';
import { housedOn } from '$lib/housing/housed.ts';
import { ParentsDraft } from '$lib/housing/parents-draft.svelte.ts';
import { nextCode, YoungDraft } from '$lib/housing/young-draft.svelte.ts';

const animal = (code: string, sex: Ref['sex']): Ref => ({ id: `id-${code}`, number: '10704-4', code, sex });
const male = animal('LK-01', 'male');
const female = animal('IH-61', 'female');
const other = animal('IH-34', 'female');
const unsexed = animal('IH-90', 'unsexed');
const stay = (individual: Ref, joined: string | null, left: string | null): PairingMember => ({
  id: `stay of ${individual.code}`,
  individual: { ...individual, status: 'alive', isPrivate: false },
  joined,
  left,
});

describe('who was housed on a day', () => {
  const members = [stay(male, '2020', null), stay(female, '2021-03-01', '2021-09-30'), stay(other, null, null)];
  const codes = (date: string): (string | null)[] => housedOn(members, date).map((one) => one.code);

  it('is whoever had joined and not yet left', () => {
    expect(codes('2021-04-12')).toEqual(['LK-01', 'IH-61', 'IH-34']);
    expect(codes('2021-10-01')).toEqual(['LK-01', 'IH-34']);
    expect(codes('2019-05-01')).toEqual(['IH-34']);
  });

  it('leaves in whom a vague date may mean', () => {
    expect(codes('2021')).toContain('IH-61');
  });

  it('without a day is who lives there now', () => {
    expect(codes('')).toEqual(['LK-01', 'IH-34']);
  });
});

describe('the parents of a clutch', () => {
  it('are the males as sires and the females as dams, with equal odds', () => {
    const parents = new ParentsDraft();
    parents.preset([male, female, other]);
    expect(parents.body()).toEqual({
      sires: [{ individualId: male.id, weight: 1 }],
      dams: [
        { individualId: female.id, weight: 1 },
        { individualId: other.id, weight: 1 },
      ],
    });
    expect(ParentsDraft.odds(parents.dams)).toEqual([0.5, 0.5]);
  });

  it('are any two of a group in which one cannot be sexed, but never two of one known sex', () => {
    const parents = new ParentsDraft();
    parents.preset([male, female, other, unsexed]);
    expect(parents.mode).toBe('pairs');
    const couples = parents.pairs.map((pair) => `${pair.a.code} ${pair.b.code}`);
    expect(couples).toEqual(['LK-01 IH-61', 'LK-01 IH-34', 'LK-01 IH-90', 'IH-61 IH-90', 'IH-34 IH-90']);
  });

  it('take odds with a comma or a point, and refuse what is no odds', () => {
    const parents = new ParentsDraft();
    parents.preset([male, female, other]);
    const [first, second] = parents.dams;
    if (!first || !second) throw new Error('two dams expected');
    first.weight = '0,7';
    second.weight = '0.3';
    expect(ParentsDraft.odds(parents.dams)[0]).toBeCloseTo(0.7, 12);
    second.weight = '-1';
    expect(Object.keys(parents.problems())).toEqual(['/dams/1/weight']);
  });

  it('may be some other animal, once', () => {
    const parents = new ParentsDraft();
    parents.add('dams', female);
    parents.add('dams', null);
    parents.add('dams', null);
    expect(parents.body().dams).toEqual([
      { individualId: female.id, weight: 1 },
      { individualId: null, weight: 1 },
    ]);
  });
});

describe('noting a clutch', () => {
  function noted(): ClutchDraft {
    const draft = new ClutchDraft();
    draft.pairing = {
      id: 'p',
      version: 1,
      createdAt: '',
      updatedAt: '',
      keeper: 'Ines Haldorf',
      keeperId: 'k',
      name: 'tank 14',
      notes: null,
      notation: '1.2.0',
      members: [stay(male, '2020', null), stay(female, '2020', null), stay(other, '2020', null)],
      clutches: [],
      withdrawn: null,
    };
    draft.presetParents();
    return draft;
  }

  it('writes its sentence as one taps', () => {
    const draft = noted();
    draft.eggs = '17';
    draft.site = 'cup';
    draft.seen.dams = female.id;
    draft.choose('dams');
    expect(clutchSentence(draft)).toBe('17 eggs of IH-61 by LK-01, in a cup in tank 14, today.');
  });

  it('says both dams while nobody saw which', () => {
    const draft = noted();
    draft.seen.dams = female.id;
    draft.choose('dams');
    draft.seen.dams = '';
    draft.choose('dams');
    expect(clutchSentence(draft)).toBe('Some eggs of IH-61 or IH-34 by LK-01, in tank 14, today.');
  });

  it('comes back half noted, with what was seen', () => {
    const draft = noted();
    draft.eggs = '12';
    draft.seen.dams = female.id;
    draft.choose('dams');
    const captured = structuredClone(draft.capture());
    const again = noted();
    again.restore(captured);
    expect(captured.pairingId).toBe('p');
    expect(again.body()).toEqual(draft.body());
    expect(again.seen.dams).toBe(female.id);
  });

  it('tells a count that is no count before it asks the service', () => {
    const draft = noted();
    draft.eggs = 'about ten';
    draft.when = 'earlier';
    draft.earlier = '12.4.2021';
    expect(Object.keys(draft.problems()).sort()).toEqual(['/eggs', '/laid']);
  });

  it('says when the eggs hatch, from the species profile', () => {
    // about 14 days: common practice, no source
    const range = {
      trait: 'laying-to-hatching' as const,
      usualLeast: 12,
      usualMost: 16,
      extremeLeast: null,
      extremeMost: null,
      unit: 'days' as const,
      source: 'common practice',
    };
    const species = {
      id: 's',
      version: 1,
      createdAt: '',
      updatedAt: '',
      keeperId: null,
      keeper: null,
      scientificName: 'Epipedobates anthonyi',
      commonName: null,
      citesAppendix: null,
      nativeRange: [],
      ranges: [range],
      withdrawn: null,
    };
    expect(hatchingSentence('2026-11-23', species)).toBe('They hatch about 5–9 December 2026.');
    expect(hatchingSentence('2026-11', species)).toBe('');
  });
});

describe('raising young', () => {
  it('counts on from the code before', () => {
    expect(nextCode('IH-96')).toBe('IH-97');
    expect(nextCode('IH-099')).toBe('IH-100');
    expect(nextCode('green one')).toBe('');
  });

  it('says how many the button will write', () => {
    const draft = new YoungDraft();
    draft.count = '5';
    expect(draft.total).toBe(5);
    expect(draft.body()).toEqual({ count: 5 });
    draft.hatched = '2026-11-20';
    expect(draft.body()).toEqual({ animals: Array.from({ length: 5 }, () => ({ hatched: '2026-11-20' })) });
    draft.mode = 'each';
    expect(draft.total).toBe(1);
  });
});
