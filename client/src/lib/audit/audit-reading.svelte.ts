import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { LineAudit } from '../api/types.ts';

/** The audit of one line, read anew whenever it is asked; the answer that is shown stays until the next one has come. */
export class AuditReading {
  audit = $state.raw<LineAudit | null>(null);
  problem = $state('');
  busy = $state(false);
  #asking: AbortController | null = null;

  async read(lineId: string): Promise<void> {
    this.#asking?.abort();
    const asking = new AbortController();
    this.#asking = asking;
    this.busy = true;
    try {
      const audit = await api.get<LineAudit>(`/lines/${lineId}/audit`, { signal: asking.signal });
      if (asking.signal.aborted) return;
      this.audit = audit;
      this.problem = '';
    } catch (error) {
      if (asking.signal.aborted) return;
      if (!(error instanceof ProblemError)) throw error;
      this.problem = error.detail;
    } finally {
      if (this.#asking === asking) this.busy = false;
    }
  }

  /** Gives up what is asked for: nobody looks any more. */
  close(): void {
    this.#asking?.abort();
  }
}
