import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, startApiOn, type TestApi, type TestKeeper } from '../../support/api.ts';
import { keeperWithPassphrase } from '../../support/passphrase.ts';
import { signedIn, visit } from '../../support/visitor.ts';

let api: TestApi;
let administrator: TestKeeper;

interface Made {
  readonly id: string;
  readonly path: string;
  readonly expiresAt: string;
}

beforeAll(async () => {
  api = await startApi();
  await keeperWithPassphrase(api, 'Orla', ['administrator']);
  administrator = await api.addKeeper('Orla', ['administrator']);
});

afterAll(() => api.close());

const make = async (body: object): Promise<Made & { secret: string }> => {
  const answer = await administrator.http.post('/api/v1/links').send(body).expect(201);
  const made = answer.body as Made;
  return { ...made, secret: made.path.replace('/join/', '') };
};
const invite = (more: object = {}): Promise<Made & { secret: string }> => make({ kind: 'invitation', ...more });
const join = (secret: string, name: string, password = `${name} walks under wet leaves`) =>
  visit(api).post(`/api/v1/links/${secret}/use`).send({ name, password });
const days = (until: string): number => Math.round((Date.parse(until) - Date.now()) / 86_400_000);

describe('an invitation', () => {
  it('tells whoever opens it of the club, and lets them join once, with the roles that it gives', async () => {
    const link = await invite({ roles: ['registrar'], note: 'Ben from the other town' });
    expect(link.secret).toMatch(/^[\w-]{43}$/);
    expect(days(link.expiresAt)).toBe(7);
    const offer = await visit(api).get(`/api/v1/links/${link.secret}`).expect(200);
    expect(offer.body).toEqual({ kind: 'invitation', club: 'My register', name: null, expiresAt: link.expiresAt });
    const joined = await join(link.secret, 'Ben').expect(201);
    expect(joined.body).toMatchObject({ state: 'signed-in', keeper: { name: 'Ben', roles: ['registrar'] } });
    await visit(api).get(`/api/v1/links/${link.secret}`).expect(404);
    await join(link.secret, 'Ben again').expect(404);
    const { id } = (joined.body as { keeper: { id: string } }).keeper;
    const journal = await administrator.http.get(`/api/v1/journal?record=${id}`).expect(200);
    expect(journal.body).toMatchObject({ items: [{ action: 'joined', keeper: { id, name: 'Ben' } }] });
  });

  it('is used once by two who come at the same moment, to two copies of the service', async () => {
    const other = await startApiOn(api.databaseUrl);
    const { secret } = await invite();
    const statuses = await Promise.all(
      [api, other].map(async (at, index) => {
        const body = { name: `Twin ${index}`, password: 'two at the same moment' };
        return (await visit(at).post(`/api/v1/links/${secret}/use`).send(body)).status;
      }),
    );
    expect(statuses.sort()).toEqual([201, 404]);
    expect(await api.dataSource.query(`select name from keeper where name like 'Twin%'`)).toHaveLength(1);
    await other.close();
  });

  it('stays open when the name is taken or the passphrase refused', async () => {
    const { secret } = await invite();
    const taken = await join(secret, 'ORLA').expect(409);
    expect(taken.body).toMatchObject({ errors: [{ pointer: '/name' }] });
    await join(secret, 'Noor', 'elephant').expect(201);
    const another = await invite();
    await join(another.secret, 'Corvin', 'password1').expect(422);
    await join(another.secret, 'Corvin', 'corvin').expect(422);
    await visit(api).post(`/api/v1/links/${another.secret}/use`).send({ password: 'no name is given' }).expect(422);
    await join(another.secret, 'Corvin').expect(201);
  });

  it.each([
    ['has run out', `update sign_in_link set expires_at = now() - interval '1 second' where id = $1`],
    [
      'was made by somebody who is no administrator any more',
      `update sign_in_link set made_by = (select id from keeper where name = 'Ben') where id = $1`,
    ],
  ])('that %s is closed', async (_, statement) => {
    const link = await invite();
    await api.dataSource.query(statement, [link.id]);
    await visit(api).get(`/api/v1/links/${link.secret}`).expect(404);
    await join(link.secret, 'Late').expect(404);
  });

  it('is listed without its secret, and can be revoked', async () => {
    const link = await invite({ note: 'for the list' });
    const listed = await administrator.http.get('/api/v1/links?limit=1').expect(200);
    const [item] = (listed.body as { items: Record<string, unknown>[] }).items;
    expect(item).toMatchObject({ id: link.id, kind: 'invitation', note: 'for the list', madeBy: { name: 'Orla' } });
    expect(JSON.stringify(item)).not.toContain(link.secret);
    await administrator.http.delete(`/api/v1/links/${link.id}`).expect(200);
    await administrator.http.delete(`/api/v1/links/${link.id}`).expect(404);
    await join(link.secret, 'Late').expect(404);
  });

  it('is no invitation for somebody who is there, and a reset is for somebody', async () => {
    const refused = (body: object) => administrator.http.post('/api/v1/links').send(body).expect(422);
    await refused({ kind: 'invitation', keeperId: administrator.id });
    await refused({ kind: 'reset' });
    await refused({ kind: 'reset', keeperId: administrator.id, roles: ['registrar'] });
    await refused({ kind: 'reset', keeperId: '00000000-0000-7000-8000-000000000000' });
    await refused({ kind: 'invitation', roles: ['president'] });
  });

  it('is answered once under one Idempotency-Key, and its secret is kept nowhere', async () => {
    const send = () =>
      administrator.http.post('/api/v1/links').set('Idempotency-Key', 'one-link').send({ kind: 'invitation' });
    const first = await send().expect(201);
    const again = await send().expect(409);
    expect(again.text).toContain('shown once');
    const secret = (first.body as Made).path.replace('/join/', '');
    const rows = await api.dataSource.query<{ body: unknown }[]>(
      `select body from idempotency_key where key = 'one-link'`,
    );
    expect(rows).toEqual([{ body: null }]);
    await visit(api).get(`/api/v1/links/${secret}`).expect(200);
  });
});

