import { afterAll, beforeAll, expect, it } from 'vitest';
import { offerSetup } from '../../../api/people/setup-code.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { cookieOf, visit } from '../../support/visitor.ts';

let api: TestApi;
let log = '';

beforeAll(async () => {
  api = await startApi({ logLevel: 'debug' }, { write: (line) => void (log += line) });
});

afterAll(() => api.close());

/** Every row of every table, as text. */
async function everything(): Promise<string> {
  const tables = await api.dataSource.query<{ name: string }[]>(
    `select tablename as name from pg_tables where schemaname = 'public'`,
  );
  const rows = await Promise.all(
    tables.map(({ name }) => api.dataSource.query<{ row: string }[]>(`select t::text as row from "${name}" t`)),
  );
  return rows
    .flat()
    .map(({ row }) => row)
    .join('\n');
}

it('no passphrase, code, token, link or session stands in the database, in the log, or in an answer after it was shown', async () => {
  const answers: string[] = [];
  const browser = visit(api);
  const ask = async (method: 'get' | 'post' | 'put' | 'delete', path: string, body?: object) => {
    const request = browser[method](`/api/v1/${path}`).set('Idempotency-Key', `${method}-${answers.length}`);
    const answer = await request.send(body);
    expect(answer.status, answer.text).toBeLessThan(300);
    answers.push(answer.text);
    return answer;
  };
  const password = 'moss under the third lamp';
  const next = 'wet leaves beside the pond';
  const code = (await offerSetup(api.dataSource)) ?? '';
  const setUp = await ask('post', 'setup', { code, clubName: 'Two tanks', name: 'Anna', password });
  const cookie = decodeURIComponent(cookieOf(setUp).split(';')[0] ?? '').replace(/^[^=]+=s:/, '');
  await ask('put', 'account/password', { current: password, next });
  await ask('post', 'session', { name: 'Anna', password: next });
  const token = (await ask('post', 'account/tokens', { name: 'scales', scope: 'read' })).body as { token: string };
  const link = (await ask('post', 'links', { kind: 'invitation' })).body as { path: string };
  const shownOnce = answers.splice(-2);
  const secret = link.path.replace('/join/', '');
  await ask('get', `links/${secret}`);
  await ask('post', `links/${secret}/use`, { name: 'Ben', password: 'ferns behind the old door' });
  for (const path of ['account/tokens', 'session', 'keepers', 'journal?limit=200', 'club']) await ask('get', path);
  await browser.post('/api/v1/session').send({ name: 'Anna', password: 'a wrong guess of mine' }).expect(401);

  const secrets = [
    password,
    next,
    code,
    token.token.slice(3),
    secret,
    cookie.split('.')[0] ?? '',
    'ferns behind the old door',
    'a wrong guess of mine',
  ];
  const places = { database: await everything(), log, answers: answers.join('\n') };
  expect(places.log).toContain('/api/v1/links/');
  expect(places.database).toContain('Two tanks');
  for (const hidden of secrets) {
    expect(hidden.length).toBeGreaterThan(10);
    for (const [place, text] of Object.entries(places))
      expect(text.includes(hidden), `${hidden} in the ${place}`).toBe(false);
  }
  expect(shownOnce.join()).toContain(secret);
});
