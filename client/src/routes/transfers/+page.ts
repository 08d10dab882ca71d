import { api } from '$lib/api/client.ts';
import type { Page, TransferItem } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

/** How many of those that are over are shown at once. */
const AT_ONCE = 50;

export interface MyTransfers {
  /** Offers to whoever looks that wait for an answer, and offers of theirs that do. */
  toAnswer: TransferItem[];
  waiting: TransferItem[];
  /** What they gave and received. */
  given: Page<TransferItem>;
  received: Page<TransferItem>;
}

const isOver = ({ state }: TransferItem): boolean => state !== 'offered';

export const load: PageLoad = ({ depends }): Promise<MyTransfers> => {
  depends('record:transfers');
  return readPage(async () => {
    const list = (query: Record<string, string | number>) => api.get<Page<TransferItem>>('/transfers', { query });
    const [toAnswer, waiting, given, received] = await Promise.all([
      list({ side: 'received', state: 'offered', limit: 200 }),
      list({ side: 'given', state: 'offered', limit: 200 }),
      list({ side: 'given', limit: AT_ONCE }),
      list({ side: 'received', limit: AT_ONCE }),
    ]);
    return {
      toAnswer: toAnswer.items,
      waiting: waiting.items,
      given: { ...given, items: given.items.filter(isOver) },
      received: { ...received, items: received.items.filter(isOver) },
    };
  });
};
