import { bodyOf } from '../../support/answer.ts';
import type { Row } from './route-table.ts';
import type { World } from './route-world.ts';

/** In the order of the columns of the table. */
const membersReading: Row['outcomes'] = [401, 401, '✓', '✓', '✓', '✓', '✓'];

const adding: Row['outcomes'] = [401, 401, '✓', '✓', '✓', '✓', 403];
const changing: Row['outcomes'] = [401, 401, 403, '✓', '✓', 403, 403];

/** A line with a pair of the owner. */
async function pairedLine({ owner }: World): Promise<string> {
  const speciesId = (await owner.species()).id;
  const line = await owner.line({ speciesId });
  for (const sex of ['male', 'female']) await owner.individual({ speciesId, lineId: line.id, sex });
  return line.id;
}

const plan = (lineId: string): object => ({
  lineId,
  name: 'spring',
  visibility: 'club',
  assumptions: { pairings: 1 },
});

/** A plan of the owner for it, shared with the club. */
async function keptPlan(world: World): Promise<string> {
  const sent = plan(await pairedLine(world));
  return bodyOf<{ id: string }>(await world.askers.owner.post('/api/v1/kept-plans').send(sent).expect(201)).id;
}

const one =
  (body?: object): Row['ask'] =>
  async (world) => ({ at: [await keptPlan(world)], ...(body ? { body } : {}) });

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
    ask: async (world) => ({ at: [await pairedLine(world)], body: { pairings: 1 } }),
  },
  'GET /api/v1/kept-plans': { outcomes: membersReading, ask: () => ({}) },
  'GET /api/v1/kept-plans/{id}': { outcomes: membersReading, ask: one() },
  'POST /api/v1/kept-plans': {
    outcomes: adding,
    ask: async (world) => ({ body: plan(await pairedLine(world)) }),
  },
  'PATCH /api/v1/kept-plans/{id}': { outcomes: changing, ask: one({ name: 'summer' }) },
  'POST /api/v1/kept-plans/{id}/pairings': { outcomes: changing, ask: one({ pairs: [{ place: 0 }] }) },
  'PATCH /api/v1/kept-plans/{id}/pairs': {
    outcomes: changing,
    ask: one({ pairs: [{ place: 0 }], state: 'declined' }),
  },
  'POST /api/v1/kept-plans/{id}/withdrawal': { outcomes: changing, ask: one({ reason: 'too late' }) },
  'DELETE /api/v1/kept-plans/{id}/withdrawal': {
    outcomes: changing,
    ask: async (world) => {
      const id = await keptPlan(world);
      await world.withdraw('kept-plans', id);
      return { at: [id] };
    },
  },
};
