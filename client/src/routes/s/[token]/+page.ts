import { error } from '@sveltejs/kit';
import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { PublicSheet } from '$lib/sheets/sheet-words.ts';
import type { PageLoad } from './$types';

/** A sheet for whoever was handed its address; nobody need sign in. */
export const load: PageLoad = async ({ params }): Promise<{ sheet: PublicSheet; path: string }> => {
  const path = `/sheets/${encodeURIComponent(params.token)}`;
  try {
    return { sheet: await api.get<PublicSheet>(path), path: `/api/v1${path}` };
  } catch (problem) {
    if (!(problem instanceof ProblemError)) throw problem;
    if (problem.status === 404)
      error(
        404,
        'No provenance sheet stands at this address. Look whether it was typed or scanned whole; if it was, this register never issued the sheet.',
      );
    error(problem.status === 0 ? 503 : problem.status, problem.detail);
  }
};
