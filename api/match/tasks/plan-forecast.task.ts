import type { Pedigree } from '../../lineage/kernel/pedigree.ts';
import { longTask, longTaskModule } from '../../platform/long-task.ts';
import type { ForecastQuestion } from '../forecast/forecast-courses.ts';
import { forecastInRegister, type ForecastLimits, type ForecastOutcome } from '../forecast/register-forecast.ts';

interface PlanForecastInput {
  readonly pedigree: Pedigree;
  /** n: registry number of each individual. */
  readonly serials: Float64Array;
  /** By numbers of the register. */
  readonly question: ForecastQuestion;
  readonly limits: ForecastLimits;
}

/** Breeds the next generations in a thread, as often as asked. */
export const planForecastTask = longTaskModule<PlanForecastInput, ForecastOutcome>(
  './plan-forecast.task.ts',
  import.meta.url,
);

export default longTask<PlanForecastInput, ForecastOutcome>(({ pedigree, serials, question, limits }, tell) =>
  forecastInRegister(pedigree, serials, question, limits, (done, total) => tell({ done, total })),
);
