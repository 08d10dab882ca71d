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
      const read = (query: Record<string, string | number | undefined>): Promise<Page<IndividualItem>> =>
        api.get<Page<IndividualItem>>('/individuals', {
          query: { ...this.#filters(), ...query },
          signal: asking.signal,
        });
      // a code typed whole comes first, however many others have it in them
      const [whole, page] = await Promise.all([
        isCode(text) ? read({ code: text, limit: 3 }) : { items: [] },
        read({ q: text || undefined, limit: this.#limit }),
      ]);
      if (asking.signal.aborted) return;
      const others = page.items.filter(({ id }) => !whole.items.some((item) => item.id === id));
      this.items = [...whole.items, ...others].slice(0, this.#limit);
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

const isCode = (text: string): boolean => text !== '' && text.length <= 40;
