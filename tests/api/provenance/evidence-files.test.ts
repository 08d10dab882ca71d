import { readdir } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contentHash } from '../../../api/platform/file-store.ts';
import type { EvidenceView } from '../../../api/provenance/evidence/evidence.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { bodyOf, type ProblemBody } from '../../support/answer.ts';
import { startBucketServer } from '../../support/bucket-server.ts';
import { Factory } from '../../support/factories.ts';
import { madePdf } from '../../support/made-pdf.ts';
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

const put = (http: TestKeeper['http'], id: string, bytes: Buffer, match = '*') =>
  http.put(`/api/v1/evidence/${id}/file`).set('If-Match', match).attach('file', bytes, 'paper');

const paper = (title: string): Buffer => madePdf({ objects: [`<</Title(${title})>>`] });

describe('the paper of evidence', () => {
  it('is kept byte by byte and given as a download, whose name nobody else chose', async () => {
    const { id, version } = await make.evidence();
    const bytes = paper('Permit 12/1994');
    const answer = await put(anna.http, id, bytes, `"${version}"`).expect(200);
    const hash = contentHash(bytes);
    expect(bodyOf<EvidenceView>(answer)).toMatchObject({
      version: version + 1,
      file: { hash, mediaType: 'application/pdf', bytes: bytes.length },
    });
    const given = await anna.http.get(`/api/v1/evidence/${id}/file`).buffer(true).expect(200);
    expect(given.headers).toMatchObject({
      'content-type': 'application/pdf',
      'content-disposition': `attachment; filename="evidence-${hash.slice(0, 12)}.pdf"`,
      'x-content-type-options': 'nosniff',
      'cache-control': 'private, no-cache',
      etag: `"${hash}"`,
    });
    expect(given.headers['content-security-policy']).toMatch(/^sandbox; default-src 'none';/);
    expect(contentHash(given.body as Buffer)).toBe(hash);
    await anna.http.get(`/api/v1/evidence/${id}/file`).set('If-None-Match', `"${hash}"`).expect(304);
  });

  it('can be sent as the whole body, and can be a picture, which is looked at in place', async () => {
    const { id } = await make.evidence();
    const scan = await picture(300, 400).png().toBuffer();
    const request = anna.http.put(`/api/v1/evidence/${id}/file`).set('If-Match', '*').type('application/octet-stream');
    expect(bodyOf<EvidenceView>(await request.send(scan).expect(200)).file?.mediaType).toBe('image/png');
    const { headers } = await anna.http.get(`/api/v1/evidence/${id}/file`).expect(200);
    expect(headers['content-disposition']).toMatch(/^inline; filename="evidence-[0-9a-f]{12}\.png"$/);
  });

  it('may be the same for two, and lies there once', async () => {
    const [one, two] = [await make.evidence(), await make.evidence()];
    const bytes = paper('for both');
    for (const { id } of [one, two]) await put(anna.http, id, bytes).expect(200);
    const names = (await readdir(api.filesDir, { recursive: true })).filter((name) =>
      name.endsWith(contentHash(bytes)),
    );
    expect(names).toHaveLength(1);
  });

  it('is put there by whoever brought the evidence, and by nobody else', async () => {
    const { id } = await make.evidence();
    expect((await put(ben.http, id, paper('a'))).status).toBe(403);
    expect((await put(api.http, id, paper('a'))).status).toBe(403);
    expect((await put(api.stranger, id, paper('a'))).status).toBe(401);
    expect((await put(anna.http, id, paper('a'), '"9"')).status).toBe(412);
    expect((await anna.http.put(`/api/v1/evidence/${id}/file`).attach('file', paper('a'), 'a')).status).toBe(428);
    expect((await put(anna.http, 'nothing', paper('a'))).status).toBe(404);
    expect(bodyOf<EvidenceView>(await anna.http.get(`/api/v1/evidence/${id}`)).file).toBeNull();
    expect(bodyOf<ProblemBody>(await anna.http.get(`/api/v1/evidence/${id}/file`).expect(404)).detail).toMatch(
      /no file/,
    );
  });

  it('is replaced while nobody has reviewed it, and never after; what was replaced is told by the journal and can be undone', async () => {
    const { id } = await make.evidence();
    await put(anna.http, id, paper('first')).expect(200);
    const second = await put(anna.http, id, paper('second')).expect(200);
    const entry = second.headers['journal-entry'];
    const [kept] = await api.dataSource.query<{ before: object; after: object }[]>(
      'select before, after from journal_entry where id = $1',
      [entry],
    );
    expect(kept?.before).toMatchObject({ fileHash: contentHash(paper('first')) });
    expect(kept?.after).toMatchObject({ fileHash: contentHash(paper('second')) });
    await anna.http.post(`/api/v1/journal/${entry}/reversal`).expect(201);
    expect(bodyOf<EvidenceView>(await anna.http.get(`/api/v1/evidence/${id}`)).file?.hash).toBe(
      contentHash(paper('first')),
    );
    await api.http
      .post(`/api/v1/evidence/${id}/review`)
      .set('If-Match', '*')
      .send({ verdict: 'accepted', reason: 'seen' })
      .expect(201);
    const late = await put(anna.http, id, paper('third'));
    expect(late.status).toBe(409);
    expect(bodyOf<EvidenceView>(await anna.http.get(`/api/v1/evidence/${id}`)).file?.hash).toBe(
      contentHash(paper('first')),
    );
  });

  it('is for members who may see what the claim is about', async () => {
    const source = await make.source({ visibility: 'private' });
    const claim = await make.claim({ sourceId: source.id });
    const { id } = await make.evidence({ claimId: claim.id });
    await put(anna.http, id, paper('private')).expect(200);
    await ben.http.get(`/api/v1/evidence/${id}/file`).expect(404);
    await api.http.get(`/api/v1/evidence/${id}/file`).expect(200);
    expect((await put(ben.http, id, paper('other'))).status).toBe(404);
    await anna.http
      .patch(`/api/v1/sources/${source.id}`)
      .set('If-Match', '*')
      .send({ visibility: 'public' })
      .expect(200);
    await ben.http.get(`/api/v1/evidence/${id}/file`).expect(200);
    await api.dataSource.query('update club set public_reading = true');
    await api.stranger.get(`/api/v1/evidence/${id}/file`).expect(401);
    await api.dataSource.query('update club set public_reading = false');
  });
});

it('a club with a bucket keeps its papers there; while the bucket fails, nothing is written and all else goes on', async () => {
  const credentials = {
    bucket: 'frogs',
    region: 'eu-central-1',
    accessKey: 'AKFROG',
    secretKey: 'secret-of-the-bucket',
  };
  const bucket = await startBucketServer(credentials);
  const club = await startApi({ filesBucket: { ...credentials, endpoint: bucket.url } });
  const { id } = await new Factory(club.http).evidence();
  bucket.failing = 500;
  const refused = await put(club.http, id, paper('in the bucket'));
  expect(refused.status).toBe(503);
  expect(refused.text).not.toMatch(/secret-of|AKFROG|127\.0\.0\.1/);
  expect(bodyOf<EvidenceView>(await club.http.get(`/api/v1/evidence/${id}`).expect(200)).file).toBeNull();
  bucket.failing = null;
  await put(club.http, id, paper('in the bucket')).expect(200);
  expect([...bucket.objects.keys()]).toEqual([contentHash(paper('in the bucket'))]);
  const given = await club.http.get(`/api/v1/evidence/${id}/file`).buffer(true).expect(200);
  expect(contentHash(given.body as Buffer)).toBe(contentHash(paper('in the bucket')));
  await club.close();
  await bucket.close();
});
