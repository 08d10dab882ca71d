import { longTask, longTaskModule } from '../../platform/long-task.ts';
import { commonAncestors, type CommonAncestor } from '../kernel/common-ancestors.ts';
import type { Pair } from '../kernel/genome-flow.ts';
import type { Inbreeding } from '../kernel/inbreeding.ts';
import type { Pedigree } from '../kernel/pedigree.ts';

interface CommonAncestorsInput {
  readonly pedigree: Pedigree;
  readonly inbreeding: Inbreeding;
  readonly pairs: readonly Pair[];
}

/** Takes F of an animal with very many ancestors apart, in a thread. */
export const commonAncestorsTask = longTaskModule<CommonAncestorsInput, CommonAncestor[] | null>(
  './common-ancestors.task.ts',
  import.meta.url,
);

export default longTask(({ pedigree, inbreeding, pairs }: CommonAncestorsInput) =>
  commonAncestors(pedigree, inbreeding, pairs),
);
