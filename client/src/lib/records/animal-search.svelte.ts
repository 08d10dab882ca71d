import { api } from '../api/client.ts';
import type { IndividualItem, Page } from '../api/types.ts';
import { ProblemError } from '../api/problem.ts';

/** So long somebody who types waits at most, ms. */
export const answersWithin = 6000;

/** How long a pause in the typing is, ms. */
const pause = 120;

/** Finds animals while one types: asks for the first letters at once, then at each pause in the typing; drops answers that came too late. */
export class AnimalSearch {
  /** What fits the text answered last, while another is being looked for too: see `isLooking`. */
  items = $state.raw<IndividualItem[]>([]);
  problem = $state('');
  #asked = $state<string | null>(null);
  #answered = $state<string | null>(null);
  #timer: ReturnType<typeof setTimeout> | undefined;
  #asking: AbortController | undefined;
  readonly #filters: () => Record<string, string | undefined>;
  readonly #limit: number;

  constructor(filters: () => Record<string, string | undefined> = () => ({}), limit = 8) {
    this.#filters = filters;
    this.#limit = limit;
  }

  /** What was asked last has no answer yet, good or bad. */
  get isLooking(): boolean {
    return this.#asked !== this.#answered;
  }

  /** Asks for the animals that fit a text: at once, or after a pause while another text is being looked for. */
  ask(text: string): void {
    clearTimeout(this.#timer);
    this.#asking?.abort();
    const asked = text.trim();
    const wait = this.isLooking ? pause : 0;
    this.#asked = asked;
    this.#timer = setTimeout(() => void this.#fetch(asked), wait);
  }

  async #fetch(text: string): Promise<void> {
    const asking = new AbortController();
    this.#asking = asking;
    try {
      const read = (query: Record<string, string | number | undefined>): Promise<Page<IndividualItem>> =>
        api.get<Page<IndividualItem>>('/individuals', {
          query: { ...this.#filters(), ...query },
          signal: asking.signal,
          patience: answersWithin,
        });
      // a code typed whole comes first, however many others have it in them
      const [whole, page] = await Promise.all([
        isCode(text) ? read({ code: text, limit: 3 }) : { items: [] },
        read({ q: text || undefined, limit: this.#limit }),
      ]);
      if (asking.signal.aborted) return;
      const others = page.items.filter(({ id }) => !whole.items.some((item) => item.id === id));
      this.items = [...whole.items, ...others].slice(0, this.#limit);
      this.problem = '';
      this.#answered = text;
    } catch (error) {
      if (asking.signal.aborted) return;
      if (!(error instanceof ProblemError)) throw error;
      this.problem = error.detail;
      this.items = [];
      this.#answered = text;
    }
  }
}

const isCode = (text: string): boolean => text !== '' && text.length <= 40;
