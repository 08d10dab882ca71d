// Maps and sets here are replaced whole, never changed in place.
/* eslint-disable svelte/prefer-svelte-reactivity */
import { ProblemError } from '$lib/api/problem.ts';
import type { ChartKey } from '$lib/keys/actions/chart.ts';
import { percent } from '$lib/ui/figures.ts';
import { LayoutTurns, nodesInPage } from '../layout-worker.ts';
import { layoutAncestors, type AncestorLayout, type PlacedAnimal } from './ancestor-layout.ts';
import { nameOf } from './ancestor-table.ts';
import { moveFrom } from './chart-moves.ts';
import { islandOf } from './island.ts';
import { ancestorsApart } from './layout-apart.ts';
import { pathsOfLoops, topOfLoop, type LoopPaths } from './loop-paths.ts';
import { chosenInWords, litShare } from './loop-words.ts';
import { pathsToRoot } from './loops.ts';
import type { PedigreeView } from './pedigree-view.ts';
import { ancestorsInChart, type ChartAncestor, type LoopsThrough, type ShownLoops } from './shown-loops.ts';

export const generationChoices = [1, 2, 3, 4, 5, 6, 7, 8] as const;
/** How far back a chart goes where nobody chose. */
export const usualGenerations = 4;

/** Where a chart gets its pedigree from, so many generations back. */
export type ReadPedigree = (generations: number) => Promise<PedigreeView>;

const nothingLit: LoopPaths = { nodes: new Set(), streams: new Set(), isWhole: true };

/** What the ancestor chart shows now: how far back, which loop is lit, which animal the keyboard stands on. */
export class AncestorChart {
  pedigree = $state.raw<PedigreeView | null>(null);
  problem = $state('');
  generations = $state(usualGenerations);
  asTable = $state(false);
  frameWidth = $state(0);
  focused = $state<string | null>(null);
  /** Pointed at or focused now; null lets the strongest loop be lit. */
  pointed = $state<string | null>(null);
  readonly #shown: () => ShownLoops | undefined;
  #came: string | null = null;
  #asked: symbol | null = null;

  /** What is drawn now. A new pedigree takes its place when it is laid out; until then the old picture stays. */
  layout = $state.raw<AncestorLayout | null>(null);
  /** What `layout` is of; `pedigree` may be a newer one. */
  laidOut = $state.raw<PedigreeView | null>(null);
  /** How many animals are being laid out beside the page; 0 when none. */
  layingOut = $state(0);
  readonly #turns = new LayoutTurns();

