import type { ModelData } from 'highs';
import { LEAST_WEIGHT, type PairRules, type PlanProblem, type PossiblePairs } from './plan-problem.ts';

/**
 * Costs go to the solver times 2²⁰ over 1 + w, so that its absolute tolerances of 10⁻⁷ and 10⁻⁶ are far below any difference that counts:
 * see `PRECISION`.
 */
const SCALE = 2 ** 20;

/** Plans whose sums differ by less than this, times 1 + w, count as equally good. */
export const PRECISION = 1e-10;

/** What the programme looks for: the least sum, or how much of something there can be at all. */
export type Goal = 'least-cost' | 'most-pairs' | 'most-reserve';

/** A linear programme, and what its rows and columns mean. */
export interface Programme {
  readonly data: Omit<ModelData, 'integrality'>;
  /** Columns below this are the possible pairs, in their order; the others say that an old animal is used. */
  readonly pairs: number;
  /** Costs were multiplied by this. */
  readonly scale: number;
  /** Row that holds how often a male or a female is used. */
  readonly rowOf: (side: 'male' | 'female', place: number) => number;
}

/** Costs of the columns of pairs under a weight, as the solver gets them. */
export function scaledCosts(rules: PairRules, pairs: PossiblePairs, weight: number): Float64Array {
  const scale = scaleFor(weight);
  return Float64Array.from(pairs.male, (male, column) => scale * rules.cost(male, pairs.female[column] ?? -1, weight));
}

/** What sums are multiplied by under a weight. */
export function scaleFor(weight: number): number {
  return SCALE / (1 + Math.max(weight, LEAST_WEIGHT));
}

/**
 * The integer linear programme of a plan: a column for each possible pair, taken or not; rows for the number of pairs, for how often each
 * animal is used, for moves, and for old animals that have not bred. A fixed pair is a column that must be taken.
 */
export function pairingProgramme(
  problem: PlanProblem,
  rules: PairRules,
  pairs: PossiblePairs,
  goal: Goal = 'least-cost',
): Programme {
  const builder = new ProgrammeBuilder(problem, rules, pairs, goal);
  return builder.build();
}

class ProgrammeBuilder {
  readonly #rowLower: number[] = [];
  readonly #rowUpper: number[] = [];
  readonly #starts: number[] = [0];
  readonly #rows: number[] = [];
  readonly #values: number[] = [];
  readonly #costs: number[] = [];
  readonly #lower: number[] = [];

  constructor(
    private readonly problem: PlanProblem,
    private readonly rules: PairRules,
    private readonly pairs: PossiblePairs,
    private readonly goal: Goal,
  ) {}

  build(): Programme {
    const { males, females, pairings, movesMost, reserveLeast } = this.problem;
    const count = this.#row(this.goal === 'most-pairs' ? 0 : pairings, pairings);
    const firstMale = this.#rowLower.length;
    for (const { usesMost } of males) this.#row(0, usesMost);
    const firstFemale = this.#rowLower.length;
    for (const { usesMost } of females) this.#row(0, usesMost);
    const moves = movesMost === null ? null : this.#row(0, movesMost);
    const rowOf = (side: 'male' | 'female', place: number): number =>
      (side === 'male' ? firstMale : firstFemale) + place;
    const wantsReserve = reserveLeast > 0 || this.goal === 'most-reserve';
    const reserve = wantsReserve ? this.#reserveRows() : null;
    this.#addPairs({ count, moves, rowOf, reserve });
    reserve?.forEach((row) => this.#column(this.goal === 'most-reserve' ? -1 : 0, 0, [row, reserve.total], [-1, 1]));
    const { weight } = this.problem;
    const scale = this.goal === 'least-cost' ? scaleFor(weight) : 1;
    return { data: this.#data(), pairs: this.pairs.male.length, scale, rowOf };
  }

  #addPairs(rows: {
    count: number;
    moves: number | null;
    rowOf: Programme['rowOf'];
    reserve: ReserveRows | null;
  }): void {
    const costs = scaledCosts(this.rules, this.pairs, this.problem.weight);
    this.pairs.male.forEach((male, column) => {
      const female = this.pairs.female[column] ?? -1;
      const own = [rows.count, rows.rowOf('male', male), rows.rowOf('female', female)];
      if (rows.moves !== null && this.rules.isMove(male, female)) own.push(rows.moves);
      for (const row of [rows.reserve?.males.get(male), rows.reserve?.females.get(female)])
        if (row !== undefined) own.push(row);
      this.#column(this.#costOf(costs[column] ?? 0), this.rules.isFixed(male, female) ? 1 : 0, own);
    });
  }

