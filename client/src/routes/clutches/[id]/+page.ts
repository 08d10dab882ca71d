import { api } from '$lib/api/client.ts';
import type { Clutch } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ params, depends }): Promise<{ clutch: Clutch }> => {
  depends('record:clutch');
  return readPage(async () => ({ clutch: await api.get<Clutch>(`/clutches/${encodeURIComponent(params.id)}`) }));
};
