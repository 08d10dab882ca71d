import { api } from '$lib/api/client.ts';
import type { Claim, Evidence, Page } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

/** Pieces on one page. */
const AT_ONCE = 30;

interface Waiting {
  waiting: { evidence: Evidence; claim: Claim }[];
  /** How many pieces wait in all. */
  total: number;
  /** Where those begin that came after these; null behind the last. */
  next: string | null;
}

/** The evidence that has waited longest, or longest after some other, each piece with the claim that it bears on. */
export const load: PageLoad = ({ url, depends }): Promise<Waiting> => {
  depends('record:review');
  const after = url.searchParams.get('after');
  return readPage(async () => {
    const query = { review: 'pending', limit: AT_ONCE, total: true, after };
    const { items, total = 0, next } = await api.get<Page<Evidence>>('/evidence', { query });
    const ids = [...new Set(items.map(({ claimId }) => claimId))];
    const claims = await Promise.all(ids.map((id) => api.get<Claim>(`/claims/${id}`)));
    const claimOf = new Map(claims.map((claim) => [claim.id, claim]));
    return {
      total,
      next,
      waiting: items.flatMap((piece) => {
        const claim = claimOf.get(piece.claimId);
        return claim ? [{ evidence: piece, claim }] : [];
      }),
    };
  });
};
