import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Response } from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import type { PairingView } from '../../../api/register/pairings/pairing.view.ts';
import type { TransferItemView, TransferView } from '../../../api/selling/transfers/transfer.view.ts';
import { startApi } from '../../support/api.ts';
import { bodyOf, textWith, type ProblemBody } from '../../support/answer.ts';
import { Factory, trio } from '../../support/factories.ts';
import { TransferWorld } from './transfer-world.ts';

let world: TransferWorld;

beforeAll(async () => {
  world = await TransferWorld.found();
});

beforeEach(() => world.api.dataSource.query('delete from rate_limit'));

afterAll(() => world.api.close());

describe('an offer to another keeper', () => {
  it('waits for an answer, and changes nothing until then', async () => {
    const { id, number, code } = await world.make.individual({ code: 'EA-07' });
    const transfer = await world.offered({ animals: [id], date: '2026-05', note: 'eats well' });
    expect(transfer).toMatchObject({
      kind: 'handover',
      state: 'offered',
      from: { name: 'Anna' },
      to: { name: 'Ben' },
      date: '2026-05',
      note: 'eats well',
      count: 1,
      settledBy: null,
      steps: ['withdraw'],
      animals: [{ id, number, code, givenCode: 'EA-07', isPrivate: false }],
    });
    expect(await world.animal(id)).toMatchObject({ keeper: 'Anna', version: 1 });
    const seen = await world.ben.http.get(`/api/v1/transfers/${transfer.id}`).expect(200);
    expect(seen.headers['etag']).toBe('"1"');
    expect(bodyOf<TransferView>(seen).steps).toEqual(['accept', 'decline']);
    await world.clara.http.get(`/api/v1/transfers/${transfer.id}`).expect(404);
  });

  it('hands over the record itself, with everything that is known of it', async () => {
    const [one] = await world.make.individuals({ code: 'A-1', notes: 'a scar on the back' });
    if (!one) throw new Error('one animal was asked for');
    await world.make.observation({ individualId: one.id, text: 'calls at dawn' });
    const { id } = await world.offered({ animals: [one.number], date: '2024-05-01' });
    const transfer = await world.accepted(id, { date: '2024-05-03' });
    expect(transfer).toMatchObject({ state: 'accepted', settledBy: 'Ben', date: '2024-05-03', steps: [], version: 2 });
    const now = await world.animal(one.id);
    expect(now).toMatchObject({
      id: one.id,
      number: one.number,
      keeper: 'Ben',
      code: 'A-1',
      notes: 'a scar on the back',
    });
    expect(now.observations).toMatchObject([{ text: 'calls at dawn' }]);
    await world.anna.http.patch(`/api/v1/individuals/${one.id}`).set('If-Match', '*').send({ notes: 'x' }).expect(403);
    await world.ben.http.patch(`/api/v1/individuals/${one.id}`).set('If-Match', '*').send({ notes: 'x' }).expect(200);
  });

  it('takes the date of the offer if that has come, else today', async () => {
    const today = new Date().toISOString().slice(0, 10);
    const [past, later] = await world.make.individuals({}, {});
    const one = await world.offered({ animals: [past?.id], date: '2023-08' });
    expect((await world.accepted(one.id)).date).toBe('2023-08');
    const other = await world.offered({ animals: [later?.id], date: '2199' });
    expect((await world.accepted(other.id)).date).toBe(today);
    const third = await world.offered({ animals: [(await world.make.individual()).id] });
    const refused = await world.step(world.ben.http, third.id, 'acceptance', { date: '2199-01' });
    expect(refused.status).toBe(422);
    expect(bodyOf<ProblemBody>(refused).errors).toMatchObject([
      { pointer: '/date', detail: textWith('has not come yet') },
    ]);
  });

  it('is declined or withdrawn with a reason, and leaves everything as it was', async () => {
    const { id } = await world.make.individual();
    const before = await world.animal(id);
    for (const [what, state, http, who] of [
      ['refusal', 'declined', world.ben.http, 'Ben'],
      ['withdrawal', 'withdrawn', world.anna.http, 'Anna'],
    ] as const) {
      const transfer = await world.offered({ animals: [id] });
      const answer = await world.step(http, transfer.id, what, { reason: 'no room' });
      expect(answer.status, answer.text).toBe(201);
      expect(bodyOf<TransferView>(answer)).toMatchObject({ state, reason: 'no room', settledBy: who, steps: [] });
      expect(await world.animal(id)).toEqual(before);
    }
  });

  it('tells whoever comes too late what happened meanwhile', async () => {
    const { id } = await world.offered({ animals: [(await world.make.individual()).id] });
    await world.step(world.anna.http, id, 'withdrawal');
    const late = await world.step(world.ben.http, id, 'acceptance', {}, '"1"');
    expect(late.status).toBe(409);
    expect(late.body).toMatchObject({
      detail: textWith('Anna withdrew this offer on '),
      current: { state: 'withdrawn' },
    });
    const again = await world.step(world.anna.http, id, 'withdrawal');
    expect([again.status, bodyOf<ProblemBody>(again).detail]).toEqual([409, textWith('Nothing more can be done')]);
    const declined = await world.offered({ animals: [(await world.make.individual()).id] });
    await world.step(world.ben.http, declined.id, 'refusal');
    expect(bodyOf<ProblemBody>(await world.step(world.ben.http, declined.id, 'acceptance')).detail).toContain(
      'Ben declined this offer',
    );
  });

  it('wants the version that was read', async () => {
    const { id } = await world.offered({ animals: [(await world.make.individual()).id] });
    await world.ben.http.post(`/api/v1/transfers/${id}/acceptance`).send({}).expect(428);
    expect((await world.step(world.ben.http, id, 'acceptance', {}, '"7"')).status).toBe(412);
    expect((await world.step(world.ben.http, id, 'acceptance', {}, '"1"')).status).toBe(201);
  });

  it('is answered by its receiver or a registrar, never by who made it', async () => {
    const { id } = await world.offered({ animals: [(await world.make.individual()).id] });
    expect((await world.step(world.anna.http, id, 'acceptance')).status).toBe(403);
    expect((await world.step(world.ben.http, id, 'withdrawal')).status).toBe(403);
    expect((await world.step(world.clara.http, id, 'acceptance')).status).toBe(404);
    expect((await world.step(world.api.http, id, 'acceptance')).status).toBe(201);
    const registrar = await world.api.addKeeper('Rosa', ['registrar']);
    const { id: speciesId } = await world.make.species();
    const own = await new Factory(registrar.http).individual({ speciesId });
    const mine = await registrar.http
      .post('/api/v1/transfers')
      .send({ to: world.ben.id, animals: [own.id] })
      .expect(201);
    expect((await world.step(registrar.http, bodyOf<TransferView>(mine).id, 'acceptance')).status).toBe(403);
  });
});

