import { longTask, longTaskModule } from '../../platform/long-task.ts';
import { exchangeFigures, type ExchangeFigures, type ExchangeQuestion } from '../new-blood/exchange-figures.ts';

/** Measures an exchange and looks for better ones, in a thread. */
export const exchangeTask = longTaskModule<ExchangeQuestion, ExchangeFigures>('./exchange.task.ts', import.meta.url);

export default longTask<ExchangeQuestion, ExchangeFigures>((question) => exchangeFigures(question));
