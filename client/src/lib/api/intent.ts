import { api, newKey } from './client.ts';
import { ProblemError } from './problem.ts';

/**
 * One write that a person means to make once. While no answer comes, a repeat of the same body carries the same
 * Idempotency-Key, so that a lost answer never writes twice; an answer of either kind ends the intent.
 */
export class Intent {
  #body = '';
  #key = '';

  /** The key under which it was sent and not answered; undefined where it was not sent, or was answered. */
  get unanswered(): string | undefined {
    return this.#body === '' ? undefined : this.#key;
  }

  /**
   * Posts under the key of this intent, for a part of a record at the version it is based on; `patience`: how long an answer is waited for, ms.
   * Throws `ProblemError`.
   */
  post<T>(path: string, body: unknown, version?: number, patience?: number): Promise<T> {
    return this.#once(path, body, version, (options) => api.post<T>(path, body, { ...options, ...limit(patience) }));
  }

  /** Changes a record at a version under the key of this intent. Throws `ProblemError`. */
  patch<T>(path: string, body: unknown, version?: number, patience?: number): Promise<T> {
    return this.#once(path, body, version, (options) => api.patch<T>(path, body, { ...options, ...limit(patience) }));
  }

  /** Somebody else sees to it now, under the same key. */
  handOver(): void {
    this.#body = '';
  }

  async #once<T>(
    path: string,
    body: unknown,
    version: number | undefined,
    send: (options: { idempotencyKey: string; version?: number }) => Promise<T>,
  ): Promise<T> {
    const text = path + JSON.stringify(body);
    if (text !== this.#body) {
      this.#body = text;
      this.#key = newKey();
    }
    try {
      const answer = await send({ idempotencyKey: this.#key, ...(version === undefined ? {} : { version }) });
      this.#body = '';
      return answer;
    } catch (error) {
      if (!(error instanceof ProblemError) || error.status !== 0) this.#body = '';
      throw error;
    }
  }
}

const limit = (patience: number | undefined): { patience?: number } => (patience === undefined ? {} : { patience });
