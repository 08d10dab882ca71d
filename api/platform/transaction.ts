import { AsyncLocalStorage } from 'node:async_hooks';
import type { DataSource, EntityManager } from 'typeorm';

/** A POST that carries an Idempotency-Key: its answer is kept in the very transaction that does the work. */
export interface KeyedRequest {
  readonly keeperId: string;
  readonly key: string;
  /** The status that its answer carries when it succeeds. */
  readonly status: number;
  isKept: boolean;
}

export const keyedRequest = new AsyncLocalStorage<KeyedRequest>();

/**
 * Runs `work` in one transaction: all of it is written, or nothing. What `work` gives is the answer of the request; for a
 * request with an Idempotency-Key it is stored with the work, so that a repeat after a lost connection or a crash gets
 * the same answer and writes nothing twice.
 */
export async function inTransaction<T>(
  dataSource: DataSource,
  work: (manager: EntityManager) => Promise<T>,
): Promise<T> {
  return dataSource.transaction(async (manager) => {
    const answer = await work(manager);
    const request = keyedRequest.getStore();
    if (request && !request.isKept) {
      await keepAnswer(manager, request, answer);
      request.isKept = true;
    }
    return answer;
  });
}

/** Stores the answer of a keyed request. */
export async function keepAnswer(manager: EntityManager, request: KeyedRequest, answer: unknown): Promise<void> {
  await manager.query('update idempotency_key set status = $3, body = $4 where keeper_id = $1 and key = $2', [
    request.keeperId,
    request.key,
    request.status,
    JSON.stringify(answer ?? null),
  ]);
}
