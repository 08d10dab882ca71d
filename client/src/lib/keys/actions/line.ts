import { goto } from '../opening.ts';
import type { Action } from '../action.ts';

/** What one can do with the line whose page is open. */
export const line = {
  overTime: {
    where: 'line',
    words: 'Draw this line over time',
    needs: ['ask', 'lineage'],
    run: (id) => goto(`/lines/${id}/over-time`),
  },
  newBlood: {
    where: 'line',
    words: 'Match new blood for this line',
    needs: ['ask', 'lineage'],
    run: (id) => goto(`/lines/${id}/new-blood`),
  },
} as const satisfies Record<string, Action>;
