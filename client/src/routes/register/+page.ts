import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { IndividualItem, Page } from '$lib/api/types.ts';
import { filtersOf, isNarrowed, type RegisterFilters } from '$lib/records/register-filters.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

const pageLength = 50;

interface RegisterData {
  filters: RegisterFilters;
  page: Page<IndividualItem>;
  /** All animals of the register, whatever the filters; null where nobody could say. */
  all: number | null;
  problem: ProblemError | null;
}

export const load: PageLoad = ({ url }): Promise<RegisterData> => {
  const filters = filtersOf(url.searchParams);
  const read = async (): Promise<RegisterData> => {
    const [page, everything] = await Promise.all([
      api.get<Page<IndividualItem>>('/individuals', { query: { ...filters, limit: pageLength, total: true } }),
      isNarrowed(filters) ? api.get<Page<IndividualItem>>('/individuals', { query: { limit: 1, total: true } }) : null,
    ]);
    return { filters, page, all: (everything ?? page).total ?? null, problem: null };
  };
  return readPage(() =>
    read().catch((error: unknown) => {
      // a sentence that makes no sense is told beside its words, where it can be mended
      if (!(error instanceof ProblemError) || error.status === 0 || error.status >= 500) throw error;
      return { filters, page: { items: [], next: null }, all: null, problem: error };
    }),
  );
};
