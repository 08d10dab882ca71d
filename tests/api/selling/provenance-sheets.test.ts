import { createHash } from 'node:crypto';
import { chmod } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import type { SheetView } from '../../../api/selling/sheets/sheets.view.ts';
import { canonicalText } from '../../../shared/sheet/canonical-json.ts';
import { verifySheet } from '../../../shared/sheet/verify-sheet.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import { documentIn, fileOf, foundSeller, issue, keysOf, publicPage, tokenOf, type Seller } from './sheet-world.ts';

let api: TestApi;
let seller: Seller;
let ids: string[];

beforeAll(async () => {
  api = await startApi({ publicUrl: 'https://register.example.org' });
  await api.dataSource.query(`update club set name = 'Circle of Frogs'`);
  seller = await foundSeller(api);
  ids = seller.froglets.map(({ id }) => id);
});

beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterEach(() => vi.useRealTimers());
afterAll(() => api.close());

const refusal = async (body: object, http = seller.keeper.http): Promise<{ status: number; text: string }> => {
  const { status, text } = await http.post('/api/v1/provenance-sheets').send(body);
  return { status, text };
};

describe('a provenance sheet', () => {
  it('says what the register says of its animals, and can be checked by anybody with the public keys alone', async () => {
    const sheet = await issue(seller.keeper.http, ids);
    const file = await fileOf(seller.keeper.http, sheet.id);
    const verdict = await verifySheet(file, await keysOf(api));
    expect(verdict).toMatchObject({ outcome: 'genuine', kid: sheet.keyId });
    const said = documentIn(file);
    expect(said).toMatchObject({
      number: sheet.number,
      issued: sheet.issued,
      validUntil: null,
      issuer: { address: 'https://register.example.org', invented: false },
      lookUp: sheet.lookUp,
      keeper: seller.keeper.name,
    });
    expect(sheet.lookUp).toMatch(/^https:\/\/register\.example\.org\/s\/[\w-]{24}$/u);
    expect(said.animals.map(({ number }) => number)).toEqual(seller.froglets.map(({ number }) => number));
    for (const [place, animal] of said.animals.entries()) {
      const answer = await api.http.get(`/api/v1/individuals/${ids[place]}/lineage`).expect(200);
      const { inbreeding, label, depth, fullDepth, generationEquivalents, completeness, filialGeneration } =
        bodyOf<LineageView>(answer);
      const { pairs, ...figure } = inbreeding;
      expect(pairs).toHaveLength(1);
      expect(animal).toMatchObject({ depth, fullDepth, generationEquivalents, completeness, filialGeneration });
      expect(animal.inbreeding).toEqual(figure);
      expect(animal.inbreeding.expected).toBe(0.25);
      expect(animal.label).toMatchObject({ name: label.name, standing: 'documented', inWords: '100 % documented' });
      expect(animal.label.shares).toEqual(label.shares);
    }
    expect(said.ancestors.map(({ number }) => number).sort()).toEqual(
      [...seller.parents, ...seller.founders].map(({ number }) => number).sort(),
    );
    expect(said.clutches).toHaveLength(2);
    expect(said.sources).toMatchObject([{ kind: 'import', date: '1994~', countryOfExport: 'EC', isPrivate: false }]);
    expect(said.sources[0]?.claims[0]).toMatchObject({ standing: 'documented' });
    expect(said.cautions.join(' ')).toMatch(/no permit.*quarantine.*Never release/su);
  });

  it('is written in canonical form, and kept and handed out byte for byte', async () => {
    const sheet = await issue(seller.keeper.http, ids);
    const file = await fileOf(seller.keeper.http, sheet.id);
    const text = file.toString('utf8');
    expect(canonicalText(JSON.parse(text))).toBe(text);
    const [row] = await api.dataSource.query<{ file: Buffer }[]>('select file from provenance_sheet where id = $1', [
      sheet.id,
    ]);
    expect(row?.file.equals(file)).toBe(true);
    const { headers } = await seller.keeper.http.get(`/api/v1/provenance-sheets/${sheet.id}/file`).expect(200);
    expect(headers).toMatchObject({
      'content-type': 'application/jose+json',
      'content-disposition': `attachment; filename="${sheet.number}.json"`,
    });
  });

  it('names no keeper, code, note, paper or person but its keeper’s own', async () => {
    const sheet = await issue(seller.keeper.http, ids);
    const text = (await fileOf(seller.keeper.http, sheet.id)).toString('utf8');
    for (const secret of ['SIRE-CODE', 'DAM-CODE', 'a secret note', 'A. Secretname', seller.keeper.id, ...ids])
      expect(text).not.toContain(secret);
    expect(text).toContain('because an export permit names it');
  });

  it('leaves the name of its keeper out where the keeper wants it so, and always where a registrar makes it', async () => {
    const quiet = await issue(seller.keeper.http, ids, { keeperNamed: false });
    expect(documentIn(await fileOf(seller.keeper.http, quiet.id)).keeper).toBeNull();
    const byRegistrar = await issue(api.http, ids, { keeperNamed: true });
    expect(byRegistrar.keeper).toBe(seller.keeper.name);
    expect(documentIn(await fileOf(api.http, byRegistrar.id)).keeper).toBeNull();
  });

  it('tells of a founder that nothing is known of', async () => {
    const stray = await seller.make.individual({ speciesId: seller.speciesId });
    const sheet = await issue(seller.keeper.http, [stray.number]);
    const [animal] = documentIn(await fileOf(seller.keeper.http, sheet.id)).animals;
    expect(animal).toMatchObject({ depth: 0, clutch: null, source: null, line: null });
    expect(animal?.inbreeding).toMatchObject({ expected: 0, nothingKnown: true });
    expect(animal?.origins).toMatchObject([{ kind: 'founder', ref: 'a1', standing: 'unknown', share: 1 }]);
  });

  it('holds the pictures of its animals by their SHA-256, which anybody who holds it can look at', async () => {
    const [id = ''] = ids;
    await seller.make.photograph({ individualId: id });
    const sheet = await issue(seller.keeper.http, ids);
    const [animal] = documentIn(await fileOf(seller.keeper.http, sheet.id)).animals;
    const sha256 = animal?.photographs[0]?.sha256 ?? '';
    const path = `/api/v1/sheets/${tokenOf(sheet)}/photographs/${sha256}`;
    const picture = await api.stranger.get(path).expect(200);
    expect(
      createHash('sha256')
        .update(picture.body as Buffer)
        .digest('hex'),
    ).toBe(sha256);
    await api.stranger.get(`${path}?size=small`).expect(200);
    await api.stranger.get(`/api/v1/sheets/${tokenOf(sheet)}/photographs/${'0'.repeat(64)}`).expect(404);
    const without = await issue(seller.keeper.http, ids, { photographs: false });
    expect(documentIn(await fileOf(seller.keeper.http, without.id)).animals[0]?.photographs).toEqual([]);
    await api.stranger.get(path.replace(tokenOf(sheet), tokenOf(without))).expect(404);
  });

  it('is the same one where the request is repeated under its key', async () => {
    const send = () =>
      seller.keeper.http.post('/api/v1/provenance-sheets').set('Idempotency-Key', 'once').send({ animals: ids });
    const [one, two] = [await send(), await send()];
    expect(bodyOf<SheetView>(one).number).toBe(bodyOf<SheetView>(two).number);
  });

  it('cannot be altered, not even in the database', async () => {
    const sheet = await issue(seller.keeper.http, ids);
    for (const change of [`file = '\\x00'`, `number = number + 1000`, `valid_until = '2040-01-01'`, `records = '{}'`])
      await expect(
        api.dataSource.query(`update provenance_sheet set ${change} where id = $1`, [sheet.id]),
      ).rejects.toThrow(/never altered/u);
  });
});

