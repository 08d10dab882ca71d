import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  forecastParameters,
  forecastQuestion,
  forecastRefusals,
  forecastWishOf,
} from '../../client/src/lib/match/forecast-wish.ts';
import {
  planParameters,
  planQuestion,
  planRefusals,
  planWishOf,
  queryOf,
  weightOf,
  type PlanWish,
} from '../../client/src/lib/match/plan-wish.ts';
import { planWishInWords } from '../../client/src/lib/match/plan-words.ts';
import {
  effectInWords,
  effectOf,
  stepOf,
  tradeOffPoints,
  weightSteps,
} from '../../client/src/lib/match/trade-off-effect.ts';
import { layoutCurve } from '../../client/src/lib/match/trade-off-layout.ts';

const usual = planWishOf(new URLSearchParams());
const full: PlanWish = {
  ...usual,
  pairings: '6',
  weight: '2.5',
  inbreedingTo: '0.0625',
  movesMost: '2',
  reserve: '1',
  fixed: [{ male: '1351-5', female: '1124-5' }],
  forbidden: [{ male: '1241-6', female: '130-X' }],
  uses: [{ animal: '1351-5', most: '2' }],
  keptTogether: ['k1', 'k2'],
  also: ['99-2'],
  crossLines: true,
  disputed: true,
};

describe('what is asked of a plan', () => {
  it('stands in the address, and is read back from it', () => {
    const address = queryOf(planParameters(full));
    expect(address).toContain('fixed=1351-5~1124-5&forbidden=1241-6~130-X&uses=1351-5~2&keptTogether=k1,k2');
    expect(planWishOf(new URLSearchParams(address))).toEqual(full);
    expect(queryOf(planParameters(usual))).toBe('?pairings=4');
  });

  it('becomes the question that the service takes, with nothing that was not said', () => {
    expect(planQuestion(usual)).toEqual({
      pairings: 4,
      weight: 1,
      inbreedingTo: 0.125,
      usesMost: 1,
      movesMost: null,
      reserve: 0,
      reserveMonths: 48,
      seconds: 20,
      fixed: [],
      forbidden: [],
      uses: [],
      keptTogether: [],
      allow: [],
    });
    expect(planQuestion(full)).toMatchObject({
      movesMost: 2,
      uses: [{ individual: '1351-5', most: 2 }],
      also: ['99-2'],
      allow: ['cross-lines', 'disputed'],
    });
  });

  it('is told in a sentence where the fields cannot be seen, as on paper', () => {
    const known = new Map([['1351-5', { code: 'RV-61', number: '1351-5' }]]);
    expect(planWishInWords(usual, known)).toBe(
      'Asked for: 4 pairs; F of the young at most 12.5\u202f%; weight of inbreeding 1.',
    );
    expect(planWishInWords(full, known)).toBe(
      'Asked for: 6 pairs; F of the young at most 6.3\u202f%; weight of inbreeding 2.5; 2 moves at most; at least 1 animal of 48 months or more that have not bred; with RV-61 × 1124-5; not 1241-6 × 130-X; RV-61 in 2 pairs at most; animals of 2 keepers kept together; and 99-2 of other lines; disputed labels allowed.',
    );
  });

  it('is refused by field, in words that say what to write', () => {
    expect(planRefusals(full)).toEqual({});
    const wrong = planRefusals({
      ...usual,
      pairings: 'many',
      weight: '101',
      movesMost: '-1',
      uses: [{ animal: 'a', most: '' }],
      also: ['b'],
    });
    expect(Object.keys(wrong).sort()).toEqual(['also', 'movesMost', 'pairings', 'uses', 'weight']);
    expect(wrong.pairings).toBe('Write a whole number from 1 to 200.');
    expect(wrong.movesMost).toContain('or nothing');
    expect(['1', '0,5', '100', '1e3', ' 2 ', '-1', ''].map(weightOf)).toEqual([1, 0.5, 100, null, 2, null, null]);
  });
});

describe('what is asked of a forecast', () => {
  it('stands in the address beside the plan, and is refused by field', () => {
    const wish = forecastWishOf(new URLSearchParams('generations=3&seed=7'));
    expect(queryOf(forecastParameters(wish))).toBe('?generations=3&seed=7');
    expect(forecastQuestion(wish)).toEqual({ generations: 3, youngKept: 4, seed: 7 });
    expect(forecastRefusals(wish)).toEqual({});
    const wrong = forecastRefusals({ generations: '11', youngKept: '1', seed: '4294967296' });
    expect(Object.keys(wrong)).toEqual(['generations', 'youngKept', 'seed']);
  });
});

/** Two pairs; a greater weight gives less F and more mean kinship. */
const point = (weight: number, kinship: number, meanKinship: number, isOptimal = true) => ({
  weight,
  kinship,
  meanKinship,
  moves: 1,
  isOptimal,
});
const points = tradeOffPoints({
  tradeOff: [point(1, 0.2, 0.32), point(0, 0.3, 0.3), point(4, 0.1, 0.4)],
  pairs: [{}, {}] as never,
});

describe('what a weight does', () => {
  it('is known where it was measured, and lies between its neighbours elsewhere', () => {
    expect(effectInWords(effectOf(points, 1))).toBe(
      'mean F of the young 10\u202f%, mean kinship with the line 16\u202f%',
    );
    expect(effectInWords(effectOf(points, 2))).toBe(
      'mean F of the young 5 to 10\u202f%, mean kinship with the line 16 to 20\u202f%',
    );
    expect(effectInWords(effectOf(points, 32))).toBe(
      'mean F of the young 5\u202f% or less, mean kinship with the line 20\u202f% or more',
    );
    expect(effectInWords(effectOf([], 1))).toContain('nothing is known');
  });

  it('finds every step of the slider again', () => {
    expect(weightSteps.map(stepOf)).toEqual([...weightSteps.keys()]);
    expect(weightSteps[stepOf(3)]).toBe(2.8);
  });

  it('is drawn within its frame, less F further left, and lights where the slider stands', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(share, share), { minLength: 1, maxLength: 8 }), (figures) => {
        const some = figures.map(([inbreeding, meanKinship], weight) => ({
          weight,
          inbreeding,
          meanKinship,
          moves: 0,
          isOptimal: true,
        }));
        const layout = layoutCurve(some, effectOf(some, 0.5));
        for (const { x, y } of layout.points) {
          expect(x).toBeGreaterThanOrEqual(layout.left);
          expect(x).toBeLessThanOrEqual(layout.right);
          expect(y).toBeGreaterThanOrEqual(layout.top);
          expect(y).toBeLessThanOrEqual(layout.bottom);
        }
        expect(layout.points.some(({ text }) => text !== '')).toBe(true);
      }),
    );
    const layout = layoutCurve(points, effectOf(points, 2));
    expect(layout.points.map(({ text }) => text)).toEqual(['0', '1', '4']);
    const [zero, one, four] = layout.points.map(({ x, y }) => ({ x, y }));
    expect(zero?.x).toBeGreaterThan(one?.x ?? NaN);
    expect(four?.y).toBeLessThan(one?.y ?? NaN);
    expect(layout.litEnds).toEqual([one, four]);
  });

  it('draws weights that come to the same once', () => {
    const same = tradeOffPoints({
      tradeOff: [point(0, 0.2, 0.3), point(1, 0.2, 0.3), point(2, 0.1, 0.4)],
      pairs: [{}] as never,
    });
    expect(layoutCurve(same, effectOf(same, 0)).points.map(({ text }) => text)).toEqual(['0 to 1', '2']);
  });
});
