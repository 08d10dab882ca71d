import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';

let api: TestApi;

beforeAll(async () => {
  api = await startApi();
});

afterAll(() => api.close());

const problem = /^application\/problem\+json/;

describe('whatever goes wrong is told as RFC 9457 tells it', () => {
  it.each([
    ['an address that does not exist', () => api.http.get('/api/v1/newts'), 404, 'not-found'],
    ['an address with a broken escape', () => api.http.get('/api/v1/individuals/%E0%A4%A'), 400, 'malformed'],
    [
      'a body that is no JSON',
      () => api.http.post('/api/v1/species').type('json').send('{"scientificName":'),
      400,
      'malformed',
    ],
    ['a body that is a bare value', () => api.http.post('/api/v1/species').type('json').send('17'), 400, 'malformed'],
    ['no body', () => api.http.post('/api/v1/species'), 422, 'invalid'],
    ['a list for a body', () => api.http.post('/api/v1/species').send([]), 422, 'invalid'],
    [
      'a body that is too large',
      () => api.http.post('/api/v1/species').send({ scientificName: 'x'.repeat(1_100_000) }),
      413,
      'too-large',
    ],
    [
      'an unknown field',
      () => api.http.post('/api/v1/species').send({ scientificName: 'Epipedobates anthonyi', colour: 'red' }),
      422,
      'invalid',
    ],
    ['a limit over the greatest', () => api.http.get('/api/v1/individuals?limit=201'), 422, 'invalid'],
    ['a limit that is no number', () => api.http.get('/api/v1/individuals?limit=many'), 422, 'invalid'],
    ['a cursor that nobody gave out', () => api.http.get('/api/v1/individuals?after=nonsense'), 422, 'invalid'],
    ['a query twice over', () => api.http.get('/api/v1/individuals?limit=1&limit=2'), 422, 'invalid'],
  ])('%s', async (_, ask, status, slug) => {
    const answer = await ask();
    expect(answer.status).toBe(status);
    expect(answer.headers['content-type']).toMatch(problem);
    const body = JSON.parse(answer.text) as Record<string, unknown>;
    expect(body).toMatchObject({
      type: `/api/problems/${slug}`,
      status,
      title: expect.any(String) as string,
      detail: expect.any(String) as string,
    });
    expect(answer.text).not.toMatch(/\bat .*\.[jt]s:|select |insert /);
  });

  it('a page of another site cannot write through a reader’s browser', async () => {
    const answer = await api.http
      .post('/api/v1/species')
      .set('Sec-Fetch-Site', 'cross-site')
      .send({ scientificName: 'Aus bus' });
    expect(answer.status).toBe(403);
  });
});

describe('a body as a whole', () => {
  it('of another type is told so, not taken for none', async () => {
    const answer = await api.http.post('/api/v1/species').type('text/plain').send('Aus bus').expect(415);
    expect(answer.body).toMatchObject({ type: '/api/problems/unsupported-media-type' });
  });

  it.each([
    ['objects', '{"a":', '1', '}'],
    ['lists', '[', '', ']'],
  ])('of %s 50 000 deep is refused, and the next request is answered', async (_, open, middle, close) => {
    const deep = open.repeat(50_000) + middle + close.repeat(50_000);
    await api.http.post('/api/v1/species').type('json').send(deep).expect(422);
    await api.http.get('/api/v1/species').expect(200);
  });

  it.each([
    ['https://elsewhere.example', 403],
    ['null', 403],
  ])('from a form whose Origin is “%s” gets %i', async (origin, status) => {
    await api.http.post('/api/v1/species').set('Origin', origin).send({ scientificName: '' }).expect(status);
  });

  it('from a form of our own page is read', async () => {
    await api.http.post('/api/v1/species').set('Origin', api.url).send({ scientificName: '' }).expect(422);
  });
});

