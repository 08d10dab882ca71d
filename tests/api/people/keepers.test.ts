import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { keeperWithPassphrase } from '../../support/passphrase.ts';
import { signedIn, visit } from '../../support/visitor.ts';

let api: TestApi;
let orla: TestKeeper;
let serial = 0;

beforeAll(async () => {
  api = await startApi();
  await keeperWithPassphrase(api, 'Orla', ['administrator']);
  orla = await api.addKeeper('Orla', ['administrator']);
});

afterAll(() => api.close());

const fresh = (): Promise<TestKeeper> => api.addKeeper(`Keeper ${++serial}`);
const patch = (by: TestKeeper, id: string, body: object, match = '*') =>
  by.http.patch(`/api/v1/keepers/${id}`).set('If-Match', match).send(body);
const depart = (by: TestKeeper, id: string) => by.http.post(`/api/v1/keepers/${id}/departure`).set('If-Match', '*');
const takeBack = (by: TestKeeper, id: string) => by.http.delete(`/api/v1/keepers/${id}/departure`).set('If-Match', '*');
const reverse = (by: TestKeeper, answer: { headers: Record<string, string> }) =>
  by.http.post(`/api/v1/journal/${answer.headers['journal-entry']}/reversal`);

describe('a keeper', () => {
  it('changes the own name, and no other thing of anybody', async () => {
    const [runa, noor] = [await fresh(), await fresh()];
    const renamed = await patch(runa, runa.id, { name: 'Runa Fenwarden' }).expect(200);
    expect(renamed.body).toMatchObject({ id: runa.id, name: 'Runa Fenwarden', version: 2, roles: [], leftAt: null });
    expect(renamed.headers['etag']).toBe('"2"');
    await patch(runa, noor.id, { name: 'Mine now' }).expect(403);
    await patch(runa, runa.id, { roles: ['administrator'] }).expect(403);
    await depart(runa, noor.id).expect(403);
    const taken = await patch(noor, noor.id, { name: 'RUNA FENWARDEN' }).expect(409);
    expect(taken.body).toMatchObject({ errors: [{ pointer: '/name' }] });
    await patch(noor, noor.id, { name: '' }).expect(422);
    await patch(orla, noor.id, { roles: ['registrar', 'registrar'] }).expect(422);
    await patch(orla, '00000000-0000-7000-8000-000000000000', { name: 'x' }).expect(404);
    await noor.http.get('/api/v1/keepers/not-an-id').expect(404);
  });

  it('says where they live, for themselves alone, and takes it back', async () => {
    const [runa, noor] = [await fresh(), await fresh()];
    await patch(runa, noor.id, { region: 'Nowhere' }).expect(403);
    const said = await patch(runa, runa.id, { region: ' Upper valley ' }).expect(200);
    expect(said.body).toMatchObject({ region: 'Upper valley' });
    await reverse(runa, said).expect(201);
    expect((await patch(runa, runa.id, { region: null }).expect(200)).body).toMatchObject({ region: null });
    await patch(runa, runa.id, { region: 'x'.repeat(81) }).expect(422);
  });

  it('is changed from the version that was read', async () => {
    const { id } = await fresh();
    await patch(orla, id, { roles: ['registrar'] }, '"1"').expect(200);
    const stale = await patch(orla, id, { roles: [] }, '"1"').expect(412);
    expect(stale.body).toMatchObject({ current: { version: 2, roles: ['registrar'] } });
    await orla.http.patch(`/api/v1/keepers/${id}`).send({ roles: [] }).expect(428);
  });

  it('gets and loses roles at once, and the journal undoes it while nothing else was changed', async () => {
    const runa = await fresh();
    const given = await patch(orla, runa.id, { roles: ['administrator'] }).expect(200);
    await runa.http.get('/api/v1/links').expect(200);
    await reverse(runa, given).expect(201);
    await runa.http.get('/api/v1/links').expect(403);
    await reverse(orla, given).expect(409);
    await reverse(runa, given).expect(403);
  });
});

