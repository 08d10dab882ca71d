import { api } from '$lib/api/client.ts';
import type { Source } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ depends }): Promise<{ sources: Source[] }> => {
  depends('record:sources');
  return readPage(async () => ({ sources: await api.all<Source>('/sources') }));
};
