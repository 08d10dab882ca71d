import { api } from '../api/client.ts';
import { undoOffer } from '../ui/undo.svelte.ts';

/**
 * Withdraws a record and offers to take that back. Nothing is asked first, since nothing is lost.
 * Throws `ProblemError` where living records depend on it.
 */
export async function withdraw(
  path: string,
  version: number,
  name: string,
  reason: string,
  onrestored: () => unknown,
): Promise<void> {
  const answer = await api.post(`${path}/withdrawal`, { reason }, { version });
  undoOffer.offer(`${name} withdrawn.`, answer, onrestored);
}
