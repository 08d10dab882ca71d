import type { Intent } from '../api/intent.ts';
import { ProblemError } from '../api/problem.ts';
import { connection } from './connection.svelte.ts';
import type { QueueEntry } from './queue-entry.ts';
import { waiting, type Written } from './waiting.svelte.ts';

/** What became of something written down: it is in the register, or it waits on this device. */
export type WrittenOrWaiting<T> = { written: T; waits?: never } | { written?: never; waits: QueueEntry };

/**
 * Writes at once where the service answers. Where nobody answers, or something before it waits already, it waits on this device under the key
 * that it was sent under. Throws `ProblemError` where the register refuses, or the device cannot keep it.
 */
export async function writeOrWait<T>(intent: Intent, what: Written): Promise<WrittenOrWaiting<T>> {
  if (!mustWait(what)) {
    try {
      const version = what.version ?? undefined;
      const { path, body } = what;
      return {
        written: await (what.method === 'POST' ? intent.post<T>(path, body) : intent.patch<T>(path, body, version)),
      };
    } catch (error) {
      if (!(error instanceof ProblemError) || error.status !== 0) throw error;
    }
  }
  const sentUnder = intent.unanswered;
  const waits = await waiting.add({ ...what, ...(sentUnder === undefined ? {} : { sentUnder }) });
  intent.handOver();
  return { waits };
}

/** Whether there is no use in sending it now: nobody answers, or it changes what something that waits makes or changes. */
function mustWait({ of, record, method }: Written): boolean {
  if (connection.isOff || (of ?? null) !== null) return true;
  return method === 'PATCH' && waiting.open.some((entry) => entry.method === 'PATCH' && entry.record === record);
}
