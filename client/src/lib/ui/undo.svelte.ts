import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { JournalEntry } from '../api/types.ts';

/** What was just done, and how to take it back. It stays until the next thing is done or it is put away. */
class UndoOffer {
  text = $state('');
  undo = $state.raw<(() => Promise<void>) | null>(null);
  /** Why it was not taken back: what was written since. */
  since = $state.raw<readonly JournalEntry[]>([]);

  /** Says that something is done; with `undo`, offers to take it back. */
  say(text: string, undo: (() => Promise<void>) | null = null): void {
    this.text = text;
    this.undo = undo;
    this.since = [];
  }

  /**
   * Says that something is done and offers to take it back through the journal. `answer` is what the client gave for the write;
   * `after` shows the record as it is once that is taken back.
   */
  offer(text: string, answer: unknown, after: () => unknown): void {
    this.#offer(text, takenBack(text), answer, after);
  }

  /** As `offer`, for what took several writes: they are taken back together, the last first. */
  offerAll(text: string, answers: readonly unknown[], after: () => unknown): void {
    const entries = answers.flatMap((answer) => api.entryOf(answer) ?? []);
    if (entries.length <= 1) {
      this.offer(text, answers[0], after);
      return;
    }
    this.say(text, async () => {
      for (const entry of entries.toReversed()) await api.post<JournalEntry>(`/journal/${entry}/reversal`, {});
      await after();
      this.say(takenBack(text));
    });
  }

  /** Undoes the change of one entry of the journal. Throws `ProblemError`. */
  reverse(entry: string, text: string, after: () => unknown): Promise<void> {
    return this.#reverse(entry, takenBack(text), text, after);
  }

  /** `now` says what is done, `undone` what is said once it is taken back; an undo can be undone, then they change places. */
  #offer(now: string, undone: string, answer: unknown, after: () => unknown): void {
    const entry = api.entryOf(answer);
    this.say(now, entry === undefined ? null : () => this.#reverse(entry, undone, now, after));
  }

  async #reverse(entry: string, now: string, undone: string, after: () => unknown): Promise<void> {
    const answer = await api.post<JournalEntry>(`/journal/${entry}/reversal`, {});
    await after();
    this.#offer(now, undone, answer, after);
  }

  /** Takes back what is offered, or says why not. */
  async takeBack(): Promise<void> {
    const { undo } = this;
    if (!undo) return;
    const taking = 'Taking it back …';
    this.say(taking);
    try {
      await undo();
      if (this.text === taking) this.putAway();
    } catch (error) {
      this.say(error instanceof Error ? `Not taken back. ${error.message}` : 'Not taken back.');
      if (error instanceof ProblemError) this.since = entriesSince(error);
    }
  }

  putAway(): void {
    this.say('');
  }
}

const takenBack = (text: string): string => `Taken back: ${text}`;

export const undoOffer = new UndoOffer();

/** The entries that stand in the way of an undo. */
export function entriesSince(problem: ProblemError): readonly JournalEntry[] {
  const { since } = problem.document;
  return Array.isArray(since) ? (since as JournalEntry[]) : [];
}
