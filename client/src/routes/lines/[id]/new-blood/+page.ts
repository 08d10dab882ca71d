import { api } from '$lib/api/client.ts';
import type { Line } from '$lib/api/types.ts';
import { newBloodChoiceOf, type NewBloodChoice } from '$lib/match/new-blood-choice.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ params, url, depends }): Promise<{ line: Line; choice: NewBloodChoice }> => {
  depends('record:line');
  return readPage(async () => ({
    line: await api.get<Line>(`/lines/${encodeURIComponent(params.id)}`),
    choice: newBloodChoiceOf(url.searchParams),
  }));
};
