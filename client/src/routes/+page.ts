import { redirect } from '@sveltejs/kit';
import { api } from '$lib/api/client.ts';
import type { Today } from '$lib/api/types.ts';
import { beforeReading, readPage } from '$lib/people/read-page.ts';
import { session } from '$lib/people/session.svelte.ts';
import { today } from '$lib/ui/dates.ts';
import type { PageLoad } from './$types';

/** What is due on this day where this device stands; strangers, who keep nothing here, see the register. */
export const load: PageLoad = async ({ url, depends }): Promise<{ today: Today; showsAll: boolean }> => {
  depends('record:today');
  await beforeReading();
  if (!session.may('read', 'clutch')) redirect(307, '/register');
  const showsAll = url.searchParams.get('show') === 'all';
  const of = url.searchParams.get('of') === 'club' ? 'club' : 'mine';
  const query = { on: today(), of, limit: showsAll ? 200 : 30 };
  return readPage(async () => ({ today: await api.get<Today>('/today', { query }), showsAll }));
};