describe('making a sheet', () => {
  it('is refused for animals of others, and for what cannot stand on one, each by its place', async () => {
    const other = await foundSeller(api);
    const [theirs] = other.froglets;
    expect(await refusal({ animals: [theirs?.id] })).toMatchObject({ status: 403 });
    const mixed = await refusal({ animals: [ids[0], theirs?.id] }, api.http);
    expect(mixed.status).toBe(422);
    expect(mixed.text).toContain('/animals/1');
    const secret = await seller.make.individual({ speciesId: seller.speciesId, visibility: 'private' });
    const gone = await seller.make.individual({ speciesId: seller.speciesId });
    await seller.keeper.http
      .post(`/api/v1/individuals/${gone.id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'entered twice' })
      .expect(201);
    const refused = await refusal({ animals: [ids[0], secret.number, gone.id, ids[0], '99999-9', 'nobody'] });
    expect(refused.status).toBe(422);
    const { errors } = JSON.parse(refused.text) as { errors: { pointer: string; detail: string }[] };
    expect(errors.map(({ pointer }) => pointer)).toEqual([1, 2, 3, 4, 5].map((place) => `/animals/${place}`));
    expect(errors.map(({ detail }) => detail).join(' ')).toMatch(/private.*withdrawn.*twice.*no animal.*no animal/su);
  });

  it('tells nothing of a private animal of another keeper', async () => {
    const other = await api.addKeeper('Other');
    const secret = await seller.make.individual({ speciesId: seller.speciesId, visibility: 'private' });
    const { status, text } = await refusal({ animals: [secret.id] }, other.http);
    expect(status).toBe(422);
    expect(text).toContain('There is no animal');
    expect(text).not.toContain(secret.number);
  });

  it.each([
    [{ animals: [] }, '/animals'],
    [{ animals: Array.from({ length: 51 }, (_, place) => `${place}`) }, '/animals'],
    [{ validUntil: '2020-01-01' }, '/validUntil'],
    [{ validUntil: '2100-01-01' }, '/validUntil'],
    [{ validUntil: '2027-02-30' }, '/validUntil'],
    [{ validUntil: '1994~' }, '/validUntil'],
    [{ more: 1 }, '/more'],
  ])('is refused with the field that is wrong: %j', async (body, pointer) => {
    const { status, text } = await refusal({ animals: ids, ...body });
    expect(status).toBe(422);
    expect(text).toContain(pointer);
  });

  it('tells the state in which it is signed, though an animal is changed while it is made', async () => {
    const [id = ''] = ids;
    const change = api.dataSource.createQueryRunner();
    await change.startTransaction();
    try {
      await change.query(`update individual set sex = 'female', version = version + 1 where id = $1`, [id]);
      const made = issue(seller.keeper.http, [id]);
      // it has looked at the animal as it was, and waits for whoever changes it
      await vi.waitFor(
        async () => {
          const waiting = await api.dataSource.query<unknown[]>(
            `select from pg_stat_activity where wait_event_type = 'Lock' and query like '%for share of i%' and datname = current_database()`,
          );
          expect(waiting).toHaveLength(1);
        },
        { timeout: 15_000 },
      );
      await change.commitTransaction();
      const { id: sheetId } = await made;
      expect(documentIn(await fileOf(seller.keeper.http, sheetId)).animals[0]?.sex).toBe('female');
    } finally {
      if (change.isTransactionActive) await change.rollbackTransaction();
      await change.release();
    }
  });

  it('is refused while there is no key to sign with, and says why', async () => {
    const keyFile = join(api.filesDir, 'signing-key.pem');
    await chmod(keyFile, 0o644);
    const { status, text } = await refusal({ animals: ids });
    expect(status).toBe(503);
    expect(text).toContain('chmod 600');
    await chmod(keyFile, 0o600);
    await issue(seller.keeper.http, ids);
  });

  it('leaves an entry in the journal that only its keeper and registrars read, and that cannot be undone', async () => {
    const answer = await seller.keeper.http.post('/api/v1/provenance-sheets').send({ animals: ids }).expect(201);
    const entry = String(answer.headers['journal-entry']);
    const read = await seller.keeper.http.get(`/api/v1/journal/${entry}`).expect(200);
    const { changes } = bodyOf<{ changes: { field: string; after: string }[] }>(read);
    expect(changes.find(({ field }) => field === 'number')?.after).toBe(bodyOf<SheetView>(answer).number);
    expect(read.text).toContain(bodyOf<SheetView>(answer).number);
    const other = await api.addKeeper('Curious');
    await other.http.get(`/api/v1/journal/${entry}`).expect(404);
    await api.http.post(`/api/v1/journal/${entry}/reversal`).send({}).expect(409);
  });
});

describe('a sheet that stands no more', () => {
  it('is replaced by a newer one of the same animals, and by none that was revoked', async () => {
    const own = await foundSeller(api);
    const [one, two, three] = own.froglets.map(({ id }) => id);
    const old = await issue(own.keeper.http, [one ?? '', two ?? '']);
    expect(old).toMatchObject({ state: 'valid', newer: [] });
    const newer = await issue(own.keeper.http, [one ?? '']);
    // the second animal has no newer one yet
    const partly = await publicPage(api, old);
    expect(partly).toMatchObject({ state: 'valid', newer: [{ number: newer.number }] });
    expect(partly.words).toContain(newer.number);
    const newest = await issue(own.keeper.http, [two ?? '', three ?? '']);
    expect(await publicPage(api, old)).toMatchObject({
      state: 'superseded',
      outcome: 'genuine',
      newer: [{ number: newer.number }, { number: newest.number }],
    });
    await own.keeper.http
      .post(`/api/v1/provenance-sheets/${newest.id}/revocation`)
      .set('If-Match', '"1"')
      .send({ reason: 'the froglets were mixed up' })
      .expect(201);
    expect(await publicPage(api, old)).toMatchObject({ state: 'valid' });
  });

  it('is revoked with a reason that everybody reads, once, by its keeper or a registrar', async () => {
    const sheet = await issue(seller.keeper.http, ids);
    const path = `/api/v1/provenance-sheets/${sheet.id}/revocation`;
    const reason = 'the froglets were mixed up';
    const other = await api.addKeeper('Stranger to it');
    await other.http.post(path).set('If-Match', '*').send({ reason }).expect(404);
    await seller.keeper.http.post(path).send({ reason }).expect(428);
    await seller.keeper.http.post(path).set('If-Match', '"7"').send({ reason }).expect(412);
    await seller.keeper.http.post(path).set('If-Match', '"1"').send({}).expect(422);
    const answer = await seller.keeper.http.post(path).set('If-Match', '"1"').send({ reason }).expect(201);
    expect(bodyOf<SheetView>(answer)).toMatchObject({ state: 'revoked', version: 2, revoked: { reason } });
    await api.http.post(path).set('If-Match', '*').send({ reason }).expect(409);
    const page = await publicPage(api, sheet);
    expect(page).toMatchObject({ state: 'revoked', outcome: 'genuine', contents: null, hasFile: false, today: [] });
    expect(page.words).toContain(reason);
    expect(page.revoked).toMatchObject({ reason });
    await api.stranger.get(`/api/v1/sheets/${tokenOf(sheet)}/file`).expect(410);
    // whoever keeps it still has its file
    expect((await verifySheet(await fileOf(seller.keeper.http, sheet.id), await keysOf(api))).outcome).toBe('genuine');
  });

  it('is over after its last day', async () => {
    vi.useFakeTimers({ toFake: ['Date'], now: new Date('2024-01-01T12:00:00Z') });
    const sheet = await issue(seller.keeper.http, ids, { validUntil: '2024-02-01' });
    vi.useRealTimers();
    const page = await publicPage(api, sheet);
    expect(page).toMatchObject({ outcome: 'expired', state: 'expired', validUntil: '2024-02-01' });
    expect(page.contents).not.toBeNull();
  });

  it('stays genuine after its key was replaced, also where the old one was retired', async () => {
    const sheet = await issue(seller.keeper.http, ids);
    const file = await fileOf(seller.keeper.http, sheet.id);
    await api.http.post('/api/v1/signing-keys').send({ reason: 'a new year' }).expect(201);
    const later = await issue(seller.keeper.http, ids);
    expect(later.keyId).not.toBe(sheet.keyId);
    const keys = await keysOf(api);
    expect((await verifySheet(file, keys)).outcome).toBe('genuine');
    expect((await verifySheet(await fileOf(seller.keeper.http, later.id), keys)).outcome).toBe('genuine');
    expect(await publicPage(api, sheet)).toMatchObject({ outcome: 'genuine', state: 'superseded' });
  });
});

describe('the list of sheets', () => {
  it('holds one’s own, the newest first, page by page, and those of an animal', async () => {
    const own = await foundSeller(api);
    const [one = '', two = ''] = own.froglets.map(({ id }) => id);
    const made = [
      await issue(own.keeper.http, [one]),
      await issue(own.keeper.http, [two]),
      await issue(own.keeper.http, [one, two]),
    ];
    const list = async (query = '', http = own.keeper.http) =>
      bodyOf<{ items: SheetView[]; next: string | null; total?: number }>(
        await http.get(`/api/v1/provenance-sheets${query}`).expect(200),
      );
    const numbers = made.map(({ number }) => number).reverse();
    const first = await list('?limit=2&total=true');
    expect(first.items.map(({ number }) => number)).toEqual(numbers.slice(0, 2));
    expect(first.total).toBe(3);
    const second = await list(`?limit=2&after=${first.next}`);
    expect(second.items.map(({ number }) => number)).toEqual(numbers.slice(2));
    expect((await list(`?individualId=${two}`)).items).toHaveLength(2);
    const other = await api.addKeeper('Nobody in particular');
    expect((await list('', other.http)).items).toEqual([]);
    expect((await list(`?individualId=${two}`, api.http)).items).toHaveLength(2);
    await other.http.get(`/api/v1/provenance-sheets/${made[0]?.id}`).expect(404);
    await other.http.get(`/api/v1/provenance-sheets/${made[0]?.id}/file`).expect(404);
  });
});
