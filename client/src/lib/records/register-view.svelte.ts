import { SvelteMap } from 'svelte/reactivity';
import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import { mostTogether } from '../together/edit-together.svelte.ts';
import { kept } from '../ui/kept.ts';
import { figureSorts } from './figure-bounds.ts';
import type { Figures, IndividualItem } from '../api/types.ts';
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

/** How the reader likes the register: density and columns, kept on this device; which animals are chosen; the figures shown. */
export class RegisterView {
  density = $state<Density>('close');
  shown = $state<Column[]>(usualColumns);
  readonly chosen = new SvelteMap<string, IndividualItem>();
  readonly figures = new SvelteMap<string, Figures>();
  figuresProblem = $state('');

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

  /** Chooses all animals that a list finds, on all its pages; at most so many as can be changed together. Throws `ProblemError`. */
  async chooseAll(query: Record<string, string | undefined>): Promise<void> {
    const items = await api.all<IndividualItem>('/individuals', query, mostTogether);
    for (const animal of items.slice(0, mostTogether)) this.chosen.set(animal.id, animal);
  }

  /** Asks for the figures of the rows that have none yet, at most 200 at a time. */
  async readFigures(items: readonly IndividualItem[]): Promise<void> {
    if (!this.shown.some((name) => figureColumns.includes(name))) return;
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
