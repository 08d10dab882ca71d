import type { CountedClutch } from '../housing/clutch-counts.svelte.ts';
import { recordToCome, type QueueEntry } from './queue-entry.ts';
import type { Queue } from './queue.ts';
import { waitingBehind } from './with-waiting.ts';

/** A clutch that waits itself, with all that waits behind it, as its counting form begins. */
export function clutchToCome(maker: QueueEntry, queue: Queue): CountedClutch {
  const empty = {
    eggs: null,
    fertile: null,
    hatched: null,
    outOfWater: null,
    laid: null,
    hatchedOn: null,
    site: null,
    code: null,
    notes: null,
  };
  const said = [maker, ...waitingBehind(queue, maker).filter(({ kind }) => kind === 'counts')].map(({ body }) => body);
  return Object.assign({ ...empty, losses: [] }, ...said) as CountedClutch;
}

/** Counts of a clutch that waits itself, as they wait behind it. */
export function countsToCome(
  maker: QueueEntry,
): Pick<QueueEntry, 'kind' | 'method' | 'path' | 'record' | 'version' | 'name'> & { of: string } {
  return {
    kind: 'counts',
    method: 'PATCH',
    path: `/clutches/${recordToCome}`,
    record: null,
    version: null,
    name: 'Counts of a clutch that waits',
    of: maker.id,
  };
}
