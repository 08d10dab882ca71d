import { api } from '$lib/api/client.ts';
import type { Line } from '$lib/api/types.ts';
import { wishOf, type LineWish } from '$lib/charts/line-time/line-wish.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ params, url, depends }): Promise<{ line: Line; wish: LineWish }> => {
  depends('record:line');
  const wish = wishOf(url.searchParams);
  return readPage(async () => ({ line: await api.get<Line>(`/lines/${encodeURIComponent(params.id)}`), wish }));
};
