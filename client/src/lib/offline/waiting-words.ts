import { makerOf, type Queue } from './queue.ts';
import type { QueueEntry } from './queue-entry.ts';

/** The page of a record that an entry names. */
export const addressOf = (record: string): string => `/${record.replace(/^individuals\//, 'animals/')}`;

/** Where an entry stands, as a sentence. */
export function standingInWords(entry: QueueEntry, queue: Queue): string {
  if (entry.state === 'changed') return 'Somebody changed this record after you read it. Decide what is to stand.';
  if (entry.state === 'refused') return 'The register does not take it as it is.';
  if (entry.state === 'unsure') return 'Nobody can tell whether the register has it.';
  if (entry.triedAt !== null && entry.after === null)
    return 'Sent, but no answer came. It is asked for again and never written twice.';
  if (entry.after === null) return 'Waits for a connection.';
  return makerOf(queue, entry) === entry.after
    ? 'Waits for its clutch to be written.'
    : 'Waits for what you wrote before.';
}
