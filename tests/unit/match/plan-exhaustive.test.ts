import { beforeAll, describe, expect, it } from 'vitest';
import type { Highs } from 'highs';
import { loadSolver } from '../../../api/match/plan/highs-model.ts';
import type { Impossibility } from '../../../api/match/plan/impossible.ts';
import { makePlan, type PlanFound } from '../../../api/match/plan/make-plan.ts';
import type { PairPlace, PlanProblem } from '../../../api/match/plan/plan-problem.ts';
import { brokenCondition, conditionedProblem, everyPlan, sumOf } from '../../support/plan-problems.ts';
import { seededRandom } from '../../bench/kernel-shapes.ts';

/** Differences of sums that count: see PRECISION in the solver's programme. */
const PRECISION = 1e-10;

/** What must have come up among the draws. */
const REASONS = ['females', 'males', 'above-limit', 'forbidden', 'kept-together', 'moves', 'reserve', 'fixed-pair'];

interface Best {
  readonly sum: number;
  /** The least sum with each male and each female in the plan. */
  readonly with: { readonly male: number[]; readonly female: number[] };
  /** The least sum without each pair, by male and female. */
  readonly without: (pair: PairPlace) => number;
}

function searchAll(problem: PlanProblem): Best | null {
  const plans = [...everyPlan(problem)].map((pairs) => ({ pairs, sum: sumOf(problem, pairs) }));
  if (plans.length === 0) return null;
  const least = (fits: (pairs: readonly PairPlace[]) => boolean): number =>
    plans.reduce((best, { pairs, sum }) => (sum < best && fits(pairs) ? sum : best), Infinity);
  const isUsed = (side: 'male' | 'female') => (_: unknown, place: number) =>
    least((pairs) => pairs.some((pair) => pair[side] === place));
  return {
    sum: least(() => true),
    with: { male: problem.males.map(isUsed('male')), female: problem.females.map(isUsed('female')) },
    without: ({ male, female }) =>
      least((pairs) => !pairs.some((pair) => pair.male === male && pair.female === female)),
  };
}

function checkAlternatives(plan: PlanFound, best: Best, seen: Map<string, number>): void {
  const note = (what: string): void => void seen.set(what, (seen.get(what) ?? 0) + 1);
  const compare = (alternative: PlanFound['leftOut'][number]['including'], sum: number): void => {
    if (alternative === null) return;
    if (alternative === 'impossible') {
      expect(sum).toBe(Infinity);
      return;
    }
    note(alternative.isExact ? 'exact alternative' : 'alternative from below');
    const extra = sum - best.sum;
    if (alternative.isExact) expect(alternative.extra).toBeCloseTo(extra, 8);
    else expect(alternative.extra).toBeLessThanOrEqual(extra + PRECISION);
  };
  for (const pair of plan.pairs) compare(pair.without, best.without(pair));
  for (const animal of plan.leftOut) {
    note(animal.reason);
    compare(animal.including, best.with[animal.side][animal.place] ?? Infinity);
  }
}

/** The most pairs that a reason allows must not be fewer than there are without the old animals' condition. */
function checkWhy(problem: PlanProblem, why: Impossibility): void {
  if (!('before' in why) || why.condition === 'reserve') return;
  expect(why.most).toBeLessThan(problem.pairings);
  const least = { ...problem, pairings: why.most + 1, reserveLeast: 0 };
  expect(everyPlan(least).next().done).toBe(true);
}

describe('a plan over few animals', () => {
  let highs: Highs;
  beforeAll(async () => {
    highs = await loadSolver();
  });

  it('is the best of all plans that keep to every condition, and is refused exactly where there is none', () => {
    const draw = seededRandom(6);
    const seen = new Map<string, number>();
    const note = (what: string): void => void seen.set(what, (seen.get(what) ?? 0) + 1);
    for (let round = 0; round < 3000; round++) {
      const problem = conditionedProblem(draw);
      const best = searchAll(problem);
      const outcome = makePlan(highs, { problem, seconds: 20, otherWeights: [] });
      if (best === null) {
        if (outcome.kind !== 'impossible') throw new Error(`round ${round}: ${outcome.kind}`);
        checkWhy(problem, outcome.why);
        note(outcome.why.condition);
        continue;
      }
      if (outcome.kind !== 'found') throw new Error(`round ${round}: ${outcome.kind}`);
      const { plan } = outcome;
      note(brokenCondition(problem, plan.pairs) ?? 'kept');
      const weight = problem.weight;
      // a weight of 0 counts as a millionth
      const slack = weight === 0 ? 1e-6 * problem.pairings : PRECISION * (1 + weight);
      expect(plan.isOptimal).toBe(true);
      expect(plan.sum).toBeCloseTo(sumOf(problem, plan.pairs), 12);
      expect(plan.sum - best.sum).toBeLessThanOrEqual(slack);
      if (weight > 0) checkAlternatives(plan, best, seen);
    }
    for (const what of ['kept', 'exact alternative', 'alternative from below', ...REASONS])
      expect(seen.get(what), what).toBeGreaterThan(20);
  }, 120_000);
});
