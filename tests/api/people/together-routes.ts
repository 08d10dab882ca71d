import type { Row } from './route-table.ts';

/** In the order of the columns of the table. */
const changing: Row['outcomes'] = [401, 401, 403, '✓', '✓', 403, 403];

/** The change of several animals. */
export const togetherRoutes: Readonly<Record<string, Row>> = {
  'POST /api/v1/individuals/changes': {
    outcomes: changing,
    ask: async ({ owner }) => ({
      body: { animals: [{ id: (await owner.individual()).id, version: 1 }], fields: { sex: 'male' } },
    }),
  },
};
