import { api } from '$lib/api/client.ts';
import type { Source } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ params, depends }): Promise<{ source: Source }> => {
  depends('record:source');
  return readPage(async () => ({ source: await api.get<Source>(`/sources/${encodeURIComponent(params.id)}`) }));
};
