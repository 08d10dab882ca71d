import type { PairPlace, PlanAnimal, PlanProblem } from '../../api/match/plan/plan-problem.ts';
import { PairRules, possiblePairs } from '../../api/match/plan/plan-problem.ts';

/** A plan problem without conditions, but for what is told. */
export function planProblem(
  told: Partial<PlanProblem> & Pick<PlanProblem, 'males' | 'females' | 'kinship'>,
): PlanProblem {
  return {
    pairings: 1,
    weight: 1,
    inbreedingMost: 1,
    fixedMayExceed: false,
    fixed: [],
    forbidden: [],
    keptTogether: [],
    movesMost: null,
    reserveLeast: 0,
    ...told,
  };
}

/** An animal of a plan problem. */
export function planAnimal(told: Partial<PlanAnimal> = {}): PlanAnimal {
  return { meanKinship: 0.1, keeper: 0, usesMost: 1, isReserve: false, ...told };
}

/** A random problem of a size, with figures as closed lines have them: kinships in steps of 1/64, some a billionth apart. */
export function randomProblem(
  draw: () => number,
  { males, females, pairings }: { males: number; females: number; pairings: number },
  told: Partial<PlanProblem> = {},
): PlanProblem {
  const animal = (): PlanAnimal => ({
    meanKinship: 0.05 + 0.2 * draw(),
    keeper: Math.floor(draw() * 4),
    usesMost: draw() < 0.7 ? 1 : Math.floor(draw() * 4),
    isReserve: draw() < 0.3,
  });
  return planProblem({
    males: Array.from({ length: males }, animal),
    females: Array.from({ length: females }, animal),
    kinship: Float64Array.from(
      { length: males * females },
      () => Math.floor(draw() * 17) / 64 + Math.floor(draw() * 3) * 1e-9,
    ),
    pairings,
    ...told,
  });
}

/** A random problem with every kind of condition, each in some of the draws. */
export function conditionedProblem(draw: () => number): PlanProblem {
  const size = { males: 1 + Math.floor(draw() * 5), females: 1 + Math.floor(draw() * 5), pairings: 0 };
  size.pairings = 1 + Math.floor(draw() * Math.min(4, Math.max(size.males, size.females)));
  const sometimes = <T>(chance: number, value: () => T, otherwise: T): T => (draw() < chance ? value() : otherwise);
  const pair = (): PairPlace => ({
    male: Math.floor(draw() * size.males),
    female: Math.floor(draw() * size.females),
  });
  return randomProblem(draw, size, {
    weight: sometimes(0.8, () => draw() * 4, 0),
    inbreedingMost: sometimes(0.5, () => 0.05 + draw() * 0.2, 1),
    fixedMayExceed: draw() < 0.5,
    fixed: sometimes(0.25, () => [pair()], []),
    forbidden: sometimes(0.4, () => [pair(), pair()], []),
    keptTogether: sometimes(0.25, () => [Math.floor(draw() * 4)], []),
    movesMost: sometimes(0.5, () => Math.floor(draw() * 3), null),
    reserveLeast: sometimes(0.4, () => 1 + Math.floor(draw() * 2), 0),
  });
}

/** Every plan that keeps to all conditions, by going through all of them. */
export function* everyPlan(problem: PlanProblem): Generator<PairPlace[]> {
  const rules = new PairRules(problem);
  const { male, female } = possiblePairs(problem, rules);
  const pairs = Array.from(male, (m, column): PairPlace => ({ male: m, female: female[column] ?? -1 }));
  const chosen: PairPlace[] = [];
  yield* extend(0);

  function* extend(from: number): Generator<PairPlace[]> {
    if (chosen.length === problem.pairings) {
      if (brokenCondition(problem, chosen) === null) yield [...chosen];
      return;
    }
    for (let next = from; next < pairs.length; next++) {
      const pair = pairs[next];
      if (!pair) continue;
      chosen.push(pair);
      if (isWithinUses(problem, chosen)) yield* extend(next + 1);
      chosen.pop();
    }
  }
}

/** Which condition a plan breaks, told apart from how the solver is told of it; null: none. */
export function brokenCondition(problem: PlanProblem, plan: readonly PairPlace[]): string | null {
  const { males, females } = problem;
  const keepers = ({ male, female }: PairPlace): number[] => [males[male]?.keeper ?? -1, females[female]?.keeper ?? -1];
  const isMove = (pair: PairPlace): boolean => new Set(keepers(pair)).size === 2;
  const isIn = (list: readonly PairPlace[], { male, female }: PairPlace): boolean =>
    list.some((other) => other.male === male && other.female === female);
  if (plan.length !== problem.pairings) return 'number of pairs';
  if (plan.some((pair, place) => isIn(plan.slice(place + 1), pair))) return 'a pair twice';
  if (!isWithinUses(problem, plan)) return 'uses';
  if (!problem.fixed.every((pair) => isIn(plan, pair))) return 'fixed';
  if (plan.some((pair) => isIn(problem.forbidden, pair))) return 'forbidden';
  const bound = plan.filter((pair) => !(problem.fixedMayExceed && isIn(problem.fixed, pair)));
  if (bound.some(({ male, female }) => (problem.kinship[male * females.length + female] ?? 0) > problem.inbreedingMost))
    return 'limit';
  if (plan.some((pair) => isMove(pair) && keepers(pair).some((keeper) => problem.keptTogether.includes(keeper))))
    return 'kept together';
  if (problem.movesMost !== null && plan.filter(isMove).length > problem.movesMost) return 'moves';
  const reserves = [
    ...males.filter(({ isReserve }, male) => isReserve && plan.some((pair) => pair.male === male)),
    ...females.filter(({ isReserve }, female) => isReserve && plan.some((pair) => pair.female === female)),
  ];
  return reserves.length < problem.reserveLeast ? 'reserve' : null;
}

function isWithinUses({ males, females }: PlanProblem, plan: readonly PairPlace[]): boolean {
  return (
    males.every(({ usesMost }, male) => plan.filter((pair) => pair.male === male).length <= usesMost) &&
    females.every(({ usesMost }, female) => plan.filter((pair) => pair.female === female).length <= usesMost)
  );
}

/** What a plan adds up to, from the definition. */
export function sumOf(problem: PlanProblem, plan: readonly PairPlace[], weight = problem.weight): number {
  return plan.reduce((sum, { male, female }) => {
    const mean = ((problem.males[male]?.meanKinship ?? 0) + (problem.females[female]?.meanKinship ?? 0)) / 2;
    return sum + mean + weight * (problem.kinship[male * problem.females.length + female] ?? 0);
  }, 0);
}
