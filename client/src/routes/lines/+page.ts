import { api } from '$lib/api/client.ts';
import type { Line } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ depends }): Promise<{ lines: Line[] }> => {
  depends('record:lines');
  return readPage(async () => ({ lines: await api.all<Line>('/lines') }));
};
