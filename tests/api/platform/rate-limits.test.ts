import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { asking, knocking, sending, writing, type Cost } from '../../../api/platform/allowances.ts';
import { bodyOf, type ProblemBody } from '../../support/answer.ts';
import { startApi, startApiOn, type TestApi, type TestKeeper } from '../../support/api.ts';

let api: TestApi;
let other: TestApi;
let hanna: TestKeeper;

beforeAll(async () => {
  api = await startApi();
  other = await startApiOn(api.databaseUrl);
  hanna = await api.addKeeper('Hanna');
});

afterAll(async () => {
  await other.close();
  await api.close();
});

beforeEach(() => api.dataSource.query('delete from rate_limit'));

/** As if somebody had used an allowance up to a few points. */
async function leave(points: number, { name, points: all, seconds }: Cost['allowance'], whose: string): Promise<void> {
  await api.dataSource.query('insert into rate_limit (key, points, expire) values ($1, $2, $3)', [
    `${name}:${whose}`,
    all - points,
    Date.now() + seconds * 1000,
  ]);
}

let count = 0;
const write = (keeper: { http: TestApi['http'] }) =>
  keeper.http.post('/api/v1/species').send({ scientificName: `Ranitomeya number${String.fromCharCode(97 + count++)}` });

describe('whoever writes more than a club ever does', () => {
  it('is told so, and when to go on', async () => {
    await leave(1, writing, hanna.id);
    await write(hanna).expect(201);
    const refused = await write(hanna)
      .expect(429)
      .expect('content-type', /^application\/problem\+json/);
    expect(bodyOf<ProblemBody>(refused)).toMatchObject({ type: '/api/problems/too-many', status: 429 });
    expect(bodyOf<ProblemBody>(refused).detail).toMatch(/Try again in \d+ minutes\.$/);
    const seconds = Number(refused.headers['retry-after']);
    expect(seconds).toBeGreaterThan(0);
    expect(seconds).toBeLessThanOrEqual(writing.seconds);
  });

  it('is counted by all copies of the service together', async () => {
    await leave(3, writing, hanna.id);
    const elsewhere = await other.addKeeper('Hanna');
    const answers = await Promise.all([write(hanna), write(elsewhere), write(hanna), write(elsewhere), write(hanna)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 201, 201, 429, 429]);
  });

  it('does not hold up another keeper, nor the own reading', async () => {
    await leave(0, writing, hanna.id);
    await write(hanna).expect(429);
    await write(api).expect(201);
    await hanna.http.get('/api/v1/species').expect(200);
  });

  it('may go on when the time is over', async () => {
    await leave(0, writing, hanna.id);
    await api.dataSource.query('update rate_limit set expire = $1', [Date.now() - 1]);
    await write(hanna).expect(201);
  });

  it('shows in the figures of the service', async () => {
    await leave(0, writing, hanna.id);
    await write(hanna).expect(429);
    const figures = await api.http.get('/api/metrics').expect(200);
    expect(figures.text).toMatch(/^rate_limit_refusals_total\{allowance="writing"\} [1-9]/m);
  });
});

describe('an evening of work', () => {
  it('of 300 records in a row, as a phone sends what it kept, uses a tenth of what is allowed', async () => {
    for (let batch = 0; batch < 30; batch++)
      await Promise.all(
        Array.from({ length: 10 }, () => hanna.http.post('/api/v1/lines').send({ name: '' }).expect(422)),
      );
    const used = await api.dataSource.query<unknown[]>('select key, points from rate_limit');
    expect(used).toEqual([{ key: `writing:${hanna.id}`, points: writing.points / 10 }]);
  });
});

describe('other allowances', () => {
  it('a sheet counts as one, checked or taken', async () => {
    await leave(1, sending, hanna.id);
    const send = () =>
      hanna.http.post('/api/v1/imports?dryRun=true').type('text/csv').send('code,species\nA-1,Aus bus\n');
    await send().expect(200);
    await send().expect(429);
    await write(hanna).expect(201);
  });

  it.each([
    ['kinship', { individuals: Array.from({ length: 500 }, (_, at) => `${at}-0`) }, 101],
    ['kinship', { individuals: ['1-1', '2-2'] }, 2],
    ['forecast', { sires: Array.from({ length: 40 }, (_, at) => `${at}-0`), dams: ['1-1'] }, 2],
    ['figures', { individuals: Array.from({ length: 200 }, (_, at) => `${at}-0`) }, 21],
    ['kinship', { individuals: { length: 1e9 } }, 1],
  ])('a question about %s costs what it asks for', async (question, body, points) => {
    await leave(points - 1, asking, hanna.id);
    await hanna.http.post(`/api/v1/lineage/${question}`).send(body).expect(429);
    await api.dataSource.query('delete from rate_limit');
    await leave(points, asking, hanna.id);
    await hanna.http.post(`/api/v1/lineage/${question}`).send(body).expect(422);
  });

  it('strangers are counted by address, those with a wrong token too', async () => {
    await leave(2, knocking, '127.0.0.1');
    await api.stranger.get('/api/v1/species').expect(401);
    await api.stranger.get('/api/v1/species').set('Authorization', 'Bearer lk_guessed').expect(401);
    await api.stranger.get('/api/v1/species').expect(429);
    await api.stranger.get('/api/v1/species').set('Authorization', 'Bearer lk_guessed').expect(429);
    await api.http.get('/api/v1/species').expect(200);
    await api.stranger.get('/api/health/ready').expect(200);
  });
});
