import type { Highs } from 'highs';
import type { Inbreeding } from '../../lineage/kernel/inbreeding.ts';
import { kinshipMatrix } from '../../lineage/kernel/kinship.ts';
import { meanKinshipOf } from '../../lineage/kernel/mean-kinship.ts';
import type { Pedigree } from '../../lineage/kernel/pedigree.ts';
import { makePlan, type PlanOutcome } from './make-plan.ts';
import type { PlanAnimal, PlanProblem } from './plan-problem.ts';

/** An animal of the register that a plan may use. */
export type PlanCandidate = Omit<PlanAnimal, 'meanKinship'> & {
  /** Its dense number. */
  readonly animal: number;
};

/** A plan problem over animals of the register, whose kinships are not computed yet. */
export interface RegisterPlanInput {
  readonly pedigree: Pedigree;
  readonly inbreeding: Inbreeding;
  readonly matrixBytes: number | undefined;
  /** With whom mean kinship is taken: the living of the line. */
  readonly living: Int32Array;
  readonly males: readonly PlanCandidate[];
  readonly females: readonly PlanCandidate[];
  readonly conditions: Omit<PlanProblem, 'males' | 'females' | 'kinship'>;
  readonly seconds: number;
  readonly otherWeights: readonly number[];
}

/** What came of it, and the mean kinships that it was computed by, in the order of the candidates. */
export interface RegisterPlan {
  readonly outcome: PlanOutcome;
  readonly means: { readonly male: Float64Array; readonly female: Float64Array };
}

/** Computes the kinships of the candidates and chooses the pairs. */
export function planFromRegister(highs: Highs, input: RegisterPlanInput): RegisterPlan {
  const { males, females } = input;
  const animals = Int32Array.from([...males, ...females], ({ animal }) => animal);
  const means =
    input.living.length === 0
      ? new Float64Array(animals.length)
      : meanKinshipOf(input.pedigree, input.inbreeding, input.living, animals);
  const male = means.slice(0, males.length);
  const female = means.slice(males.length);
  const told = (candidates: readonly PlanCandidate[], own: Float64Array): PlanAnimal[] =>
    candidates.map((candidate, place) => ({ ...candidate, meanKinship: own[place] ?? 0 }));
  const problem: PlanProblem = {
    ...input.conditions,
    males: told(males, male),
    females: told(females, female),
    kinship: kinshipsBetween(input, animals),
  };
  const { seconds, otherWeights } = input;
  return { outcome: makePlan(highs, { problem, seconds, otherWeights }), means: { male, female } };
}

function kinshipsBetween(
  { pedigree, inbreeding, matrixBytes, males, females }: RegisterPlanInput,
  animals: Int32Array,
): Float64Array {
  const all = kinshipMatrix(
    pedigree,
    inbreeding,
    animals,
    matrixBytes === undefined ? {} : { sweepBytes: matrixBytes },
  );
  const between = new Float64Array(males.length * females.length);
  males.forEach((_, male) => {
    const row = male * animals.length + males.length;
    between.set(all.subarray(row, row + females.length), male * females.length);
  });
  return between;
}
