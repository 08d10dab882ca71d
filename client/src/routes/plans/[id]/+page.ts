import { api } from '$lib/api/client.ts';
import type { KeptPlan } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ params, depends }): Promise<{ plan: KeptPlan }> => {
  depends('record:plan');
  return readPage(async () => ({ plan: await api.get<KeptPlan>(`/kept-plans/${encodeURIComponent(params.id)}`) }));
};
