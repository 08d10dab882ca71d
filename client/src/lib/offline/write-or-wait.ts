import type { Intent } from '../api/intent.ts';
import { ProblemError } from '../api/problem.ts';
import { connection } from './connection.svelte.ts';
import { answersWithin, type QueueEntry } from './queue-entry.ts';
import { waiting, type Written } from './waiting.svelte.ts';

/** What became of something written down: it is in the register, or it waits on this device. */
export type WrittenOrWaiting<T> = { written: T; waits?: never } | { written?: never; waits: QueueEntry };

/**
 * Writes at once where the service answers. Where nobody answers in time, or something before it waits already, it waits on this device under the
 * key that it was sent under. Throws `ProblemError` where the register refuses, or the device cannot keep it.
 */
export async function writeOrWait<T>(intent: Intent, what: Written): Promise<WrittenOrWaiting<T>> {
  const isFree = !isBehind(what);
  const isTried = isFree && !connection.isOff;
  if (isTried) {
    try {
      return { written: await send<T>(intent, what) };
    } catch (error) {
      if (!isUnanswered(error)) throw error;
    }
  }
  try {
    const sentUnder = intent.unanswered;
    const waits = await waiting.add({ ...what, ...(sentUnder === undefined ? {} : { sentUnder }) });
    intent.handOver();
    return { waits };
  } catch (notKept) {
    if (!isFree || isTried) throw notKept;
    // a device that cannot keep it: perhaps there is a connection again by now
    try {
      return { written: await send<T>(intent, what) };
    } catch (error) {
      throw isUnanswered(error) ? notKept : error;
    }
  }
}

function send<T>(intent: Intent, { method, path, body, version }: Written): Promise<T> {
  if (method === 'POST') return intent.post<T>(path, body, undefined, answersWithin);
  return intent.patch<T>(path, body, version ?? undefined, answersWithin);
}

const isUnanswered = (error: unknown): boolean => error instanceof ProblemError && error.status === 0;

/** Whether there is no use in sending it now: it changes what something that waits makes or changes. */
function isBehind({ of, record, method }: Written): boolean {
  if ((of ?? null) !== null) return true;
  return method === 'PATCH' && waiting.open.some((entry) => entry.method === 'PATCH' && entry.record === record);
}