describe('a link for a new passphrase', () => {
  it('sets it, ends every session, and says whose it is; a later one ends it', async () => {
    const runa = await keeperWithPassphrase(api, 'Runa');
    const browser = await signedIn(api, runa);
    const older = await make({ kind: 'reset', keeperId: runa.id });
    const link = await make({ kind: 'reset', keeperId: runa.id });
    expect(days(link.expiresAt)).toBe(1);
    await visit(api).get(`/api/v1/links/${older.secret}`).expect(404);
    expect((await visit(api).get(`/api/v1/links/${link.secret}`)).body).toMatchObject({ kind: 'reset', name: 'Runa' });
    const use = (body: object) => visit(api).post(`/api/v1/links/${link.secret}/use`).send(body);
    await use({ name: 'Runa', password: 'a new one under glass' }).expect(422);
    expect((await use({ password: 'a new one under glass' }).expect(201)).body).toMatchObject({
      keeper: { id: runa.id, name: 'Runa' },
    });
    expect((await browser.get('/api/v1/session')).body).toMatchObject({ state: 'signed-out' });
    await visit(api).post('/api/v1/session').send({ name: 'Runa', password: runa.password }).expect(401);
    await visit(api).post('/api/v1/session').send({ name: 'Runa', password: 'a new one under glass' }).expect(201);
  });

  it('is a whole address where members come by one', async () => {
    const other = await startApiOn(api.databaseUrl, { publicUrl: 'https://register.example.org' });
    const answer = await other.http.post('/api/v1/links').send({ kind: 'invitation' }).expect(201);
    expect((answer.body as Made).path).toMatch(/^https:\/\/register\.example\.org\/join\/[\w-]{43}$/);
    await other.close();
  });
});
