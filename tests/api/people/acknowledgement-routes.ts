import { bodyOf } from '../../support/answer.ts';
import type { Row } from './route-table.ts';
import type { World } from './route-world.ts';

/** In the order of the columns of the table. Names and words of members are in it, so strangers read it never. */
const membersReading: Row['outcomes'] = [401, 401, '✓', '✓', '✓', '✓', '✓'];
/** A registrar alone says that a flag may stay; the keeper of the animal may not say it of their own. */
const acknowledging: Row['outcomes'] = [401, 401, 403, 403, '✓', 403, 403];

const row = (outcomes: Row['outcomes'], ask: Row['ask'] = () => ({})): Row => ({ outcomes, ask });

/** A flag of an animal of the owner, of which nobody knows where it came from. */
async function flag({ owner }: World): Promise<object> {
  return { individualId: (await owner.individual()).id, code: 'origin-gap', reason: 'nobody left to ask' };
}

/** That flag, acknowledged. */
async function acknowledged(world: World): Promise<string> {
  const answer = await world.askers.registrar
    .post('/api/v1/acknowledgements')
    .send(await flag(world))
    .expect(201);
  return bodyOf<{ id: string }>(answer).id;
}

const one =
  (body?: object): Row['ask'] =>
  async (world) => ({ at: [await acknowledged(world)], ...(body ? { body } : {}) });

/** The routes of acknowledged flags. */
export const acknowledgementRoutes: Readonly<Record<string, Row>> = {
  'GET /api/v1/acknowledgements': row(membersReading),
  'GET /api/v1/acknowledgements/{id}': row(membersReading, one()),
  'POST /api/v1/acknowledgements': row(acknowledging, async (world) => ({ body: await flag(world) })),
  'POST /api/v1/acknowledgements/{id}/withdrawal': row(acknowledging, one({ reason: 'a mistake' })),
  'DELETE /api/v1/acknowledgements/{id}/withdrawal': row(acknowledging, async (world) => {
    const id = await acknowledged(world);
    const withdrawal = world.askers.registrar.post(`/api/v1/acknowledgements/${id}/withdrawal`).set('If-Match', '*');
    await withdrawal.send({ reason: 'a mistake' }).expect(201);
    return { at: [id] };
  }),
};
