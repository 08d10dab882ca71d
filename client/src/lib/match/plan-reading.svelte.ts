import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { Plan, PlanForecast } from '../api/types.ts';

/** What a plan for a line is to be, as the page asks for it. */
export interface PlanWish {
  readonly pairings: number;
  readonly weight: number;
  readonly inbreedingTo: number;
  readonly reserve: number;
  /** Null: any number of moves. */
  readonly movesMost: number | null;
}

/** A plan for one line and what would come of it; the plan that is shown stays until the next answer has come. */
export class PlanReading {
  plan = $state.raw<Plan | null>(null);
  forecast = $state.raw<PlanForecast | null>(null);
  /** What was wrong, a sentence each. */
  problems = $state.raw<readonly string[]>([]);
  busy = $state<'' | 'plan' | 'forecast'>('');
  #asking: AbortController | null = null;

  async make(lineId: string, wish: PlanWish): Promise<void> {
    const plan = await this.#ask<Plan>('plan', `/lines/${lineId}/plan`, wish);
    if (!plan) return;
    this.plan = plan;
    this.forecast = null;
  }

  /** Breeds the next generations of the plan that is shown. */
  async foretell(lineId: string): Promise<void> {
    const pairs = this.plan?.pairs.map(({ male, female }) => ({ sire: male.animal.id, dam: female.animal.id }));
    if (!pairs) return;
    const forecast = await this.#ask<PlanForecast>('forecast', `/lines/${lineId}/plan-forecast`, { pairs });
    if (forecast) this.forecast = forecast;
  }

  /** Gives up what is asked for: nobody looks any more. */
  close(): void {
    this.#asking?.abort();
  }

  async #ask<Answer>(busy: 'plan' | 'forecast', path: string, body: object): Promise<Answer | null> {
    this.#asking?.abort();
    const asking = new AbortController();
    this.#asking = asking;
    this.busy = busy;
    try {
      const answer = await api.ask<Answer>(path, body, { signal: asking.signal });
      if (asking.signal.aborted) return null;
      this.problems = [];
      return answer;
    } catch (error) {
      if (asking.signal.aborted) return null;
      if (!(error instanceof ProblemError)) throw error;
      this.problems = [error.detail, ...error.errors.map(({ detail }) => detail)].filter(
        (detail, place, all) => all.indexOf(detail) === place,
      );
      return null;
    } finally {
      if (this.#asking === asking) this.busy = '';
    }
  }
}
