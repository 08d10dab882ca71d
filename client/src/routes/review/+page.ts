import { api } from '$lib/api/client.ts';
import type { Claim, Evidence } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

/** Evidence that waits, at most two hundred pieces, each with the claim that it bears on. */
export const load: PageLoad = ({ depends }): Promise<{ waiting: { evidence: Evidence; claim: Claim }[] }> => {
  depends('record:review');
  return readPage(async () => {
    const evidence = await api.all<Evidence>('/evidence', { review: 'pending' }, 200);
    const ids = [...new Set(evidence.map(({ claimId }) => claimId))];
    const claims = await Promise.all(ids.map((id) => api.get<Claim>(`/claims/${id}`)));
    const claimOf = new Map(claims.map((claim) => [claim.id, claim]));
    return {
      waiting: evidence.flatMap((piece) => {
        const claim = claimOf.get(piece.claimId);
        return claim ? [{ evidence: piece, claim }] : [];
      }),
    };
  });
};
