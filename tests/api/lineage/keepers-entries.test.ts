import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory, trio } from '../../support/factories.ts';

/** Every entry a keeper makes by form is in the next answer: nothing has to be recomputed by hand or waited for. */
describe('the lineage after a keeper’s entries', () => {
  let api: TestApi;
  let factory: Factory;
  const lineageOf = async (id: string): Promise<LineageView> =>
    bodyOf(await api.http.get(`/api/v1/individuals/${id}/lineage`).expect(200));
  const change = async (path: string, body: object): Promise<void> => {
    const { headers } = await api.http.get(`/api/v1/${path}`).expect(200);
    await api.http
      .patch(`/api/v1/${path}`)
      .set('If-Match', headers['etag'] ?? '')
      .send(body)
      .expect(200);
  };

  beforeAll(async () => {
    api = await startApi();
    factory = new Factory(api.http);
  });
  afterAll(() => api.close());

  it('counts brother and sister’s young at once, and again when a parent turns out another', async () => {
    const { sire, dam, other } = await trio(factory);
    const [brother, sister] = await factory.offspring((await factory.clutchOf(sire.id, dam.id)).id, {
      animals: [{ sex: 'male' }, { sex: 'female' }],
    });
    const clutch = await factory.clutchOf(brother?.id ?? '', sister?.id ?? '');
    const [young] = await factory.offspring(clutch.id);
    // full siblings: F = 1/4 (Wright 1922)
    expect((await lineageOf(young?.id ?? '')).inbreeding.expected).toBe(0.25);
    await change(`clutches/${clutch.id}`, {
      sires: [{ individualId: brother?.id }, { individualId: other.id }],
      dams: [{ individualId: sister?.id }],
    });
    expect((await lineageOf(young?.id ?? '')).inbreeding).toMatchObject({ expected: 0.125, least: 0, greatest: 0.25 });
  });

  it('takes a source that is entered later as the origin of a founder', async () => {
    const { sire } = await trio(factory);
    expect((await lineageOf(sire.id)).label.flags.map(({ code }) => code)).toEqual(['origin-gap']);
    const source = await factory.source({ labelAsReceived: 'Quebrada Honda', baseKinship: 0.0625 });
    await change(`individuals/${sire.id}`, { sourceId: source.id });
    const lineage = await lineageOf(sire.id);
    expect(lineage.label.flags).toEqual([]);
    expect(lineage.inbreeding).toMatchObject({ expected: 0.0625, nothingKnown: false });
    expect(lineage.shares).toEqual([
      {
        source: { id: source.id, title: source.title, standing: 'stated', label: 'Quebrada Honda', isPrivate: false },
        standing: 'stated',
        share: 1,
      },
    ]);
  });

  it('takes joint pairs of a group that could not be sexed', async () => {
    const { sire, dam, speciesId } = await trio(factory);
    const siblings = await factory.offspring((await factory.clutchOf(sire.id, dam.id)).id, { count: 2 });
    const stranger = await factory.individual({ speciesId });
    const [one = '', two = ''] = siblings.map(({ id }) => id);
    const clutch = await factory.clutch({
      pairs: [
        { a: one, b: two, weight: 3 },
        { a: one, b: stranger.id, weight: 1 },
      ],
    });
    const [young] = await factory.offspring(clutch.id);
    // ¾ of full siblings, φ = ¼; ¼ of strangers, φ = 0
    expect((await lineageOf(young?.id ?? '')).inbreeding).toMatchObject({ expected: 0.1875, least: 0, greatest: 0.25 });
  });
});
