import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { Claim, Evidence } from '../api/types.ts';
import { session } from '../people/session.svelte.ts';
import type { ClaimSubject } from './claim-draft.svelte.ts';

/** The claims about one record, each with its evidence. */
export class ClaimReading {
  /** Null while they are read for the first time. */
  claims = $state.raw<readonly Claim[] | null>(null);
  problem = $state('');
  #evidence = $state.raw<readonly Evidence[]>([]);
  #last = 0;

  /** Reads them; what comes back after a later reading began is let go. */
  async read(subject: ClaimSubject): Promise<void> {
    const own = ++this.#last;
    try {
      const claims = await api.all<Claim>('/claims', { ...subject });
      const evidence = session.may('read', 'evidence') ? await Promise.all(claims.map(evidenceOn)) : [];
      if (own !== this.#last) return;
      this.claims = claims;
      this.#evidence = evidence.flat();
      this.problem = '';
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      if (own === this.#last) this.problem = error.detail;
    }
  }

  /** The evidence of a claim; null where whoever asks may read none. */
  evidenceOf(claimId: string): readonly Evidence[] | null {
    return session.may('read', 'evidence') ? this.#evidence.filter((piece) => piece.claimId === claimId) : null;
  }
}

const evidenceOn = (claim: Claim): Promise<Evidence[]> => api.all<Evidence>('/evidence', { claimId: claim.id });
