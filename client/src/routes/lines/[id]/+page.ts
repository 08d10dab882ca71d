import { api } from '$lib/api/client.ts';
import type { Line } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import { choiceOf, type LineChoice } from '$lib/sets/line-choice.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ params, url, depends }): Promise<{ line: Line; choice: LineChoice }> => {
  depends('record:line');
  const choice = choiceOf(url.searchParams);
  return readPage(async () => ({ line: await api.get<Line>(`/lines/${encodeURIComponent(params.id)}`), choice }));
};
