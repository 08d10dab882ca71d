import { api } from '$lib/api/client.ts';
import type { JournalHead } from '$lib/api/types.ts';
import type { ClubSettings } from '$lib/people/people-types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ depends }): Promise<{ club: ClubSettings; head: JournalHead | null }> => {
  depends('record:club');
  return readPage(async () => {
    const [club, head] = await Promise.all([
      api.get<ClubSettings>('/club'),
      api.get<JournalHead | null>('/journal/head'),
    ]);
    return { club, head };
  });
};