  #costOf(cost: number): number {
    if (this.goal === 'least-cost') return cost;
    return this.goal === 'most-pairs' ? -1 : 0;
  }

  /** An old animal counts as used once, and only if one of its pairs is taken. */
  #reserveRows(): ReserveRows {
    const { males, females, reserveLeast } = this.problem;
    const total = this.#row(this.goal === 'most-reserve' ? 0 : reserveLeast, Infinity);
    const rowsOf = (animals: PlanProblem['males']): Map<number, number> =>
      new Map(animals.flatMap(({ isReserve }, place) => (isReserve ? [[place, this.#row(0, Infinity)] as const] : [])));
    return new ReserveRows(rowsOf(males), rowsOf(females), total);
  }

  #row(lower: number, upper: number): number {
    this.#rowUpper.push(upper);
    return this.#rowLower.push(lower) - 1;
  }

  #column(cost: number, lower: number, rows: readonly number[], values?: readonly number[]): void {
    this.#costs.push(cost);
    this.#lower.push(lower);
    this.#rows.push(...rows);
    this.#values.push(...(values ?? rows.map(() => 1)));
    this.#starts.push(this.#rows.length);
  }

  #data(): Programme['data'] {
    const numCols = this.#costs.length;
    const numRows = this.#rowLower.length;
    return {
      numCols,
      numRows,
      colCost: Float64Array.from(this.#costs),
      colLower: Float64Array.from(this.#lower),
      colUpper: new Float64Array(numCols).fill(1),
      rowLower: Float64Array.from(this.#rowLower),
      rowUpper: Float64Array.from(this.#rowUpper),
      matrix: {
        format: 'csc',
        numRows,
        numCols,
        starts: Int32Array.from(this.#starts),
        indices: Int32Array.from(this.#rows),
        values: Float64Array.from(this.#values),
      },
    };
  }
}

class ReserveRows {
  constructor(
    readonly males: ReadonlyMap<number, number>,
    readonly females: ReadonlyMap<number, number>,
    readonly total: number,
  ) {}

  forEach(visit: (row: number) => void): void {
    for (const row of this.males.values()) visit(row);
    for (const row of this.females.values()) visit(row);
  }
}

/** The same programme with only some of its columns, ascending, as an integer one. */
export function narrowed({ data, pairs }: Programme, columns: Int32Array): ModelData {
  const starts = new Int32Array(columns.length + 1);
  const rows: number[] = [];
  const values: number[] = [];
  columns.forEach((column, place) => {
    for (let at = data.matrix.starts[column] ?? 0; at < (data.matrix.starts[column + 1] ?? 0); at++) {
      rows.push(data.matrix.indices[at] ?? 0);
      values.push(data.matrix.values[at] ?? 0);
    }
    starts[place + 1] = rows.length;
  });
  const of = (list: ModelData['colCost']): Float64Array => Float64Array.from(columns, (column) => list[column] ?? 0);
  const numCols = columns.length;
  const numRows = data.numRows;
  return {
    ...data,
    numCols,
    colCost: of(data.colCost),
    colLower: of(data.colLower),
    colUpper: of(data.colUpper),
    matrix: {
      format: 'csc',
      numRows,
      numCols,
      starts,
      indices: Int32Array.from(rows),
      values: Float64Array.from(values),
    },
    // whether an old animal is used follows from the pairs
    integrality: Int32Array.from(columns, (column) => (column < pairs ? 1 : 0)),
  };
}
