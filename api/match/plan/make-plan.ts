import type { Highs } from 'highs';
import { Alternatives } from './alternatives.ts';
import { choosePairs, type Choice } from './choose-pairs.ts';
import { SolverModel } from './highs-model.ts';
import { findFixedFault, findImpossibility, type Impossibility } from './impossible.ts';
import { pairingProgramme, PRECISION, scaledCosts, scaleFor, type Programme } from './pairing-programme.ts';
import { PairRules, possiblePairs, type PlanProblem, type PossiblePairs } from './plan-problem.ts';
import { Reasons, type ChosenPair, type LeftOut } from './reasons.ts';

/** Shares of the time that the search for the plan, its reasons and the trade-off may take. */
const CHOOSING = 0.6;
const REASONS = 0.15;
const TRADE_OFF = 0.25;

/** The parts of the sum that a plan makes small, over its pairs. */
export interface PlanSums {
  /** Σ half the mean kinships of the two. */
  readonly meanKinship: number;
  /** Σ kinship of the two. */
  readonly kinship: number;
}

/** What the best plan would be under another weight. */
export interface TradeOffPoint extends PlanSums {
  readonly weight: number;
  /** Moves between keepers. */
  readonly moves: number;
  readonly isOptimal: boolean;
}

/** A plan, how good it is, and why. */
export interface PlanFound {
  readonly pairs: readonly ChosenPair[];
  readonly leftOut: readonly LeftOut[];
  readonly sums: PlanSums;
  /** Σ mean kinship + w · Σ kinship. */
  readonly sum: number;
  /** No plan has a smaller sum. */
  readonly bound: number;
  /** (sum − bound) / sum; 0 where it is proven that no plan is better. */
  readonly gap: number;
  readonly isOptimal: boolean;
  /** Seconds that the choice took, without its reasons and the trade-off. */
  readonly choosingSeconds: number;
  /** In the order of the weights; shorter where the time was over. */
  readonly tradeOff: readonly TradeOffPoint[];
}

export interface PlanQuestion {
  readonly problem: PlanProblem;
  /** Seconds that all of it may take. */
  readonly seconds: number;
  /** Weights under which the best plan is measured too. */
  readonly otherWeights: readonly number[];
}

/** A plan; or why there can be none; or that none was found in time. */
export type PlanOutcome =
  | { readonly kind: 'found'; readonly plan: PlanFound }
  | { readonly kind: 'impossible'; readonly why: Impossibility }
  | { readonly kind: 'out-of-time' };

/**
 * Chooses the pairs that make Σ mean kinship of the parents + w · Σ kinship of the two as small as it can be, by an integer linear
 * programme, and says why. Differences below `PRECISION` (1 + w) of the sum count as none.
 */
export function makePlan(highs: Highs, question: PlanQuestion): PlanOutcome {
  const { problem } = question;
  const deadline = (share: number): number => performance.now() + share * question.seconds * 1000;
  const rules = new PairRules(problem);
  const fault = findFixedFault(problem, rules);
  if (fault) return { kind: 'impossible', why: fault };
  const pairs = possiblePairs(problem, rules);
  const impossible = (): PlanOutcome => ({
    kind: 'impossible',
    why: findImpossibility(highs, problem, deadline(1 - CHOOSING)),
  });
  if (pairs.male.length === 0) return impossible();
  const programme = pairingProgramme(problem, rules, pairs);
  const relaxed = new SolverModel(highs, programme.data);
  const start = performance.now();
  try {
    const choice = choosePairs(highs, programme, relaxed, deadline(CHOOSING));
    if (choice.ending === 'impossible') return impossible();
    if (choice.taken === null) return { kind: 'out-of-time' };
    const search = { highs, problem, rules, pairs, programme, relaxed };
    const choosingSeconds = (performance.now() - start) / 1000;
    const plan = describe(search, { ...choice, taken: choice.taken }, question.otherWeights, deadline);
    return { kind: 'found', plan: { ...plan, choosingSeconds } };
  } finally {
    relaxed.dispose();
  }
}

interface Search {
  readonly highs: Highs;
  readonly problem: PlanProblem;
  readonly rules: PairRules;
  readonly pairs: PossiblePairs;
  readonly programme: Programme;
  readonly relaxed: SolverModel;
}

function describe(
  search: Search,
  choice: Choice & { readonly taken: readonly number[] },
  otherWeights: readonly number[],
  deadline: (share: number) => number,
): Omit<PlanFound, 'choosingSeconds'> {
  const { problem, rules, pairs, programme, relaxed } = search;
  const sums = sumsOf(search, choice.taken);
  const quality = qualityOf(sums, choice, problem.weight);
  const alternatives = new Alternatives(programme, relaxed, quality.sum * programme.scale, deadline(REASONS));
  const reasons = new Reasons(problem, rules, pairs, choice.taken, alternatives);
  const explained = { pairs: reasons.chosen(), leftOut: reasons.leftOut() };
  const end = deadline(TRADE_OFF);
  return {
    ...explained,
    sums: { meanKinship: sums.meanKinship, kinship: sums.kinship },
    ...quality,
    tradeOff: otherWeights.flatMap((weight) => pointAt(search, weight, end) ?? []),
  };
}

function sumsOf({ rules, pairs }: Search, taken: readonly number[]): PlanSums & { moves: number } {
  const sums = { meanKinship: 0, kinship: 0, moves: 0 };
  for (const column of taken) {
    const male = pairs.male[column] ?? -1;
    const female = pairs.female[column] ?? -1;
    sums.meanKinship += rules.meanKinship(male, female);
    sums.kinship += rules.kinship(male, female);
    if (rules.isMove(male, female)) sums.moves++;
  }
  return sums;
}

function qualityOf(
  sums: PlanSums,
  choice: Choice,
  weight: number,
): Pick<PlanFound, 'sum' | 'bound' | 'gap' | 'isOptimal'> {
  const sum = sums.meanKinship + weight * sums.kinship;
  const bound = Math.min(sum, choice.bound / scaleFor(weight));
  const isOptimal = sum - bound <= PRECISION * (1 + weight);
  return { sum, bound: isOptimal ? sum : bound, gap: isOptimal || sum === 0 ? 0 : (sum - bound) / sum, isOptimal };
}

/** The best plan under another weight, from where the solver stands; null without one in time. */
function pointAt(search: Search, weight: number, deadline: number): TradeOffPoint | null {
  const { rules, pairs, programme, relaxed } = search;
  const colCost = Float64Array.from(programme.data.colCost);
  colCost.set(scaledCosts(rules, pairs, weight));
  relaxed.model.changeColsCost({ kind: 'range', from: 0, to: colCost.length - 1 }, colCost);
  const other: Programme = { ...programme, data: { ...programme.data, colCost }, scale: scaleFor(weight) };
  const choice = choosePairs(search.highs, other, relaxed, deadline);
  if (choice.taken === null) return null;
  const sums = sumsOf(search, choice.taken);
  return { weight, ...sums, isOptimal: qualityOf(sums, choice, weight).isOptimal };
}
