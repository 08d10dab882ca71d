import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PairingView } from '../../../api/register/pairings/pairing.view.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';

const nowhere = '00000000-0000-7000-8000-000000000000';

let api: TestApi;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
});

afterAll(() => api.close());

async function trioInTank(): Promise<{ pairing: PairingView; ids: string[] }> {
  const animals = await make.individuals({ sex: 'male' }, { sex: 'female' }, { sex: 'female' });
  const ids = animals.map((animal) => animal.id);
  return {
    pairing: await make.pairing({ members: ids.map((individualId) => ({ individualId, joined: '2021' })) }),
    ids,
  };
}

describe('a pairing', () => {
  it('is written as the trade does, and read back whole', async () => {
    const { pairing, ids } = await trioInTank();
    expect(pairing).toMatchObject({ version: 1, notation: '1.2.0', clutches: [], keeper: 'Keeper', notes: null });
    expect(new Set(pairing.members.map((member) => member.individual.id))).toEqual(new Set(ids));
    const clutch = await make.clutch({ pairingId: pairing.id, laid: '2022-05-01', eggs: 6 });
    const read = (await api.http.get(`/api/v1/pairings/${pairing.id}`).expect(200)).body as PairingView;
    expect(read.clutches).toEqual([{ id: clutch.id, title: 'clutch of 2022-05-01', laid: '2022-05-01', eggs: 6 }]);
  });

  it('gains and loses members over time, each a change of the pairing', async () => {
    const { pairing } = await trioInTank();
    const joiner = await make.individual({ sex: 'unsexed' });
    const path = `/api/v1/pairings/${pairing.id}/members`;
    await api.http.post(path).send({ individualId: joiner.id }).expect(428);
    const joined = await api.http
      .post(path)
      .set('If-Match', '"1"')
      .send({ individualId: joiner.number, joined: '2022-01' })
      .expect(201);
    expect(joined.body).toMatchObject({ version: 2, notation: '1.2.1' });
    const member = (joined.body as PairingView).members.find((candidate) => candidate.individual.sex === 'male');
    await api.http.patch(`${path}/${member?.id}`).set('If-Match', '"1"').send({ left: '2022-06' }).expect(412);
    const left = await api.http
      .patch(`${path}/${member?.id}`)
      .set('If-Match', '"2"')
      .send({ left: '2022-06' })
      .expect(200);
    expect(left.body).toMatchObject({ version: 3, notation: '0.2.1' });
    const back = await api.http
      .patch(`${path}/${member?.id}`)
      .set('If-Match', '*')
      .send({ left: null, joined: null })
      .expect(200);
    expect((back.body as PairingView).members.find((candidate) => candidate.id === member?.id)).toMatchObject({
      joined: null,
      left: null,
    });
    const removed = await api.http.delete(`${path}/${member?.id}`).set('If-Match', '*').expect(200);
    expect((removed.body as PairingView).members).toHaveLength(3);
    await api.http.delete(`${path}/${member?.id}`).set('If-Match', '*').expect(404);
    await api.http.patch(`${path}/${member?.id}`).set('If-Match', '*').send({ left: '2023' }).expect(404);
    await api.http.patch(`${path}/seventeen`).set('If-Match', '*').send({ left: '2023' }).expect(404);
  });

  it('does not count the dead', async () => {
    const { pairing, ids } = await trioInTank();
    await api.http.patch(`/api/v1/individuals/${ids[0]}`).set('If-Match', '*').send({ status: 'died' }).expect(200);
    expect((await api.http.get(`/api/v1/pairings/${pairing.id}`)).body).toMatchObject({ notation: '0.2.0' });
  });
});

describe('one animal lives in one place at a time', () => {
  const stay = async (individualId: string, joined: string | null, left: string | null) =>
    api.http.post('/api/v1/pairings').send({ name: 'elsewhere', members: [{ individualId, joined, left }] });

  it.each([
    ['while it lives there', '2021-01-01', null, '2022-01-01', null],
    ['for a time within it', '2021-01-01', '2022-01-01', '2021-03', '2021-05'],
    ['from before until after it', '2021-06', '2021-08', '2020', '2022'],
    ['where neither says when', null, null, null, null],
    ['that began nobody knows when', '2021-01-01', '2022-01-01', null, '2021-06-01'],
  ])('a second stay %s is refused in words', async (_, joined, left, secondJoined, secondLeft) => {
    const animal = await make.individual();
    expect((await stay(animal.id, joined, left)).status).toBe(201);
    const answer = await stay(animal.id, secondJoined, secondLeft);
    expect(answer.status).toBe(409);
    expect(answer.body).toMatchObject({
      errors: [{ pointer: '/joined', detail: expect.stringMatching(/lives in another pairing/) as string }],
    });
  });

  it.each([
    ['after it left', '2021-01-01', '2022-01-01', '2022-01-01', null],
    ['that vague dates leave room for', '2021', '2022', '2022', null],
  ])('a second stay %s is taken', async (_, joined, left, secondJoined, secondLeft) => {
    const animal = await make.individual();
    expect((await stay(animal.id, joined, left)).status).toBe(201);
    expect((await stay(animal.id, secondJoined, secondLeft)).status).toBe(201);
  });

  it('also where two requests put it in two places at once', async () => {
    const animal = await make.individual();
    const answers = await Promise.all([
      stay(animal.id, '2023', null),
      stay(animal.id, '2023', null),
      stay(animal.id, '2023', null),
    ]);
    expect(answers.map((answer) => answer.status).sort()).toEqual([201, 409, 409]);
  });

  it('and does not leave before it joined', async () => {
    const animal = await make.individual();
    const answer = await stay(animal.id, '2022', '2021-12-31');
    expect(answer.status).toBe(422);
    expect(answer.body).toMatchObject({ errors: [{ pointer: '/left' }] });
  });
});

it('a member that is not there is named at its place', async () => {
  const animal = await make.individual();
  const members = [{ individualId: animal.id }, { individualId: nowhere }, { individualId: '17' }];
  const answer = await api.http.post('/api/v1/pairings').send({ name: 'Tank', members }).expect(422);
  expect((answer.body as { errors: { pointer: string }[] }).errors.map((error) => error.pointer)).toEqual([
    '/members/1/individualId',
    '/members/2/individualId',
  ]);
  expect((await api.http.get(`/api/v1/pairings?individualId=${animal.id}`)).body).toMatchObject({ items: [] });
});

it('pairings are listed by name, in pages, with filters', async () => {
  const animal = await make.individual();
  for (const name of ['listed C', 'Listed a', 'listed B']) await make.pairing({ name });
  const mine = await make.pairing({ name: 'listed D', members: [{ individualId: animal.id }] });
  const first = await api.http.get('/api/v1/pairings?q=LISTED&limit=3&total=true').expect(200);
  const page = first.body as { items: PairingView[]; next: string; total: number };
  expect(page.total).toBe(4);
  const second = await api.http.get(`/api/v1/pairings?q=LISTED&limit=3&after=${page.next}`).expect(200);
  expect([...page.items, ...(second.body as { items: PairingView[] }).items].map((item) => item.name)).toEqual([
    'Listed a',
    'listed B',
    'listed C',
    'listed D',
  ]);
  expect(second.body).toMatchObject({ next: null });
  expect((await api.http.get(`/api/v1/pairings?individualId=${animal.id}`)).body).toMatchObject({
    items: [{ id: mine.id }],
  });
});
