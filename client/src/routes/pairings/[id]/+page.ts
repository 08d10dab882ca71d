import { api } from '$lib/api/client.ts';
import type { Pairing } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ params, depends }): Promise<{ pairing: Pairing }> => {
  depends('record:pairing');
  return readPage(async () => ({ pairing: await api.get<Pairing>(`/pairings/${encodeURIComponent(params.id)}`) }));
};
