import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { Page, Pairing } from '$lib/api/types.ts';
import { beforeReading } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = async ({ url }): Promise<{ page: Page<Pairing>; problem: string }> => {
  const after = url.searchParams.get('after') ?? undefined;
  await beforeReading();
  try {
    return {
      page: await api.get<Page<Pairing>>('/pairings', { query: { limit: 200, total: true, after } }),
      problem: '',
    };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return { page: { items: [], next: null }, problem: error.detail };
  }
};
