import { longTask, longTaskModule } from '../../platform/long-task.ts';
import { loadSolver } from '../plan/highs-model.ts';
import { planFromRegister, type RegisterPlan, type RegisterPlanInput } from '../plan/register-plan.ts';

/** Chooses the pairs of a plan, in a thread. */
export const makePlanTask = longTaskModule<RegisterPlanInput, RegisterPlan>('./make-plan.task.ts', import.meta.url);

export default longTask<RegisterPlanInput, RegisterPlan>(async (input) => planFromRegister(await loadSolver(), input));
