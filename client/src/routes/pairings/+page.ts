import { api } from '$lib/api/client.ts';
import type { Page, Pairing } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ url }): Promise<{ page: Page<Pairing> }> => {
  const after = url.searchParams.get('after') ?? undefined;
  return readPage(async () => ({
    page: await api.get<Page<Pairing>>('/pairings', { query: { limit: 200, total: true, after } }),
  }));
};
