import { describe, expect, it } from 'vitest';
import type { ClaimedPlace, LabelEvent } from '../../client/src/lib/api/types.ts';
import { labelEventInWords } from '../../client/src/lib/claims/label-history-words.ts';
import { layoutMap } from '../../client/src/lib/places/map-layout.ts';

const at = (
  claimId: string,
  decimalLatitude: number | null,
  decimalLongitude: number | null,
  radius: number | null = null,
) =>
  ({
    claimId,
    value: `Place ${claimId}`,
    standing: 'documented',
    founders: 4,
    place: { decimalLatitude, decimalLongitude, coordinateUncertaintyM: radius, countryCode: 'EC' },
  }) as ClaimedPlace;

describe('a map of places', () => {
  it('shows every place that has coordinates within its frame, north up and east right', () => {
    const { marks } = layoutMap([], [at('a', -3.4, -79.9), at('b', 8.1, -82.3), at('c', null, null)], 600, 400);
    expect(marks.map(({ claimId, radius }) => [claimId, radius])).toEqual([
      ['a', 9],
      ['b', 9],
    ]);
    for (const { x, y } of marks) {
      expect(x > 0 && x < 600).toBe(true);
      expect(y > 0 && y < 400).toBe(true);
    }
    expect((marks[0]?.y ?? 0) > (marks[1]?.y ?? 0) && (marks[0]?.x ?? 0) > (marks[1]?.x ?? 0)).toBe(true);
  });

  it('draws how uncertain a place is where that is larger than its mark', () => {
    const { marks } = layoutMap(
      [],
      [at('a', -3.4, -79.9, 30), at('b', -3.4, -79.9, 200_000), at('c', 0, -80)],
      600,
      400,
    );
    expect(marks.map(({ within }) => within !== null)).toEqual([false, true, false]);
  });

  it('draws the countries that are near, and the whole world where there is no place', () => {
    const square = (west: number) => ({
      type: 'Polygon' as const,
      coordinates: [
        [
          [west, 0],
          [west, 5],
          [west + 5, 5],
          [west + 5, 0],
          [west, 0],
        ],
      ],
    });
    const countries = [square(-80), square(100)];
    expect(layoutMap(countries, [at('a', 2, -78)], 600, 400).land).toHaveLength(1);
    expect(layoutMap(countries, [], 600, 400)).toMatchObject({
      marks: [],
      land: [expect.any(String), expect.any(String)],
    });
  });
});

describe('the history of a label in words', () => {
  const event = (fields: Partial<LabelEvent>): LabelEvent => ({
    event: 'received',
    date: null,
    at: null,
    who: null,
    label: null,
    before: null,
    reason: null,
    record: { kind: 'source', id: 'x', title: 'Import, about 1994' },
    ...fields,
  });

  it.each<[Partial<LabelEvent>, string]>([
    [{ label: 'Zaruma', who: 'an importer' }, 'came as “Zaruma”, from an importer'],
    [{}, 'came as an animal without a label'],
    [
      { event: 'line-changed', before: 'A', label: null, who: 'Kim', reason: 'a slip' },
      'moved from “A” to no label, by Kim: a slip',
    ],
    [{ event: 'claimed', label: 'A', who: 'the importer' }, 'the importer said: “A”'],
  ])('%o says: %s', (fields, words) => {
    expect(labelEventInWords(event(fields))).toBe(words);
  });
});
