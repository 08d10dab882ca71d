import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';
import { keeperWithPassphrase } from '../../support/passphrase.ts';
import { cookieOf, signedIn, visit } from '../../support/visitor.ts';

let api: TestApi;
let runa: { id: string; name: string; password: string };

beforeAll(async () => {
  api = await startApi();
  runa = await keeperWithPassphrase(api, 'Runa');
  // somebody who may let others in, so that the register does not wait to be set up
  await keeperWithPassphrase(api, 'Orla', ['administrator']);
});

afterAll(() => api.close());

const stateOf = (answer: { body: unknown }): unknown => (answer.body as { state: string }).state;
const sidOf = (cookie: string): string => cookie.split(';')[0] ?? '';

describe('a keeper who signs in', () => {
  it('is told who they are and what they may do, in any letters of the name', async () => {
    const browser = visit(api);
    expect(stateOf(await browser.get('/api/v1/session'))).toBe('signed-out');
    const answer = await browser.post('/api/v1/session').send({ name: ' rUNA ', password: runa.password }).expect(201);
    expect(answer.body).toMatchObject({
      state: 'signed-in',
      club: { name: 'My register', demo: false, publicReading: false },
      keeper: { id: runa.id, name: 'Runa', roles: [] },
      demoKeepers: [],
      fileLimits: { documentBytes: 20_000_000, pictureBytes: 25_000_000 },
    });
    expect((answer.body as { permissions: unknown[] }).permissions).toContainEqual({
      action: ['change'],
      subject: expect.arrayContaining(['individual']) as string[],
      conditions: { keeperId: runa.id },
    });
    expect((await browser.get('/api/v1/session')).body).toEqual(answer.body);
    await browser.get('/api/v1/individuals').expect(200);
  });

  it('is refused where the page belongs to another keeper, or to one who is not signed in any more', async () => {
    const browser = visit(api);
    await browser.post('/api/v1/session').send({ name: 'Runa', password: runa.password }).expect(201);
    await browser.get('/api/v1/individuals').set('Acting-Keeper', runa.id).expect(200);
    for (const asker of [browser, visit(api)]) {
      const meant = asker === browser ? '00000000-0000-4000-8000-000000000000' : runa.id;
      const refused = await asker
        .post('/api/v1/species')
        .set('Acting-Keeper', meant)
        .send({ scientificName: 'Aus bus' });
      expect([refused.status, (refused.body as { detail: string }).detail]).toEqual([
        401,
        expect.stringContaining('not signed in here any more'),
      ]);
    }
  });

  it('gets a cookie that scripts cannot read and other sites cannot send', async () => {
    const answer = await visit(api).post('/api/v1/session').send(runa).expect(422);
    expect(cookieOf(answer)).toBe('');
    const cookie = cookieOf(await visit(api).post('/api/v1/session').send({ name: 'Runa', password: runa.password }));
    expect(cookie).toMatch(/^linekeeper-[0-9a-f]{8}=s%3A[\w%.-]+; Path=\/; Expires=[^;]+; HttpOnly; SameSite=Lax$/);
  });

  it('gets it for https only where members come by https, whatever the proxy says', async () => {
    const other = await startApiOn(api.databaseUrl, { publicUrl: 'https://register.example.org' });
    const answer = await visit(other)
      .post('/api/v1/session')
      .send({ name: 'Runa', password: runa.password })
      .expect(201);
    expect(cookieOf(answer)).toMatch(/^__Host-linekeeper-[0-9a-f]{8}=.*; Path=\/; .*HttpOnly; Secure; SameSite=Lax$/);
    await other.close();
  });

  it('is another session than before: a planted one is worth nothing', async () => {
    const planted = sidOf(
      cookieOf(await visit(api).post('/api/v1/session').send({ name: 'Runa', password: runa.password })),
    );
    const victim = await visit(api)
      .post('/api/v1/session')
      .set('Cookie', planted)
      .send({ name: 'Orla', password: 'the passphrase of Orla alone' })
      .expect(201);
    expect(sidOf(cookieOf(victim))).not.toBe(planted);
    expect(stateOf(await visit(api).get('/api/v1/session').set('Cookie', planted))).toBe('signed-out');
  });

  it('cannot be a session that somebody made up, nor one whose id was read in the database', async () => {
    const cookie = sidOf(
      cookieOf(await visit(api).post('/api/v1/session').send({ name: 'Runa', password: runa.password })),
    );
    const name = cookie.split('=')[0] ?? '';
    const rows = await api.dataSource.query<{ sid: string }[]>('select sid from session');
    for (const { sid } of rows) {
      expect(decodeURIComponent(cookie)).not.toContain(sid);
      const forged = await visit(api).get('/api/v1/session').set('Cookie', `${name}=s%3A${sid}.forged`);
      expect(stateOf(forged)).toBe('signed-out');
    }
  });

  it('is not told whether the name or the passphrase is wrong, neither in words nor in time', async () => {
    const attempt = async (name: string): Promise<{ text: string; milliseconds: number }> => {
      const from = performance.now();
      const answer = await visit(api).post('/api/v1/session').send({ name, password: 'not the one' }).expect(401);
      return { text: answer.text, milliseconds: performance.now() - from };
    };
    const known: number[] = [];
    const unknown: number[] = [];
    for (let round = 0; round < 5; round++) {
      const [one, other] = [await attempt('Runa'), await attempt(`Nobody ${round}`)];
      expect(other.text).toBe(one.text);
      known.push(one.milliseconds);
      unknown.push(other.milliseconds);
    }
    const middle = (times: number[]): number => times.sort((a, b) => a - b)[2] ?? 0;
    // without the passphrase of nobody an unknown name would be answered ten times as fast
    expect(middle(unknown) / middle(known)).toBeGreaterThan(0.2);
    expect(middle(unknown) / middle(known)).toBeLessThan(5);
    await api.dataSource.query('delete from rate_limit');
  });

  it('cannot when they have left the club', async () => {
    const former = await keeperWithPassphrase(api, 'Former');
    const browser = await signedIn(api, former);
    await api.http.post(`/api/v1/keepers/${former.id}/departure`).set('If-Match', '*').expect(201);
    expect(stateOf(await browser.get('/api/v1/session'))).toBe('signed-out');
    await visit(api).post('/api/v1/session').send({ name: former.name, password: former.password }).expect(401);
  });
});

