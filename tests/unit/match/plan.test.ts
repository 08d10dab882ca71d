import { beforeAll, describe, expect, it } from 'vitest';
import type { Highs } from 'highs';
import { loadSolver } from '../../../api/match/plan/highs-model.ts';
import type { Impossibility } from '../../../api/match/plan/impossible.ts';
import { makePlan, type PlanFound } from '../../../api/match/plan/make-plan.ts';
import type { PlanProblem } from '../../../api/match/plan/plan-problem.ts';
import { seededRandom } from '../../bench/kernel-shapes.ts';
import { cheapestSum, lowerBound } from '../../support/cheapest-flow.ts';
import { brokenCondition, planAnimal, planProblem, randomProblem } from '../../support/plan-problems.ts';

describe('a plan', () => {
  let highs: Highs;
  beforeAll(async () => {
    highs = await loadSolver();
  });

  function planOf(problem: PlanProblem, otherWeights: readonly number[] = []): PlanFound {
    const outcome = makePlan(highs, { problem, seconds: 60, otherWeights });
    if (outcome.kind !== 'found') throw new Error(JSON.stringify(outcome));
    return outcome.plan;
  }

  function whyNot(problem: PlanProblem): Impossibility {
    const outcome = makePlan(highs, { problem, seconds: 60, otherWeights: [] });
    if (outcome.kind !== 'impossible') throw new Error(outcome.kind);
    return outcome.why;
  }

  /** Males and females of the same mean kinship, and the kinship of each with each. */
  function square(rows: readonly (readonly number[])[], told: Partial<PlanProblem> = {}): PlanProblem {
    return planProblem({
      males: rows.map(() => planAnimal()),
      females: (rows[0] ?? []).map(() => planAnimal()),
      kinship: Float64Array.from(rows.flat()),
      ...told,
    });
  }

  it('over forty males and forty females costs what another method finds', () => {
    const draw = seededRandom(40);
    for (const pairings of [5, 20, 33]) {
      const problem = randomProblem(draw, { males: 40, females: 40, pairings }, { weight: draw() * 3 });
      const plan = planOf(problem);
      expect(brokenCondition(problem, plan.pairs)).toBeNull();
      expect(plan.isOptimal).toBe(true);
      expect(plan.sum).toBeCloseTo(cheapestSum(problem), 9);
    }
  });

  it('with few moves is above the lower bound by no more than a hundredth, and says that it is the best', () => {
    const draw = seededRandom(41);
    for (const movesMost of [2, 6, 10]) {
      const problem = randomProblem(draw, { males: 30, females: 30, pairings: 16 }, { movesMost });
      const plan = planOf(problem);
      const bound = lowerBound(problem);
      expect(brokenCondition(problem, plan.pairs)).toBeNull();
      expect(plan.sum).toBeGreaterThanOrEqual(bound - 1e-9);
      expect(plan.sum).toBeLessThanOrEqual(bound * 1.01);
      expect(plan.isOptimal).toBe(true);
    }
  });

  it('tells kinships apart that differ by a billionth', () => {
    const [least, more] = [0.125, 0.125 + 1e-9];
    const plan = planOf(
      square(
        [
          [more, least, more],
          [least, more, more],
          [more, more, least],
        ],
        { pairings: 3 },
      ),
    );
    expect(plan.pairs.map(({ male, female }) => [male, female])).toEqual([
      [0, 1],
      [1, 0],
      [2, 2],
    ]);
  });

  it('has no greater kinship of its pairs under a greater weight, and no smaller mean kinship', () => {
    const draw = seededRandom(42);
    const weights = [0, 0.25, 0.5, 1, 2, 4, 8, 100];
    for (let round = 0; round < 20; round++) {
      const problem = randomProblem(draw, { males: 12, females: 14, pairings: 6 }, { movesMost: round % 2 ? 2 : null });
      const { tradeOff } = planOf(problem, weights);
      expect(tradeOff.map(({ weight }) => weight)).toEqual(weights);
      for (const [place, point] of tradeOff.slice(1).entries()) {
        expect(point.kinship).toBeLessThanOrEqual((tradeOff[place]?.kinship ?? 0) + 1e-9);
        expect(point.meanKinship).toBeGreaterThanOrEqual((tradeOff[place]?.meanKinship ?? 0) - 1e-9);
      }
    }
  });

  it('says why each pair is in it: its rank, the better mate that is taken, and what going without it would cost', () => {
    // male 0 would rather have female 0, but male 1 has nobody else
    const plan = planOf(
      square(
        [
          [0, 0.1, 0.2],
          [0.05, 0.25, 0.25],
        ],
        { pairings: 2, inbreedingMost: 0.2 },
      ),
    );
    const [first, second] = plan.pairs;
    expect(first).toMatchObject({ male: 0, female: 1, kinship: 0.1, forMale: { rank: 2, of: 3 } });
    expect(first?.forMale.bestOther).toMatchObject({ mate: 0, isSpent: true });
    expect(first?.forMale.bestOther?.difference).toBeCloseTo(-0.1, 12);
    const { without } = first ?? {};
    if (!without || without === 'impossible') throw new Error('there is a plan without it');
    expect(without.isExact).toBe(true);
    expect(without.extra).toBeCloseTo(0.1, 9);
    expect(second).toMatchObject({ male: 1, female: 0, forMale: { rank: 1, of: 1, bestOther: null } });
    expect(second?.without).toBe('impossible');
  });

  it('tells of a mate that would be better, were it not above the limit', () => {
    // with a mean kinship of next to nothing female 0 would be the best for male 0, at F 0.3
    const females = [planAnimal({ meanKinship: 0 }), planAnimal({ meanKinship: 0.9 })];
    const [pair] = planOf(square([[0.3, 0.2]], { females, inbreedingMost: 0.25 })).pairs;
    expect(pair).toMatchObject({ female: 1, forMale: { rank: 1, of: 1, aboveLimit: { mate: 0, kinship: 0.3 } } });
    // ½(0.1 + 0) + 0.3 against ½(0.1 + 0.9) + 0.2
    expect(pair?.forMale.aboveLimit?.difference).toBeCloseTo(-0.35, 12);
    expect(pair?.forFemale.aboveLimit).toBeNull();
    // male 1 has a mate, but a better one above the limit
    const males = [planAnimal(), planAnimal({ meanKinship: 0.3 })];
    const plan = planOf(
      square(
        [
          [0.2, 0.1],
          [0.3, 0.25],
        ],
        { males, females, inbreedingMost: 0.25 },
      ),
    );
    const left = plan.leftOut.find(({ side, place }) => side === 'male' && place === 1);
    expect(left).toMatchObject({ bestMate: { mate: 1 }, aboveLimit: { mate: 0, kinship: 0.3 } });
  });

  it('says why an animal is left out: no mate, its mates taken, a greater mean kinship, or that it would do as well', () => {
    const kinship = [
      [0, 0.3],
      [0.1, 0.3],
    ];
    const reasonOf = (told: Partial<PlanProblem>, side: 'male' | 'female', place: number): string | undefined =>
      planOf(square(kinship, told)).leftOut.find((animal) => animal.side === side && animal.place === place)?.reason;
    expect(reasonOf({ inbreedingMost: 0.25 }, 'female', 1)).toBe('no-mate');
    expect(reasonOf({ inbreedingMost: 0.25 }, 'male', 1)).toBe('mates-spent');
    const males = [planAnimal(), planAnimal({ meanKinship: 0.2 })];
    expect(reasonOf({ males, females: [planAnimal({ usesMost: 2 }), planAnimal()] }, 'male', 1)).toBe(
      'higher-mean-kinship',
    );
    expect(reasonOf({ males: [planAnimal(), planAnimal({ usesMost: 0 })] }, 'male', 1)).toBe('unused');
    const equal = planOf(square([[0.1], [0.1]]));
    expect(equal.leftOut).toMatchObject([{ reason: 'as-good', including: { extra: 0, isExact: true } }]);
  });

  it('takes old animals that have not bred where that is asked for, though others would cost less', () => {
    const problem = square(
      [
        [0, 0],
        [0.2, 0.2],
      ],
      { males: [planAnimal(), planAnimal({ isReserve: true })] },
    );
    expect(planOf(problem).pairs).toMatchObject([{ male: 0 }]);
    expect(planOf({ ...problem, reserveLeast: 1 }).pairs).toMatchObject([{ male: 1 }]);
  });

  it('lets a fixed pair exceed the limit only where that is asked for', () => {
    const fixed = [{ male: 0, female: 0 }];
    const problem = square([[0.25, 0]], { fixed, inbreedingMost: 0.125 });
    expect(whyNot(problem)).toMatchObject({ condition: 'fixed-pair', obstacle: 'above-limit' });
    expect(planOf({ ...problem, fixedMayExceed: true }).pairs).toMatchObject([{ male: 0, female: 0, isFixed: true }]);
  });

  it('says which condition leaves too few pairs', () => {
    const kinship = [
      [0.25, 0.25, 0.25],
      [0.25, 0.25, 0.25],
      [0.25, 0.25, 0],
    ];
    const three = square(kinship, { pairings: 3 });
    expect(whyNot({ ...three, pairings: 4 })).toEqual({ condition: 'males', most: 3, before: 3 });
    expect(whyNot({ ...three, inbreedingMost: 0.2 })).toEqual({ condition: 'above-limit', most: 1, before: 3 });
    const forbidden = [0, 1, 2].map((female) => ({ male: 1, female }));
    expect(whyNot({ ...three, forbidden })).toEqual({ condition: 'forbidden', most: 2, before: 3 });
    const females = [planAnimal({ keeper: 1 }), planAnimal(), planAnimal()];
    expect(whyNot({ ...three, females, keptTogether: [1] })).toEqual({
      condition: 'kept-together',
      most: 2,
      before: 3,
    });
    expect(whyNot({ ...three, females, movesMost: 0 })).toEqual({ condition: 'moves', most: 2, before: 3 });
    expect(whyNot({ ...three, reserveLeast: 1 })).toEqual({ condition: 'reserve', most: 0, before: 0 });
    const fixed = [0, 1].map((female) => ({ male: 0, female }));
    expect(whyNot({ ...three, fixed })).toMatchObject({ condition: 'fixed-uses', side: 'male', fixed: 2, most: 1 });
  });

  it('ends when its time is over', () => {
    const draw = seededRandom(43);
    const problem = randomProblem(draw, { males: 120, females: 120, pairings: 60 }, { movesMost: 10 });
    const start = performance.now();
    const outcome = makePlan(highs, { problem, seconds: 0.001, otherWeights: [0, 1] });
    expect(outcome.kind).toBe('out-of-time');
    expect(performance.now() - start).toBeLessThan(3000);
  });
});
