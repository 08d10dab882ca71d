import { undoOffer } from '../ui/undo.svelte.ts';
import type { QueueEntry } from './queue-entry.ts';
import { waiting } from './waiting.svelte.ts';

/** Says that something waits on this device, and offers to throw it away again; `after` shows that it was. */
export function tellWaiting(entry: QueueEntry, after?: () => void): void {
  undoOffer.say('Kept on this device until there is a connection.', async () => {
    await throwAway(entry, false);
    after?.();
  });
}

/** Throws an entry away, with what belongs to it, and offers to put it back. Rejects with words where it is on its way already. */
export async function throwAway(entry: QueueEntry, isTold = true): Promise<void> {
  const putBack = await waiting.throwAway(entry.id);
  if (isTold) undoOffer.say('Thrown away.', putBack);
}
