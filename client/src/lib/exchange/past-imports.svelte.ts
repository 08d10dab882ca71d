import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { Page, PastImport } from '../api/types.ts';
import { undoOffer } from '../ui/undo.svelte.ts';

/** The sheets that were taken before, newest first. */
export class PastImports {
  items = $state.raw<PastImport[]>([]);
  next = $state<string | null>(null);
  problem = $state('');
  isRead = $state(false);

  /** Reads the newest ones, or the page after what is shown. */
  async read(after: string | null = null): Promise<void> {
    try {
      const page = await api.get<Page<PastImport>>('/imports', { query: { limit: 10, after } });
      this.items = after === null ? page.items : [...this.items, ...page.items];
      this.next = page.next;
      this.problem = '';
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      this.problem = error.detail;
    } finally {
      this.isRead = true;
    }
  }

  /** Takes everything back that a sheet brought, or nothing. Throws `ProblemError` with what depends on it. */
  async undo(sheet: PastImport, reason: string): Promise<void> {
    const answer = await api.post<PastImport>(`/imports/${sheet.id}/withdrawal`, { reason });
    await this.#settle('The import is taken back.', answer);
  }

  /** Brings an import back that was undone. Throws `ProblemError`. */
  async restore(sheet: PastImport): Promise<void> {
    const answer = await api.delete<PastImport>(`/imports/${sheet.id}/withdrawal`);
    await this.#settle('The import stands again.', answer);
  }

  async #settle(words: string, answer: PastImport): Promise<void> {
    undoOffer.offer(words, answer, () => this.read());
    await this.read();
  }
}
