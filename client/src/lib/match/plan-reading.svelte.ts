import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { Plan } from '../api/types.ts';

/** A plan for one line; the plan that is shown stays until the next answer has come. */
export class PlanReading {
  plan = $state.raw<Plan | null>(null);
  /** The question that the plan answers. */
  question = $state.raw<object | null>(null);
  /** What was wrong, a sentence each. */
  problems = $state.raw<readonly string[]>([]);
  busy = $state(false);
  isStopped = $state(false);
  #asking: AbortController | null = null;

  /** Asks for a plan; a question before is given up. */
  async make(lineId: string, question: object): Promise<void> {
    this.#asking?.abort();
    const asking = new AbortController();
    this.#asking = asking;
    this.busy = true;
    this.isStopped = false;
    try {
      const plan = await api.ask<Plan>(`/lines/${lineId}/plan`, question, { signal: asking.signal });
      if (asking.signal.aborted) return;
      this.plan = plan;
      this.question = question;
      this.problems = [];
    } catch (error) {
      if (asking.signal.aborted) return;
      if (!(error instanceof ProblemError)) throw error;
      this.problems = problemsOf(error);
    } finally {
      if (this.#asking === asking) this.busy = false;
    }
  }

  /** Gives up what is being reckoned; the service ends it. */
  stop(): void {
    if (!this.busy) return;
    this.close();
    this.isStopped = true;
  }

  /** Puts the answer away: it is one of another line. */
  forget(): void {
    this.close();
    this.plan = null;
    this.question = null;
    this.problems = [];
    this.isStopped = false;
  }

  /** Leaves the question: nobody looks any more. */
  close(): void {
    this.#asking?.abort();
    this.#asking = null;
    this.busy = false;
  }
}

/** A refusal in sentences, each once. */
export function problemsOf(error: ProblemError): string[] {
  return [error.detail, ...error.errors.map(({ detail }) => detail)].filter(
    (detail, place, all) => all.indexOf(detail) === place,
  );
}
