import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import { namesOf, outcomeOf } from './outcome.ts';
import { tidied, type Outcome, type Queue } from './queue.ts';
import { answersWithin, type QueueEntry } from './queue-entry.ts';
import { sendQueue } from './send-queue.ts';

interface Changeable {
  change: (change: (queue: Queue) => Queue) => Promise<Queue>;
}

/**
 * Sends what waits for a keeper, once it is certain that the service is there and that it is this keeper who is signed in: nothing is ever
 * written in the name of another. `later`: no answer came. `signed-out`: its keeper has to sign in first.
 */
export async function sendFor(keeperId: string, waiting: Changeable): Promise<'done' | 'later' | 'signed-out'> {
  try {
    const { keeper } = await api.get<{ keeper: { id: string } | null }>('/session', {
      patience: answersWithin,
    });
    if (keeper?.id !== keeperId) return 'signed-out';
  } catch (error) {
    if (error instanceof ProblemError) return 'later';
    throw error;
  }
  await waiting.change((queue) => tidied(queue, new Date()));
  const isLater = await sendQueue(keeperId, {
    change: (change) => waiting.change(change),
    send,
    now: () => new Date(),
  });
  return isLater ? 'later' : 'done';
}

async function send(entry: QueueEntry): Promise<Outcome> {
  const options = { idempotencyKey: entry.key, onlyAs: entry.keeperId, patience: answersWithin };
  try {
    const answer =
      entry.method === 'POST'
        ? await api.post<Record<string, unknown>>(entry.path, entry.body, options)
        : await api.patch<Record<string, unknown>>(entry.path, entry.body, { ...options, version: entry.version ?? 0 });
    return { kind: 'done', ...namesOf(answer) };
  } catch (error) {
    if (error instanceof ProblemError) return outcomeOf(entry, error);
    throw error;
  }
}
