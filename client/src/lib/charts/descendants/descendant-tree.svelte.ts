// Maps and sets here are replaced whole, never changed in place.
/* eslint-disable svelte/prefer-svelte-reactivity */
import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { Descendants, Individual } from '$lib/api/types.ts';
import type { ChartKey } from '$lib/keys/actions/chart.ts';
import { LayoutTurns, nodesInPage } from '../layout-worker.ts';
import { layoutDescendants, type DescendantLayout, type FoldedSiblings } from './descendant-layout.ts';
import { moveAmong } from './descendant-moves.ts';
import type { ChartDescendant, Family, YoungOf } from './families.ts';
import { descendantsApart, type DescendantQuestion } from './layout-apart.ts';

/** How many generations are drawn at once. */
export const descendantGenerations = [1, 2, 3] as const;
export const usualDescendants = 2;

/** A picture, and what it is of. */
export interface DrawnDescendants {
  layout: DescendantLayout;
  /** Another one whenever the chart opens anew, so that it is moved to where it begins. */
  opening: symbol;
  /** Of the frame for which it was laid out. */
  width: number;
}

/** What the chart of an animal's descendants shows now. */
export class DescendantTree {
  root = $state.raw<ChartDescendant | null>(null);
  youngOf = $state.raw<YoungOf>(new Map());
  opened = $state.raw<ReadonlySet<string>>(new Set());
  frameWidth = $state(0);
  focused = $state<string | null>(null);
  problem = $state('');
  isReading = $state(false);
  /** Siblings without young whose list is open. */
  listed = $state.raw<FoldedSiblings | null>(null);
  /** More animals have young than are opened at once. */
  isBounded = $state(false);
  #opening = Symbol();
  #asked: symbol | null = null;

  /** What is drawn now. What was read or opened since takes its place when it is laid out; until then the old picture stays. */
  drawn = $state.raw<DrawnDescendants | null>(null);
  readonly layout = $derived(this.drawn?.layout ?? null);
  /** What is to be drawn: all that is opened, for the frame as wide as it is. */
  readonly wanted: DescendantQuestion | null = $derived.by(() => {
    const { root, youngOf, opened, frameWidth: leastWidth } = this;
    return root && leastWidth > 0 ? { root, youngOf, opened, leastWidth } : null;
  });
  readonly #turns = new LayoutTurns();

  /** Lays out what is wanted; called whenever that changes. */
  async arrange(): Promise<void> {
    const { wanted } = this;
    if (!wanted) return;
    const { root, youngOf, opened, leastWidth } = wanted;
    if (nodesOf(youngOf, opened) <= nodesInPage && !this.#turns.isBusy)
      this.#draw(layoutDescendants(root, youngOf, opened, leastWidth), leastWidth);
    else await this.#turns.take(() => this.#arrangeApart());
  }

  async #arrangeApart(): Promise<void> {
    const { wanted } = this;
    if (!wanted) return;
    const opening = this.#opening;
    const layout = await descendantsApart.layOut(wanted);
    // of what was meanwhile asked for anew, the next turn draws
    if (this.#opening === opening) this.#draw(layout, wanted.leastWidth);
  }

  #draw(layout: DescendantLayout, width: number): void {
    this.drawn = { layout, opening: this.#opening, width };
  }

  /**
   * Shows an animal with so many generations below it; what was opened beyond is folded again. Where they cannot be read, the clutches that
   * its own record tells of are shown.
   */
  async show(animal: Individual, generations: number): Promise<void> {
    const asked = Symbol();
    this.#asked = asked;
    this.isReading = true;
    try {
      const told = await this.#read(animal.id, generations);
      if (this.#asked !== asked) return;
      const root = { ...told.root, hasYoung: told.families.some(({ parent }) => parent === animal.id) };
      this.#begin(root, byParent(animal.id, told.families));
      this.isBounded = told.truncated;
      this.problem = '';
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      if (this.#asked !== asked) return;
      this.problem = error.detail;
      const root = { ...animal, isPrivate: false, hasYoung: animal.young.length > 0 };
      this.#begin(root, new Map([[animal.id, animal.young]]));
    } finally {
      if (this.#asked === asked) this.isReading = false;
    }
  }

  #read(id: string, generations: number): Promise<Descendants> {
    return api.get<Descendants>(`/individuals/${id}/descendants`, { query: { generations } });
  }

  #begin(root: ChartDescendant, youngOf: YoungOf): void {
    this.root = root;
    this.youngOf = youngOf;
    this.opened = new Set(youngOf.keys());
    this.focused = root.id;
    [this.listed, this.isBounded] = [null, false];
    this.#opening = Symbol();
  }

  /** Draws the young of an animal, reading them if they were not read yet. */
  async open(id: string): Promise<void> {
    this.isReading = true;
    const asked = this.#asked;
    try {
      if (!this.youngOf.has(id)) {
        const { families } = await this.#read(id, 1);
        if (this.#asked !== asked) return;
        this.youngOf = new Map([...this.youngOf, ...byParent(id, families)]);
      }
      this.focused = id;
      this.opened = new Set([...this.opened, id]);
      this.problem = '';
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      if (this.#asked === asked) this.problem = error.detail;
    } finally {
      if (this.#asked === asked) this.isReading = false;
    }
  }

  /** Folds the young of an animal away again. */
  fold(id: string): void {
    this.opened = new Set([...this.opened].filter((other) => other !== id));
  }

  /** Moves the keyboard's place; gives what to focus, or null where the key means nothing here. */
  move(key: ChartKey): string | null {
    if (!this.layout || this.focused === null) return null;
    const next = moveAmong(this.layout, this.focused, key);
    if (next !== null) this.focused = next;
    return next;
  }
}

/** Clutches and animals below those that are opened. */
function nodesOf(youngOf: YoungOf, opened: ReadonlySet<string>): number {
  const families = [...opened].flatMap((id) => youngOf.get(id) ?? []);
  return families.reduce((sum, { animals }) => sum + 1 + animals.length, 0);
}

/** Families by their parent, the first animal's also where it has none. */
function byParent(first: string, families: Descendants['families']): YoungOf {
  const found = new Map<string, Family[]>([[first, []]]);
  for (const family of families) found.set(family.parent, [...(found.get(family.parent) ?? []), family]);
  return found;
}
