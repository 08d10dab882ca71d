import { api } from '$lib/api/client.ts';
import type { Page } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { Sheet } from '$lib/sheets/sheet-words.ts';
import type { PageLoad } from './$types';

/** Provenance sheets, the newest first; all, or those of one animal. */
export const load: PageLoad = ({ url, depends }): Promise<{ sheets: Page<Sheet>; animal: string | null }> => {
  depends('list:sheets');
  const animal = url.searchParams.get('animal');
  const after = url.searchParams.get('after');
  return readPage(async () => ({
    sheets: await api.get<Page<Sheet>>('/provenance-sheets', { query: { limit: 50, individualId: animal, after } }),
    animal,
  }));
};