describe('a session', () => {
  const day = "interval '1 day'";

  it('ends after seven days without use, and lasts when it is used', async () => {
    const browser = await signedIn(api, runa);
    await api.dataSource.query(`update session set expire = expire - 6 * ${day}`);
    expect(stateOf(await browser.get('/api/v1/session'))).toBe('signed-in');
    // that use put the end off again
    await api.dataSource.query(`update session set expire = expire - 6 * ${day}`);
    expect(stateOf(await browser.get('/api/v1/session'))).toBe('signed-in');
    await api.dataSource.query(`update session set expire = expire - 8 * ${day}`);
    expect(stateOf(await browser.get('/api/v1/session'))).toBe('signed-out');
    await browser.get('/api/v1/individuals').expect(401);
  });

  it('ends after thirty days, however much it is used', async () => {
    const browser = await signedIn(api, runa);
    const age = (days: number): Promise<unknown> =>
      api.dataSource.query(
        `update session set sess = jsonb_set(sess::jsonb, '{signedInAt}', to_jsonb((sess->>'signedInAt')::bigint - $1::bigint))::json`,
        [days * 86_400_000],
      );
    await age(29);
    expect(stateOf(await browser.get('/api/v1/session'))).toBe('signed-in');
    await age(2);
    expect(stateOf(await browser.get('/api/v1/session'))).toBe('signed-out');
  });

  it('ends in this browser alone by signing out, and its cookie is worth nothing afterwards', async () => {
    const [here, there] = [visit(api), await signedIn(api, runa)];
    const cookie = sidOf(cookieOf(await here.post('/api/v1/session').send({ name: 'Runa', password: runa.password })));
    const answer = await here.delete('/api/v1/session').expect(200);
    expect(stateOf(answer)).toBe('signed-out');
    expect(cookieOf(answer)).toContain('Expires=Thu, 01 Jan 1970');
    expect(stateOf(await visit(api).get('/api/v1/session').set('Cookie', cookie))).toBe('signed-out');
    expect(stateOf(await there.get('/api/v1/session'))).toBe('signed-in');
  });

  it('ends in every browser at once, of this keeper alone, and the journal tells', async () => {
    const [here, there] = [await signedIn(api, runa), await signedIn(api, runa)];
    const orla = await signedIn(api, { name: 'Orla', password: 'the passphrase of Orla alone' });
    const answer = await here.delete('/api/v1/sessions').expect(200);
    expect(answer.headers['journal-entry']).toMatch(/^[0-9a-f-]{36}$/);
    for (const browser of [here, there]) expect(stateOf(await browser.get('/api/v1/session'))).toBe('signed-out');
    expect(stateOf(await orla.get('/api/v1/session'))).toBe('signed-in');
  });

  it('is known to every copy of the service', async () => {
    const other = await startApiOn(api.databaseUrl);
    const cookie = sidOf(
      cookieOf(await visit(api).post('/api/v1/session').send({ name: 'Runa', password: runa.password })),
    );
    expect(stateOf(await visit(other).get('/api/v1/session').set('Cookie', cookie))).toBe('signed-in');
    await other.close();
  });

  it('goes with changes of our own pages only', async () => {
    const cookie = sidOf(
      cookieOf(await visit(api).post('/api/v1/session').send({ name: 'Runa', password: runa.password })),
    );
    const post = (headers: Record<string, string>) =>
      api.stranger
        .post('/api/v1/species')
        .set({ Cookie: cookie, ...headers })
        .send({ scientificName: '' });
    await post({ 'Sec-Fetch-Site': 'same-origin' }).expect(422);
    await post({ Origin: api.url }).expect(422);
    await post({ 'Sec-Fetch-Site': 'same-site' }).expect(403);
    await post({ 'Sec-Fetch-Site': 'cross-site' }).expect(403);
    await post({ Origin: 'https://elsewhere.example' }).expect(403);
    const silent = await post({}).expect(403);
    expect(silent.text).toContain('Programs send a token');
    const ajar = await api.stranger.get('/api/v1/session').set('Origin', 'https://elsewhere.example');
    expect(ajar.headers['access-control-allow-origin']).toBeUndefined();
  });
});

