import { longTask, longTaskModule } from '../../platform/long-task.ts';
import { gainsOf, type Gains, type GainsQuestion } from '../new-blood/holding-gains.ts';

/** Reckons in a thread what animals would add to a holding. */
export const newBloodTask = longTaskModule<GainsQuestion, Gains>('./new-blood.task.ts', import.meta.url);

export default longTask<GainsQuestion, Gains>((question) => gainsOf(question));
