import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ClutchView } from '../../../api/register/clutches/clutch.view.ts';
import type { ParentCorrectionsView } from '../../../api/register/pairings/parent-correction.view.ts';
import type { PairingView } from '../../../api/register/pairings/pairing.view.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
});

afterAll(() => api.close());

type Sex = 'male' | 'female' | 'unsexed';

/** A group housed since 2021; the last animal is not recorded as living there yet. */
async function group(...sexes: Sex[]): Promise<{ pairing: PairingView; ids: string[]; late: string }> {
  const animals = await make.individuals(...sexes.map((sex) => ({ sex, hatched: '2018' })));
  const ids = animals.map((animal) => animal.id);
  const members = ids.slice(0, -1).map((individualId) => ({ individualId, joined: '2021-01-01' }));
  return { pairing: await make.pairing({ members }), ids, late: ids.at(-1) ?? '' };
}

const corrections = async (pairing: PairingView): Promise<ParentCorrectionsView['items']> =>
  ((await api.http.get(`/api/v1/pairings/${pairing.id}/parent-corrections`).expect(200)).body as ParentCorrectionsView)
    .items;

const join = async (pairing: PairingView, individualId: string): Promise<void> => {
  const path = `/api/v1/pairings/${pairing.id}/members`;
  await api.http.post(path).set('If-Match', '*').send({ individualId, joined: '2021-03-01' }).expect(201);
};

const leave = async (pairing: PairingView, individualId: string, left: string): Promise<void> => {
  const member = pairing.members.find((one) => one.individual.id === individualId);
  const path = `/api/v1/pairings/${pairing.id}/members/${member?.id}`;
  await api.http.patch(path).set('If-Match', '*').send({ left }).expect(200);
};

describe('correcting who was housed where', () => {
  it('offers to correct the clutches it touches, and changes none by itself', async () => {
    const { pairing, late, ids } = await group('male', 'female', 'male');
    const touched = await make.clutch({ pairingId: pairing.id, laid: '2022-05-01' });
    const before = await make.clutch({ pairingId: pairing.id, laid: '2021-02-01' });
    expect(touched.parentsFromPairing).toBe(true);
    expect(await corrections(pairing)).toEqual([]);
    await join(pairing, late);
    const [offer, ...others] = await corrections(pairing);
    expect(others).toEqual([]);
    expect(offer?.clutch.id).toBe(touched.id);
    expect([offer?.leaving, offer?.joining.map((animal) => animal.id)]).toEqual([[], [late]]);
    const path = `/api/v1/clutches/${touched.id}`;
    expect(((await api.http.get(path)).body as ClutchView).parents).toEqual(touched.parents);
    const taken = await api.http.patch(path).set('If-Match', '"1"').send({ parentsFromPairing: true }).expect(200);
    const parents = (taken.body as ClutchView).parents;
    const sires = parents.mode === 'lists' ? parents.sires : [];
    expect(sires.map((sire) => sire.probability)).toEqual([0.5, 0.5]);
    expect(new Set(sires.map((sire) => sire.individual?.id))).toEqual(new Set([ids[0], late]));
    expect(await corrections(pairing)).toEqual([]);
    expect(((await api.http.get(`/api/v1/clutches/${before.id}`)).body as ClutchView).version).toBe(1);
  });

  it('leaves what a keeper named alone, until one of those named was not there', async () => {
    const { pairing, late, ids } = await group('male', 'male', 'female', 'male');
    const [first = '', second = '', dam = ''] = ids;
    const named = {
      sires: [
        { individualId: first, weight: 0.8, reason: 'seen calling' },
        { individualId: second, weight: 0.2 },
      ],
    };
    const clutch = await make.clutch({
      pairingId: pairing.id,
      laid: '2022-05-01',
      ...named,
      dams: [{ individualId: dam }],
    });
    expect(clutch.parentsFromPairing).toBe(false);
    await join(pairing, late);
    expect(await corrections(pairing)).toEqual([]);
    await leave(pairing, second, '2022-01-15');
    const [offer] = await corrections(pairing);
    expect(offer?.leaving.map((animal) => animal.id)).toEqual([second]);
  });

  it('knows its own choice when a client sends it in full', async () => {
    const { pairing, ids } = await group('male', 'female', 'male');
    const [sire = '', dam = ''] = ids;
    const sent = { sires: [{ individualId: sire }], dams: [{ individualId: dam }] };
    expect((await make.clutch({ pairingId: pairing.id, laid: '2022-05-01', ...sent })).parentsFromPairing).toBe(true);
  });

  it('offers couples where a sex is not known, and nothing where a vague stay may still cover the day', async () => {
    const { pairing, late, ids } = await group('unsexed', 'unsexed', 'unsexed');
    const clutch = await make.clutch({ pairingId: pairing.id, laid: '2022-05-01' });
    expect(clutch.parents.mode).toBe('pairs');
    await leave(pairing, ids[0] ?? '', '2022');
    expect(await corrections(pairing)).toEqual([]);
    await join(pairing, late);
    const path = `/api/v1/clutches/${clutch.id}`;
    const taken = await api.http.patch(path).set('If-Match', '*').send({ parentsFromPairing: true }).expect(200);
    const { parents } = taken.body as ClutchView;
    expect(parents.mode === 'pairs' ? parents.pairs.length : 0).toBe(3);
  });

  it('a clutch without a pairing, or with parents named as well, cannot take them from one', async () => {
    const alone = await make.clutch({ laid: '2022-05-01' });
    const path = `/api/v1/clutches/${alone.id}`;
    const refused = await api.http.patch(path).set('If-Match', '*').send({ parentsFromPairing: true }).expect(422);
    expect(refused.body).toMatchObject({ errors: [{ pointer: '/parentsFromPairing' }] });
    const both = { parentsFromPairing: true, sires: [] };
    await api.http.patch(path).set('If-Match', '*').send(both).expect(422);
    await api.http.get('/api/v1/pairings/00000000-0000-7000-8000-000000000000/parent-corrections').expect(404);
  });
});
