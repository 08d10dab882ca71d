import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { Page, TransferItem } from '../api/types.ts';
import { session } from '../people/session.svelte.ts';

/** How often the service is asked at most, in milliseconds: a glance aside, not a watch. */
const PATIENCE = 60_000;

/** How many offers wait for an answer of whoever is signed in. */
export class Awaiting {
  count = $state(0);
  #askedAt = 0;
  #askedFor: string | undefined;

  readonly words = $derived(this.count === 0 ? '' : `${this.count > 50 ? 'over 50' : this.count} to answer`);

  /** Asks again, if that is some time ago or somebody else is signed in now. What cannot be read is said elsewhere. */
  async look(): Promise<void> {
    const who = session.keeper?.id;
    if (who === this.#askedFor && Date.now() - this.#askedAt < PATIENCE) return;
    await this.read();
  }

  /** Asks now. */
  async read(): Promise<void> {
    const who = session.keeper?.id;
    [this.#askedAt, this.#askedFor] = [Date.now(), who];
    if (who === undefined || !session.may('read', 'transfer')) return void (this.count = 0);
    try {
      const query = { side: 'received', state: 'offered', limit: 51 };
      const { items } = await api.get<Page<TransferItem>>('/transfers', { query });
      if (session.keeper?.id === who) this.count = items.length;
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
    }
  }
}

export const awaiting = new Awaiting();
