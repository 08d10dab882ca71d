import { error } from '@sveltejs/kit';
import { api } from '$lib/api/client.ts';
import type { Individual } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

/** As many animals as one sheet holds. */
const mostAnimals = 50;

/** The animals of a sheet that is to be made: those in the address, or the living young of a clutch. */
export const load: PageLoad = ({ url }): Promise<{ animals: Individual[] }> =>
  readPage(async () => {
    const clutch = url.searchParams.get('clutch');
    const ids =
      clutch === null ? (url.searchParams.get('animals') ?? '').split(',').filter(Boolean) : await youngOf(clutch);
    if (ids.length > mostAnimals)
      error(
        422,
        `A sheet holds ${mostAnimals} animals; these are ${ids.length}. Choose fewer, and make several sheets.`,
      );
    return {
      animals: await Promise.all(
        [...new Set(ids)].map((id) => api.get<Individual>(`/individuals/${encodeURIComponent(id)}`)),
      ),
    };
  });

async function youngOf(clutch: string): Promise<string[]> {
  const { young } = await api.get<{ young: { id: string; status: string; isPrivate: boolean }[] }>(
    `/clutches/${encodeURIComponent(clutch)}`,
  );
  return young.filter(({ status, isPrivate }) => status === 'alive' && !isPrivate).map(({ id }) => id);
}
