import { filtersOf, type RegisterFilters } from '$lib/records/register-filters.ts';
import { beforeReading } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

interface MeasuresData {
  /** Animals picked by hand; empty where the filters choose. */
  picked: string[];
  filters: RegisterFilters;
}

export const load: PageLoad = async ({ url }): Promise<MeasuresData> => {
  await beforeReading();
  const picked = (url.searchParams.get('animals') ?? '').split(',').filter((id) => id.trim() !== '');
  return { picked: [...new Set(picked)], filters: filtersOf(url.searchParams) };
};
