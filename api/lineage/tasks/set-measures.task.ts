import { longTask } from '../../platform/long-task.ts';
import type { Inbreeding } from '../kernel/inbreeding.ts';
import type { Pedigree } from '../kernel/pedigree.ts';
import { measureSet, type MeasuredSet, type SetMeasures } from '../kernel/set-measures.ts';
import { sourceSharesOf, type SourceShares } from '../set-standings.ts';

/** What the thread is given: the register's arrays and the set. */
export interface SetMeasuresInput {
  readonly pedigree: Pedigree;
  readonly inbreeding: Inbreeding;
  readonly set: MeasuredSet;
  /** How many origins the answer names, at most, overall and for each year. */
  readonly origins: number;
  /** How many ancestors the answer names, at most. */
  readonly ancestors: number;
}

/** Measures with the lists that an answer shows cut to their largest entries; what was cut is counted. */
export interface SetMeasuresResult extends SetMeasures {
  readonly originCount: number;
  readonly ancestorCount: number;
  /** Parts of the gene pool by source, none cut. */
  readonly sourceShares: SourceShares;
}

export default longTask<SetMeasuresInput, SetMeasuresResult>(
  ({ pedigree, inbreeding, set, origins, ancestors }, tell) => {
    const measures = measureSet(pedigree, inbreeding, set, origins, (done, total) => tell({ done, total }));
    return {
      ...measures,
      sourceShares: sourceSharesOf(measures.contributions, measures.apart),
      originCount: measures.contributions.length,
      contributions: measures.contributions.slice(0, origins),
      ancestorCount: measures.ancestors.contributions.length,
      ancestors: { ...measures.ancestors, contributions: measures.ancestors.contributions.slice(0, ancestors) },
    };
  },
);
