import { describe, expect, it } from 'vitest';
import { whyChosen } from '../../../api/match/plan/reason-words.ts';

describe('why a pair is in a plan', () => {
  const rank = { rank: 1, of: 3, bestOther: null, aboveLimit: null };
  const sums = { meanKinship: 0.1, kinship: 0, cost: 0.1 };
  const pair = { male: 0, female: 1, ...sums, isMove: false, isFixed: false, forMale: rank, forFemale: rank };
  const lastOf = (extra: number): string | undefined =>
    whyChosen({ ...pair, without: { extra, isExact: true } }, 0.125, (side) => side).at(-1);

  it('takes what rounding leaves of nothing for nothing', () => {
    expect(lastOf(2.22e-16)).toBe('Without this pair the best plan is as good.');
    expect(lastOf(0.00125)).toBe('Without this pair the sum would be 0.00125 greater.');
  });

  it('names the better mate that the limit of F stands against', () => {
    const aboveLimit = { mate: 2, kinship: 0.25, difference: -0.0125 };
    const why = whyChosen(
      { ...pair, forMale: { ...rank, aboveLimit }, without: null },
      0.125,
      (side, at) => `${side}${at}`,
    );
    expect(why).toContain(
      'female2 would add 0.0125 less for male0, but F of their young would be 25 %, above the limit of 12.5 %.',
    );
  });
});
