import supertest from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startApi, type TestApi } from '../../support/api.ts';
import { keeperWithPassphrase } from '../../support/passphrase.ts';
import { signedIn } from '../../support/visitor.ts';

let api: TestApi;
let browser: Awaited<ReturnType<typeof signedIn>>;

interface Made {
  readonly id: string;
  readonly token: string;
}

beforeAll(async () => {
  api = await startApi();
  browser = await signedIn(api, await keeperWithPassphrase(api, 'Runa'));
});

afterAll(() => api.close());

const make = async (body: object): Promise<Made> =>
  (await browser.post('/api/v1/account/tokens').send(body).expect(201)).body as Made;
const program = ({ token }: Made) => ({
  read: () => supertest(api.url).get('/api/v1/species').set('Authorization', `Bearer ${token}`),
  write: (scientificName: string) =>
    supertest(api.url).post('/api/v1/species').set('Authorization', `Bearer ${token}`).send({ scientificName }),
});

it('a token for writing does what its keeper may do, and a cross-site rule for cookies is none of its business', async () => {
  const made = await make({ name: 'the scales', scope: 'write' });
  expect(made.token).toMatch(/^lk_[\w-]{43}$/);
  await program(made).read().expect(200);
  await program(made).write('Inventus scribens').expect(201);
  const journal = await browser.get('/api/v1/journal?action=added').expect(200);
  expect(journal.body).toMatchObject({ items: [{ via: 'token', keeper: { name: 'Runa' } }] });
});

it('a token for reading reads and asks, and writes nothing', async () => {
  const made = await make({ name: 'a chart', scope: 'read', expiresAt: null });
  await program(made).read().expect(200);
  const refused = await program(made).write('Inventus legens').expect(403);
  expect(refused.text).toContain('for reading only');
  const asked = await supertest(api.url)
    .post('/api/v1/lineage/kinship')
    .set('Authorization', `Bearer ${made.token}`)
    .send({ individuals: [] });
  expect([200, 422]).toContain(asked.status);
  expect(
    (await api.dataSource.query<unknown[]>(`select from species where scientific_name = 'Inventus legens'`)).length,
  ).toBe(0);
});

it('a token ends when it was said to end, and begins no earlier than it was made', async () => {
  const expiresAt = new Date(Date.now() + 86_400_000).toISOString();
  const made = await make({ name: 'a day', scope: 'read', expiresAt });
  await program(made).read().expect(200);
  await api.dataSource.query(`update access_token set expires_at = now() - interval '1 second' where id = $1`, [
    made.id,
  ]);
  await program(made).read().expect(401);
  const late = { name: 'too late', scope: 'read', expiresAt: '2020-01-01T00:00:00Z' };
  await browser.post('/api/v1/account/tokens').send(late).expect(422);
  await browser
    .post('/api/v1/account/tokens')
    .send({ ...late, expiresAt: 'tomorrow' })
    .expect(422);
});

it('a token is revoked at once, by its keeper alone', async () => {
  const made = await make({ name: 'a phone', scope: 'write' });
  await api.http.delete(`/api/v1/account/tokens/${made.id}`).expect(404);
  await program(made).read().expect(200);
  await browser.delete(`/api/v1/account/tokens/${made.id}`).expect(200);
  await program(made).read().expect(401);
  await browser.delete(`/api/v1/account/tokens/${made.id}`).expect(404);
  const { items } = (await browser.get('/api/v1/account/tokens')).body as { items: { id: string }[] };
  expect(items.map(({ id }) => id)).not.toContain(made.id);
});

it('its last use is shown, and its secret never again', async () => {
  const made = await make({ name: 'seen', scope: 'read' });
  const find = async (): Promise<Record<string, unknown> | undefined> =>
    ((await browser.get('/api/v1/account/tokens?limit=200')).body as { items: Record<string, unknown>[] }).items.find(
      ({ id }) => id === made.id,
    );
  expect(await find()).toMatchObject({ name: 'seen', scope: 'read', lastUsedAt: null });
  await program(made).read().expect(200);
  const used = await find();
  expect(Date.parse(String(used?.['lastUsedAt']))).toBeGreaterThan(Date.now() - 60_000);
  expect(JSON.stringify(used)).not.toContain(made.token.slice(3));
});

it('a token that leaked cannot make others', async () => {
  const { token } = await make({ name: 'leaked', scope: 'write' });
  const answer = await supertest(api.url)
    .post('/api/v1/account/tokens')
    .set('Authorization', `Bearer ${token}`)
    .send({ name: 'another', scope: 'write' });
  expect(answer.status).toBe(403);
});

it('a token that is none is told so, also beside a session', async () => {
  await supertest(api.url).get('/api/v1/species').set('Authorization', 'Bearer lk_nothing').expect(401);
  await supertest(api.url).get('/api/v1/species').set('Authorization', 'Basic bGs6bGs=').expect(401);
  await browser.get('/api/v1/species').set('Authorization', 'Bearer lk_nothing').expect(401);
});