  /** Common ancestors in the chart, by id. */
  readonly common = $derived.by(() =>
    this.layout ? ancestorsInChart(this.layout.graph, this.#shown()) : new Map<string, ChartAncestor>(),
  );
  readonly #strongest = $derived.by(() => {
    const closing = [...this.common.values()].filter((one) => one.part > 0);
    return closing.sort((a, b) => b.part - a.part || (a.id < b.id ? -1 : 1))[0]?.id ?? null;
  });
  /** What was chosen beside the chart, as long as nothing in it is pointed at. */
  readonly chosen = $derived.by(() => (this.common.has(this.pointed ?? '') ? null : (this.#shown()?.chosen ?? null)));
  /** The loops to light, where the service told of them. */
  readonly #loops: LoopsThrough | null = $derived.by(() => {
    if (this.chosen) return this.chosen;
    const told = this.common.get(this.#lookedAt ?? '')?.told;
    const loops = told ? this.#shown()?.through(told) : null;
    return loops && loops.loops.length > 0 ? loops : null;
  });
  readonly #lookedAt = $derived(this.common.has(this.pointed ?? '') ? this.pointed : this.#strongest);
  /** The common ancestor whose ways are in red pencil. */
  readonly litAnimal: PlacedAnimal | null = $derived.by(() => {
    const { layout, chosen } = this;
    if (!layout) return null;
    const [loop] = chosen?.loops ?? [];
    const id = chosen ? loop && topOfLoop(layout.graph, chosen.answer, loop) : this.#lookedAt;
    return layout.animals.find((placed) => placed.animal.id === id) ?? null;
  });
  readonly litCommon = $derived(this.common.get(this.litAnimal?.animal.id ?? '') ?? null);
  readonly lit: LoopPaths = $derived.by(() => {
    const { layout } = this;
    if (!layout) return nothingLit;
    if (this.#loops) return pathsOfLoops(layout.graph, this.#loops.answer, this.#loops.loops);
    // one of many common ancestors of which the answer lists no loop, or young that the service does not know
    return this.litAnimal ? { ...pathsToRoot(layout.graph, this.litAnimal.animal.id), isWhole: true } : nothingLit;
  });
  readonly island = $derived(
    this.layout && this.litCommon && this.litCommon.part > 0
      ? islandOf(this.layout, this.litCommon.id, this.lit.streams)
      : null,
  );
  /** What the island is worth: a loop that was chosen, or all of its common ancestor. */
  readonly litPart = $derived(
    this.chosen ? this.chosen.loops.reduce((sum, { part }) => sum + part, 0) : (this.litCommon?.part ?? 0),
  );
  /** What is lit in one sentence or two. */
  readonly sentence = $derived.by(() => {
    const { litAnimal, litCommon, chosen } = this;
    const rest = this.lit.isWhole ? '' : 'It goes on above what is drawn; choose more generations.';
    if (chosen) return `${chosenInWords(chosen)} ${rest}`.trim();
    if (!litAnimal || !litCommon) return '';
    const name = nameOf(litAnimal.animal);
    const { places, part } = litCommon;
    if (part === 0) return `${name} fills ${places} places, all behind one parent: it adds nothing to F here.`;
    const adds =
      places > 1
        ? `${name} stands behind both parents and fills ${places} places; it adds ${percent(part)} to F.`
        : `${name} stands behind both parents; it adds ${percent(part)} to F.`;
    return [adds, litShare(this.#loops), rest].filter((part) => part !== '').join(' ');
  });

  /** @param shown what the service tells of the loops; undefined for young that it does not know */
  constructor(shown: () => ShownLoops | undefined = () => undefined) {
    this.#shown = shown;
  }

  /** Reads the pedigree as far back as chosen; of two overlapping questions only the later one is answered. */
  async read(ask: ReadPedigree, generations: number): Promise<void> {
    const asked = Symbol();
    this.#asked = asked;
    if (generations > 5) ancestorsApart.ready();
    try {
      const answer = await ask(generations);
      if (this.#asked !== asked) return;
      this.pedigree = answer;
      this.focused = answer.root;
      this.pointed = null;
      this.problem = '';
      await this.arrange();
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      if (this.#asked === asked) this.problem = error.detail;
    }
  }

  /** Lays out what was read, for the frame as wide as it is; called whenever one of them changes. */
  async arrange(): Promise<void> {
    const { pedigree, frameWidth } = this;
    if (!pedigree || frameWidth <= 0) return;
    if (pedigree.nodes.length <= nodesInPage && !this.#turns.isBusy)
      this.#draw(layoutAncestors(pedigree, frameWidth), pedigree);
    else await this.#turns.take(() => this.#arrangeApart());
  }

  async #arrangeApart(): Promise<void> {
    const { pedigree, frameWidth } = this;
    if (!pedigree) return;
    this.layingOut = pedigree.nodes.filter(({ kind }) => kind === 'individual').length;
    try {
      const layout = await ancestorsApart.layOut({ view: pedigree, leastWidth: frameWidth });
      if (this.pedigree === pedigree) this.#draw(layout, pedigree);
    } finally {
      this.layingOut = 0;
    }
  }

  #draw(layout: AncestorLayout, pedigree: PedigreeView): void {
    this.layout = layout;
    this.laidOut = pedigree;
  }

  /** Moves the keyboard's place; gives the animal to focus, or null when the key means nothing here. */
  move(key: ChartKey): string | null {
    if (!this.layout || this.focused === null) return null;
    const next = moveFrom(this.layout, this.focused, key, this.#came);
    if (next === null) return null;
    this.#came = key === 'stepUp' ? this.focused : null;
    this.focused = next;
    return next;
  }
}
