import { longTask } from '../../platform/long-task.ts';
import type { Pair } from '../kernel/genome-flow.ts';
import { partialInbreeding, type PartialInbreeding } from '../kernel/partial-inbreeding.ts';
import type { Pedigree } from '../kernel/pedigree.ts';

/** What the thread is given: the register's arrays, the clutches of the ancestors, the candidate pairs. */
export interface PartialInbreedingInput {
  readonly pedigree: Pedigree;
  readonly clutches: Int32Array;
  readonly pairs: readonly Pair[];
}

export default longTask<PartialInbreedingInput, PartialInbreeding>(({ pedigree, clutches, pairs }) =>
  partialInbreeding(pedigree, clutches, pairs),
);
