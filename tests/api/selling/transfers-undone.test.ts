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

describe('an acceptance that is undone', () => {
  it('gives the animals back under their codes, and the offer stands again', async () => {
    const { id } = await world.make.individual({ code: 'U-1' });
    const transfer = await world.offered({ animals: [id] });
    const answer = await world.step(world.ben.http, transfer.id, 'acceptance', {
      codes: [{ individualId: id, code: 'U-9' }],
      date: '2024',
    });
    expect((await world.undo(answer, world.anna.http)).status).toBe(403);
    const undone = await world.undo(answer, world.ben.http);
    expect(undone.status, undone.text).toBe(201);
    expect(await world.animal(id)).toMatchObject({ keeper: 'Anna', code: 'U-1' });
    const again = bodyOf<TransferView>(await world.ben.http.get(`/api/v1/transfers/${transfer.id}`).expect(200));
    expect(again).toMatchObject({ state: 'offered', settledBy: null, steps: ['accept', 'decline'] });
    const redone = await world.undo(undone, world.ben.http);
    expect(redone.status, redone.text).toBe(201);
    expect(await world.animal(id)).toMatchObject({ keeper: 'Ben', code: 'U-9' });
  });

  it.each<[string, (id: string) => Promise<unknown>, string]>([
    [
      'it passed on',
      (id) =>
        world.ben.http
          .post('/api/v1/transfers')
          .send({ to: world.clara.id, animals: [id] })
          .expect(201),
      'on offer, or was passed on',
    ],
    [
      'it lives with the receiver',
      (id) => world.of(world.ben).pairing({ name: 'Ben 1', members: [{ individualId: id }] }),
      'lives or lived in Ben 1',
    ],
    [
      'it bred there',
      (id) => world.of(world.ben).clutch({ code: `C-${id}`, sires: [{ individualId: id }] }),
      'names it as a possible parent',
    ],
    [
      'it died',
      (id) => world.ben.http.patch(`/api/v1/individuals/${id}`).set('If-Match', '*').send({ died: '2025' }).expect(200),
      'recorded as died',
    ],
  ])('is refused where %s, and says so', async (_, since, why) => {
    const { id, number } = await world.make.individual();
    const transfer = await world.offered({ animals: [id] });
    const answer = await world.step(world.ben.http, transfer.id, 'acceptance', { date: '2024' });
    await since(id);
    const refused = await world.undo(answer, world.ben.http);
    expect(refused.status, refused.text).toBe(409);
    expect(refused.body).toMatchObject({ changed: [{ individualId: id, number, detail: textWith(why) }] });
    expect(await world.animal(id)).toMatchObject({ keeper: 'Ben' });
  });

  it('is refused where the giver has given the code to another meanwhile', async () => {
    const { id } = await world.make.individual({ code: 'UC-1' });
    const answer = await world.step(world.ben.http, (await world.offered({ animals: [id] })).id, 'acceptance');
    await world.make.individual({ code: 'UC-1' });
    const refused = await world.undo(answer, world.ben.http);
    expect([refused.status, bodyOf<ProblemBody>(refused).detail]).toEqual([409, textWith('given the code UC-1')]);
  });
});

describe('an offer that was withdrawn or declined', () => {
  it('stands again after an undo by whoever did it', async () => {
    const { id } = await world.make.individual();
    const transfer = await world.offered({ animals: [id] });
    const withdrawn = await world.step(world.anna.http, transfer.id, 'withdrawal');
    const other = await world.offered({ animals: [id], to: world.clara.id });
    expect((await world.undo(withdrawn, world.anna.http)).status).toBe(409);
    await world.step(world.clara.http, other.id, 'refusal').then(({ status }) => expect(status).toBe(201));
    expect((await world.undo(withdrawn, world.anna.http)).status).toBe(201);
    const declined = await world.step(world.ben.http, transfer.id, 'refusal');
    expect((await world.undo(declined, world.ben.http)).status).toBe(201);
    expect((await world.accepted(transfer.id)).state).toBe('accepted');
  });
});
