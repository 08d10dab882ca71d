import type { Highs } from 'highs';
import { SolverModel, type Found } from './highs-model.ts';
import { narrowed, type Programme } from './pairing-programme.ts';

/** Values this close to 0 or 1 are these: the solver's own tolerance. */
const ROUNDING = 1e-6;
/** Each widening of the narrowed programme lets in columns this many times as dear. */
const WIDENING = 8;

/** Which columns are taken, and how good that is, in the solver's scale. */
export interface Choice {
  readonly ending: 'done' | 'impossible' | 'out-of-time';
  /** Columns taken, ascending; null where no solution was found. */
  readonly taken: readonly number[] | null;
  /** No choice has a smaller sum. */
  readonly bound: number;
}

/**
 * Solves the integer programme by its linear relaxation. That mostly ends in whole numbers by itself, as every transportation problem
 * does. Where it does not, the integer programme is solved on those columns alone whose reduced cost is below a threshold t: a solution
 * with any other column costs at least the relaxed sum + t, so that one which costs no more is the best of all. Else t grows.
 *
 * @param relaxed the programme's linear relaxation in the solver
 * @param deadline by `performance.now()`
 */
export function choosePairs(highs: Highs, programme: Programme, relaxed: SolverModel, deadline: number): Choice {
  const found = relaxed.run(deadline);
  if (found.values === null || found.reducedCosts === null)
    return { ending: found.ending, taken: null, bound: found.bound };
  if (isWhole(found.values, programme.pairs))
    return { ending: 'done', taken: takenIn(found.values, programme.pairs), bound: found.bound };
  return widen(highs, programme, found, found.reducedCosts, deadline);
}

function widen(
  highs: Highs,
  programme: Programme,
  relaxed: Found,
  reducedCosts: Float64Array,
  deadline: number,
): Choice {
  const { pairs, data } = programme;
  let best: Choice = { ending: 'out-of-time', taken: null, bound: relaxed.bound };
  for (let threshold = firstThreshold(reducedCosts, data.numRows); ; threshold *= WIDENING) {
    const columns = columnsBelow(reducedCosts, threshold, pairs);
    const isAll = columns.length === reducedCosts.length;
    const { values, ending, bound } = solveNarrowed(highs, programme, columns, deadline);
    const taken = cheaper(programme, best.taken, values && takenIn(values, pairs, columns));
    const proven = Math.max(relaxed.bound, isAll ? bound : Math.min(bound, relaxed.bound + threshold));
    best = { ending, taken, bound: Math.max(best.bound, proven) };
    const isBeyondDoubt = ending === 'done' && bound <= relaxed.bound + threshold;
    if (isAll || isBeyondDoubt || ending === 'out-of-time') return best;
  }
}

function cheaper(
  { data }: Programme,
  one: readonly number[] | null,
  other: readonly number[] | null,
): readonly number[] | null {
  if (one === null || other === null) return one ?? other;
  const sum = (columns: readonly number[]): number =>
    columns.reduce((total, column) => total + (data.colCost[column] ?? 0), 0);
  return sum(other) <= sum(one) ? other : one;
}

function solveNarrowed(highs: Highs, programme: Programme, columns: Int32Array, deadline: number): Found {
  const model = new SolverModel(highs, narrowed(programme, columns));
  try {
    return model.run(deadline);
  } finally {
    model.dispose();
  }
}

/** Lets in some three columns a row at first. */
function firstThreshold(reducedCosts: Float64Array, rows: number): number {
  const sorted = Float64Array.from(reducedCosts, (cost) => Math.max(0, cost)).sort();
  const dearest = sorted[sorted.length - 1] ?? 0;
  const wanted = sorted[Math.min(sorted.length - 1, 3 * rows)] ?? 0;
  return Math.max(wanted, dearest / 1e4, Number.MIN_VALUE);
}

function columnsBelow(reducedCosts: Float64Array, threshold: number, pairs: number): Int32Array {
  const columns: number[] = [];
  reducedCosts.forEach((cost, column) => {
    if (cost <= threshold || column >= pairs) columns.push(column);
  });
  return Int32Array.from(columns);
}

/** Whether the solution of a relaxation takes each pair or leaves it. */
export function isWhole(values: Float64Array, pairs: number): boolean {
  return values.subarray(0, pairs).every((value) => Math.abs(value - Math.round(value)) <= ROUNDING);
}

/** Columns of pairs that a solution takes, ascending. */
export function takenIn(values: Float64Array, pairs: number, columns?: Int32Array): number[] {
  const taken: number[] = [];
  values.forEach((value, place) => {
    const column = columns ? (columns[place] ?? 0) : place;
    if (column < pairs && value > 0.5) taken.push(column);
  });
  return taken;
}
