import { api } from '$lib/api/client.ts';
import type { Line } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ params, depends }): Promise<{ line: Line }> => {
  depends('record:line');
  return readPage(async () => ({ line: await api.get<Line>(`/lines/${encodeURIComponent(params.id)}`) }));
};
