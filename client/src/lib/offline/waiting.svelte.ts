import { newKey } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import { connection } from './connection.svelte.ts';
import { isFull } from './device-store.ts';
import type { NewEntry, Queue, rewritten } from './queue.ts';
import type { QueueEntry } from './queue-entry.ts';

/** How long sending is left alone after it failed, in ms: at first, and at most. */
const [shortest, longest] = [5_000, 300_000];
const [lockName, channelName] = ['linekeeper.sending', 'linekeeper.waiting'];

/** What is said otherwise in an entry that is written anew. */
type Rewritten = Parameters<typeof rewritten>[2];

/** What a form hands over: all that an entry needs but what the queue gives it. */
export type Written = Omit<NewEntry, 'id' | 'keeperId' | 'keeperName' | 'writtenAt' | 'key' | 'triedAt'> & {
  /** The key that the form has sent it under without an answer; left out where it was not sent. */
  readonly sentUnder?: string;
};

/**
 * What a keeper wrote down while nobody answered, as the screens show it. The queue itself is a plain list in the device's store, changed by
 * the functions of `queue.ts`; this class shows it, wakes the sending and tells other tabs.
 */
export class Waiting {
  entries = $state.raw<Queue>([]);
  /** The session has ended: sending waits until its keeper signs in again. */
  needsSignIn = $state(false);
  isSending = $state(false);
  /** What waits or has stopped; what is done is not counted. */
  readonly open = $derived(this.entries.filter(({ state }) => state !== 'done'));
  readonly stopped = $derived(this.open.filter(({ state }) => state !== 'waiting'));
  readonly count = $derived(this.open.length);
  /** Grows each time that something was written into the register: pages that show it read again. */
  sent = $state(0);
  #keeperId: string | null = null;
  #keeperName = '';
  #channel: BroadcastChannel | null = null;
  #shown: Promise<void> = Promise.resolve();
  /** Ids of what is done, as far as it is counted; null until the queue is shown. */
  #done: readonly string[] | null = null;
  #wait = shortest;
  #clock: ReturnType<typeof setTimeout> | undefined;

