import { recordToCome, type QueueEntry, type Refusal } from './queue-entry.ts';

/** What waits, in the order of writing. Every function gives a new queue and leaves the one that it was given as it was. */
export type Queue = readonly QueueEntry[];

/** What came of sending an entry. `again`: no answer, or one that says to come back later. */
export type Outcome =
  | { readonly kind: 'done'; readonly id: string; readonly version: number | null }
  | { readonly kind: 'again' }
  | { readonly kind: 'stopped'; readonly as: 'changed' | 'refused' | 'unsure'; readonly refusal: Refusal };

/** After which time a POST whose answer was lost is not repeated unasked: the register forgets keys after seven days, in ms. */
const keyLasts = 6 * 86_400_000;

/** What an entry is given, before it has its place in the queue. */
export type NewEntry = Omit<QueueEntry, 'place' | 'after' | 'state' | 'refusal' | 'doneAt'> & {
  /** The entry that makes the record which this one is about, where that is not written yet. */
  readonly of?: string | null;
};

/** Adds an entry at the end: behind what waits for the same record, since it was written with that in mind. */
export function added(queue: Queue, { of = null, ...entry }: NewEntry): Queue {
  const same = queue.filter(
    (other) => other.keeperId === entry.keeperId && entry.method === 'PATCH' && isOfOneRecord(queue, other, entry, of),
  );
  const place = Math.max(0, ...queue.map((other) => other.place)) + 1;
  const whole: QueueEntry = {
    ...entry,
    after: same.at(-1)?.id ?? of,
    place,
    state: 'waiting',
    refusal: null,
    doneAt: null,
  };
  const front = queue.find((other) => other.id === whole.after);
  // it was begun before what it waits for was written
  return [...queue, front?.state === 'done' ? based(whole, front) : whole];
}

/** Whether an entry changes the record that a new one changes. */
function isOfOneRecord(queue: Queue, other: QueueEntry, entry: Pick<QueueEntry, 'record'>, of: string | null): boolean {
  if (other.method !== 'PATCH' || other.state === 'done') return false;
  return of === null ? other.record !== null && other.record === entry.record : makerOf(queue, other) === of;
}

/** The entry that makes the record which an entry changes or is about, following the order back; null where the register has it. */
export function makerOf(queue: Queue, entry: QueueEntry): string | null {
  let at: QueueEntry | undefined = entry;
  while (at && at.record === null && at.after !== null) {
    const before = queue.find((other) => other.id === at?.after);
    if (before?.kind === 'clutch') return before.id;
    at = before;
  }
  return null;
}

/** The next entry to send: the first that waits for nothing. */
export function next(queue: Queue, keeperId: string): QueueEntry | null {
  const ready = queue.filter(
    (entry) => entry.keeperId === keeperId && entry.state === 'waiting' && entry.after === null,
  );
  return ready.reduce<QueueEntry | null>((first, entry) => (first && first.place < entry.place ? first : entry), null);
}

/** Notes that an entry is about to be sent. One that was sent too long ago for its key to count stops instead. */
export function started(queue: Queue, id: string, now: Date): Queue {
  return changed(queue, id, (entry) => {
    const isOld = entry.triedAt !== null && now.getTime() - Date.parse(entry.triedAt) > keyLasts;
    if (isOld && entry.method === 'POST') return { ...entry, state: 'unsure', refusal: keyForgotten };
    return { ...entry, triedAt: entry.triedAt ?? now.toISOString() };
  });
}

const keyForgotten: Refusal = {
  status: 0,
  detail:
    'It was sent more than six days ago and no answer came, so the register may have it already. Look there first.',
  errors: [],
  current: null,
};

/** Takes the outcome of an entry. What is done is kept as such for a while, and what waited for it may go on. */
export function settled(queue: Queue, id: string, outcome: Outcome, now: Date): Queue {
  if (outcome.kind === 'again') return queue;
  if (outcome.kind === 'stopped')
    return changed(queue, id, (entry) => ({ ...entry, state: outcome.as, refusal: outcome.refusal }));
  const entry = queue.find((one) => one.id === id);
  if (!entry || entry.state === 'done') return queue;
  const done: QueueEntry = {
    ...entry,
    state: 'done',
    doneAt: now.toISOString(),
    refusal: null,
    record: entry.kind === 'clutch' ? `clutches/${outcome.id}` : entry.record,
    version: outcome.version,
  };
  return queue.map((one) => (one === entry ? done : one.after === id ? based(one, done) : one));
}

/** An entry that waited for another, now that this one is written. */
function based(entry: QueueEntry, done: QueueEntry): QueueEntry {
  const record = entry.record ?? done.record;
  const id = record?.split('/')[1] ?? recordToCome;
  const fill = (value: unknown): unknown => (value === recordToCome ? id : value);
  return {
    ...entry,
    after: null,
    record,
    path: entry.path.replace(recordToCome, id),
    body: Object.fromEntries(Object.entries(entry.body).map(([name, value]) => [name, fill(value)])),
    version: entry.method === 'PATCH' ? done.version : null,
  };
}

