import { next, settled, started, type Outcome, type Queue } from './queue.ts';
import type { QueueEntry } from './queue-entry.ts';

/** What sending needs of the world. */
export interface Post {
  /** Changes what waits, for good, before anything else happens; gives it as it is then. */
  readonly change: (change: (queue: Queue) => Queue) => Promise<Queue>;
  /** Sends one entry and tells what came of it. */
  readonly send: (entry: QueueEntry) => Promise<Outcome>;
  readonly now: () => Date;
}

/**
 * Sends what waits for a keeper, one after the other in the order of writing, until nothing can be sent. That an entry is on its way is
 * written down before it goes, and what came of it afterwards: cut short at any moment, the next run goes on where this one was, and the
 * entry's own key keeps the register from doing it twice. Gives whether to try again later.
 */
export async function sendQueue(keeperId: string, { change, send, now }: Post): Promise<boolean> {
  for (;;) {
    let id = '';
    const queue = await change((before) => {
      id = next(before, keeperId)?.id ?? '';
      return id === '' ? before : started(before, id, now());
    });
    if (id === '') return false;
    const entry = queue.find((one) => one.id === id);
    // one that stopped instead of starting leaves the way free for others
    if (entry?.state !== 'waiting') continue;
    const outcome = await send(entry);
    if (outcome.kind === 'again') return true;
    await change((before) => settled(before, id, outcome, now()));
  }
}
