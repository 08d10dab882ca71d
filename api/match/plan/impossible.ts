import type { Highs } from 'highs';
import { SolverModel } from './highs-model.ts';
import { pairingProgramme, type Goal } from './pairing-programme.ts';
import { PairRules, possiblePairs, type Obstacle, type PairPlace, type PlanProblem } from './plan-problem.ts';

/** Which condition no plan can fulfil. */
export type Impossibility =
  | { readonly condition: 'fixed-pair'; readonly pair: PairPlace; readonly obstacle: Obstacle }
  | { readonly condition: 'fixed-count'; readonly fixed: number; readonly most: number }
  | {
      readonly condition: 'fixed-uses';
      readonly side: 'male' | 'female';
      readonly place: number;
      readonly fixed: number;
      readonly most: number;
    }
  | { readonly condition: 'fixed-moves'; readonly fixed: number; readonly most: number }
  /**
   * With this condition, and those before it in this order, there are `most` pairs at most where `before` were possible without it. For
   * `reserve` these are old animals that have not bred, out of `before`.
   */
  | { readonly condition: CountedCondition; readonly most: number; readonly before: number }
  /** Each by itself can be fulfilled, all together cannot; or there was no time to find out more. */
  | { readonly condition: 'together' };

/** Conditions that leave fewer pairs, in the order in which they are looked at. */
export type CountedCondition =
  'males' | 'females' | 'uses' | 'above-limit' | 'forbidden' | 'kept-together' | 'moves' | 'reserve';

const ROUNDING = 1e-6;

/** What is wrong with the fixed pairs by themselves; null: nothing. */
export function findFixedFault(problem: PlanProblem, rules: PairRules): Impossibility | null {
  const { fixed, pairings, movesMost } = problem;
  for (const pair of fixed) {
    const obstacle = rules.obstacle(pair.male, pair.female);
    if (obstacle !== null) return { condition: 'fixed-pair', pair, obstacle };
  }
  if (fixed.length > pairings) return { condition: 'fixed-count', fixed: fixed.length, most: pairings };
  const overused = findOverused(problem, 'male') ?? findOverused(problem, 'female');
  if (overused) return overused;
  const moves = fixed.filter(({ male, female }) => rules.isMove(male, female)).length;
  return movesMost !== null && moves > movesMost ? { condition: 'fixed-moves', fixed: moves, most: movesMost } : null;
}

function findOverused(problem: PlanProblem, side: 'male' | 'female'): Impossibility | null {
  const uses = new Map<number, number>();
  for (const pair of problem.fixed) uses.set(pair[side], (uses.get(pair[side]) ?? 0) + 1);
  const animals = side === 'male' ? problem.males : problem.females;
  for (const [place, fixed] of uses) {
    const most = animals[place]?.usesMost ?? 0;
    if (fixed > most) return { condition: 'fixed-uses', side, place, fixed, most };
  }
  return null;
}

/**
 * Finds which condition makes a problem impossible: conditions are added one by one, and the first that leaves fewer pairs than are
 * wanted is told, with the most that it leaves.
 *
 * @param deadline by `performance.now()`
 */
export function findImpossibility(highs: Highs, problem: PlanProblem, deadline: number): Impossibility {
  const { pairings, reserveLeast } = problem;
  const short = findShortSide(problem);
  if (short) return short;
  let relaxed: PlanProblem = {
    ...problem,
    inbreedingMost: 1,
    forbidden: [],
    keptTogether: [],
    movesMost: null,
    reserveLeast: 0,
  };
  let before = problem.males.length * problem.females.length;
  for (const { condition, isSet, add } of CONDITIONS) {
    if (!isSet(problem)) continue;
    relaxed = { ...relaxed, ...add(problem) };
    const most = mostOf(highs, relaxed, 'most-pairs', deadline);
    if (most === null) return { condition: 'together' };
    if (most < pairings) return { condition, most, before };
    before = most;
  }
  const reserves = [...problem.males, ...problem.females].filter(({ isReserve }) => isReserve).length;
  const most = reserveLeast > 0 ? mostOf(highs, relaxed, 'most-reserve', deadline) : null;
  return most !== null && most < reserveLeast
    ? { condition: 'reserve', most, before: reserves }
    : { condition: 'together' };
}

const CONDITIONS: readonly {
  readonly condition: CountedCondition;
  readonly isSet: (problem: PlanProblem) => boolean;
  readonly add: (problem: PlanProblem) => Partial<PlanProblem>;
}[] = [
  { condition: 'uses', isSet: () => true, add: () => ({}) },
  {
    condition: 'above-limit',
    isSet: ({ inbreedingMost }) => inbreedingMost < 1,
    add: ({ inbreedingMost }) => ({ inbreedingMost }),
  },
  { condition: 'forbidden', isSet: ({ forbidden }) => forbidden.length > 0, add: ({ forbidden }) => ({ forbidden }) },
  {
    condition: 'kept-together',
    isSet: ({ keptTogether }) => keptTogether.length > 0,
    add: ({ keptTogether }) => ({ keptTogether }),
  },
  { condition: 'moves', isSet: ({ movesMost }) => movesMost !== null, add: ({ movesMost }) => ({ movesMost }) },
];

/** The side that cannot give so many pairs whoever the mates are. */
function findShortSide({ males, females, pairings }: PlanProblem): Impossibility | null {
  const most = (animals: PlanProblem['males'], mates: number): number =>
    animals.reduce((sum, { usesMost }) => sum + Math.min(usesMost, mates), 0);
  const ofMales = most(males, females.length);
  const ofFemales = most(females, males.length);
  if (ofMales < pairings && ofMales <= ofFemales) return { condition: 'males', most: ofMales, before: males.length };
  return ofFemales < pairings ? { condition: 'females', most: ofFemales, before: females.length } : null;
}

/** The most pairs, or old animals in a plan, that there can be; null without an answer in time. */
function mostOf(highs: Highs, problem: PlanProblem, goal: Goal, deadline: number): number | null {
  const rules = new PairRules(problem);
  const pairs = possiblePairs(problem, rules);
  if (pairs.male.length === 0) return 0;
  const model = new SolverModel(highs, pairingProgramme(problem, rules, pairs, goal).data, 'interior');
  try {
    const { ending, bound } = model.run(deadline);
    if (ending === 'out-of-time') return null;
    // the relaxation may count half a pair that no plan can have
    return ending === 'impossible' ? 0 : Math.floor(-bound + ROUNDING);
  } finally {
    model.dispose();
  }
}
