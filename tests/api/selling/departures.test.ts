import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { TransferView } from '../../../api/selling/transfers/transfer.view.ts';
import { bodyOf, textWith, type ProblemBody } from '../../support/answer.ts';
import { TransferWorld } from './transfer-world.ts';

let world: TransferWorld;

beforeAll(async () => {
  world = await TransferWorld.found();
});

beforeEach(() => world.api.dataSource.query('delete from rate_limit'));

afterAll(() => world.api.close());

describe('animals that left the club', () => {
  it('are gone from the day on, their record stays, and their stays end', async () => {
    const { id } = await world.make.individual();
    const pairing = await world.make.pairing({ members: [{ individualId: id, joined: '2022' }] });
    const transfer = await world.left({
      leftTo: 'Mrs. Neighbour',
      animals: [id],
      date: '2024-09-01',
      note: 'for her daughter',
    });
    expect(transfer).toMatchObject({
      kind: 'departure',
      state: 'accepted',
      to: null,
      leftTo: 'Mrs. Neighbour',
      steps: ['withdraw', 'return'],
    });
    expect(await world.animal(id)).toMatchObject({
      keeper: 'Anna',
      status: 'gone',
      pairings: [{ id: pairing.id, left: '2024-09-01' }],
    });
    const known = bodyOf<TransferView>(await world.ben.http.get(`/api/v1/transfers/${transfer.id}`).expect(200));
    expect(known).toMatchObject({ leftTo: null, note: null, date: '2024-09-01', steps: [] });
  });

  it('come back exactly as they were when the departure is withdrawn; what was corrected since stays', async () => {
    const { id } = await world.make.individual();
    const pairing = await world.make.pairing({ members: [{ individualId: id, joined: '2022' }] });
    const transfer = await world.left({ animals: [id], date: '2024-09-01' });
    await world.change(id, { sex: 'female' });
    const answer = await world.step(world.anna.http, transfer.id, 'withdrawal');
    expect(answer.status, answer.text).toBe(201);
    expect(await world.animal(id)).toMatchObject({
      status: 'alive',
      sex: 'female',
      pairings: [{ id: pairing.id, left: null }],
    });
    expect((await world.undo(answer, world.anna.http)).status).toBe(201);
    expect(await world.animal(id)).toMatchObject({
      status: 'gone',
      pairings: [{ id: pairing.id, left: '2024-09-01' }],
    });
  });

  it('are not put back where one died or its stay was changed, and the answer says so', async () => {
    const { id } = await world.make.individual();
    const pairing = await world.make.pairing({ name: 'Tank 9', members: [{ individualId: id, joined: '2022' }] });
    const transfer = await world.left({ animals: [id], date: '2024-09-01' });
    const [stay] = pairing.members;
    await world.anna.http
      .patch(`/api/v1/pairings/${pairing.id}/members/${stay?.id}`)
      .set('If-Match', '*')
      .send({ left: '2024-08' })
      .expect(200);
    await world.change(id, { status: 'died' });
    const refused = await world.step(world.anna.http, transfer.id, 'withdrawal');
    expect(refused.status).toBe(409);
    expect(refused.body).toMatchObject({
      changed: [{ detail: textWith('recorded as died') }, { detail: textWith('stay in Tank 9 was changed') }],
    });
  });

  it('may come back later, which stays on record', async () => {
    const [one, other] = await world.make.individuals({}, {});
    const transfer = await world.left({ animals: [one?.id, other?.id], date: '2024-01' });
    const early = await world.step(world.anna.http, transfer.id, 'returns', { animals: [one?.id], date: '2023' });
    expect(bodyOf<ProblemBody>(early).errors).toMatchObject([{ pointer: '/date', detail: textWith('lies before it') }]);
    const answer = await world.step(world.anna.http, transfer.id, 'returns', { animals: [one?.id], date: '2025-02' });
    expect(answer.status, answer.text).toBe(201);
    expect(bodyOf<TransferView>(answer)).toMatchObject({ state: 'accepted', steps: ['return'] });
    expect(await world.animal(one?.id ?? '')).toMatchObject({ status: 'alive' });
    expect(await world.animal(other?.id ?? '')).toMatchObject({ status: 'gone' });
    expect((await world.step(world.anna.http, transfer.id, 'withdrawal')).status).toBe(409);
    expect((await world.step(world.anna.http, transfer.id, 'returns', { animals: [one?.id] })).status).toBe(409);
    const undone = await world.undo(answer, world.anna.http);
    expect(undone.status, undone.text).toBe(201);
    expect(await world.animal(one?.id ?? '')).toMatchObject({ status: 'gone' });
    expect((await world.undo(undone, world.anna.http)).status).toBe(201);
    const all = await world.step(world.anna.http, transfer.id, 'returns');
    expect(bodyOf<TransferView>(all)).toMatchObject({ animals: [{ returned: '2025-02' }, {}], steps: [] });
  });
});