describe('who leaves the club', () => {
  it('is out at once, in every browser and for every program; the records keep the name', async () => {
    const runa = await keeperWithPassphrase(api, 'Leaving', ['administrator']);
    const [browser, program] = [await signedIn(api, runa), await api.addKeeper('Leaving', ['administrator'])];
    const species = await program.http.post('/api/v1/species').send({ scientificName: 'Inventus abiens' }).expect(201);
    const link = await program.http.post('/api/v1/links').send({ kind: 'invitation' }).expect(201);
    const left = await depart(orla, runa.id).expect(201);
    expect((left.body as { leftAt: string }).leftAt).toMatch(/^\d{4}-/);
    await program.http.get('/api/v1/species').expect(401);
    expect((await browser.get('/api/v1/session')).body).toMatchObject({ state: 'signed-out' });
    const secret = (link.body as { path: string }).path.replace('/join/', '');
    await visit(api).get(`/api/v1/links/${secret}`).expect(404);
    await orla.http.get(`/api/v1/species/${(species.body as { id: string }).id}`).expect(200);
    await depart(orla, runa.id).expect(409);
    await orla.http.post('/api/v1/links').send({ kind: 'reset', keeperId: runa.id }).expect(422);

    // taken back in: the passphrase is good again, what ended stays ended
    await reverse(orla, left).expect(201);
    expect((await browser.get('/api/v1/session')).body).toMatchObject({ state: 'signed-out' });
    await program.http.get('/api/v1/species').expect(401);
    await visit(api).get(`/api/v1/links/${secret}`).expect(404);
    await signedIn(api, runa);
    await takeBack(orla, runa.id).expect(409);
    await depart(orla, runa.id).expect(201);
    await takeBack(orla, runa.id).expect(200);
  });

  it('may do so of their own accord', async () => {
    const runa = await fresh();
    await depart(runa, runa.id).expect(201);
    await runa.http.get('/api/v1/session').expect(401);
  });
});

describe('the last administrator', () => {
  beforeEach(async () => {
    await api.dataSource.query(`update keeper set roles = '{}' where name <> 'Orla'`);
    await api.dataSource.query(`update keeper set roles = '{administrator}' where name = 'Orla'`);
  });

  it('neither leaves nor gives the office up', async () => {
    await depart(orla, orla.id).expect(409);
    const refused = await patch(orla, orla.id, { roles: ['registrar'] }).expect(409);
    expect(refused.text).toContain('without an administrator');
    await patch(orla, orla.id, { roles: ['administrator', 'registrar'] }).expect(200);
  });

  it('is the last one who can sign in, though another has the office', async () => {
    await api.addKeeper('Without a passphrase', ['administrator']);
    await depart(orla, orla.id).expect(409);
  });

  it('is left when two give the office up at the same moment', async () => {
    for (let round = 0; round < 5; round++) {
      await keeperWithPassphrase(api, `Other ${round}`, ['administrator']);
      const other = await api.addKeeper(`Other ${round}`, ['administrator']);
      const statuses = await Promise.all([
        depart(orla, orla.id).then(({ status }) => status),
        patch(other, other.id, { roles: [] }).then(({ status }) => status),
      ]);
      expect(statuses.filter((status) => status < 300)).toHaveLength(1);
      const left = await api.dataSource.query<unknown[]>(
        `select from keeper where left_at is null and 'administrator' = any(roles)`,
      );
      expect(left).toHaveLength(1);
      await api.dataSource.query(`update keeper set left_at = null where name = 'Orla'`);
      await api.dataSource.query(`update access_token set revoked_at = null`);
      await api.dataSource.query(`update keeper set roles = '{}' where name <> 'Orla'`);
    }
  });
});

describe('the settings of the club', () => {
  it('are changed by administrators, from the version that was read, and undone from the journal', async () => {
    const change = (by: TestKeeper, match: string, body: object) =>
      by.http.patch('/api/v1/club').set('If-Match', match).send(body);
    await change(await fresh(), '*', { name: 'Ours' }).expect(403);
    const before = await orla.http.get('/api/v1/club').expect(200);
    expect(before.headers['etag']).toBe('"1"');
    const changed = await change(orla, '"1"', { name: 'Two tanks', publicReading: true }).expect(200);
    expect(changed.body).toEqual({ version: 2, name: 'Two tanks', demo: false, publicReading: true });
    await change(orla, '"1"', { publicReading: false }).expect(412);
    await visit(api).get('/api/v1/species').expect(200);
    await reverse(orla, changed).expect(201);
    await visit(api).get('/api/v1/species').expect(401);
    await reverse(orla, changed).expect(409);
    await change(orla, '*', { name: '' }).expect(422);
    await change(orla, '*', { demo: true }).expect(422);
  });
});
