import supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';

let api: TestApi;
let behindProxy: TestApi;
let written = '';
const log = { write: (line: string) => void (written += line) };

beforeAll(async () => {
  api = await startApi({ logLevel: 'info' }, log);
  behindProxy = await startApiOn(api.databaseUrl, { logLevel: 'info', trustProxy: 1 }, log);
});

afterAll(async () => {
  await behindProxy.close();
  await api.close();
});

interface Line {
  readonly level: number;
  readonly request?: string;
  readonly method?: string;
  readonly route?: string;
  readonly status?: number;
  readonly milliseconds?: number;
  readonly keeper?: string;
  readonly address?: string;
}

const lines = (): Line[] =>
  written
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Line);

/** The line of one request; it is written when the answer has gone out, a moment after it came in here. */
async function lineOf(requestId: string | undefined): Promise<Line> {
  const find = (): Line | undefined => lines().find((line) => line.request === requestId);
  await expect.poll(find).toBeDefined();
  return find() ?? { level: 0 };
}

describe('the log', () => {
  it('has a line for every request: its id, route, status, time, and the id of who asked', async () => {
    const keeper = await api.addKeeper('Hanna');
    const added = await keeper.http
      .post('/api/v1/species')
      .send({ scientificName: 'Ranitomeya variabilis' })
      .expect(201);
    const { id } = added.body as { id: string };
    const answer = await keeper.http.get(`/api/v1/species/${id}?of=nothing`);
    expect(await lineOf(answer.headers['x-request-id'] as string)).toMatchObject({
      level: 30,
      method: 'GET',
      route: '/api/v1/species/:id',
      status: answer.status,
      milliseconds: expect.any(Number) as number,
      keeper: keeper.id,
    });
    expect(written).not.toContain(id);
  });

  it('knows a stranger by the address alone', async () => {
    const answer = await api.stranger.get('/api/v1/species').expect(401);
    const line = await lineOf(answer.headers['x-request-id']);
    expect(line).toMatchObject({ status: 401, address: '127.0.0.1' });
    expect(line).not.toHaveProperty('keeper');
  });

  it('takes over the id of a request from a proxy of ours, and from nobody else', async () => {
    const id = 'proxy-4711-abc';
    const taken = await behindProxy.http.get('/api/v1/club').set('X-Request-Id', id);
    expect(taken.headers['x-request-id']).toBe(id);
    const wild = await behindProxy.http.get('/api/v1/club').set('X-Request-Id', 'a b"}');
    expect(wild.headers['x-request-id']).toMatch(/^[0-9a-f-]{36}$/);
    const own = await api.http.get('/api/v1/club').set('X-Request-Id', id);
    expect(own.headers['x-request-id']).not.toBe(id);
  });

  it('holds nothing of what requests say: no address, no header, no body', async () => {
    const secret = (where: string): string => `canary${where}${'x'.repeat(20)}`;
    const ask = [
      () => api.stranger.get(`/api/v1/links/${secret('Link')}`),
      () => api.stranger.post(`/api/v1/links/${secret('Link')}/use`).send({ password: secret('Password') }),
      () => api.stranger.post('/api/v1/session').send({ name: secret('Name'), password: secret('Password') }),
      () =>
        api.stranger
          .post('/api/v1/session')
          .type('json')
          .send(`{"password":"${secret('Broken')}`),
      () => api.stranger.get('/api/v1/club').set('Authorization', `Bearer ${secret('Token')}`),
      () => api.stranger.get('/api/v1/club').set('Authorization', `Basic ${secret('Basic')}`),
      () => api.stranger.get('/api/v1/club').set('Cookie', `sid=${secret('Cookie')}`),
      () => api.http.get(`/api/v1/individuals?q=${secret('Search')}&${secret('Field')}=1`),
      () => api.http.get(`/api/v1/individuals/${secret('Id')}`),
      () => api.http.get(`/animals/${secret('Page')}`),
      () =>
        api.http
          .get('/api/v1/club')
          .set('User-Agent', secret('Agent'))
          .set('Referer', `http://x/${secret('Referer')}`),
      () => api.http.post('/api/v1/species').send({ scientificName: secret('Body'), [secret('Key')]: 1 }),
      () => api.http.post('/api/v1/species').set('Idempotency-Key', secret('Retry')).send({ scientificName: '' }),
      () =>
        api.http
          .post('/api/v1/imports')
          .type('text/csv')
          .send(`code,${secret('Column')}\n${secret('Cell')},1\n`),
    ];
    for (const send of ask) {
      const answer = await send();
      await lineOf(answer.headers['x-request-id']);
    }
    expect(written).not.toMatch(/canary/i);
  });

  it('tells of a fault with its place, under the id that the answer carries', async () => {
    await api.dataSource.query('alter table species rename to species_gone');
    const answer = await api.http.get('/api/v1/species?q=canaryFault').expect(500);
    await api.dataSource.query('alter table species_gone rename to species');
    const id = answer.headers['x-request-id'] as string;
    expect(await lineOf(id)).toMatchObject({ level: 50, status: 500, route: '/api/v1/species' });
    expect(written).toContain(`GET /api/v1/species (${id}) failed`);
    expect(written).toContain('species.queries');
    expect(answer.text).not.toMatch(/relation|species_gone|queries/);
    expect(written).not.toContain('canary');
  });

  it('says nothing below its level', async () => {
    let silent = '';
    const quiet = await startApiOn(api.databaseUrl, { logLevel: 'warn' }, { write: (line) => void (silent += line) });
    await supertest(quiet.url).get('/api/v1/species').expect(401);
    await quiet.close();
    expect(silent).toBe('');
  });
});
