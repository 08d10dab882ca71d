import { describe, expect, it } from 'vitest';
import { placeParts, tadpolesLeft } from '../../../client/src/lib/today/today-words.ts';
import { drawWindow } from '../../../client/src/lib/today/window-geometry.ts';

const expected = {
  event: 'hatching',
  since: '2026-11-01',
  from: '2026-11-11',
  to: '2026-11-19',
  countedFrom: 'laying',
  speciesId: 's',
  species: 'Inventus',
} as const;

describe('the window of a clutch is drawn', () => {
  it('on a line from the laying to the end of the window, with today on it', () => {
    // nineteen days and the last of them whole
    expect(drawWindow({ expected }, '2026-11-11', 190)).toEqual({
      opens: 100,
      closes: 190,
      now: 100,
      day: 10,
      late: 0,
      isOpen: true,
    });
  });

  it('on a line to today where that is later, and says how late it is', () => {
    expect(drawWindow({ expected }, '2026-11-21', 200)).toMatchObject({ opens: 100, closes: 190, now: 200, late: 2 });
  });

  it('closed before it opens, without today before the start, and not at all where nothing is expected', () => {
    expect(drawWindow({ expected }, '2026-11-10', 100)).toMatchObject({ isOpen: false, day: 9 });
    expect(drawWindow({ expected }, '2026-10-30', 100)).toMatchObject({ now: null, day: null });
    expect(drawWindow({ expected: null }, '2026-11-10', 100)).toBeNull();
  });
});

describe('a tank is written large by its number', () => {
  it.each([
    ['Tank 14', { large: '14', small: 'tank' }],
    ['rack B', { large: 'B', small: 'rack' }],
    ['Orla, mossy ones today', null],
    ['14', null],
  ])('%s', (name, parts) => expect(placeParts(name)).toEqual(parts));
});

describe('tadpoles that are left', () => {
  it.each([
    [{ eggs: 10, hatched: 8, outOfWater: 3, losses: [{ cause: 'mould', count: 2 }] }, 5],
    [{ eggs: 10, hatched: 8, outOfWater: 3, losses: [{ cause: 'unknown', count: 4 }] }, 3],
    [{ eggs: null, hatched: 8, outOfWater: null, losses: [] }, 8],
    [{ eggs: 10, hatched: null, outOfWater: null, losses: [] }, null],
  ])('of %j are %s', (clutch, left) => expect(tadpolesLeft(clutch as never)).toBe(left));
});
