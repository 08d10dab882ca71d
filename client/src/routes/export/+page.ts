import { api } from '$lib/api/client.ts';
import type { Line } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import { addressOf, filtersOf, isNarrowed } from '$lib/records/register-filters.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ url }): Promise<{ lines: Line[]; shown: string; picked: string }> => {
  const filters = filtersOf(url.searchParams);
  const address = addressOf({ ...filters, sort: 'number', order: 'asc' });
  const shown = isNarrowed(filters) ? (address.split('?')[1] ?? '') : '';
  const picked = url.searchParams.get('animals') ?? '';
  return readPage(async () => ({ lines: await api.all<Line>('/lines'), shown, picked }));
};
