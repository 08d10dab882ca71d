import type { AnswerKeeper } from '../api/client.ts';
import { kept } from '../ui/kept.ts';
import { connection } from './connection.svelte.ts';
import { findAnswer, forgetSeen, keepAnswer, lastSession, rememberSession } from './seen-records.ts';

/** What other tabs are told: somebody else is signed in now. */
const channelName = 'linekeeper.signed-in';
/** Whose pages were shown here last: the next start asks in their name before its scripts are there (`app.html`). */
const keeperKey = 'linekeeper.keeper';
/** What the palette and the clutch form remember; it tells of the animals of whoever was signed in. */
const alsoRemembered = ['linekeeper.recent-animals', 'linekeeper.last-place'];

/**
 * What this device remembers for whoever is signed in, so that records seen lately open without a connection. Where the browser has no store,
 * or closes it, nothing is remembered and nothing breaks.
 */
class Device implements AnswerKeeper {
  /** When the oldest thing on this page was seen, in ms since 1970; null while all of it comes from the service itself. */
  seenAt = $state<number | null>(null);
  #keeperId: string | null = null;
  #channel: BroadcastChannel | null = null;

  get isOff(): boolean {
    return connection.isOff;
  }
  readonly reached = connection.heard;

  /** Hears from other tabs that somebody signs in or out there; gives the function that ends it. */
  start(onother: () => void): () => void {
    this.#channel = new BroadcastChannel(channelName);
    this.#channel.onmessage = onother;
    return () => this.#channel?.close();
  }

  /** A new page is opened: nothing of it is old yet. */
  turnPage(): void {
    this.seenAt = null;
  }

  /** Takes what the service says of who is signed in; what others saw on this device is forgotten, which is waited for if they did. */
  async signedIn(keeperId: string | null, answer: unknown): Promise<void> {
    const last = this.#keeperId ?? kept.get(keeperKey) ?? keeperOf(await quietly(lastSession));
    this.#keeperId = keeperId;
    kept.set(keeperKey, keeperId);
    const remembered = quietly(async () => {
      if (last !== null && last !== keeperId) for (const key of alsoRemembered) localStorage.removeItem(key);
      await forgetSeen(keeperId);
      if (keeperId !== null) await rememberSession(keeperId, JSON.stringify(answer));
    });
    if (last === keeperId && keeperId !== null) return;
    await remembered;
    if (last !== keeperId) this.#channel?.postMessage(keeperId);
  }

  /** Who was signed in here when the service last answered; null where nobody was or nothing is remembered. */
  async remembered(): Promise<unknown> {
    const text = await quietly(lastSession);
    this.#keeperId = keeperOf(text);
    return text === null ? null : (JSON.parse(text) as unknown);
  }

  /** For whom an answer is kept is settled when it is asked for. */
  watch(address: string): (text: string) => void {
    const keeperId = this.#keeperId;
    return (text) => {
      if (keeperId !== null && keeperId === this.#keeperId)
        void quietly(() => keepAnswer(keeperId, address, text, Date.now()));
    };
  }

  async find(address: string): Promise<string | null> {
    const keeperId = this.#keeperId;
    if (keeperId === null) return null;
    const seen = await quietly(() => findAnswer(keeperId, address));
    if (!seen || keeperId !== this.#keeperId) return null;
    this.seenAt = Math.min(seen.seenAt, this.seenAt ?? Infinity);
    return seen.text;
  }
}

/** What this device remembers. */
export const device = new Device();

const keeperOf = (session: string | null): string | null =>
  session === null ? null : ((JSON.parse(session) as { keeper?: { id?: string } | null }).keeper?.id ?? null);

/** How long the store is waited for, in ms: some browsers never open it. */
const patience = 2000;

/** A store that is closed to us, or full, only means that nothing is remembered. */
async function quietly<T>(work: () => Promise<T>): Promise<T | null> {
  try {
    const late = new Promise<null>((resolve) => setTimeout(resolve, patience, null));
    return await Promise.race([work(), late]);
  } catch {
    return null;
  }
}
