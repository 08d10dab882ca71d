import type TestAgent from 'supertest/lib/agent.js';
import { bodyOf } from '../../support/answer.ts';
import { Factory } from '../../support/factories.ts';
import type { Row } from './route-table.ts';
import type { World } from './route-world.ts';

/** In the order of the columns of the table. Strangers never hear who keeps what. */
const membersReading: Row['outcomes'] = [401, 401, '✓', '✓', '✓', '✓', '✓'];
/** An open offer is between two: for other members it is not there. */
const betweenTwo: Row['outcomes'] = [401, 401, 404, '✓', '✓', 404, '✓'];
const givingOwn: Row['outcomes'] = [401, 401, 403, '✓', '✓', 403, 403];
const withdrawingOwn: Row['outcomes'] = [401, 401, 404, '✓', '✓', 404, 403];
/** The administrator gives in these, and nobody answers their own offer. */
const answering: Row['outcomes'] = [401, 401, 404, '✓', '✓', 403, 403];

const row = (outcomes: Row['outcomes'], ask: Row['ask'] = () => ({})): Row => ({ outcomes, ask });

const idIn = (body: unknown): string => bodyOf<{ id: string }>({ body }).id;
const idOf = async (http: TestAgent): Promise<string> =>
  bodyOf<{ keeper: { id: string } }>(await http.get('/api/v1/session').expect(200)).keeper.id;
const somebody = async (world: World): Promise<string> => (await world.api.addKeeper(world.fresh('Receiver '))).id;

/** An animal of the owner, offered to somebody. */
async function given(world: World): Promise<{ at: string[] }> {
  const body = { to: await somebody(world), animals: [(await world.owner.individual()).id] };
  return { at: [idIn(await world.owner.post('transfers', body))] };
}

/** An animal of the owner that left the club. */
async function gone(world: World): Promise<{ at: string[] }> {
  const body = { leftTo: null, animals: [(await world.owner.individual()).id] };
  return { at: [idIn(await world.owner.post('transfers', body))] };
}

/** An animal of the administrator, offered to the owner. */
async function received(world: World): Promise<{ at: string[]; body: object }> {
  const { id: speciesId } = await world.owner.species();
  const { id } = await new Factory(world.askers.administrator).individual({ speciesId, code: world.fresh('T-') });
  const to = await idOf(world.askers.owner);
  const answer = await world.askers.administrator
    .post('/api/v1/transfers')
    .send({ to, animals: [id] })
    .expect(201);
  return { at: [idIn(answer.body)], body: {} };
}

/** The routes of transfers. */
export const transferRoutes: Readonly<Record<string, Row>> = {
  'GET /api/v1/transfers': row(membersReading),
  'GET /api/v1/transfers/{id}': row(betweenTwo, given),
  'POST /api/v1/transfers': row(givingOwn, async (world) => ({
    body: { to: await somebody(world), animals: [(await world.owner.individual()).id] },
  })),
  'POST /api/v1/transfers/{id}/acceptance': row(answering, received),
  'POST /api/v1/transfers/{id}/refusal': row(answering, received),
  'POST /api/v1/transfers/{id}/withdrawal': row(withdrawingOwn, async (world) => ({
    ...(await given(world)),
    body: { reason: 'a mistake' },
  })),
  // that they left is known to whoever sees them
  'POST /api/v1/transfers/{id}/returns': row(givingOwn, async (world) => ({ ...(await gone(world)), body: {} })),
};
