import { api } from '$lib/api/client.ts';
import type { Species } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ params, depends }): Promise<{ species: Species }> => {
  depends('record:species');
  return readPage(async () => ({ species: await api.get<Species>(`/species/${encodeURIComponent(params.id)}`) }));
};
