import { api } from '$lib/api/client.ts';
import type { Individual } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ params }): Promise<{ animal: Individual }> =>
  readPage(async () => ({ animal: await api.get<Individual>(`/individuals/${encodeURIComponent(params.id)}`) }));
