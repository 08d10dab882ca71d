import type { Queue } from './queue.ts';

/** How much waits, and what it waits for: `3 waiting`, `3 waiting, 1 for your decision`. */
export function waitingInWords(what: { count: number; stopped: Queue; needsSignIn: boolean }): string {
  const { count, needsSignIn } = what;
  const stopped = what.stopped.length;
  if (stopped === 0) return needsSignIn ? `${count} waiting: sign in to send` : `${count} waiting`;
  return stopped === count ? `${count} waiting for your decision` : `${count} waiting, ${stopped} for your decision`;
}
