import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { Mates } from '../api/types.ts';
import { mateParameters, type MateChoice } from './mate-choice.ts';

/** Possible mates of one animal, read page by page; what is shown stays until the next answer has come. */
export class MatesReading {
  mates = $state.raw<Mates | null>(null);
  problem = $state('');
  busy = $state(false);
  #asking: AbortController | null = null;

  async read(animalId: string, choice: MateChoice): Promise<void> {
    await this.#ask(animalId, choice, (answer) => answer);
  }

  /** Reads on where the page ended. */
  async more(animalId: string, choice: MateChoice): Promise<void> {
    const held = this.mates;
    if (!held?.next || this.busy) return;
    await this.#ask(animalId, choice, (answer) => ({ ...answer, items: [...held.items, ...answer.items] }), held.next);
  }

  /** Gives up what is asked for: nobody looks any more. */
  close(): void {
    this.#asking?.abort();
  }

  async #ask(animalId: string, choice: MateChoice, join: (answer: Mates) => Mates, after?: string): Promise<void> {
    this.#asking?.abort();
    const asking = new AbortController();
    this.#asking = asking;
    this.busy = true;
    try {
      const question = mateParameters(choice);
      if (after !== undefined) question.set('after', after);
      const answer = await api.get<Mates>(`/individuals/${animalId}/mates?${question}`, { signal: asking.signal });
      if (asking.signal.aborted) return;
      this.mates = join(answer);
      this.problem = '';
    } catch (error) {
      if (asking.signal.aborted) return;
      if (!(error instanceof ProblemError)) throw error;
      this.problem = error.detail;
    } finally {
      if (this.#asking === asking) this.busy = false;
    }
  }
}
