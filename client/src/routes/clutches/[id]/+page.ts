import { error } from '@sveltejs/kit';
import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { Clutch } from '$lib/api/types.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = async ({ params, depends }): Promise<{ clutch: Clutch }> => {
  depends('record:clutch');
  try {
    return { clutch: await api.get<Clutch>(`/clutches/${encodeURIComponent(params.id)}`) };
  } catch (problem) {
    if (problem instanceof ProblemError) error(problem.status || 503, problem.detail);
    throw problem;
  }
};
