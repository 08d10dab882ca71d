// Maps and sets here are replaced whole, never changed in place.
/* eslint-disable svelte/prefer-svelte-reactivity */
import { ProblemError } from '$lib/api/problem.ts';
import { percent } from '$lib/ui/figures.ts';
import { layoutAncestors, type PlacedAnimal } from './ancestor-layout.ts';
import { nameOf } from './ancestor-table.ts';
import { moveFrom } from './chart-moves.ts';
import { islandOf } from './island.ts';
import { pathsToRoot } from './loops.ts';
import type { PedigreeView } from './pedigree-view.ts';

export const generationChoices = [3, 4, 6, 8, 12] as const;

/** Where a chart gets its pedigree from, so many generations back. */
export type ReadPedigree = (generations: number) => Promise<PedigreeView>;

/** What the ancestor chart shows now: how far back, which loop is lit, which animal the keyboard stands on. */
export class AncestorChart {
  pedigree = $state.raw<PedigreeView | null>(null);
  problem = $state('');
  generations = $state(4);
  asTable = $state(false);
  frameWidth = $state(0);
  focused = $state<string | null>(null);
  /** Pointed at or focused now; null lets the strongest loop be lit. */
  pointed = $state<string | null>(null);
  #came: string | null = null;
  #asked: symbol | null = null;

  readonly layout = $derived(
    this.pedigree && this.frameWidth > 0 ? layoutAncestors(this.pedigree, this.frameWidth) : null,
  );
  readonly #strongest = $derived.by(() => {
    const common = (this.layout?.animals ?? []).flatMap((placed) => placed.common ?? []);
    const closing = common.filter((one) => one.part > 0);
    return closing.sort((a, b) => b.part - a.part || (a.id < b.id ? -1 : 1))[0]?.id ?? null;
  });
  /** The common ancestor whose ways are in red pencil. */
  readonly litAnimal: PlacedAnimal | null = $derived.by(() => {
    const find = (id: string | null) => this.layout?.animals.find((placed) => placed.animal.id === id && placed.common);
    return find(this.pointed) ?? find(this.#strongest) ?? null;
  });
  readonly lit = $derived(
    this.layout && this.litAnimal
      ? pathsToRoot(this.layout.graph, this.litAnimal.animal.id)
      : { nodes: new Set<string>(), streams: new Set<string>() },
  );
  readonly island = $derived(
    this.layout && this.litAnimal?.common && this.litAnimal.common.part > 0
      ? islandOf(this.layout, this.litAnimal.animal.id, this.lit.streams)
      : null,
  );
  /** The lit loop in one sentence. */
  readonly sentence = $derived.by(() => {
    const placed = this.litAnimal;
    if (!placed?.common) return '';
    const { places, part } = placed.common;
    const name = nameOf(placed.animal);
    return part > 0
      ? `${name} stands behind both parents and fills ${places} places; it adds ${percent(part)} to F.`
      : `${name} fills ${places} places, all behind one parent: it adds nothing to F here.`;
  });

  /** Reads the pedigree as far back as chosen; of two overlapping questions only the later one is answered. */
  async read(ask: ReadPedigree, generations: number): Promise<void> {
    const asked = Symbol();
    this.#asked = asked;
    try {
      const answer = await ask(generations);
      if (this.#asked !== asked) return;
      this.pedigree = answer;
      this.focused = answer.root;
      this.pointed = null;
      this.problem = '';
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      if (this.#asked === asked) this.problem = error.detail;
    }
  }

  /** Moves the keyboard's place; gives the animal to focus, or null when the key means nothing here. */
  move(key: string): string | null {
    if (!this.layout || this.focused === null) return null;
    const next = moveFrom(this.layout, this.focused, key, this.#came);
    if (next === null) return null;
    this.#came = key === 'ArrowUp' ? this.focused : null;
    this.focused = next;
    return next;
  }
}
