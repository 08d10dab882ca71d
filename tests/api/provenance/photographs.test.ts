import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PhotographRecordView } from '../../../api/provenance/photographs/photograph.view.ts';
import { startApi, startApiOn, type TestApi, type TestKeeper } from '../../support/api.ts';
import { bodyOf, having, type ProblemBody } from '../../support/answer.ts';
import { Factory } from '../../support/factories.ts';
import { picture } from '../../support/made-pictures.ts';

let api: TestApi;
let anna: TestKeeper;
let ben: TestKeeper;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  anna = await api.addKeeper('Anna');
  ben = await api.addKeeper('Ben');
  make = new Factory(anna.http);
});

afterAll(() => api.close());

const listOf = async (individualId: string, http = anna.http): Promise<PhotographRecordView[]> =>
  bodyOf<{ items: PhotographRecordView[] }>(
    await http.get(`/api/v1/photographs?individualId=${individualId}`).expect(200),
  ).items;

const send = async (http: TestKeeper['http'], fields: Record<string, string>) =>
  http
    .post('/api/v1/photographs')
    .field({ view: 'back', ...fields })
    .attach('file', await picture().jpeg().toBuffer(), 'a.jpg');

const setPublicReading = (value: boolean) => api.dataSource.query('update club set public_reading = $1', [value]);

