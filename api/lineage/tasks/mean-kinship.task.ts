import { longTask, longTaskModule } from '../../platform/long-task.ts';
import type { Inbreeding } from '../kernel/inbreeding.ts';
import { meanKinshipOf } from '../kernel/mean-kinship.ts';
import type { Pedigree } from '../kernel/pedigree.ts';

interface MeanKinshipInput {
  readonly pedigree: Pedigree;
  readonly inbreeding: Inbreeding;
  /** With whom kinship is taken. */
  readonly living: Int32Array;
  /** Whose it is. */
  readonly animals: Int32Array;
}

/** Mean kinships of the animals of a large line, in a thread. */
export const meanKinshipTask = longTaskModule<MeanKinshipInput, Float64Array>(
  './mean-kinship.task.ts',
  import.meta.url,
);

export default longTask(({ pedigree, inbreeding, living, animals }: MeanKinshipInput) =>
  meanKinshipOf(pedigree, inbreeding, living, animals),
);
