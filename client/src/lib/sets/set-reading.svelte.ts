import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { LineageSet } from '../api/types.ts';

/** How the animals of a set are told to the service: by filters of the register, or by their ids. */
export type SetQuestion = { filters: Record<string, string> } | { individuals: readonly string[] };

/** Asks what is measured of a set. Throws `ProblemError`. */
export function askSet(question: SetQuestion, signal?: AbortSignal): Promise<LineageSet> {
  const options = signal ? { signal } : {};
  return 'filters' in question
    ? api.get<LineageSet>('/lineage/set', { ...options, query: question.filters })
    : api.ask<LineageSet>('/lineage/set', { individuals: question.individuals }, options);
}

/** The measures of one set as they come; a new question gives up the one before. */
export class SetReading {
  /** The newest answer; it stays while the next one is computed, so that nothing jumps. */
  set = $state.raw<LineageSet | null>(null);
  busy = $state(false);
  problem = $state.raw<ProblemError | null>(null);
  #asked: AbortController | null = null;

  async read(question: SetQuestion): Promise<void> {
    this.#asked?.abort();
    const asked = new AbortController();
    this.#asked = asked;
    this.busy = true;
    this.problem = null;
    try {
      const set = await askSet(question, asked.signal);
      if (this.#asked === asked) this.set = set;
    } catch (error) {
      if (this.#asked !== asked || (error instanceof DOMException && error.name === 'AbortError')) return;
      if (!(error instanceof ProblemError)) throw error;
      this.set = null;
      this.problem = error;
    } finally {
      if (this.#asked === asked) this.busy = false;
    }
  }

  /** Leaves the question; called when the page is left. */
  close(): void {
    this.#asked?.abort();
    this.#asked = null;
  }
}
