import { ProblemError } from '../api/problem.ts';

/** The answer to one question as it comes; a new question gives up the one before, and what is shown stays until it is answered. */
export class AnswerReading<Answer> {
  answer = $state.raw<Answer | null>(null);
  /** What was wrong, a sentence each. */
  problems = $state.raw<readonly string[]>([]);
  busy = $state(false);
  #asking: AbortController | null = null;

  /** @param ask asks the service; its signal goes off when nobody waits any more */
  async read(ask: (signal: AbortSignal) => Promise<Answer>): Promise<void> {
    this.#asking?.abort();
    const asking = new AbortController();
    this.#asking = asking;
    this.busy = true;
    try {
      const answer = await ask(asking.signal);
      if (asking.signal.aborted) return;
      this.answer = answer;
      this.problems = [];
    } catch (error) {
      if (asking.signal.aborted) return;
      if (!(error instanceof ProblemError)) throw error;
      this.problems = [error.detail, ...error.errors.map(({ detail }) => detail)].filter(
        (detail, place, all) => all.indexOf(detail) === place,
      );
    } finally {
      if (this.#asking === asking) this.busy = false;
    }
  }

  /** Takes back what is shown, and what is asked for. */
  clear(): void {
    this.#asking?.abort();
    this.#asking = null;
    this.busy = false;
    this.answer = null;
    this.problems = [];
  }

  /** Gives up what is asked for: nobody looks any more. */
  close(): void {
    this.#asking?.abort();
  }
}
