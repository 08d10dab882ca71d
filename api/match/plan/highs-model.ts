import highsModule, { type Highs, type Model, type ModelData } from 'highs';

/** How a run ended: with what it looked for, with the proof that there is nothing, or without either when its time was over. */
export type Ending = 'done' | 'impossible' | 'out-of-time';

/** What a run found. */
export interface Found {
  readonly ending: Ending;
  /** Values of the columns, if a solution was found; also one that is not proven best where the time was over. */
  readonly values: Float64Array | null;
  /** No solution has a smaller sum: −∞ where nothing is known. */
  readonly bound: number;
  /** Reduced costs of the columns; meaningful for a linear programme only. */
  readonly reducedCosts: Float64Array | null;
}

// the package's types are read as those of a CommonJS module, whose default would be one level down; its code is an ES module
const loadHighs = highsModule as unknown as (typeof highsModule)['default'];

let loaded: Promise<Highs> | null = null;

/** The solver HiGHS (Huangfu & Hall 2018), compiled to WebAssembly: loaded once a thread. */
export function loadSolver(): Promise<Highs> {
  loaded ??= loadHighs();
  return loaded;
}

/**
 * A programme in the solver's memory, which stays there between runs, so that a small change is solved from where the last run ended.
 * It holds memory outside of the collector's reach: `dispose` it.
 */
export class SolverModel {
  readonly model: Model;
  readonly #isInteger: boolean;

  /**
   * @param method for a linear programme: `simplex` ends in a corner, mostly in whole numbers, and goes on from there after a change;
   *   `interior` does not mind that very many solutions are equally good, as where pairs are only counted
   */
  constructor(
    private readonly highs: Highs,
    data: ModelData,
    method: 'simplex' | 'interior' = 'simplex',
  ) {
    this.model = highs.createModel(data);
    this.#isInteger = data.integrality !== undefined;
    // the best solution, not one within the solver's usual 0.01 % of it
    this.model.options.set({ output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0, random_seed: 1 });
    // looking for what could be left out of a relaxation takes longer than solving it
    if (!this.#isInteger) this.model.options.set(method === 'simplex' ? { presolve: 'off' } : { solver: 'ipm' });
  }

  /** @param deadline by `performance.now()` */
  run(deadline: number): Found {
    const seconds = (deadline - performance.now()) / 1000;
    if (seconds <= 0) return OUT_OF_TIME;
    this.model.zeroAllClocks();
    this.model.options.set('time_limit', seconds);
    this.model.run();
    return this.#found();
  }

  dispose(): void {
    this.model.dispose();
  }

  #found(): Found {
    const { modelStatus } = this.highs.constants;
    switch (this.model.getModelStatus()) {
      case modelStatus.optimal: {
        const { colValue, colDual } = this.model.getSolution();
        return {
          ending: 'done',
          values: colValue,
          bound: this.#isInteger ? this.#provenBound() : this.model.getObjectiveValue(),
          reducedCosts: this.#isInteger ? null : colDual,
        };
      }
      case modelStatus.infeasible:
      case modelStatus.unboundedOrInfeasible:
        return { ending: 'impossible', values: null, bound: Infinity, reducedCosts: null };
      case modelStatus.timeLimit:
        return this.#isInteger ? this.#cutShort() : OUT_OF_TIME;
      default:
        throw new Error(`The solver ended with status ${this.model.getModelStatus()}`);
    }
  }

  #cutShort(): Found {
    // 2: the values are a solution
    const hasSolution = Number(this.model.info.get('primal_solution_status')) === 2;
    const values = hasSolution ? this.model.getSolution().colValue : null;
    return { ending: 'out-of-time', values, bound: this.#provenBound(), reducedCosts: null };
  }

  #provenBound(): number {
    return Number(this.model.info.get('mip_dual_bound'));
  }
}

const OUT_OF_TIME: Found = { ending: 'out-of-time', values: null, bound: -Infinity, reducedCosts: null };
