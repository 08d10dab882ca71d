import { api } from '$lib/api/client.ts';
import type { ClutchItem, Line, Page, Pairing } from '$lib/api/types.ts';
import { clutchQuery, filtersOf, type ClutchFilters } from '$lib/housing/clutch-filters.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

interface Named {
  id: string;
  name: string;
}

interface ClutchesData {
  filters: ClutchFilters;
  page: Page<ClutchItem>;
  lines: Named[];
  keepers: Named[];
  pairings: Named[];
}

/** Rows on one page, and groups that the sentence offers. */
const AT_ONCE = 50;

export const load: PageLoad = ({ url, depends }): Promise<ClutchesData> => {
  depends('record:clutches');
  const filters = filtersOf(url.searchParams);
  return readPage(async () => {
    const [page, lines, keepers, pairings] = await Promise.all([
      api.get<Page<ClutchItem>>('/clutches', { query: { ...clutchQuery(filters), limit: AT_ONCE, total: true } }),
      api.all<Line>('/lines'),
      api.all<Named>('/keepers'),
      api.get<Page<Pairing>>('/pairings', { query: { limit: 200, keeperId: filters.keeper } }),
    ]);
    const names = (all: readonly Named[]): Named[] => all.map(({ id, name }) => ({ id, name }));
    return { filters, page, lines: names(lines), keepers: names(keepers), pairings: names(pairings.items) };
  });
};