  /** Listens to the connection and to other tabs; gives the function that ends it. */
  start(): () => void {
    this.#channel = new BroadcastChannel(channelName);
    this.#channel.onmessage = () => void this.#show();
    const wake = (): void => void (!document.hidden && this.send());
    const away = connection.onBack(() => void this.send());
    window.addEventListener('focus', wake);
    return () => {
      away();
      window.removeEventListener('focus', wake);
      this.#channel?.close();
      clearTimeout(this.#clock);
    };
  }

  /** Shows what waits for whoever is signed in now, and sends it. */
  async of(keeper: { readonly id: string; readonly name: string } | null): Promise<void> {
    const keeperId = keeper?.id ?? null;
    this.#keeperName = keeper?.name ?? '';
    if (keeperId === this.#keeperId) return;
    this.#keeperId = keeperId;
    this.#done = null;
    this.needsSignIn = false;
    this.#shown = this.#show();
    await this.#shown;
    void this.send();
  }

  /** Takes a thing written down, for good. Rejects with words for the reader where the device cannot keep it. */
  async add({ sentUnder, ...written }: Written): Promise<QueueEntry> {
    // eslint-disable-next-line svelte/prefer-svelte-reactivity -- a moment, not a state
    const now = new Date().toISOString();
    const entry: NewEntry = {
      ...written,
      id: newKey(),
      keeperId: this.#keeperId ?? '',
      keeperName: this.#keeperName,
      writtenAt: now,
      key: sentUnder ?? newKey(),
      triedAt: sentUnder === undefined ? null : now,
    };
    const { added } = await import('./queue.ts');
    const queue = await this.change((before) => added(before, entry));
    // a device that runs out of room lets go of what sites keep; what waits should be the last to go
    void (navigator.storage as StorageManager | undefined)?.persist();
    const kept = queue.find((one) => one.id === entry.id);
    if (!kept) throw notKept(noStore);
    if (!connection.isOff) void this.send();
    return kept;
  }

  /** Changes what waits by one of the functions of `queue.ts`. Rejects with words for the reader. */
  async change(change: (queue: Queue) => Queue): Promise<Queue> {
    const keeperId = this.#keeperId;
    if (keeperId === null) throw notKept('Nobody is signed in, so nothing can be kept for anybody.');
    const { changeQueue } = await import('./queue-store.ts');
    try {
      const queue = await changeQueue(keeperId, change);
      if (keeperId === this.#keeperId) this.#take(queue);
      this.#channel?.postMessage(null);
      return queue;
    } catch (error) {
      throw notKept(isFull(error) ? noRoom : noStore);
    }
  }

  /** One entry of whoever is signed in; null where there is none of that id. */
  async entry(id: string | null): Promise<QueueEntry | null> {
    if (id === null) return null;
    await this.#shown;
    return this.entries.find((entry) => entry.id === id) ?? null;
  }

  /**
   * Writes an entry anew; `onto`: based on the record as the register has it now. Rejects with words for the reader where it is on its way.
   */
  async rewrite(id: string, said: Rewritten, onto: Parameters<typeof rewritten>[4] = null): Promise<void> {
    const queue = await import('./queue.ts');
    const key = newKey();
    const after = await this.change((before) => queue.rewritten(before, id, said, key, onto));
    const entry = after.find((one) => one.id === id);
    if (entry?.key !== key) throw notKept(entry?.state === 'done' ? isThere : onItsWay);
    if (!connection.isOff) void this.send();
  }

  /** Sends a stopped entry once more: as the same request, or as a new one where its keeper knows that the register does not have it. */
  async sendAgain(id: string, isNew: boolean): Promise<void> {
    const { resent } = await import('./queue.ts');
    await this.change((before) => resent(before, id, isNew ? newKey() : undefined));
    void this.send();
  }

  /** What nobody could tell of is this record of the register: what waits behind it is sent on. */
  async recognise(id: string, record: { readonly id: string; readonly version: number }): Promise<void> {
    const { recognised } = await import('./queue.ts');
    // eslint-disable-next-line svelte/prefer-svelte-reactivity -- a moment, not a state
    const now = new Date();
    await this.change((before) => recognised(before, id, record, now));
    void this.send();
  }

  /**
   * Throws an entry away, with what belongs to it; gives the function that puts it back. Rejects with words for the reader where it is on its
   * way to the register, so that nobody can tell yet whether it is there.
   */
  async throwAway(id: string): Promise<() => Promise<void>> {
    const { discarded, putBack } = await import('./queue.ts');
    let before: Queue = [];
    const after = await this.change((queue) => discarded((before = queue), id));
    if (after.some((entry) => entry.id === id)) throw notKept(onItsWay);
    return async () => {
      await this.change((queue) => putBack(queue, before, id));
      if (!connection.isOff) void this.send();
    };
  }

  /** Sends what waits, in one tab at a time; what cannot be sent now is tried again later. */
  async send(): Promise<void> {
    const keeperId = this.#keeperId;
    if (keeperId === null || this.isSending || !this.open.some(({ state }) => state === 'waiting')) return;
    clearTimeout(this.#clock);
    this.isSending = true;
    try {
      const { sendFor } = await import('./send-for.ts');
      const end = await oneTabAtATime(() => sendFor(keeperId, this));
      this.needsSignIn = end === 'signed-out';
      if (end === 'later') this.#later();
      else this.#wait = shortest;
    } catch {
      this.#later();
    } finally {
      this.isSending = false;
      await this.#show();
    }
  }

  /** Shows the queue; what is done is counted once, whoever sent it, and after the last of what is being sent. */
  #take(queue: Queue): void {
    this.entries = queue;
    if (this.isSending) return;
    const known = this.#done;
    this.#done = queue.filter(({ state }) => state === 'done').map(({ id }) => id);
    if (known && this.#done.some((id) => !known.includes(id))) this.sent++;
  }

  #later(): void {
    this.#clock = setTimeout(() => void this.send(), this.#wait);
    this.#wait = Math.min(longest, this.#wait * 2);
  }

  async #show(): Promise<void> {
    const keeperId = this.#keeperId;
    if (keeperId === null) return void (this.entries = []);
    try {
      const { readQueue } = await import('./queue-store.ts');
      const queue = await readQueue(keeperId);
      if (keeperId !== this.#keeperId) return;
      this.#take(queue);
    } catch {
      // without a store nothing waits
    }
  }
}

/** What waits, for whoever is signed in. */
export const waiting = new Waiting();

/** What the device could not do, told as a form tells what the service refused. */
const notKept = (detail: string): ProblemError => new ProblemError(0, { title: 'Not kept', detail });

const onItsWay =
  'It was sent and no answer came, so it may be in the register already. As soon as there is a connection that is known, and it can be taken back there.';
const isThere = 'It was sent meanwhile, as it was: the register has it. Change it there.';
const noRoom =
  'This device has no room left, so it was not kept. Leave this page open until there is a connection, or make room and write it down again.';
const noStore =
  'This browser keeps nothing for this address, so it was not kept. Leave this page open until there is a connection, then write it down.';

/** Without a lock (plain http) two tabs may send at once; the key of each entry still keeps it from being done twice. */
function oneTabAtATime<T>(work: () => Promise<T>): Promise<T> {
  const locks = navigator.locks as LockManager | undefined;
  return locks ? locks.request(lockName, work) : work();
}
