import { api } from '$lib/api/client.ts';
import type { IndividualItem, Page, Source } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ params, depends }): Promise<{ source: Source; founders: Page<IndividualItem> }> => {
  depends('record:source');
  return readPage(async () => {
    const [source, founders] = await Promise.all([
      api.get<Source>(`/sources/${encodeURIComponent(params.id)}`),
      api.get<Page<IndividualItem>>('/individuals', { query: { sourceId: params.id, limit: 100 } }),
    ]);
    return { source, founders };
  });
};
