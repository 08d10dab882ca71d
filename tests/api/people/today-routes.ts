import type { Row } from './route-table.ts';

/** What is due is told to members alone. */
export const todayRoutes: Readonly<Record<string, Row>> = {
  'GET /api/v1/today': { outcomes: [401, 401, '✓', '✓', '✓', '✓', '✓'], ask: () => ({ query: '?of=club' }) },
};
