import { SvelteMap } from 'svelte/reactivity';
import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import { kept } from '../ui/kept.ts';
import { figureSorts } from './figure-bounds.ts';
import type { Figures, IndividualItem, Page } from '../api/types.ts';
import { word } from '../words/word.ts';

export const densities = ['tight', 'close', 'airy'] as const;
export type Density = (typeof densities)[number];
export const densityWords: Record<Density, string> = { tight: word('tight'), close: word('close'), airy: word('airy') };

export const columns = {
  number: word('number'),
  code: word('code'),
  line: word('line'),
  species: word('species'),
  label: word('label'),
  tracedShare: word('traced'),
  inbreeding: 'F',
  depth: word('depth'),
  meanKinship: word('kinship'),
  hatched: word('hatched'),
  outOfWater: 'out of water',
  status: word('status'),
  keeper: word('keeper'),
  marks: word('marks'),
} as const;
export type Column = keyof typeof columns;
export const columnNames = Object.keys(columns) as Column[];
const usualColumns = columnNames.filter((name) => !['meanKinship', 'outOfWater', 'status'].includes(name));
const figureColumns: Column[] = ['label', ...figureSorts, 'marks'];
/** Names under which a column was kept before it had the one that it is sorted by. */
const formerNames: Readonly<Record<string, Column>> = { traced: 'tracedShare' };

const storageKey = 'linekeeper.register-view';

/** A part of a long list, in the order of registry numbers. */
interface Stretch {
  /** The list. */
  readonly of: string;
  readonly from: number;
  readonly to: number;
  readonly total: number;
  /** Where those begin that follow; null behind the last. */
  readonly next: string | null;
}

/** Most animals that are chosen at once: as many as are changed together. */
export const mostTogether = 1000;

/** How the reader likes the register: density and columns, kept on this device; which animals are chosen; the figures shown. */
export class RegisterView {
  density = $state<Density>('close');
  shown = $state<Column[]>(usualColumns);
  readonly chosen = new SvelteMap<string, IndividualItem>();
  readonly figures = new SvelteMap<string, Figures>();
  figuresProblem = $state('');
  /** Which part of a list that is too long to be changed together was chosen last, counted from 1; null where all of it was. */
  stretch = $state.raw<Stretch | null>(null);

  constructor() {
    try {
      const liked = JSON.parse(kept.get(storageKey) ?? '{}') as { density?: unknown; shown?: unknown };
      this.density = densities.find((density) => density === liked.density) ?? 'close';
      if (Array.isArray(liked.shown)) {
        const names = (liked.shown as unknown[]).map((name) => formerNames[String(name)] ?? name);
        this.shown = columnNames.filter((name) => names.includes(name));
      }
    } catch {
      // Garbled: the usual view.
    }
  }

  setDensity(density: Density): void {
    this.density = density;
    this.#keep();
  }

  /** Shows a column or hides it; number and code stay, since rows are told apart by them. */
  toggleColumn(name: Column): void {
    this.shown = columnNames.filter((other) => (other === name) !== this.shown.includes(other));
    this.#keep();
  }

  toggleChosen(animal: IndividualItem): void {
    if (!this.chosen.delete(animal.id)) this.chosen.set(animal.id, animal);
  }

  /**
   * Chooses all animals that a list finds, on all its pages; of more than can be changed together the first so many, and the next time for the same
   * list those that follow. Throws `ProblemError`.
   */
  async chooseAll(query: Record<string, string | undefined>): Promise<void> {
    const of = JSON.stringify(query);
    const before = this.stretch?.of === of ? this.stretch : null;
    const items: IndividualItem[] = [];
    let after = before?.next ?? undefined;
    let next: string | null = null;
    let total = before?.total ?? 0;
    do {
      const first: boolean = after === undefined;
      const page: Page<IndividualItem> = await api.get<Page<IndividualItem>>('/individuals', {
        query: { ...query, limit: 200, after, ...(first ? { total: true } : {}) },
      });
      items.push(...page.items);
      if (first) total = page.total ?? page.items.length;
      next = page.next;
      after = next ?? undefined;
    } while (next !== null && items.length < mostTogether);
    const begun = before?.next ? before.to : 0;
    if (begun > 0) this.chosen.clear();
    for (const animal of items) this.chosen.set(animal.id, animal);
    const goesOn = next !== null || begun > 0;
    this.stretch = goesOn ? { of, from: begun + 1, to: begun + items.length, total, next } : null;
  }

  /** Whether some column stands on reckoned figures. */
  get showsFigures(): boolean {
    return this.shown.some((name) => figureColumns.includes(name));
  }

  /** Asks for the figures of the rows that have none yet, at most 200 at a time. */
  async readFigures(items: readonly IndividualItem[]): Promise<void> {
    if (!this.showsFigures) return;
    const wanted = items.map((item) => item.id);
    if (wanted.length === 0) return;
    try {
      const answer = await api.ask<{ items: Figures[] }>('/lineage/figures', { individuals: wanted.slice(0, 200) });
      for (const figures of answer.items) this.figures.set(figures.id, figures);
      this.figuresProblem = '';
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      this.figuresProblem = error.detail;
    }
  }

  #keep(): void {
    kept.set(storageKey, JSON.stringify({ density: this.density, shown: this.shown }));
  }
}
