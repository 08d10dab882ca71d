import { error } from '@sveltejs/kit';
import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { Pairing } from '$lib/api/types.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = async ({ params, depends }): Promise<{ pairing: Pairing }> => {
  depends('record:pairing');
  try {
    return { pairing: await api.get<Pairing>(`/pairings/${encodeURIComponent(params.id)}`) };
  } catch (problem) {
    if (problem instanceof ProblemError) error(problem.status || 503, problem.detail);
    throw problem;
  }
};