describe('photographs of an animal', () => {
  it('are listed with the last taken first, whatever the order in which they came in', async () => {
    const { id } = await make.individual();
    for (const takenOn of ['2021-05', '2019~', '2023-01-05']) await make.photograph({ individualId: id, takenOn });
    await make.photograph({ individualId: id });
    const list = await listOf(id);
    expect(list.map(({ takenOn }) => takenOn)).toEqual(['2023-01-05', '2021-05', '2019~', null]);
    expect(list[0]).toMatchObject({
      individualId: id,
      keeper: 'Anna',
      view: 'back',
      width: 60,
      height: 40,
      version: 1,
    });
  });

  it('are given whole and small, as pictures and nothing else', async () => {
    const { id: individualId, number } = await make.individual();
    const large = await picture(1600, 900).jpeg().toBuffer();
    const request = anna.http.post('/api/v1/photographs').field({ individualId, view: 'side', takenOn: '2021-04~' });
    const { id } = bodyOf<PhotographRecordView>(await request.attach('file', large, 'x.jpg').expect(201));
    const whole = await anna.http.get(`/api/v1/photographs/${id}/file`).expect(200);
    expect(whole.headers).toMatchObject({
      'content-type': 'image/jpeg',
      'x-content-type-options': 'nosniff',
      'content-disposition': `inline; filename="animal-${number}-2021-04.jpg"`,
      'cache-control': 'private, max-age=86400, immutable',
      vary: 'Cookie, Authorization',
    });
    expect(whole.headers['content-security-policy']).toMatch(/^sandbox; default-src 'none';/);
    expect(await sharp(whole.body as Buffer).metadata()).toMatchObject({ width: 1600, height: 900 });
    const small = await anna.http.get(`/api/v1/photographs/${id}/file?size=small`).expect(200);
    expect(await sharp(small.body as Buffer).metadata()).toMatchObject({ width: 640, height: 360 });
    expect(small.headers['etag']).not.toBe(whole.headers['etag']);
    const again = await anna.http.get(`/api/v1/photographs/${id}/file?size=small`).expect(200);
    expect((again.body as Buffer).equals(small.body as Buffer)).toBe(true);
    await anna.http.get(`/api/v1/photographs/${id}/file?size=huge`).expect(422);
  });

  it('are not sent again to whoever has them', async () => {
    const { id } = await make.photograph();
    const { headers } = await anna.http.get(`/api/v1/photographs/${id}/file`).expect(200);
    const path = `/api/v1/photographs/${id}/file`;
    const held = await anna.http
      .get(path)
      .set('If-None-Match', headers['etag'] ?? '')
      .expect(304);
    expect(held.headers['etag']).toBe(headers['etag']);
    await anna.http.get(path).set('If-None-Match', '"another"').expect(200);
  });

  it('are added by the keeper of the animal and by registrars, and by nobody else', async () => {
    const { id: individualId } = await make.individual();
    expect((await send(ben.http, { individualId })).status).toBe(403);
    expect((await send(api.stranger, { individualId })).status).toBe(401);
    expect((await send(api.http, { individualId })).body).toMatchObject({ keeper: 'Keeper' });
    const reader = await api.addKeeper('Reader', ['registrar'], 'read');
    expect((await send(reader.http, { individualId })).status).toBe(403);
  });

  it('are of an animal that stands', async () => {
    const { id: individualId } = await make.individual();
    await anna.http
      .post(`/api/v1/individuals/${individualId}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'twice' })
      .expect(201);
    const answer = await send(anna.http, { individualId });
    expect(answer.status).toBe(422);
    expect(bodyOf<ProblemBody>(answer).errors).toEqual([having({ pointer: '/individualId' })]);
    expect((await send(anna.http, { individualId: 'nobody' })).status).toBe(422);
  });

  it('can be described anew, withdrawn and restored; every step is in the journal, and can be undone', async () => {
    const { id, individualId } = await make.photograph({ notes: 'a scar', takenOn: '2020' });
    const path = `/api/v1/photographs/${id}`;
    await ben.http.patch(path).set('If-Match', '*').send({ notes: 'mine' }).expect(403);
    await anna.http.patch(path).set('If-Match', '"7"').send({ notes: 'mine' }).expect(412);
    await anna.http.patch(path).send({ notes: 'mine' }).expect(428);
    const changed = await anna.http
      .patch(path)
      .set('If-Match', '"1"')
      .send({ view: 'belly', takenOn: null })
      .expect(200);
    expect(changed.body).toMatchObject({ view: 'belly', takenOn: null, notes: 'a scar', version: 2 });
    await anna.http.post(`/api/v1/journal/${changed.headers['journal-entry']}/reversal`).expect(201);
    expect((await anna.http.get(path).expect(200)).body).toMatchObject({ view: 'back', takenOn: '2020', version: 3 });
    await anna.http.post(`${path}/withdrawal`).set('If-Match', '"3"').send({ reason: 'another animal' }).expect(201);
    expect(await listOf(individualId)).toEqual([]);
    await anna.http.delete(`${path}/withdrawal`).set('If-Match', '"4"').expect(200);
    expect(await listOf(individualId)).toHaveLength(1);
    const told = await anna.http.get(`/api/v1/journal?record=${id}`).expect(200);
    const { items } = bodyOf<{ items: { action: string; record: { title: string } }[] }>(told);
    expect(items.map(({ action }) => action).sort()).toEqual(['added', 'changed', 'changed', 'restored', 'withdrawn']);
    expect(items[0]?.record.title).toMatch(/^photograph of the back of \d+-/);
  });

  it('that are sent twice under one key are one', async () => {
    const { id: individualId } = await make.individual();
    const bytes = await picture(30, 30).jpeg().toBuffer();
    const post = (file: Buffer) =>
      anna.http
        .post('/api/v1/photographs')
        .set('Idempotency-Key', `key-${individualId}`)
        .field({ individualId, view: 'back' })
        .attach('file', file, 'a.jpg');
    const first = await post(bytes).expect(201);
    const second = await post(bytes).expect(201);
    expect(second.body).toEqual(first.body);
    expect(second.headers['idempotency-replayed']).toBe('true');
    expect(await listOf(individualId)).toHaveLength(1);
    await post(await picture(31, 30).jpeg().toBuffer()).expect(422);
  });
});

describe('whoever may not see an animal', () => {
  it('sees none of its photographs, neither what is said of them nor the pictures', async () => {
    const { id: individualId } = await make.individual({ visibility: 'private' });
    const { id } = await make.photograph({ individualId });
    for (const http of [ben.http, api.stranger]) {
      const status = http === ben.http ? 404 : 401;
      for (const path of [id, `${id}/file`, `${id}/file?size=small`])
        await http.get(`/api/v1/photographs/${path}`).expect(status);
    }
    expect(await listOf(individualId, ben.http)).toEqual([]);
    expect(await listOf(individualId, api.http)).toHaveLength(1);
    expect((await send(ben.http, { individualId })).status).toBe(422);
  });

  it('sees them no more once it is private, though they were looked at before', async () => {
    const { id: individualId } = await make.individual();
    const { id } = await make.photograph({ individualId });
    const path = `/api/v1/photographs/${id}/file?size=small`;
    const { headers } = await ben.http.get(path).expect(200);
    await anna.http
      .patch(`/api/v1/individuals/${individualId}`)
      .set('If-Match', '*')
      .send({ visibility: 'private' })
      .expect(200);
    await ben.http.get(path).expect(404);
    await ben.http
      .get(path)
      .set('If-None-Match', headers['etag'] ?? '')
      .expect(404);
  });
});

it('strangers see photographs of public animals where the club lets them, without names and remarks', async () => {
  const { id: individualId } = await make.individual({ visibility: 'public' });
  const { id } = await make.photograph({ individualId, notes: 'at the house of Anna' });
  await setPublicReading(true);
  const answer = await api.stranger.get(`/api/v1/photographs/${id}`).expect(200);
  expect(answer.body).toMatchObject({ keeper: null, keeperId: null, notes: null, view: 'back' });
  await api.stranger.get(`/api/v1/photographs/${id}/file`).expect(200);
  await setPublicReading(false);
  await api.stranger.get(`/api/v1/photographs/${id}/file`).expect(401);
});

it('a file that is gone from where files are kept is told, and the record stays', async () => {
  const { id } = await make.photograph();
  const other = await startApiOn(api.databaseUrl, { filesDir: `${api.filesDir}-elsewhere` });
  const lost = await other.http.get(`/api/v1/photographs/${id}/file?size=small`);
  await other.close();
  expect(lost.status).toBe(503);
  expect(bodyOf<ProblemBody>(lost).detail).toMatch(/not where files are kept/);
});
