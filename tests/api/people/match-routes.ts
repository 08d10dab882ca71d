import type { Row } from './route-table.ts';

/** In the order of the columns of the table. */
const membersReading: Row['outcomes'] = [401, 401, '✓', '✓', '✓', '✓', '✓'];

/** The routes of choosing pairings. */
export const matchRoutes: Readonly<Record<string, Row>> = {
  'GET /api/v1/individuals/{id}/mates': {
    outcomes: membersReading,
    ask: async ({ owner }) => ({ at: [(await owner.individual()).id] }),
  },
  'GET /api/v1/match/at-risk': { outcomes: membersReading, ask: () => ({}) },
  'GET /api/v1/lines/{id}/new-blood': {
    outcomes: membersReading,
    ask: async ({ owner }) => ({ at: [(await owner.line()).id] }),
  },
  'POST /api/v1/match/exchange': {
    outcomes: membersReading,
    ask: async ({ owner }) => {
      const speciesId = (await owner.species()).id;
      const line = await owner.line({ speciesId });
      const fields = { speciesId, lineId: line.id };
      const [one, other] = [await owner.individual(fields), await owner.individual(fields)];
      return {
        body: { lineId: line.id, one: { individuals: [one.id] }, other: { individuals: [other.id] } },
      };
    },
  },
  'POST /api/v1/match/group': {
    outcomes: membersReading,
    ask: async ({ owner }) => ({
      body: { individuals: [(await owner.individual()).id, (await owner.individual()).id], crossLines: true },
    }),
  },
  'POST /api/v1/lines/{id}/plan-forecast': {
    outcomes: membersReading,
    ask: async ({ owner }) => ({ at: [(await owner.line()).id], body: { courses: ['today'] } }),
  },
  'POST /api/v1/lines/{id}/plan': {
    outcomes: membersReading,
    ask: async ({ owner }) => {
      const speciesId = (await owner.species()).id;
      const line = await owner.line({ speciesId });
      for (const sex of ['male', 'female']) await owner.individual({ speciesId, lineId: line.id, sex });
      return { at: [line.id], body: { pairings: 1 } };
    },
  },
};
