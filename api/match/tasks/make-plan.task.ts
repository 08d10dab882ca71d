import { longTask, longTaskModule } from '../../platform/long-task.ts';
import { loadSolver } from '../plan/highs-model.ts';
import { makePlan, type PlanOutcome, type PlanQuestion } from '../plan/make-plan.ts';

/** Chooses the pairs of a plan, in a thread. */
export const makePlanTask = longTaskModule<PlanQuestion, PlanOutcome>('./make-plan.task.ts', import.meta.url);

export default longTask<PlanQuestion, PlanOutcome>(async (question) => makePlan(await loadSolver(), question));