describe('an Idempotency-Key', () => {
  const post = (key: string, body: object) => api.http.post('/api/v1/species').set('Idempotency-Key', key).send(body);

  it('gives a repeat the first answer and writes once', async () => {
    const first = await post('frog-1', { scientificName: 'Ranitomeya imitator' });
    const again = await post('frog-1', { scientificName: 'Ranitomeya imitator' });
    expect(first.status).toBe(201);
    expect(again.status).toBe(201);
    expect(again.text).toBe(first.text);
    expect(again.headers['idempotency-replayed']).toBe('true');
    expect(again.headers['etag']).toBe(first.headers['etag']);
  });

  it('gives a repeated question the status of an answer, not of something made', async () => {
    const ask = () =>
      api.http
        .post('/api/v1/lineage/kinship')
        .set('Idempotency-Key', 'frog-0')
        .send({ individuals: ['1-0'] });
    const added = await api.http.get('/api/v1/species');
    const speciesId = (added.body as { items: { id: string }[] }).items[0]?.id;
    const animal = await api.http.post('/api/v1/individuals').send({ speciesId, sex: 'male' });
    const number = (animal.body as { number: string }).number;
    const question = () =>
      api.http
        .post('/api/v1/lineage/kinship')
        .set('Idempotency-Key', 'frog-0')
        .send({ individuals: [number] });
    expect((await ask()).status).toBe(422);
    expect((await question()).status).toBe(200);
    const again = await question();
    expect([again.status, again.headers['idempotency-replayed']]).toEqual([200, 'true']);
  });

  it('refuses another request under the same key', async () => {
    await post('frog-2', { scientificName: 'Phyllobates vittatus' });
    const other = await post('frog-2', { scientificName: 'Phyllobates terribilis' });
    expect(other.status).toBe(422);
  });

  it('makes a change once, although the repeat names a version that it moved itself', async () => {
    const made = await post('frog-7', { scientificName: 'Excidobates mysteriosus' });
    const { id, version } = made.body as { id: string; version: number };
    const change = (commonName: string) =>
      api.http
        .patch(`/api/v1/species/${id}`)
        .set({ 'Idempotency-Key': 'frog-8', 'If-Match': `"${version}"` })
        .send({ commonName });
    const first = await change('moss frog');
    const again = await change('moss frog');
    expect([first.status, again.status, again.headers['idempotency-replayed']]).toEqual([200, 200, 'true']);
    expect(again.text).toBe(first.text);
    expect(again.headers['etag']).toBe(`"${version + 1}"`);
    expect((await change('bark frog')).status).toBe(422);
    const other = api.http
      .patch(`/api/v1/species/${id}`)
      .set({ 'Idempotency-Key': 'frog-9', 'If-Match': `"${version}"` });
    expect((await other.send({ commonName: 'bark frog' })).status).toBe(412);
  });

  it('lets a refused request be corrected under the same key', async () => {
    expect((await post('frog-3', { scientificName: '' })).status).toBe(422);
    expect((await post('frog-3', { scientificName: 'Oophaga pumilio' })).status).toBe(201);
  });

  it('lets one of many at once through', async () => {
    const answers = await Promise.all(
      Array.from({ length: 8 }, () => post('frog-4', { scientificName: 'Ameerega trivittata' })),
    );
    const statuses = answers.map((answer) => answer.status);
    expect(statuses).toContain(201);
    expect(statuses.filter((status) => ![201, 409].includes(status))).toEqual([]);
    for (const early of answers.filter((answer) => answer.status === 409))
      expect([early.headers['retry-after'], (early.body as { type: string }).type]).toEqual([
        '2',
        expect.stringContaining('still-at-work'),
      ]);
    const listed = await api.http.get('/api/v1/species?limit=200');
    const { items } = listed.body as { items: { scientificName: string }[] };
    expect(items.filter((item) => item.scientificName === 'Ameerega trivittata')).toHaveLength(1);
  });

  it('is forgotten after seven days', async () => {
    await post('frog-5', { scientificName: 'Andinobates geminisae' });
    await api.dataSource.query(
      `update idempotency_key set created_at = now() - interval '8 days' where key = 'frog-5'`,
    );
    await post('frog-6', { scientificName: 'Andinobates minutus' });
    const kept = await api.dataSource.query<{ key: string }[]>('select key from idempotency_key');
    expect(kept.map((row) => row.key)).toContain('frog-6');
    expect(kept.map((row) => row.key)).not.toContain('frog-5');
  });

  it('with characters that no key has is refused', async () => {
    expect((await post('a b', { scientificName: 'Aus bus' })).status).toBe(422);
    expect((await post('k'.repeat(201), { scientificName: 'Aus bus' })).status).toBe(422);
  });
});

describe('those who watch the service', () => {
  it('see that it lives, is ready, and how long requests take', async () => {
    expect((await api.http.get('/api/health/live')).body).toEqual({ status: 'up' });
    expect((await api.http.get('/api/health/ready')).body).toEqual({ status: 'up' });
    const metrics = await api.http.get('/api/metrics');
    expect(metrics.headers['content-type']).toMatch(/^text\/plain/);
    expect(metrics.text).toContain(
      'http_request_duration_seconds_count{method="GET",route="/api/health/live",status="200"}',
    );
  });

  it('see 503, not a fault, when the database is gone', async () => {
    const other = await startApiOn(api.databaseUrl);
    await other.dataSource.destroy();
    expect((await other.http.get('/api/health/ready')).status).toBe(503);
    await other.close().catch(() => undefined);
  });
});

it('the API is described as OpenAPI 3.1 and can be browsed', async () => {
  const document = await api.http.get('/api/openapi.json');
  expect((document.body as { openapi: string }).openapi).toBe('3.1.0');
  expect((await api.http.get('/api/docs')).status).toBe(200);
});
