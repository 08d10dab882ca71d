import { readEvents } from '../api/event-stream.ts';
import { ProblemError } from '../api/problem.ts';
import type { Plan, PlanForecast } from '../api/types.ts';
import { problemsOf } from './plan-reading.svelte.ts';

/** The next generations of a plan as the service breeds them; a new question gives up the one before. */
export class ForecastReading {
  /** The newest answer; it stays while the next one is drawn. */
  forecast = $state.raw<PlanForecast | null>(null);
  /** Part that is done, 0 to 1; null while nothing is drawn. */
  part = $state<number | null>(null);
  problems = $state.raw<readonly string[]>([]);
  isStopped = $state(false);
  #asked: AbortController | null = null;

  /** Breeds the generations and shows how far it has come. */
  async read(plan: Plan, wish: object): Promise<void> {
    this.close();
    const asked = new AbortController();
    this.#asked = asked;
    this.part = 0;
    this.problems = [];
    this.isStopped = false;
    const isCross = plan.pairs.some(({ male, female }) => [male, female].some(({ line }) => line?.id !== plan.line.id));
    const pairs = plan.pairs.map(({ male, female }) => ({ sire: male.animal.id, dam: female.animal.id }));
    try {
      await readEvents(
        `/api/v1/lines/${plan.line.id}/plan-forecast`,
        ({ name, data }) => this.#asked === asked && this.#take(name, data),
        {
          method: 'POST',
          headers: { 'Content-Type': 'application/json' },
          body: JSON.stringify({ pairs, crossLines: isCross, ...wish }),
          signal: asked.signal,
        },
      );
    } catch (error) {
      if (this.#asked !== asked || (error instanceof DOMException && error.name === 'AbortError')) return;
      if (!(error instanceof ProblemError)) throw error;
      this.problems = problemsOf(error);
    } finally {
      if (this.#asked === asked) this.part = null;
    }
  }

  #take(name: string, data: unknown): void {
    if (name === 'result') this.forecast = data as PlanForecast;
    else if (name === 'problem') {
      const document = { ...(data as Record<string, unknown>) };
      throw new ProblemError(typeof document['status'] === 'number' ? document['status'] : 500, document);
    } else if (name === 'progress') {
      const { done, total } = data as { done?: unknown; total?: unknown };
      if (typeof done === 'number' && typeof total === 'number' && total > 0)
        this.part = Math.min(1, Math.max(0, done / total));
    }
  }

  /** Gives up what is being drawn; the service ends it. */
  stop(): void {
    if (this.part === null) return;
    this.close();
    this.isStopped = true;
  }

  /** Forgets the answer: it is one of another plan. */
  forget(): void {
    this.close();
    this.forecast = null;
    this.problems = [];
    this.isStopped = false;
  }

  /** Leaves the question; called when the page is left. */
  close(): void {
    this.#asked?.abort();
    this.#asked = null;
    this.part = null;
  }
}
