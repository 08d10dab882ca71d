import { longTask, longTaskModule } from '../../platform/long-task.ts';
import { planAssignments, TooWideError, type CandidateAncestry } from '../kernel/assignment-plan.ts';
import {
  assignmentCost,
  assignmentSpread,
  countAssignments,
  type AssignmentSpread,
  type SpreadOptions,
} from '../kernel/assignment-spread.ts';
import type { Inbreeding } from '../kernel/inbreeding.ts';
import type { Pedigree } from '../kernel/pedigree.ts';

interface SpreadInput extends Omit<SpreadOptions, 'tell'> {
  readonly pedigree: Pedigree;
  readonly inbreeding: Inbreeding;
  readonly ancestry: CandidateAncestry;
  /** Nanoseconds, as counted beforehand, that all samples together may take. */
  readonly stepsMost: number;
  /** Most bytes that the matrix of kinships may take. */
  readonly matrixBytes: number | undefined;
}

/** A spread, or how many samples can be drawn at most where so many were too much: 0 where the ancestry is too wide for any. */
export type SpreadOutcome =
  { readonly ways: number; readonly spread: AssignmentSpread | null } | { readonly samplesMost: number };

/** Draws assignments of parents in a thread. The spread is null where nothing is uncertain. */
export const spreadTask = longTaskModule<SpreadInput, SpreadOutcome>('./assignment-spread.task.ts', import.meta.url);

export default longTask<SpreadInput, SpreadOutcome>((input, tell) => {
  try {
    const plan = planAssignments(input.pedigree, input.inbreeding, input.ancestry, input.matrixBytes);
    if (plan === null) return { ways: 1, spread: null };
    const ways = countAssignments(plan);
    const samplesMost = Math.floor(input.stepsMost / assignmentCost(plan));
    if ((ways <= input.exactUpTo ? ways : input.samples) > samplesMost) return { samplesMost };
    const spread = assignmentSpread(plan, { ...input, tell: (done, total) => tell({ done, total }) });
    return { ways, spread };
  } catch (error) {
    if (error instanceof TooWideError) return { samplesMost: 0 };
    throw error;
  }
});
