import { api, newKey } from './client.ts';
import { ProblemError } from './problem.ts';

/**
 * One write that a person means to make once. While no answer comes, a repeat of the same body carries the same
 * Idempotency-Key, so that a lost answer never writes twice; an answer of either kind ends the intent.
 */
export class Intent {
  #body = '';
  #key = '';

  /** Posts under the key of this intent, for a part of a record at the version it is based on. Throws `ProblemError`. */
  async post<T>(path: string, body: unknown, version?: number): Promise<T> {
    const text = path + JSON.stringify(body);
    if (text !== this.#body) {
      this.#body = text;
      this.#key = newKey();
    }
    try {
      const answer = await api.post<T>(path, body, {
        idempotencyKey: this.#key,
        ...(version === undefined ? {} : { version }),
      });
      this.#body = '';
      return answer;
    } catch (error) {
      if (!(error instanceof ProblemError) || error.status !== 0) this.#body = '';
      throw error;
    }
  }
}
