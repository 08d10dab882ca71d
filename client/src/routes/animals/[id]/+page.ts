import { error } from '@sveltejs/kit';
import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { Individual } from '$lib/api/types.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = async ({ params }) => {
  try {
    return { animal: await api.get<Individual>(`/individuals/${encodeURIComponent(params.id)}`) };
  } catch (problem) {
    if (!(problem instanceof ProblemError)) throw problem;
    error(problem.status === 0 ? 503 : problem.status, problem.detail);
  }
};