describe('a batch of froglets', () => {
  it('of one clutch passes in one go: the living ones of the giver that are not on offer', async () => {
    const { sire, dam } = await trio(world.make);
    const clutch = await world.make.clutchOf(sire.id, dam.id, { laid: '2024-01-05' });
    const young = await world.make.offspring(clutch.id, { count: 6 });
    const [dead, elsewhere, ...rest] = young.map(({ id }) => id);
    await world.change(dead ?? '', { died: '2024-06' });
    await world.offered({ animals: [elsewhere] });
    const transfer = await world.offered({ clutch: clutch.id });
    expect(transfer.animals.map(({ id }) => id)).toEqual(rest);
    expect(transfer.first).toHaveLength(3);
    expect(transfer.warnings).toHaveLength(4);
    expect(transfer.warnings[0]).toMatchObject({ code: 'in-water', detail: textWith('Is it still a tadpole?') });
    await world.accepted(transfer.id);
    for (const id of rest) expect(await world.animal(id)).toMatchObject({ keeper: 'Ben', clutch: { id: clutch.id } });
    expect(await world.animal(elsewhere ?? '')).toMatchObject({ keeper: 'Anna' });
  });
});

describe('the codes of the receiver', () => {
  it('may be chosen with the acceptance, and the code that was given stays on record', async () => {
    const [one, other] = await world.make.individuals({ code: 'K-1' }, { code: 'K-2' });
    const { id } = await world.offered({ animals: [one?.id, other?.id] });
    const codes = [
      { individualId: one?.number, code: 'B-1' },
      { individualId: other?.id, code: null },
    ];
    const transfer = await world.accepted(id, { codes });
    expect(transfer.animals).toMatchObject([
      { code: 'B-1', givenCode: 'K-1' },
      { code: null, givenCode: 'K-2' },
    ]);
    const known = bodyOf<TransferView>(await world.clara.http.get(`/api/v1/transfers/${id}`).expect(200));
    expect(known.animals).toMatchObject([{ code: 'B-1', givenCode: null }, {}]);
  });

  it('that are in use are told, each with what to do, and nothing passes', async () => {
    await world.animalOf(world.ben, { code: 'EA-11' });
    const [one, other, third] = await world.make.individuals({ code: 'ea-11' }, { code: 'EA-12' }, { code: 'EA-13' });
    const { id } = await world.offered({ animals: [one?.id, other?.id, third?.id] });
    const answer = await world.step(world.ben.http, id, 'acceptance', {
      codes: [{ individualId: other?.id, code: 'EA-13' }],
    });
    expect(answer.status).toBe(409);
    expect(bodyOf<ProblemBody>(answer).errors).toMatchObject([
      { pointer: '/codes', detail: textWith('The code ea-11 is in use') },
      { pointer: '/codes', detail: textWith('The code EA-13 is in use') },
    ]);
    expect(await world.animal(other?.id ?? '')).toMatchObject({ keeper: 'Anna', code: 'EA-12' });
    await world.accepted(id, { codes: [{ individualId: one?.id, code: 'EA-14' }] });
    expect(await world.animal(one?.id ?? '')).toMatchObject({ keeper: 'Ben', code: 'EA-14' });
  });

  it('are for the animals that are offered, each once', async () => {
    const { id: own } = await world.make.individual();
    const { id } = await world.offered({ animals: [own] });
    const stranger = await world.make.individual();
    const answer = await world.step(world.ben.http, id, 'acceptance', {
      codes: [
        { individualId: own, code: 'C-1' },
        { individualId: own, code: 'C-2' },
        { individualId: stranger.id, code: 'C-3' },
      ],
    });
    expect(bodyOf<ProblemBody>(answer).errors).toMatchObject([
      { pointer: '/codes/1/individualId', detail: textWith('stands twice') },
      { pointer: '/codes/2/individualId', detail: textWith('not among those') },
    ]);
  });
});

