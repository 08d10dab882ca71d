import { longTask, longTaskModule } from '../../platform/long-task.ts';
import { searchAtRisk, type AtRiskFound, type AtRiskQuestion } from '../new-blood/at-risk-search.ts';

/** Looks in a thread for what is about to be lost. */
export const atRiskTask = longTaskModule<AtRiskQuestion, AtRiskFound>('./at-risk.task.ts', import.meta.url);

export default longTask<AtRiskQuestion, AtRiskFound>((question) => searchAtRisk(question));
