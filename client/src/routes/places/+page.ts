import { api } from '$lib/api/client.ts';
import type { Places } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

/** Claimed places, at most a thousand. */
export const load: PageLoad = (): Promise<{ places: Places }> =>
  readPage(async () => ({ places: await api.get<Places>('/places', { query: { limit: 1000 } }) }));