describe('where the animals live', () => {
  const stays = async (id: string): Promise<PairingView['members']> =>
    bodyOf<PairingView>(await world.anna.http.get(`/api/v1/pairings/${id}`).expect(200)).members;

  it('their stays with the giver end on the day, and go on after an undo', async () => {
    const { sire, dam } = await trio(world.make);
    const members = [{ individualId: sire.id, joined: '2020' }, { individualId: dam.id }];
    const pairing = await world.make.pairing({ name: 'Tank 3', members });
    const transfer = await world.offered({ animals: [sire.id] });
    expect(transfer.warnings).toMatchObject([{ code: 'stay-ends', detail: textWith('lives in Tank 3') }]);
    const answer = await world.step(world.ben.http, transfer.id, 'acceptance', { date: '2024-06-01' });
    expect(await stays(pairing.id)).toMatchObject([
      { left: null },
      { individual: { id: sire.id }, left: '2024-06-01' },
    ]);
    expect((await world.undo(answer, world.ben.http)).status).toBe(201);
    expect((await stays(pairing.id)).map(({ left: day }) => day)).toEqual([null, null]);
    expect(await world.animal(sire.id)).toMatchObject({ keeper: 'Anna' });
  });

  it('a stay that began after the day is told', async () => {
    const { id } = await world.make.individual();
    await world.make.pairing({ name: 'Tank 4', members: [{ individualId: id, joined: '2024-07' }] });
    const transfer = await world.offered({ animals: [id] });
    const answer = await world.step(world.ben.http, transfer.id, 'acceptance', { date: '2024-06-30' });
    expect(answer.status).toBe(422);
    expect(bodyOf<ProblemBody>(answer).errors).toMatchObject([
      { pointer: '/date', detail: textWith('joined Tank 4 on 2024-07') },
    ]);
  });

  it('a stay with the receiver goes on', async () => {
    const { id } = await world.make.individual();
    const pairing = await world.of(world.ben).pairing({ members: [{ individualId: id, joined: '2023' }] });
    await world.accepted((await world.offered({ animals: [id] })).id);
    expect(await stays(pairing.id)).toMatchObject([{ left: null }]);
  });
});

describe('the list', () => {
  it('shows what I gave, what I was offered, and the transfers of an animal, newest first', async () => {
    const club = await startApi();
    const [dora, emil] = [await club.addKeeper('Dora'), await club.addKeeper('Emil')];
    const own = await new Factory(dora.http).individuals({}, {}, {});
    const ids: string[] = [];
    for (const { id } of own) {
      const sent = await dora.http
        .post('/api/v1/transfers')
        .send({ to: emil.id, animals: [id] })
        .expect(201);
      ids.unshift(bodyOf<TransferView>(sent).id);
    }
    await world.step(emil.http, ids[0] ?? '', 'acceptance');
    const list = async (http: TestAgent, query: string): Promise<string[]> =>
      bodyOf<{ items: TransferItemView[] }>(await http.get(`/api/v1/transfers?${query}`).expect(200)).items.map(
        ({ id }) => id,
      );
    expect(await list(dora.http, 'side=given')).toEqual(ids);
    expect(await list(emil.http, 'side=received&state=offered')).toEqual(ids.slice(1));
    expect(await list(dora.http, 'side=received')).toEqual([]);
    expect(await list(dora.http, `individualId=${own[1]?.id}`)).toEqual([ids[1]]);
    expect(await list(dora.http, 'kind=departure')).toEqual([]);
    const first = await dora.http.get('/api/v1/transfers?limit=2&total=true').expect(200);
    const { next, total } = bodyOf<{ next: string; total: number }>(first);
    expect([total, await list(dora.http, `limit=2&after=${next}`)]).toEqual([3, [ids[2]]]);
    await club.close();
  });
});

it('a repeated offer with the same key is made once', async () => {
  const { id } = await world.make.individual();
  const send = (): Promise<Response> =>
    world.anna.http
      .post('/api/v1/transfers')
      .set('Idempotency-Key', `offer-${id}`)
      .send({ to: world.ben.id, animals: [id] });
  const [first, second] = [await send(), await send()];
  expect([first.status, second.status]).toEqual([201, 201]);
  expect(bodyOf<TransferView>(second).id).toBe(bodyOf<TransferView>(first).id);
});
