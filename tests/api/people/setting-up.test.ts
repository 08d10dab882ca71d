import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { offerSetup } from '../../../api/people/setup-code.ts';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';
import { keeperWithPassphrase } from '../../support/passphrase.ts';
import { visit } from '../../support/visitor.ts';

let api: TestApi;

beforeEach(async () => {
  api = await startApi();
});

afterEach(() => api.close());

const empty = async (): Promise<void> => {
  for (const table of ['access_token', 'keeper', 'club']) await api.dataSource.query(`delete from ${table}`);
};
const first = { clubName: 'Two tanks', name: 'Anna', password: 'moss under the third lamp' };
const setUp = (code: string | null, at: TestApi = api, more: object = {}) =>
  visit(at)
    .post('/api/v1/setup')
    .send({ code, ...first, ...more });
const state = async (): Promise<unknown> =>
  ((await visit(api).get('/api/v1/session')).body as { state: unknown }).state;

describe('an empty register', () => {
  beforeEach(empty);

  it('waits for its first administrator, and lets nobody do anything before', async () => {
    const answer = await visit(api).get('/api/v1/session').expect(200);
    expect(answer.body).toMatchObject({ state: 'setup', club: null, keeper: null, permissions: [], demoKeepers: [] });
    await visit(api).get('/api/v1/individuals').expect(401);
  });

  it('is set up with the code, however it is typed; the administrator is signed in and the journal tells', async () => {
    const code = await offerSetup(api.dataSource);
    const browser = visit(api);
    const answer = await browser
      .post('/api/v1/setup')
      .send({ code: code?.toLowerCase().replaceAll('-', ' '), ...first })
      .expect(201);
    expect(answer.body).toMatchObject({
      state: 'signed-in',
      club: { name: 'Two tanks', demo: false },
      keeper: { name: 'Anna', roles: ['registrar', 'administrator'] },
    });
    const journal = await browser.get('/api/v1/journal?action=set-up').expect(200);
    expect(journal.body).toMatchObject({ items: [{ action: 'set-up', via: 'session', keeper: { name: 'Anna' } }] });
    expect(await state()).toBe('signed-out');
    await visit(api).post('/api/v1/session').send({ name: 'anna', password: first.password }).expect(201);
  });

  it('refuses a wrong code at its field, and a stranger’s guesses after twenty', async () => {
    await offerSetup(api.dataSource);
    const wrong = await setUp('AAAA-AAAA-AAAA').expect(403);
    expect(wrong.body).toMatchObject({ errors: [{ pointer: '/code' }] });
    for (let guess = 1; guess < 20; guess++) await setUp(`AAAA-AAAA-${1000 + guess}`).expect(403);
    await setUp('AAAA-AAAA-AAAB').expect(429);
    expect(await state()).toBe('setup');
  });

  it('does not take a code of thirty days ago', async () => {
    const code = await offerSetup(api.dataSource);
    await api.dataSource.query(`update setup_code set created_at = now() - interval '31 days'`);
    await setUp(code).expect(403);
  });

  it('keeps the code for another attempt when the passphrase is refused', async () => {
    const code = await offerSetup(api.dataSource);
    await setUp(code, api, { password: 'twotanks1' }).expect(422);
    await setUp(code).expect(201);
  });

  it('is set up once, by whoever of two comes first, though each has a code of another copy', async () => {
    const other = await startApiOn(api.databaseUrl);
    await empty();
    const codes = [await offerSetup(api.dataSource), await offerSetup(other.dataSource)];
    const answers = await Promise.all([
      setUp(codes[0] ?? null, api, { name: 'Anna' }),
      setUp(codes[1] ?? null, other, { name: 'Ben' }),
    ]);
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409]);
    expect(await api.dataSource.query('select code_hash from setup_code')).toEqual([]);
    expect(await api.dataSource.query('select name from keeper')).toHaveLength(1);
    await setUp(codes[1] ?? null).expect(409);
    expect(await offerSetup(api.dataSource)).toBeNull();
    await other.close();
  });
});

describe('a register from before there was sign-in', () => {
  it('belongs to its one keeper, who gets the name and the passphrase', async () => {
    const [before] = await api.dataSource.query<{ id: string }[]>('select id from keeper');
    const answer = await setUp(await offerSetup(api.dataSource)).expect(201);
    expect(answer.body).toMatchObject({ club: { name: 'Two tanks' }, keeper: { id: before?.id, name: 'Anna' } });
    expect(await api.dataSource.query('select name from club')).toEqual([{ name: 'Two tanks' }]);
  });
});

describe('a club that lost the passphrase of its only administrator', () => {
  it('is opened again by a code of the next start, by the keeper of the name that is given', async () => {
    const lost = await keeperWithPassphrase(api, 'Anna', ['administrator']);
    expect(await offerSetup(api.dataSource)).toBeNull();
    await api.dataSource.query('update keeper set password_hash = null where id = $1', [lost.id]);
    const answer = await setUp(await offerSetup(api.dataSource), api, { name: 'ANNA' }).expect(201);
    expect(answer.body).toMatchObject({ keeper: { id: lost.id, roles: ['registrar', 'administrator'] } });
  });
});

describe('the demo club', () => {
  const demoSignIn = (keeperId: string) => visit(api).post('/api/v1/session/demo').send({ keeperId });
  const idOf = async (name: string): Promise<string> => (await api.addKeeper(name)).id;

  it('lets in as any of its invented keepers with one click, and nobody sets it up', async () => {
    await api.dataSource.query('update club set demo = true');
    const id = await idOf('Saskia');
    const session = await visit(api).get('/api/v1/session');
    expect(session.body).toMatchObject({
      state: 'signed-out',
      demoKeepers: [{ name: 'Keeper' }, { id, name: 'Saskia' }],
    });
    expect((await demoSignIn(id).expect(201)).body).toMatchObject({ keeper: { id, name: 'Saskia' }, demoKeepers: [] });
    expect(await offerSetup(api.dataSource)).toBeNull();
    await demoSignIn('00000000-0000-7000-8000-000000000000').expect(404);
  });

  it('does not let in as somebody who joined it with a passphrase', async () => {
    await api.dataSource.query('update club set demo = true');
    await demoSignIn((await keeperWithPassphrase(api, 'Real')).id).expect(404);
  });

  it('is the only club that does', async () => {
    const id = await idOf('Saskia');
    expect((await visit(api).get('/api/v1/session')).body).toMatchObject({ demoKeepers: [] });
    await demoSignIn(id).expect(403);
  });
});
