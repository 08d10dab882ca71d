import { api } from '$lib/api/client.ts';
import type { Transfer } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ params, depends }): Promise<{ transfer: Transfer }> => {
  depends('record:transfer');
  return readPage(async () => ({ transfer: await api.get<Transfer>(`/transfers/${encodeURIComponent(params.id)}`) }));
};