/** Lets go of what was done longer than a day ago. */
export function tidied(queue: Queue, now: Date): Queue {
  const isOld = (entry: QueueEntry): boolean =>
    entry.doneAt !== null && now.getTime() - Date.parse(entry.doneAt) > doneLasts;
  return queue.filter((entry) => !isOld(entry));
}

/** How long the queue knows what was done, in ms. */
const doneLasts = 86_400_000;

/** An entry that may be changed or thrown away: it certainly did not reach the register, or was refused by it. */
export const isOpen = (entry: QueueEntry): boolean =>
  entry.state === 'changed' || entry.state === 'refused' || (entry.state === 'waiting' && entry.triedAt === null);

/** Whether an entry may be thrown away: also one of which nobody can tell, once the keeper has looked. */
export const isDisposable = (entry: QueueEntry): boolean => isOpen(entry) || entry.state === 'unsure';

/**
 * Writes an entry anew. It is a new request with a key of its own, so it must not have been sent without an answer (`isOpen`); the queue is
 * left as it is otherwise. `onto`: the record as the register has it now, which it is based on from here.
 */
export function rewritten(
  queue: Queue,
  id: string,
  said: Partial<Pick<QueueEntry, 'body' | 'words' | 'draft' | 'base' | 'name'>>,
  key: string,
  onto: { version: number; base: QueueEntry['base'] } | null = null,
): Queue {
  return changed(queue, id, (entry) =>
    isOpen(entry)
      ? {
          ...entry,
          ...said,
          key,
          triedAt: null,
          state: 'waiting',
          refusal: null,
          ...(onto ? { version: onto.version, base: onto.base } : {}),
        }
      : entry,
  );
}

/** Sends a stopped entry once more as it was: under the same key, or under a new one where the keeper knows that it is not there. */
export function resent(queue: Queue, id: string, key?: string): Queue {
  return changed(queue, id, (entry) => ({
    ...entry,
    state: 'waiting',
    refusal: null,
    ...(key === undefined ? {} : { key, triedAt: null }),
  }));
}

/** Its keeper found in the register what an unsure entry says: what waits behind it goes on from there. */
export function recognised(
  queue: Queue,
  id: string,
  record: { readonly id: string; readonly version: number },
  now: Date,
): Queue {
  const isUnsure = queue.some((entry) => entry.id === id && entry.state === 'unsure');
  return isUnsure ? settled(queue, id, { kind: 'done', ...record }, now) : queue;
}

/** What goes with an entry when it is thrown away: all that needs the record which it makes. */
export function goingWith(queue: Queue, id: string): Queue {
  const entry = queue.find((one) => one.id === id);
  if (entry?.kind !== 'clutch') return [];
  return queue.filter((other) => other.id !== id && other.state !== 'done' && makerOf(queue, other) === id);
}

/** Throws an entry away, with what goes with it. What only waited its turn behind it moves up, onto what it was based on. */
export function discarded(queue: Queue, id: string): Queue {
  const entry = queue.find((one) => one.id === id);
  if (!entry || !isDisposable(entry)) return queue;
  const gone = new Set([id, ...goingWith(queue, id).map((one) => one.id)]);
  return queue
    .filter((one) => !gone.has(one.id))
    .map((one) => (one.after === id ? { ...one, after: entry.after, version: entry.version } : one));
}

/** Puts back what `discarded` took from `before`. What moved up onto its base waits for it again, unless it is on its way already. */
export function putBack(queue: Queue, before: Queue, id: string): Queue {
  const known = new Set(queue.map((one) => one.id));
  const gone = before.filter((one) => one.id === id || goingWith(before, id).includes(one));
  const taken = gone.filter((one) => !known.has(one.id));
  const back = new Set(taken.map((one) => one.id));
  const missing = taken.map((one) => reattached(one, queue, before, back));
  const waited = new Set(before.filter((one) => one.after === id).map((one) => one.id));
  const rest = queue.map((one) =>
    waited.has(one.id) && isOpen(one) && missing.length > 0 ? { ...one, after: id, version: null } : one,
  );
  return [...rest, ...missing].sort((a, b) => a.place - b.place);
}

/** An entry as it stands behind whatever of what it waited for is left, or comes `back` with it. */
function reattached(entry: QueueEntry, queue: Queue, before: Queue, back: ReadonlySet<string>): QueueEntry {
  if (entry.after === null || back.has(entry.after)) return entry;
  const front = queue.find((one) => one.id === entry.after);
  if (front?.state === 'done') return based(entry, front);
  const was = before.find((one) => one.id === entry.after);
  // what it waits for is gone by itself: then it stands where that one stood
  return front || !was ? entry : reattached({ ...entry, after: was.after, version: was.version }, queue, before, back);
}

const changed = (queue: Queue, id: string, change: (entry: QueueEntry) => QueueEntry): Queue =>
  queue.map((entry) => (entry.id === id ? change(entry) : entry));
