import { describe, expect, it } from 'vitest';
import type { JournalEntry } from '$lib/api/types.ts';
import { addressOf, anyEntry, daysInWords, filtersOf, isNarrowed } from '$lib/journal/journal-filters.ts';
import { actionInWords, actionNames, fieldInWords, isFilling, sentenceOf } from '$lib/journal/journal-words.ts';
import { movesInWords } from '$lib/merge/merge-state.svelte.ts';
import { journalActions } from '$shared/vocabulary.ts';

const entry = (change: Partial<JournalEntry>): JournalEntry => ({
  id: 'e',
  at: '2026-11-25T12:00:00.000Z',
  keeper: { id: 'k', name: 'Ines' },
  via: 'session',
  action: 'changed',
  record: { kind: 'individual', id: 'a', title: 'RV-61' },
  changes: [],
  reason: null,
  reverses: null,
  reversedBy: null,
  isUndoable: true,
  seal: null,
  ...change,
});

describe('an entry of the journal', () => {
  it('reads as a sentence that leads to its record', () => {
    expect(sentenceOf(entry({}))).toEqual({
      who: 'Ines',
      before: 'changed',
      after: '',
      title: 'RV-61',
      href: '/animals/a',
    });
    expect(sentenceOf(entry({ action: 'left', record: { kind: 'keeper', id: 'k2', title: 'Bram' } }))).toMatchObject({
      before: 'noted that',
      title: 'Bram',
      after: 'left the club',
    });
  });

  it('says that it undid something, and that the service did it', () => {
    expect(sentenceOf(entry({ reverses: 'e0' })).before).toBe('undid a change: changed');
    expect(sentenceOf(entry({ keeper: null, via: 'service', action: 'seeded' })).who).toBe('the service');
  });

  it('has words for every action', () => {
    expect([...actionNames].sort()).toEqual([...journalActions].sort());
    for (const action of journalActions) expect(actionInWords(action)).toMatch(/^[a-z][a-z -]+[a-z]$/);
  });

  it('names fields as the screens do', () => {
    expect(fieldInWords('sexBasis')).toBe('how the sex is known');
    expect(fieldInWords('outOfWater')).toBe('out of water');
    expect(fieldInWords('lineId')).toBe('line');
  });

  it('leaves out what was before where a record was filled in', () => {
    expect(isFilling([{ field: 'code', before: null, after: 'RV-1' }])).toBe(true);
    expect(isFilling([{ field: 'code', before: 'RV-1', after: null }])).toBe(false);
  });
});

describe('the filters of the journal', () => {
  it('live in the address', () => {
    const address = '/journal?kind=clutch&action=added&from=2026-01-01';
    const filters = filtersOf(new URL(address, 'http://club.example').searchParams);
    expect(filters).toEqual({ ...anyEntry, kind: 'clutch', action: 'added', from: '2026-01-01' });
    expect(addressOf(filters)).toBe(address);
    expect(isNarrowed(filters)).toBe(true);
  });

  it('count what they do not know as any', () => {
    const filters = filtersOf(new URLSearchParams('kind=spaceship&action=burnt&from=soon&keeper=me'));
    expect(filters).toEqual(anyEntry);
  });

  it('begin with the newest entry when one changes', () => {
    expect(addressOf({ ...anyEntry, after: 'cursor' }, { kind: 'line' })).toBe('/journal?kind=line');
  });

  it('say days in words', () => {
    expect(daysInWords({ from: '', to: '' })).toBe('at any time');
    expect(daysInWords({ from: '2026-01-01', to: '2026-01-01' })).toBe('on 2026-01-01');
    expect(daysInWords({ from: '', to: '2026-01-02' })).toBe('until 2026-01-02');
  });
});

describe('what moves when two records are merged', () => {
  const provenance = { claims: 0, photographs: 0, acknowledgements: 0 };
  const none = { clutches: 0, stays: 0, remarks: 0, confirmations: 0, records: 0, ...provenance };

  it('is told in one sentence', () => {
    expect(movesInWords({ ...none, clutches: 2, stays: 1, remarks: 3 }, 'RV-61')).toBe(
      '2 clutches, 1 stay in pairings and 3 remarks move to RV-61.',
    );
    expect(movesInWords({ ...none, clutches: 1 }, 'RV-61')).toBe('1 clutch moves to RV-61.');
    expect(movesInWords({ ...none, claims: 2, photographs: 1 }, 'RV-61')).toBe(
      '2 claims and 1 photograph move to RV-61.',
    );
    expect(movesInWords(none, 'RV-61')).toBe('Nothing hangs on the duplicate; nothing moves to RV-61.');
  });
});
