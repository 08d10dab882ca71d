import { api } from '$lib/api/client.ts';
import type { Individual } from '$lib/api/types.ts';
import { mateChoiceOf, type MateChoice } from '$lib/match/mate-choice.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ params, url }): Promise<{ animal: Individual; choice: MateChoice }> =>
  readPage(async () => ({
    animal: await api.get<Individual>(`/individuals/${encodeURIComponent(params.id)}`),
    choice: mateChoiceOf(url.searchParams),
  }));
