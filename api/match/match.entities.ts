import { KeptPlanAnswer } from './kept-plans/kept-plan-answer.entity.ts';
import { KeptPlanPair } from './kept-plans/kept-plan-pair.entity.ts';
import { KeptPlan } from './kept-plans/kept-plan.entity.ts';

/** Every table of the room of pairings. */
export const matchEntities = [KeptPlan, KeptPlanAnswer, KeptPlanPair];
