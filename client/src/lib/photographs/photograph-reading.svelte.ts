import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { Photograph } from '../api/types.ts';

/** The photographs of one animal, those taken last first. */
export class PhotographReading {
  /** Null while they are read for the first time. */
  photographs = $state.raw<readonly Photograph[] | null>(null);
  problem = $state('');
  #last = 0;

  /** Reads them; what comes back after a later reading began is let go. */
  async read(individualId: string): Promise<void> {
    const own = ++this.#last;
    try {
      const photographs = await api.all<Photograph>('/photographs', { individualId }, 400);
      if (own !== this.#last) return;
      this.photographs = photographs;
      this.problem = '';
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      if (own === this.#last) this.problem = error.detail;
    }
  }
}
