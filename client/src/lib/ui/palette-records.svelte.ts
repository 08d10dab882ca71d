import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { Page } from '../api/types.ts';
import { session } from '../people/session.svelte.ts';
import { answersWithin } from '../records/animal-search.svelte.ts';
import type { Entry } from './palette-entries.ts';

type RecordEntry = Extract<Entry, { kind: 'record' }>;

interface Named {
  readonly id: string;
  readonly name?: string;
  readonly title?: string;
  readonly code?: string | null;
}

interface Kind {
  readonly what: string;
  readonly subject: string;
  readonly path: string;
  /** By a part of the name, or by the whole code. */
  readonly by: 'q' | 'code';
  readonly address: (id: string) => string;
}

const kinds: readonly Kind[] = [
  { what: 'line', subject: 'line', path: '/lines', by: 'q', address: (id) => `/lines/${id}` },
  { what: 'pairing', subject: 'pairing', path: '/pairings', by: 'q', address: (id) => `/pairings/${id}` },
  { what: 'clutch', subject: 'clutch', path: '/clutches', by: 'code', address: (id) => `/clutches/${id}` },
  { what: 'source', subject: 'source', path: '/sources', by: 'q', address: (id) => `/sources/${id}` },
];

const most = 3;
/** Of one or two letters nearly every name has some. */
const shortest = 2;

/** Lines, pairings, clutches and sources that fit what is typed; beside the animals they may be missing without harm. */
export class PaletteRecords {
  items = $state.raw<RecordEntry[]>([]);
  /** What was asked last has no answer yet. */
  isLooking = $state(false);
  #timer: ReturnType<typeof setTimeout> | undefined;
  #asking: AbortController | undefined;

  /** Asks after a pause in the typing; nothing is shown meanwhile that belongs to another text. */
  ask(text: string): void {
    clearTimeout(this.#timer);
    this.#asking?.abort();
    this.items = [];
    this.isLooking = text.length >= shortest && text.length <= 100;
    if (this.isLooking) this.#timer = setTimeout(() => void this.#read(text), 160);
  }

  async #read(text: string): Promise<void> {
    const asking = new AbortController();
    this.#asking = asking;
    const { signal } = asking;
    try {
      const found = await Promise.all(
        kinds
          .filter(({ subject, by }) => session.may('read', subject) && (by === 'q' || text.length <= 40))
          .map((kind) => this.#readKind(kind, text, signal)),
      );
      if (!signal.aborted) this.items = found.flat();
    } finally {
      if (!signal.aborted) this.isLooking = false;
    }
  }

  async #readKind(kind: Kind, text: string, signal: AbortSignal): Promise<RecordEntry[]> {
    try {
      const query = { [kind.by]: text, limit: most };
      const page = await api.get<Page<Named>>(kind.path, { query, signal, patience: answersWithin });
      return page.items.map((record) => ({
        kind: 'record',
        key: `${kind.what}-${record.id}`,
        what: kind.what,
        title: record.name ?? record.title ?? record.code ?? '',
        address: kind.address(record.id),
      }));
    } catch (error) {
      // what was not found by one way may be found by another; the search for animals tells of a service that does not answer
      if (error instanceof ProblemError || signal.aborted) return [];
      throw error;
    }
  }
}
