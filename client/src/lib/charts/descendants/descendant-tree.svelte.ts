// Maps and sets here are replaced whole, never changed in place.
/* eslint-disable svelte/prefer-svelte-reactivity */
import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { Individual, YoungOfAnimal } from '$lib/api/types.ts';
import { layoutDescendants, moveAmong, type ChartDescendant, type FoldedSiblings } from './descendant-layout.ts';

/** How many generations are drawn at once. */
export const descendantGenerations = [1, 2, 3] as const;
export const usualDescendants = 2;

/** Most animals whose young are read for one choice of generations; beyond, the reader opens them one by one. */
const openedMost = 40;

/** What the chart of an animal's descendants shows now. */
export class DescendantTree {
  root = $state.raw<ChartDescendant | null>(null);
  youngOf = $state.raw<ReadonlyMap<string, readonly YoungOfAnimal[]>>(new Map());
  opened = $state.raw<ReadonlySet<string>>(new Set());
  frameWidth = $state(0);
  focused = $state<string | null>(null);
  problem = $state('');
  isReading = $state(false);
  /** Siblings without young whose list is open. */
  listed = $state.raw<FoldedSiblings | null>(null);
  /** More animals have young than are opened at once. */
  isBounded = $state(false);
  /** The last choice of an animal and of generations: what was read for an earlier one opens nothing. */
  #choice = Symbol();

  readonly layout = $derived(
    this.root && this.frameWidth > 0 ? layoutDescendants(this.root, this.youngOf, this.opened, this.frameWidth) : null,
  );

  /** Shows an animal with so many generations below it; what was opened beyond is folded again. */
  async show(animal: Individual, generations: number): Promise<void> {
    const choice = (this.#choice = Symbol());
    this.root = { ...animal, isPrivate: false, hasYoung: animal.young.length > 0 };
    this.youngOf = new Map([...this.youngOf, [animal.id, animal.young]]);
    this.opened = new Set([animal.id]);
    this.focused = animal.id;
    [this.listed, this.isBounded] = [null, false];
    let level: readonly string[] = [animal.id];
    for (let generation = 1; generation < generations && level.length > 0; generation++) {
      const next = level.flatMap((id) => this.#withYoung(id)).filter((id) => !this.opened.has(id));
      const room = Math.max(0, openedMost - this.opened.size);
      if (next.length > room) this.isBounded = true;
      level = next.slice(0, room);
      await this.open(...level);
      if (this.#choice !== choice) return;
    }
  }

  #withYoung(id: string): string[] {
    const young = this.youngOf.get(id) ?? [];
    return young.flatMap(({ animals }) => animals.filter(({ hasYoung }) => hasYoung).map((one) => one.id));
  }

  /** Draws the young of animals, reading what was not read yet. */
  async open(...ids: string[]): Promise<void> {
    const choice = this.#choice;
    this.isReading = true;
    try {
      const missing = ids.filter((id) => !this.youngOf.has(id));
      const read = await Promise.all(missing.map((id) => api.get<Individual>(`/individuals/${id}`)));
      this.youngOf = new Map([...this.youngOf, ...read.map(({ id, young }) => [id, young] as const)]);
      if (this.#choice !== choice) return;
      this.opened = new Set([...this.opened, ...ids]);
      this.problem = '';
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      this.problem = error.detail;
    } finally {
      this.isReading = false;
    }
  }

  /** Folds the young of an animal away again. */
  fold(id: string): void {
    this.opened = new Set([...this.opened].filter((other) => other !== id));
  }

  /** Moves the keyboard's place; gives what to focus, or null where the key means nothing here. */
  move(key: string): string | null {
    if (!this.layout || this.focused === null) return null;
    const next = moveAmong(this.layout, this.focused, key);
    if (next !== null) this.focused = next;
    return next;
  }
}