describe('a passphrase', () => {
  it.each([
    ['Password123', 'guessed first'],
    ['p4ssw0rd!', 'guessed first'],
    ['12345678', 'in a row'],
    ['froggyfroggy', 'guessed first', 'froggy2024'],
    ['aaaaaaaaaaaa', 'repeats itself'],
    ['My Register', 'everybody here knows'],
    ['myregister1', 'everybody here knows'],
  ])('like “%s” is refused', async (next, words, instead = next) => {
    const browser = await signedIn(api, runa);
    const answer = await browser
      .put('/api/v1/account/password')
      .send({ current: runa.password, next: instead })
      .expect(422);
    expect(answer.text).toContain(words);
    expect(answer.body).toMatchObject({ errors: [{ pointer: '/next' }] });
    await api.dataSource.query('delete from rate_limit');
  });

  it('is changed with the present one alone; other sessions end, this one goes on under a new id', async () => {
    const noor = await keeperWithPassphrase(api, 'Noor');
    const [here, there] = [await signedIn(api, noor), await signedIn(api, noor)];
    const next = '  wet leaf, dry leaf ';
    const wrong = await here.put('/api/v1/account/password').send({ current: 'not it', next }).expect(422);
    expect(wrong.body).toMatchObject({ errors: [{ pointer: '/current' }] });
    const changed = await here.put('/api/v1/account/password').send({ current: noor.password, next }).expect(200);
    expect(cookieOf(changed)).not.toBe('');
    expect(stateOf(await here.get('/api/v1/session'))).toBe('signed-in');
    expect(stateOf(await there.get('/api/v1/session'))).toBe('signed-out');
    await visit(api).post('/api/v1/session').send(noor).expect(422);
    await visit(api).post('/api/v1/session').send({ name: 'Noor', password: noor.password }).expect(401);
    // every space of it counts
    await visit(api).post('/api/v1/session').send({ name: 'Noor', password: next.trim() }).expect(401);
    await visit(api).post('/api/v1/session').send({ name: 'Noor', password: next }).expect(201);
  });

  it('is stored as Argon2id, and anew when it was stored with weaker figures', async () => {
    const { hash } = await import('@node-rs/argon2');
    const weak = await hash(runa.password, { memoryCost: 8192, timeCost: 1, parallelism: 1 });
    await api.dataSource.query('update keeper set password_hash = $2 where id = $1', [runa.id, weak]);
    await signedIn(api, runa);
    const [row] = await api.dataSource.query<{ stored: string }[]>(
      'select password_hash as stored from keeper where id = $1',
      [runa.id],
    );
    expect(row?.stored).toMatch(/^\$argon2id\$v=19\$(?=\S*m=32768)(?=\S*t=3)/);
    await signedIn(api, runa);
  });
});
