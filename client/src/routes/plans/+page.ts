import { api } from '$lib/api/client.ts';
import type { KeptPlanItem, Line, Page } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ url, depends }): Promise<{ page: Page<KeptPlanItem>; line: Line | null }> => {
  depends('list:plans');
  const [after, lineId] = [url.searchParams.get('after'), url.searchParams.get('line')];
  return readPage(async () => ({
    page: await api.get<Page<KeptPlanItem>>('/kept-plans', { query: { limit: 100, total: true, after, lineId } }),
    line: lineId ? await api.get<Line>(`/lines/${encodeURIComponent(lineId)}`) : null,
  }));
};
