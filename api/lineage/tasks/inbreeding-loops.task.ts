import { longTask, longTaskModule } from '../../platform/long-task.ts';
import type { Pair } from '../kernel/genome-flow.ts';
import type { Inbreeding } from '../kernel/inbreeding.ts';
import { inbreedingLoops, type InbreedingLoops, type LoopLimits } from '../kernel/inbreeding-loops.ts';
import type { Pedigree } from '../kernel/pedigree.ts';

interface InbreedingLoopsInput {
  readonly pedigree: Pedigree;
  readonly inbreeding: Inbreeding;
  readonly pairs: readonly Pair[];
  readonly limits: LoopLimits;
}

/** Finds the largest loops of an animal with very many ancestors, in a thread. */
export const inbreedingLoopsTask = longTaskModule<InbreedingLoopsInput, InbreedingLoops | null>(
  './inbreeding-loops.task.ts',
  import.meta.url,
);

export default longTask(({ pedigree, inbreeding, pairs, limits }: InbreedingLoopsInput) =>
  inbreedingLoops(pedigree, inbreeding, pairs, limits),
);
