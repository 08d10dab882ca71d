import { api } from '$lib/api/client.ts';
import type { Individual } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import { error } from '@sveltejs/kit';
import type { PageLoad } from './$types';

/** As many ids as an address holds. */
const mostAnimals = 100;

/** The animals named in the address, or the living young of the clutch named there. */
export const load: PageLoad = ({ url }): Promise<{ animals: Individual[] }> =>
  readPage(async () => {
    const clutch = url.searchParams.get('clutch');
    const ids = clutch === null ? idsIn(url) : await youngOf(clutch);
    if (ids.length > mostAnimals)
      error(422, `Labels are printed for ${mostAnimals} animals at once; these are ${ids.length}. Choose fewer.`);
    return {
      animals: await Promise.all(ids.map((id) => api.get<Individual>(`/individuals/${encodeURIComponent(id)}`))),
    };
  });

const idsIn = (url: URL): string[] => [...new Set((url.searchParams.get('animals') ?? '').split(',').filter(Boolean))];

async function youngOf(clutch: string): Promise<string[]> {
  const { young } = await api.get<{ young: { id: string; status: string; isPrivate: boolean }[] }>(
    `/clutches/${encodeURIComponent(clutch)}`,
  );
  return young.filter(({ status, isPrivate }) => status === 'alive' && !isPrivate).map(({ id }) => id);
}
