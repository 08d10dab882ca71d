import { untrack } from 'svelte';

/** The list that is chosen from. */
interface Found<Item> {
  readonly items: readonly Item[];
  /** What is typed has no answer yet: the items may still be those of its first letters. */
  readonly isLooking: boolean;
  /** Whether the first item is meant until another one is chosen. */
  readonly meansFirst: boolean;
}

/**
 * What is chosen of a list that is found while one types: an item chosen by hand, which no item that comes later pushes out of its place, else
 * the first. Hands are faster than answers: what is to be done with the first waits for the answer to what is typed.
 */
export class FoundChoice<Item> {
  readonly #found: () => Found<Item>;
  readonly #keyOf: (item: Item) => string;
  /** Key of the item chosen by hand; null: none was. */
  #chosen = $state<string | null>(null);
  /** What is to be done once what is typed has been looked for. */
  #wish = $state.raw<(() => unknown) | null>(null);

  constructor(found: () => Found<Item>, keyOf: (item: Item) => string) {
    this.#found = found;
    this.#keyOf = keyOf;
  }

  /** The place of the current item; -1: there is none. */
  get at(): number {
    const { items, meansFirst } = this.#found();
    const at = items.findIndex((item) => this.#keyOf(item) === this.#chosen);
    return at >= 0 || !meansFirst ? at : Math.min(0, items.length - 1);
  }

  get current(): Item | undefined {
    return this.#found().items[this.at];
  }

  /** Something waits for the answer. */
  get isWished(): boolean {
    return this.#wish !== null;
  }

  /** Begins anew: nothing is chosen, and nothing waits. */
  begin(): void {
    this.#chosen = null;
    this.#wish = null;
  }

  move(step: 1 | -1): void {
    const { items } = this.#found();
    this.#wish = null;
    if (items.length === 0) return;
    const from = this.at < 0 && step < 0 ? 0 : this.at;
    const next = items[(from + step + items.length) % items.length];
    this.#chosen = next === undefined ? null : this.#keyOf(next);
  }

  /** Acts at once; while nobody chose an item and what is typed is being looked for, once it is found. */
  whenFound(act: () => unknown): void {
    if (this.#found().isLooking && this.#chosen === null) this.#wish = act;
    else act();
  }

  /** To be called in an effect: does what waited, once there is an answer. */
  settle(): void {
    const wish = this.#wish;
    if (wish === null || this.#found().isLooking) return;
    this.#wish = null;
    untrack(wish);
  }
}
