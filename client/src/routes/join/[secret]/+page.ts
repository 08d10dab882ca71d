import { error } from '@sveltejs/kit';
import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { LinkOffer } from '$lib/people/people-types.ts';
import type { PageLoad } from './$types';

/** What the link offers; null with the reason where it was used, taken back, has run out, or never was. */
export const load: PageLoad = async ({
  params,
}): Promise<{ secret: string; offer: LinkOffer | null; problem: string }> => {
  const { secret } = params;
  try {
    return { secret, offer: await api.get<LinkOffer>(`/links/${encodeURIComponent(secret)}`), problem: '' };
  } catch (problem) {
    if (!(problem instanceof ProblemError)) throw problem;
    if (problem.status === 0 || problem.status >= 500) error(503, problem.detail);
    return { secret, offer: null, problem: problem.detail };
  }
};
