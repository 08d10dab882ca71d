import { api } from '$lib/api/client.ts';
import type { JournalEntry, JournalHead, Page } from '$lib/api/types.ts';
import { filtersOf, type JournalFilters } from '$lib/journal/journal-filters.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

interface JournalData {
  filters: JournalFilters;
  page: Page<JournalEntry>;
  head: JournalHead | null;
  keepers: { id: string; name: string }[];
}

export const load: PageLoad = ({ url, depends }): Promise<JournalData> => {
  depends('record:journal');
  const filters = filtersOf(url.searchParams);
  return readPage(async () => {
    const [page, head, keepers] = await Promise.all([
      api.get<Page<JournalEntry>>('/journal', { query: { ...filters, limit: 50 } }),
      api.get<JournalHead | null>('/journal/head'),
      api.all<{ id: string; name: string }>('/keepers'),
    ]);
    return { filters, page, head, keepers };
  });
};
