import type { SolverModel } from './highs-model.ts';
import { isWhole } from './choose-pairs.ts';
import type { Programme } from './pairing-programme.ts';

/**
 * How much greater the sum of the best plan is that does otherwise in one point: exactly, or at least so much. `impossible`: there is no such plan.
 * null: there was no time to find out.
 */
export type Alternative = { readonly extra: number; readonly isExact: boolean } | 'impossible' | null;

/** Answers what the plan would cost otherwise, each by one run of the relaxation from where the last one ended. */
export class Alternatives {
  /**
   * @param relaxed the programme's relaxation in the solver, solved
   * @param sum of the plan, in the solver's scale
   * @param deadline by `performance.now()`
   */
  constructor(
    private readonly programme: Programme,
    private readonly relaxed: SolverModel,
    private readonly sum: number,
    private readonly deadline: number,
  ) {}

  /** The best plan without this pair. */
  without(column: number): Alternative {
    const { model } = this.relaxed;
    model.changeColBounds(column, 0, 0);
    const alternative = this.#solve();
    model.changeColBounds(column, 0, 1);
    return alternative;
  }

  /** The best plan that has this animal in a pair. */
  including(side: 'male' | 'female', place: number, usesMost: number): Alternative {
    const { model } = this.relaxed;
    const row = this.programme.rowOf(side, place);
    model.changeRowBounds(row, 1, usesMost);
    const alternative = this.#solve();
    model.changeRowBounds(row, 0, usesMost);
    return alternative;
  }

  #solve(): Alternative {
    const { ending, values, bound } = this.relaxed.run(this.deadline);
    if (ending === 'impossible') return 'impossible';
    if (values === null) return null;
    return {
      extra: Math.max(0, bound - this.sum) / this.programme.scale,
      isExact: isWhole(values, this.programme.pairs),
    };
  }
}
