import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';
import { keeperWithPassphrase } from '../../support/passphrase.ts';
import { signedIn, visit } from '../../support/visitor.ts';

let api: TestApi;
let other: TestApi;
let keeper: { name: string; password: string };

beforeAll(async () => {
  // one proxy of ours stands in front and says for whom it speaks
  api = await startApi({ trustProxy: 1 });
  other = await startApiOn(api.databaseUrl, { trustProxy: 1 });
  const { name, password } = await keeperWithPassphrase(api, 'Emeric');
  keeper = { name, password };
});

afterAll(async () => {
  await other.close();
  await api.close();
});

beforeEach(() => api.dataSource.query('delete from rate_limit'));

const attempt = (at: TestApi, from: string, name: string, password = 'a guess') =>
  visit(at).post('/api/v1/session').set('X-Forwarded-For', from).send({ name, password });

it('guessing a passphrase is slowed after ten attempts, over all copies of the service together', async () => {
  for (let round = 0; round < 5; round++) {
    await attempt(api, '192.0.2.1', 'Emeric').expect(401);
    await attempt(other, '192.0.2.1', 'eMERIC').expect(401);
  }
  const refused = await attempt(other, '192.0.2.1', 'Emeric', keeper.password).expect(429);
  expect(Number(refused.headers['retry-after'])).toBeGreaterThan(800);
  expect(Number(refused.headers['retry-after'])).toBeLessThanOrEqual(900);
  expect(refused.body).toMatchObject({ type: '/api/problems/too-many', status: 429 });
  // neither the keeper at home nor others at that address are shut out
  await attempt(api, '192.0.2.2', 'Emeric', keeper.password).expect(201);
  await attempt(api, '192.0.2.1', 'Somebody else').expect(401);
  await api.dataSource.query('update rate_limit set expire = expire - 901000');
  await attempt(api, '192.0.2.1', 'Emeric', keeper.password).expect(201);
});

it('attempts at the same moment count each', async () => {
  const answers = await Promise.all(
    Array.from({ length: 16 }, (_, at) => attempt(at % 2 === 0 ? api : other, '192.0.2.3', 'Emeric')),
  );
  const statuses = answers.map(({ status }) => status);
  expect(statuses.filter((status) => status === 401)).toHaveLength(10);
  expect(statuses.filter((status) => status === 429)).toHaveLength(6);
});

it('trying many names from one address is slowed, whatever the sender says before our proxy', async () => {
  await api.dataSource.query(
    `insert into rate_limit (key, points, expire) values ('sign-in-place:192.0.2.4', 100, (extract(epoch from now()) * 1000 + 60000)::bigint)`,
  );
  await attempt(api, '198.51.100.7, 192.0.2.4', 'Another').expect(429);
  await attempt(api, '192.0.2.5', 'Another').expect(401);
});

it('a sign-in that succeeds gives the attempts back', async () => {
  for (let round = 0; round < 3; round++) {
    for (let wrong = 0; wrong < 5; wrong++) await attempt(api, '192.0.2.6', 'Emeric').expect(401);
    await attempt(api, '192.0.2.6', 'Emeric', keeper.password).expect(201);
  }
});

it('guessing the present passphrase in a session that was taken over is slowed as well', async () => {
  const browser = await signedIn(api, keeper);
  const change = () =>
    browser.put('/api/v1/account/password').send({ current: 'a guess', next: 'moss under the third lamp' });
  for (let round = 0; round < 10; round++) await change().expect(422);
  await change().expect(429);
});

it('the name that somebody tried is not kept', async () => {
  await attempt(api, '192.0.2.8', 'my passphrase typed into the wrong field').expect(401);
  const rows = await api.dataSource.query<{ key: string }[]>('select key from rate_limit');
  expect(rows.map(({ key }) => key).join(' ')).not.toContain('passphrase typed');
});
