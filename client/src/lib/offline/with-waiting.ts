import { makerOf, type Queue } from './queue.ts';
import type { QueueEntry } from './queue-entry.ts';

/** A record as it will be once what waits for it is written. */
export function withWaiting<T extends object>(record: T, name: string, queue: Queue): T {
  const changes = queue.filter((entry) => entry.method === 'PATCH' && entry.record === name);
  return changes.reduce<T>((now, { body }) => ({ ...now, ...body }), record);
}

/** What waits for a record, in the order of writing: changes of it and remarks on it. */
export const waitingFor = (queue: Queue, record: string): Queue => queue.filter((entry) => entry.record === record);

/** What waits for a record that waits itself. */
export const waitingBehind = (queue: Queue, maker: QueueEntry): Queue =>
  queue.filter((entry) => entry !== maker && makerOf(queue, entry) === maker.id);
