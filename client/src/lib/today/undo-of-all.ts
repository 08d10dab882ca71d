import { api } from '../api/client.ts';
import type { JournalEntry } from '../api/types.ts';
import { undoOffer } from '../ui/undo.svelte.ts';

/** Says that something is done by several writes, and offers to take all of them back, the last first. */
export function offerUndoOfAll(text: string, answers: readonly unknown[], after: () => unknown): void {
  const [only, ...others] = answers;
  if (others.length === 0) {
    undoOffer.offer(text, only, after);
    return;
  }
  const entries = answers.flatMap((answer) => api.entryOf(answer) ?? []).toReversed();
  undoOffer.say(text, async () => {
    for (const entry of entries) await api.post<JournalEntry>(`/journal/${entry}/reversal`, {});
    await after();
    undoOffer.say(`Taken back: ${text}`);
  });
}
