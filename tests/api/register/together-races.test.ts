import type { Response } from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import type { ChangedTogetherView } from '../../../api/register/together/together.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import { Factory } from '../../support/factories.ts';

let api: TestApi;
let keeper: TestKeeper;
let make: Factory;
let speciesId: string;

beforeAll(async () => {
  api = await startApi();
  keeper = await api.addKeeper('Ulla');
  make = new Factory(keeper.http);
  speciesId = (await make.species()).id;
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

const animals = async (count: number): Promise<IndividualView[]> => {
  const made: IndividualView[] = [];
  for (let at = 0; at < count; at++) made.push(await make.individual({ speciesId }));
  return made;
};
const at = (records: readonly { id: string; version: number }[]): { id: string; version: number }[] =>
  records.map(({ id, version }) => ({ id, version }));
const send = async (body: object, http: TestAgent = keeper.http): Promise<Response> =>
  http.post('/api/v1/individuals/changes').send(body);
const read = async ({ id }: { id: string }): Promise<IndividualView> =>
  bodyOf(await keeper.http.get(`/api/v1/individuals/${id}`).expect(200));

describe('two such changes at once', () => {
  it('of the same animals: one goes through, the other finds all of them changed, whatever their order', async () => {
    for (let round = 0; round < 5; round++) {
      const made = await animals(6);
      const [first, second] = await Promise.all([
        send({ animals: at(made), fields: { sex: 'male' } }),
        send({ animals: at(made.toReversed()), fields: { visibility: 'public' } }),
      ]);
      const statuses = [first.status, second.status].sort();
      expect(statuses).toEqual([201, 409]);
      const now = await Promise.all(made.map((animal) => read(animal)));
      expect(now.every(({ version }) => version === 2)).toBe(true);
      expect(new Set(now.map(({ sex, visibility }) => `${sex} ${visibility}`)).size).toBe(1);
    }
  });

  it('that move the same animals to two places: none lives in both', async () => {
    const made = await animals(4);
    const [a, b] = [await make.pairing({ members: [] }), await make.pairing({ members: [] })];
    const answers = await Promise.all(
      [a, b].map(({ id }) => send({ animals: at(made), move: { pairingId: id, on: '2026-03-01' } })),
    );
    expect(answers.some(({ status }) => status === 201)).toBe(true);
    const stays = await api.dataSource.query<{ open: number }[]>(
      `select count(*)::integer as open from pairing_member where individual_id = any($1) and "left" is null and stands group by individual_id`,
      [made.map(({ id }) => id)],
    );
    expect(stays.map(({ open }) => open)).toEqual([1, 1, 1, 1]);
  });

  it('sent twice under one key is done once', async () => {
    const made = await animals(2);
    const body = { animals: at(made), fields: { sex: 'male' } };
    const key = 'evening-of-the-first';
    const [one, two] = [
      await keeper.http.post('/api/v1/individuals/changes').set('Idempotency-Key', key).send(body),
      await keeper.http.post('/api/v1/individuals/changes').set('Idempotency-Key', key).send(body),
    ];
    expect([one.status, two.status]).toEqual([201, 201]);
    expect(two.body).toEqual(one.body);
    expect((await read({ id: made[0]?.id ?? '' })).version).toBe(2);
  });
});

describe('a thousand animals', () => {
  it('are looked at, changed and taken back, each in one request', async () => {
    const clutch = await make.clutch({ laid: '2026-01-01' });
    const made: { id: string; version: number }[] = [];
    for (let batch = 0; batch < 5; batch++) {
      const answer = await keeper.http
        .post(`/api/v1/clutches/${clutch.id}/offspring`)
        .send({ count: 200, speciesId })
        .expect(201);
      made.push(...bodyOf<{ items: { id: string; version: number }[] }>(answer).items);
    }
    const body = {
      animals: made.map(({ id, version }) => ({ id, version })),
      fields: { sex: 'male', sexBasis: 'looks' },
    };
    const seen = bodyOf<ChangedTogetherView>(
      await keeper.http.post('/api/v1/individuals/changes?dryRun=true').send(body).expect(200),
    );
    expect(seen.changing).toBe(1000);
    const answer = await send(body);
    expect(bodyOf<ChangedTogetherView>(answer).changing).toBe(1000);
    const back = await keeper.http.post(`/api/v1/journal/${answer.headers['journal-entry']}/reversal`).send({});
    expect(back.status).toBe(201);
    const [left] = await api.dataSource.query<{ males: string }[]>(
      `select count(*) as males from individual where clutch_id = $1 and sex = 'male'`,
      [clutch.id],
    );
    expect(Number(left?.males)).toBe(0);
  }, 120_000);
});
