import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { signSheet } from '../../../shared/sheet/sheet-file.ts';
import { readSheetDocument, type SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { madeKey, madeSheet } from '../../support/made-sheet.ts';
import { makeSecretRegister, setPublicReading } from '../visibility/secret-register.ts';
import {
  documentIn,
  fileOf,
  foundSeller,
  issue,
  publicPage,
  tokenOf,
  verification,
  type Seller,
} from './sheet-world.ts';

let api: TestApi;

beforeAll(async () => {
  api = await startApi();
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

const change = async (seller: Seller, path: string, body: object): Promise<void> => {
  await seller.keeper.http.patch(`/api/v1/${path}`).set('If-Match', '*').send(body).expect(200);
};

const differences = async (
  sheet: { lookUp: string },
  place = 0,
): Promise<Record<string, [string | null, string | null]>> =>
  Object.fromEntries(
    ((await publicPage(api, sheet)).today[place]?.differences ?? []).map(({ field, then, now }) => [
      field,
      [then, now],
    ]),
  );

describe('the public page of a sheet', () => {
  it('needs no account, whether strangers may read the register or not, and is the same for everybody', async () => {
    const seller = await foundSeller(api);
    const sheet = await issue(seller.keeper.http, [seller.froglets[0]?.id ?? '']);
    const path = `/api/v1/sheets/${tokenOf(sheet)}`;
    const answers = [];
    for (const open of [false, true]) {
      await setPublicReading(api, open);
      for (const http of [api.stranger, seller.keeper.http, api.http])
        answers.push((await http.get(path).expect(200)).text);
    }
    await setPublicReading(api, false);
    expect(new Set(answers).size).toBe(1);
    const page = await publicPage(api, sheet);
    expect(page).toMatchObject({ number: sheet.number, outcome: 'genuine', state: 'valid', hasFile: true });
    expect(page.today).toEqual([
      { number: seller.froglets[0]?.number, isTold: true, continuesAs: null, differences: [] },
    ]);
    expect(readSheetDocument(page.contents)).toEqual(documentIn(await fileOf(seller.keeper.http, sheet.id)));
    const file = await api.stranger.get(`${path}/file`).expect(200);
    expect(file.headers['content-type']).toBe('application/jose+json');
  });

  it('may be kept by caches for a minute, and is not sent again to whoever has it', async () => {
    const seller = await foundSeller(api);
    const sheet = await issue(seller.keeper.http, [seller.froglets[0]?.id ?? '']);
    const path = `/api/v1/sheets/${tokenOf(sheet)}`;
    const { headers } = await api.stranger.get(path).expect(200);
    expect(headers['cache-control']).toBe('public, max-age=60');
    expect(headers['set-cookie']).toBeUndefined();
    const again = await api.stranger.get(path).set('If-None-Match', String(headers['etag'])).expect(304);
    expect(again.text).toBe('');
    await change(seller, `individuals/${seller.froglets[0]?.id}`, { sex: 'female' });
    await api.stranger.get(path).set('If-None-Match', String(headers['etag'])).expect(200);
    // what answers a cookie may carry one
    const { headers: own } = await api.stranger.get(path).set('Cookie', 'any=thing').expect(200);
    expect(own['cache-control']).toBe('private, max-age=60');
  });

  it.each(['nothing', 'A'.repeat(24), 'x'.repeat(400), '%00', '..%2f..'])('is not there for %s', async (token) => {
    await api.stranger.get(`/api/v1/sheets/${token}`).expect(404);
    await api.stranger.get(`/api/v1/sheets/${token}/file`).expect(404);
    await api.stranger.get(`/api/v1/sheets/${token}/photographs/${'0'.repeat(64)}`).expect(404);
  });

  it('tells what the register says otherwise today', async () => {
    const seller = await foundSeller(api);
    const [one] = seller.froglets;
    const sheet = await issue(seller.keeper.http, [one?.id ?? '']);
    await change(seller, `individuals/${one?.id}`, { sex: 'female', status: 'died', hatched: '2021-03' });
    const [mother] = await seller.make.individuals({ speciesId: seller.speciesId, sex: 'female' });
    await change(seller, `clutches/${seller.clutchId}`, {
      sires: [{ individualId: seller.parents[0]?.id }],
      dams: [{ individualId: seller.parents[1]?.id }, { individualId: mother?.id }],
    });
    const told = await differences(sheet);
    expect(told).toMatchObject({
      sex: ['unsexed', 'female'],
      status: ['alive', 'died'],
      inbreeding: ['25 %', '12.5 %'],
      'traced-share': ['100 %', '75 %'],
      'label-standing': ['100 % documented', '75 % documented · 25 % unknown'],
    });
    expect(told['hatched']?.[1]).toBe('2021-03');
    const [father, wasMother] = seller.parents;
    expect(told['parents']?.[0]).toContain(`${father?.number} (sire)`);
    expect(told['parents']?.[0]).toContain(`${wasMother?.number} (dam)`);
    expect(told['parents']?.[1]).toContain(`${mother?.number} (dam, 50 %)`);
  });

  it('tells under which number the record goes on that was entered twice', async () => {
    const seller = await foundSeller(api);
    const { speciesId } = seller;
    const [kept, duplicate] = await seller.make.individuals({ speciesId }, { speciesId });
    const sheet = await issue(seller.keeper.http, [duplicate?.id ?? '']);
    await api.http
      .post('/api/v1/merges')
      .send({ keptId: kept?.id, duplicateId: duplicate?.id, take: [], reason: 'entered twice' })
      .expect(201);
    const page = await publicPage(api, sheet);
    expect(page.today).toMatchObject([{ number: duplicate?.number, isTold: true, continuesAs: kept?.number }]);
  });
});

describe('what is private', () => {
  it('stands on no sheet, and on no page of one', async () => {
    const own = await startApi();
    try {
      const register = await makeSecretRegister(own);
      const sheets = [];
      for (const name of ['the club young', 'the public young', 'the club dam'])
        if (register.ids[name] !== undefined) sheets.push(await issue(register.owner.http, [register.ids[name]]));
      expect(sheets.length).toBeGreaterThan(1);
      const secrets = register.secrets.filter(
        ({ seenBy, what }) => !seenBy.includes('other') || what.startsWith('the name of the other'),
      );
      expect(secrets.length).toBeGreaterThan(40);
      for (const sheet of sheets) {
        const texts = [
          (await fileOf(register.owner.http, sheet.id)).toString('utf8'),
          (await own.stranger.get(`/api/v1/sheets/${tokenOf(sheet)}`).expect(200)).text,
          (await register.other.http.get(`/api/v1/sheets/${tokenOf(sheet)}`).expect(200)).text,
        ];
        for (const text of texts)
          for (const { what, text: secret } of secrets)
            expect(text.includes(JSON.stringify(secret)) || (secret.length > 9 && text.includes(secret)), what).toBe(
              false,
            );
      }
      const documents = await Promise.all(sheets.map(async ({ id }) => documentIn(await fileOf(own.http, id))));
      expect(documents.some(({ ancestors }) => ancestors.some(({ isPrivate }) => isPrivate))).toBe(true);
      expect(documents.some(({ sources }) => sources.some(({ isPrivate }) => isPrivate))).toBe(true);
    } finally {
      await own.close();
    }
  });

  it('is concealed on the page of a sheet that was issued before it became so, and no difference tells of it', async () => {
    const seller = await foundSeller(api);
    const [one] = seller.froglets;
    const sheet = await issue(seller.keeper.http, [one?.id ?? '']);
    const [father, mother] = seller.parents;
    // what is private now is changed as well, which must not show
    await change(seller, `individuals/${father?.id}`, { visibility: 'private' });
    await change(seller, `individuals/${father?.id}`, { hatched: '2019-03-30' });
    await change(seller, `sources/${seller.sourceId}`, { visibility: 'private' });
    const page = await publicPage(api, sheet);
    expect(page).toMatchObject({ outcome: 'genuine', state: 'valid', hasFile: false });
    const contents = page.contents as unknown as SheetDocument;
    expect(contents.ancestors.map(({ number }) => number)).toEqual(
      expect.arrayContaining([null, mother?.number ?? null]),
    );
    const text = JSON.stringify(page);
    for (const secret of [father?.number ?? '', 'Import', '1994~', '2019-03-30', '"EC"'])
      expect(text).not.toContain(secret);
    expect(page.today[0]?.differences).toEqual([]);
    await api.stranger.get(`/api/v1/sheets/${tokenOf(sheet)}/file`).expect(410);
    // and its parents are not compared, though one of them was replaced by another
    await change(seller, `clutches/${seller.clutchId}`, {
      sires: [{ individualId: father?.id }],
      dams: [{ individualId: seller.founders[1]?.id }],
    });
    expect(await differences(sheet)).not.toHaveProperty('parents');
  });

  it('is told of no animal of a sheet that became private or was withdrawn, in one and the same way', async () => {
    const seller = await foundSeller(api);
    const [one, two] = seller.froglets;
    const sheets = [
      await issue(seller.keeper.http, [one?.id ?? ''], { photographs: false }),
      await issue(seller.keeper.http, [two?.id ?? ''], { photographs: false }),
    ];
    await change(seller, `individuals/${one?.id}`, { visibility: 'private' });
    await seller.keeper.http
      .post(`/api/v1/individuals/${two?.id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'never was' })
      .expect(201);
    const pages = [];
    for (const sheet of sheets) {
      const page = await publicPage(api, sheet);
      for (const { number } of seller.froglets) expect(JSON.stringify(page)).not.toContain(number);
      expect(page).toMatchObject({ contents: null, hasFile: false });
      pages.push({ ...page, number: '', issued: '' });
      await api.stranger.get(`/api/v1/sheets/${tokenOf(sheet)}/file`).expect(410);
    }
    expect(pages[0]).toEqual(pages[1]);
  });

  it('is not told by a newer sheet of an animal that became private', async () => {
    const seller = await foundSeller(api);
    const [one, two] = seller.froglets;
    const both = [one?.id ?? '', two?.id ?? ''];
    const old = await issue(seller.keeper.http, both);
    await issue(seller.keeper.http, both);
    await change(seller, `individuals/${one?.id}`, { visibility: 'private' });
    const page = await publicPage(api, old);
    expect(page).toMatchObject({ state: 'superseded' });
    expect(page.newer.map(({ animal }) => animal)).toEqual([two?.number]);
    expect(JSON.stringify(page)).not.toContain(one?.number);
  });
});

describe('what a file is', () => {
  it('is told to anybody: ours and standing, replaced, revoked', async () => {
    const seller = await foundSeller(api);
    const [one] = seller.froglets;
    const sheet = await issue(seller.keeper.http, [one?.id ?? '']);
    const file = await fileOf(seller.keeper.http, sheet.id);
    expect(await verification(api, file)).toMatchObject({
      outcome: 'genuine',
      whose: 'this-register',
      state: 'valid',
      number: sheet.number,
      lookUp: `/s/${tokenOf(sheet)}`,
    });
    const newer = await issue(seller.keeper.http, [one?.id ?? '']);
    const replaced = await verification(api, file);
    expect(replaced).toMatchObject({ outcome: 'genuine', state: 'superseded' });
    expect(replaced.words).toContain(newer.number);
    await seller.keeper.http
      .post(`/api/v1/provenance-sheets/${sheet.id}/revocation`)
      .set('If-Match', '*')
      .send({ reason: 'the wrong animal' })
      .expect(201);
    const revoked = await verification(api, file);
    expect(revoked).toMatchObject({ outcome: 'genuine', state: 'revoked' });
    expect(revoked.words).toContain('the wrong animal');
  });

  it('is told of what was changed, laid out anew, or is no sheet', async () => {
    const seller = await foundSeller(api);
    const sheet = await issue(seller.keeper.http, [seller.froglets[0]?.id ?? '']);
    const file = await fileOf(seller.keeper.http, sheet.id);
    const text = file.toString('utf8');
    const as = async (changed: string) => verification(api, Buffer.from(changed));
    const nowhere = { whose: 'unknown', state: null, lookUp: null };
    expect(await as(text.replace('unsexed', 'male'))).toMatchObject({ outcome: 'changed', ...nowhere });
    expect(await as(JSON.stringify(JSON.parse(text), null, 2))).toMatchObject({ outcome: 'not-canonical', ...nowhere });
    expect(await as(`${text}\n`)).toMatchObject({ outcome: 'not-canonical', ...nowhere });
    expect(await as('{}')).toMatchObject({ outcome: 'malformed', ...nowhere });
    expect(await as('\0')).toMatchObject({ outcome: 'malformed', ...nowhere });
  });

  it('is told of another register’s: foreign, with the name that it gives itself', async () => {
    const other = await startApi({ publicUrl: 'https://other.example.org' });
    try {
      await other.dataSource.query(`update club set name = 'The other club'`);
      const seller = await foundSeller(other);
      const sheet = await issue(seller.keeper.http, [seller.froglets[0]?.id ?? '']);
      const file = await fileOf(seller.keeper.http, sheet.id);
      expect(await verification(other, file)).toMatchObject({ whose: 'this-register', outcome: 'genuine' });
      const told = await verification(api, file);
      expect(told).toMatchObject({
        outcome: 'unknown-key',
        whose: 'another-register',
        issuerAddress: 'https://other.example.org',
        state: null,
        lookUp: null,
      });
      expect(told.words).toContain(told.issuer);
    } finally {
      await other.close();
    }
  });

  it('is told of one that says that it is ours, with a key that nobody knows, and of one of ours that is not on record', async () => {
    const forged = await signSheet(
      madeSheet({ issuer: { register: 'Club', address: null, invented: false } }),
      await madeKey(),
    );
    expect(await verification(api, Buffer.from(forged))).toMatchObject({ outcome: 'unknown-key', lookUp: null });
    const seller = await foundSeller(api);
    const sheet = await issue(seller.keeper.http, [seller.froglets[0]?.id ?? '']);
    const file = await fileOf(seller.keeper.http, sheet.id);
    // as after a register was set back to an older copy
    await api.dataSource.query('delete from provenance_sheet_animal where sheet_id = $1', [sheet.id]);
    await api.dataSource.query('delete from provenance_sheet where id = $1', [sheet.id]);
    const told = await verification(api, file);
    expect(told).toMatchObject({ outcome: 'genuine', whose: 'this-register', state: null, lookUp: null });
    expect(told.words).toContain('no such sheet on record');
  });

  it('is asked with the very bytes, of a bounded number', async () => {
    const send = (type: string, body: string | Buffer) =>
      api.stranger.post('/api/v1/sheets/verification').type(type).send(body);
    await send('application/json', '{}').expect(415);
    await send('text/plain', '{}').expect(415);
    await send('application/octet-stream', Buffer.alloc(1_000_001, 32)).expect(413);
    await send('application/octet-stream', Buffer.alloc(999_999, 91)).expect(200);
    await api.stranger.post('/api/v1/sheets/verification').type('application/octet-stream').expect(422);
  });
});
