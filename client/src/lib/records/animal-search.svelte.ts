import { api } from '../api/client.ts';
import type { IndividualItem, Page } from '../api/types.ts';
import { ProblemError } from '../api/problem.ts';

/** Finds animals while one types: waits for a pause in the typing and drops answers that came too late. */
export class AnimalSearch {
  items = $state.raw<IndividualItem[]>([]);
  /** The text that `items` answers; null before the first answer. */
  answered = $state<string | null>(null);
  problem = $state('');
  #timer: ReturnType<typeof setTimeout> | undefined;
  #asking: AbortController | undefined;
  readonly #filters: () => Record<string, string | undefined>;
  readonly #limit: number;

  constructor(filters: () => Record<string, string | undefined> = () => ({}), limit = 8) {
    this.#filters = filters;
    this.#limit = limit;
  }

  /** Asks for the animals that fit a text, after a short pause. */
  ask(text: string): void {
    clearTimeout(this.#timer);
    this.#asking?.abort();
    this.#timer = setTimeout(() => void this.#fetch(text.trim()), 120);
  }

  async #fetch(text: string): Promise<void> {
    const asking = new AbortController();
    this.#asking = asking;
    try {
      const page = await api.get<Page<IndividualItem>>('/individuals', {
        query: { ...this.#filters(), q: text || undefined, limit: this.#limit },
        signal: asking.signal,
      });
      if (asking.signal.aborted) return;
      this.items = page.items;
      this.answered = text;
      this.problem = '';
    } catch (error) {
      if (asking.signal.aborted) return;
      if (!(error instanceof ProblemError)) throw error;
      this.problem = error.detail;
      this.items = [];
    }
  }
}
