import { AsyncLocalStorage } from 'node:async_hooks';
import type { DataSource, EntityManager } from 'typeorm';
import { currentRequest } from './acting.ts';

/** A POST or PATCH that carries an Idempotency-Key: its answer is kept in the very transaction that does the work. */
export interface KeyedRequest {
  readonly keeperId: string;
  readonly key: string;
  /** The status that its answer carries when it succeeds. */
  readonly status: number;
  /** Whether its answer holds a secret, which is shown once and stored nowhere. */
  readonly isShownOnce: boolean;
  isKept: boolean;
}

export const keyedRequest = new AsyncLocalStorage<KeyedRequest>();

type Step = () => Promise<void>;

/** What is still to be done in each open transaction once its work is done. */
const lastSteps = new WeakMap<EntityManager, Step[]>();
const committed = new WeakMap<DataSource, Set<() => void>>();

/**
 * Runs `work` in one transaction: all of it is written, or nothing. What `work` gives is the answer of the request; for a
 * request with an Idempotency-Key it is stored with the work, so that a repeat after a lost connection or a crash gets
 * the same answer and writes nothing twice.
 */
export async function inTransaction<T>(
  dataSource: DataSource,
  work: (manager: EntityManager) => Promise<T>,
): Promise<T> {
  const asked = currentRequest();
  const entryBefore = asked?.journalEntryId;
  try {
    const answer = await dataSource.transaction((manager) => workWhole(manager, work));
    for (const listener of committed.get(dataSource) ?? []) listener();
    return answer;
  } catch (error) {
    // what was rolled back left no entry
    if (asked) asked.journalEntryId = entryBefore;
    throw error;
  }
}

async function workWhole<T>(manager: EntityManager, work: (manager: EntityManager) => Promise<T>): Promise<T> {
  lastSteps.set(manager, []);
  const answer = await work(manager);
  await finishSteps(manager);
  if (currentRequest()?.isGivenUp) throw new Error('its time was over: the transaction is rolled back');
  const request = keyedRequest.getStore();
  if (request && !request.isKept) {
    await keepAnswer(manager, request, answer);
    request.isKept = true;
  }
  return answer;
}

/** Adds a step that runs when the work of this transaction is done, before anything of it is committed. */
export function beforeCommit(manager: EntityManager, step: () => Promise<void>): void {
  const steps = lastSteps.get(manager);
  if (!steps) throw new Error('this change runs outside of inTransaction, where nobody would note it');
  steps.push(step);
}

/** Runs the last steps now, for work whose answer tells what they wrote. */
export async function finishSteps(manager: EntityManager): Promise<void> {
  const steps = lastSteps.get(manager) ?? [];
  for (let step = steps.shift(); step; step = steps.shift()) await step();
}

/** Calls `listener` after every transaction that `inTransaction` committed; gives the function that ends it. */
export function onCommit(dataSource: DataSource, listener: () => void): () => void {
  const listeners = committed.get(dataSource) ?? new Set();
  committed.set(dataSource, listeners.add(listener));
  return () => listeners.delete(listener);
}

/** Only what succeeded is stored, so that this status can stand for an answer that is not. */
export const shownOnceStatus = 409;

/** Stores the answer of a keyed request; of one that holds a secret, only that it was given. */
export async function keepAnswer(manager: EntityManager, request: KeyedRequest, answer: unknown): Promise<void> {
  await manager.query(
    'update idempotency_key set status = $3, body = $4, journal_entry_id = $5 where keeper_id = $1 and key = $2',
    [
      request.keeperId,
      request.key,
      request.isShownOnce ? shownOnceStatus : request.status,
      request.isShownOnce ? null : JSON.stringify(answer ?? null),
      currentRequest()?.journalEntryId ?? null,
    ],
  );
}
