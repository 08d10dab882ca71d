import { deviceStore } from './device-store.ts';
import type { Queue } from './queue.ts';

/** What waits on this device for one keeper, in the order of writing. */
export async function readQueue(keeperId: string): Promise<Queue> {
  const store = await deviceStore();
  return inOrder(await store.getAllFromIndex('queue', 'ofKeeper', keeperId));
}

/**
 * Changes what waits for one keeper, in one transaction: other tabs see all of the change or nothing, and wait their turn. Gives the queue
 * as it is then. Rejects, and changes nothing, where the device has no room left.
 */
export async function changeQueue(keeperId: string, change: (queue: Queue) => Queue): Promise<Queue> {
  const store = await deviceStore();
  const work = store.transaction('queue', 'readwrite', { durability: 'strict' });
  const before = inOrder(await work.store.index('ofKeeper').getAll(keeperId));
  const after = change(before);
  const kept = new Set(after.map((entry) => entry.id));
  const writes = [
    ...after.filter((entry) => !before.includes(entry)).map((entry) => work.store.put(entry)),
    ...before.filter((entry) => !kept.has(entry.id)).map((entry) => work.store.delete(entry.id)),
  ];
  await Promise.all([...writes, work.done]);
  return after;
}

/** How much waits on this device for each keeper, and what the club calls them ('' where that was not kept): whoever it is that looks. */
export async function waitingOfAll(): Promise<{ name: string; count: number }[]> {
  const store = await deviceStore();
  const found = new Map<string, { name: string; count: number }>();
  for (const { keeperId, keeperName = '', state } of await store.getAll('queue')) {
    if (state === 'done') continue;
    const before = found.get(keeperId);
    found.set(keeperId, { name: keeperName || (before?.name ?? ''), count: (before?.count ?? 0) + 1 });
  }
  return [...found.values()];
}

const inOrder = (queue: Queue): Queue => [...queue].sort((a, b) => a.place - b.place);
