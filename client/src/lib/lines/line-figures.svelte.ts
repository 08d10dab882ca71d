import { SvelteMap } from 'svelte/reactivity';
import { ProblemError } from '../api/problem.ts';
import type { LineageSet } from '../api/types.ts';
import { memberFilters, usualChoice } from '../sets/line-choice.ts';
import { askSet } from '../sets/set-reading.svelte.ts';

/** What a row of the list of lines knows: the figures, the words of a refusal, or that they are on their way. */
export type LineFigures = { set: LineageSet } | { problem: string } | 'asked';

/** How many lines are asked about at the same time. */
const atOnce = 2;

/** Figures of the living of each line, asked for one after the other as rows come into sight; the list never waits for them. */
export class LineFigureList {
  readonly figures = new SvelteMap<string, LineFigures>();
  readonly #waiting: string[] = [];
  readonly #left = new AbortController();
  #running = 0;

  /** Asks for a line's figures, once. */
  want(lineId: string): void {
    if (this.figures.has(lineId)) return;
    this.figures.set(lineId, 'asked');
    this.#waiting.push(lineId);
    this.#next();
  }

  /** Gives up what was not answered; called when the page is left. */
  close(): void {
    this.#waiting.length = 0;
    this.#left.abort();
  }

  #next(): void {
    while (this.#running < atOnce) {
      const lineId = this.#waiting.shift();
      if (lineId === undefined) return;
      this.#running++;
      void this.#ask(lineId).finally(() => {
        this.#running--;
        this.#next();
      });
    }
  }

  async #ask(lineId: string): Promise<void> {
    try {
      const set = await askSet({ filters: memberFilters(lineId, usualChoice) }, this.#left.signal);
      this.figures.set(lineId, { set });
    } catch (error) {
      if (this.#left.signal.aborted) return;
      if (!(error instanceof ProblemError)) throw error;
      this.figures.set(lineId, { problem: error.detail });
    }
  }
}
