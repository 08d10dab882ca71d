import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ClutchView } from '../../../api/register/clutches/clutch.view.ts';
import type {
  ParentCorrectionView,
  ParentCorrectionsView,
} from '../../../api/register/pairings/parent-correction.view.ts';
import type { PairingView } from '../../../api/register/pairings/pairing.view.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory, mediumPoisonFrog } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
});

afterAll(() => api.close());

type Sex = 'male' | 'female' | 'unsexed';
type Parents = ClutchView['parents'];

/** A group housed since 2021; the last animal is not recorded as living there yet. */
async function group(...sexes: Sex[]): Promise<{ pairing: PairingView; ids: string[]; late: string }> {
  const { id: speciesId } = await make.species({ ranges: mediumPoisonFrog });
  const animals = await make.individuals(...sexes.map((sex) => ({ speciesId, sex, hatched: '2018' })));
  const ids = animals.map((animal) => animal.id);
  const members = ids.slice(0, -1).map((individualId) => ({ individualId, joined: '2021-01-01' }));
  return { pairing: await make.pairing({ members }), ids, late: ids.at(-1) ?? '' };
}

const corrections = async (pairing: PairingView): Promise<ParentCorrectionView[]> =>
  ((await api.http.get(`/api/v1/pairings/${pairing.id}/parent-corrections`).expect(200)).body as ParentCorrectionsView)
    .items;

const join = async (
  pairing: PairingView,
  individualId: string,
  joined: string | null = '2021-03-01',
): Promise<void> => {
  const path = `/api/v1/pairings/${pairing.id}/members`;
  await api.http.post(path).set('If-Match', '*').send({ individualId, joined }).expect(201);
};

const correctStay = async (pairing: PairingView, individualId: string, dates: object): Promise<void> => {
  const member = pairing.members.find((one) => one.individual.id === individualId);
  const path = `/api/v1/pairings/${pairing.id}/members/${member?.id}`;
  await api.http.patch(path).set('If-Match', '*').send(dates).expect(200);
};

const read = async (id: string): Promise<ClutchView> =>
  (await api.http.get(`/api/v1/clutches/${id}`).expect(200)).body as ClutchView;

const patch = async (id: string, body: object, match = '*'): Promise<ClutchView> =>
  (await api.http.patch(`/api/v1/clutches/${id}`).set('If-Match', match).send(body).expect(200)).body as ClutchView;

/** Parents as a request names them. */
const named = (parents: Parents): object => {
  if (parents.mode === 'pairs')
    return { pairs: parents.pairs.map(({ a, b, probability }) => ({ a: a.id, b: b.id, weight: probability })) };
  const side = (list: typeof parents.sires): object[] =>
    list.map(({ individual, probability, reason }) => ({ individualId: individual?.id, weight: probability, reason }));
  return { sires: side(parents.sires), dams: side(parents.dams) };
};

const sides = (parents: Parents | undefined): { sires: string[]; dams: string[] } => {
  if (parents?.mode !== 'lists') throw new Error('sires and dams were expected');
  const ids = (list: typeof parents.sires): string[] =>
    list.map(({ individual }) => individual?.id ?? 'unknown').sort();
  return { sires: ids(parents.sires), dams: ids(parents.dams) };
};

const couples = (parents: Parents | undefined): string[] => {
  if (parents?.mode !== 'pairs') throw new Error('pairs were expected');
  return parents.pairs.map(({ a, b }) => [a.id, b.id].sort().join(' ')).sort();
};

describe('correcting when an animal joined or left', () => {
  it('offers the clutches it touches, side by side, and changes none by itself', async () => {
    const { pairing, late, ids } = await group('male', 'female', 'male');
    const [sire = '', dam = ''] = ids;
    const touched = await make.clutch({ pairingId: pairing.id, laid: '2022-05-01' });
    const before = await make.clutch({ pairingId: pairing.id, laid: '2021-02-01' });
    expect(await corrections(pairing)).toEqual([]);
    await join(pairing, late);
    const [offer, ...others] = await corrections(pairing);
    expect(others).toEqual([]);
    expect(offer?.clutch).toEqual({
      id: touched.id,
      title: 'clutch of 2022-05-01',
      version: 1,
      laid: '2022-05-01',
      parentsFromPairing: true,
    });
    expect(offer?.recorded).toEqual(touched.parents);
    expect(sides(offer?.housed)).toEqual({ sires: [sire, late].sort(), dams: [dam] });
    expect(offer?.why).toMatch(/^F-\d+ lived here when it was laid, but is not among the candidates\.$/);
    expect(await read(touched.id)).toEqual(touched);
    expect(await read(before.id)).toEqual(before);
  });

  it('is taken by the ordinary change of the clutch, at the version that was shown, and put back as it was', async () => {
    const { pairing, late } = await group('male', 'female', 'male');
    const clutch = await make.clutch({ pairingId: pairing.id, laid: '2022-05-01' });
    await join(pairing, late);
    const [offer] = await corrections(pairing);
    if (!offer) throw new Error('an offer was expected');
    const taken = await patch(clutch.id, named(offer.housed), `"${offer.clutch.version}"`);
    expect(taken.parents).toEqual(offer.housed);
    expect(taken.parentsFromPairing).toBe(true);
    expect(await corrections(pairing)).toEqual([]);
    const stale = api.http.patch(`/api/v1/clutches/${clutch.id}`).set('If-Match', `"${offer.clutch.version}"`);
    await stale.send(named(offer.housed)).expect(412);
    await patch(clutch.id, { ...named(offer.recorded), parentsFromPairing: offer.clutch.parentsFromPairing });
    const [again] = await corrections(pairing);
    expect(again).toEqual({ ...offer, clutch: { ...offer.clutch, version: 3 } });
  });

  it('offers unknown parents where nobody lived there after all, and new ones where the laying date moved', async () => {
    const { pairing, ids } = await group('male', 'female', 'male');
    const clutch = await make.clutch({ pairingId: pairing.id, laid: '2022-05-01' });
    for (const id of ids.slice(0, 2)) await correctStay(pairing, id, { joined: '2022-06-01' });
    const [offer] = await corrections(pairing);
    expect(sides(offer?.housed)).toEqual({ sires: [], dams: [] });
    expect(offer?.why).toMatch(/^F-\d+ and F-\d+ did not live here when it was laid\.$/);
    await patch(clutch.id, { laid: '2022-07-01' });
    expect(await corrections(pairing)).toEqual([]);
  });

  it('counts an animal as gone from the day it died', async () => {
    const { pairing, ids } = await group('male', 'male', 'female', 'male');
    const [first = '', second = ''] = ids;
    await make.clutch({ pairingId: pairing.id, laid: '2022-05-01' });
    const died = api.http.patch(`/api/v1/individuals/${second}`).set('If-Match', '*');
    await died.send({ status: 'died', died: '2022-02' }).expect(200);
    expect(sides((await corrections(pairing))[0]?.housed).sires).toEqual([first]);
  });

  it('refuses parents that descend from the clutch, as any change does', async () => {
    const { pairing } = await group('male', 'female', 'male');
    const clutch = await make.clutch({ pairingId: pairing.id, laid: '2020~/2022' });
    const [child] = await make.offspring(clutch.id, { animals: [{ sex: 'male' }] });
    await join(pairing, child?.id ?? '', null);
    const [offer] = await corrections(pairing);
    const answer = await api.http
      .patch(`/api/v1/clutches/${clutch.id}`)
      .set('If-Match', '*')
      .send(named(offer?.housed ?? clutch.parents))
      .expect(409);
    expect(answer.body).toMatchObject({ type: '/api/problems/loop' });
  });
});

describe('a group with animals not sexed', () => {
  it('is offered as couples', async () => {
    const { pairing, late, ids } = await group('unsexed', 'unsexed', 'unsexed');
    const clutch = await make.clutch({ pairingId: pairing.id, laid: '2022-05-01' });
    expect(couples(clutch.parents)).toHaveLength(1);
    await join(pairing, late);
    const [offer] = await corrections(pairing);
    const [a = '', b = '', c = ''] = ids;
    expect(couples(offer?.housed)).toEqual(
      [
        [a, b],
        [a, c],
        [b, c],
      ]
        .map((pair) => pair.sort().join(' '))
        .sort(),
    );
    if (!offer) return;
    expect(couples((await patch(clutch.id, named(offer.housed), '"1"')).parents)).toEqual(couples(offer.housed));
    expect(await corrections(pairing)).toEqual([]);
  });

  it('is offered as sires and dams once all are sexed', async () => {
    const { pairing, ids } = await group('unsexed', 'unsexed', 'male', 'male');
    const [a = '', b = '', c = ''] = ids;
    await make.clutch({ pairingId: pairing.id, laid: '2022-05-01' });
    for (const id of [a, b])
      await api.http.patch(`/api/v1/individuals/${id}`).set('If-Match', '*').send({ sex: 'female' }).expect(200);
    const [offer] = await corrections(pairing);
    expect(sides(offer?.housed)).toEqual({ sires: [c], dams: [a, b].sort() });
    expect(offer?.why).toBe('What is known of the sexes now leaves other couples.');
  });

  it('never takes in one that was too young to breed', async () => {
    const { pairing } = await group('male', 'female', 'male');
    await make.clutch({ pairingId: pairing.id, laid: '2022-05-01' });
    // months until maturity: common practice, no source
    const { id } = await make.individual({
      sex: 'unsexed',
      hatched: '2022-03-01',
      speciesId: (await make.species({ ranges: mediumPoisonFrog })).id,
    });
    await join(pairing, id, '2022-04-20');
    expect(await corrections(pairing)).toEqual([]);
  });
});

describe("a keeper's own word", () => {
  it('stands, odds and reasons and all, until one of those named did not live there', async () => {
    const { pairing, late, ids } = await group('male', 'male', 'female', 'male');
    const [first = '', second = '', dam = ''] = ids;
    const sires = [
      { individualId: first, weight: 0.8, reason: 'seen calling' },
      { individualId: second, weight: 0.2 },
    ];
    await make.clutch({ pairingId: pairing.id, laid: '2022-05-01', sires, dams: [{ individualId: dam }] });
    await join(pairing, late);
    expect(await corrections(pairing)).toEqual([]);
    await correctStay(pairing, second, { left: '2022-01-15' });
    const [offer] = await corrections(pairing);
    expect(sides(offer?.housed)).toEqual({ sires: [first, late].sort(), dams: [dam] });
    expect(offer?.why).toContain('did not live here');
  });

  it('stands where the keeper saw which one it was', async () => {
    const { pairing, late, ids } = await group('male', 'male', 'female', 'male');
    const [first = '', , dam = ''] = ids;
    const seen = { sires: [{ individualId: first }], dams: [{ individualId: dam }] };
    await make.clutch({ pairingId: pairing.id, laid: '2022-05-01', ...seen });
    await join(pairing, late);
    expect(await corrections(pairing)).toEqual([]);
  });

  it('stays in the proposal for the other side: odds of the sires, while a dam is missing at equal odds', async () => {
    const { pairing, late, ids } = await group('male', 'male', 'female', 'female', 'female');
    const [first = '', second = '', ...dams] = ids;
    const sires = [
      { individualId: first, weight: 0.75, reason: 'seen carrying tadpoles' },
      { individualId: second, weight: 0.25 },
    ];
    const clutch = await make.clutch({
      pairingId: pairing.id,
      laid: '2022-05-01',
      sires,
      dams: dams.slice(0, 2).map((individualId) => ({ individualId })),
    });
    expect(await corrections(pairing)).toEqual([]);
    await join(pairing, late);
    const [offer] = await corrections(pairing);
    expect(sides(offer?.housed).dams).toEqual([...dams].sort());
    const { parents } = clutch;
    expect(parents.mode === 'lists' && offer?.housed.mode === 'lists' && offer.housed.sires).toEqual(
      parents.mode === 'lists' && parents.sires,
    );
  });

  it('may be said of parents that the housing proposed, or taken back', async () => {
    const { pairing, late } = await group('male', 'female', 'male');
    const clutch = await make.clutch({ pairingId: pairing.id, laid: '2022-05-01' });
    await join(pairing, late);
    await patch(clutch.id, { parentsFromPairing: false });
    expect(await corrections(pairing)).toEqual([]);
    await patch(clutch.id, { parentsFromPairing: true });
    expect(sides((await read(clutch.id)).parents).sires).toHaveLength(2);
  });
});

describe('vague dates', () => {
  it('offer nothing while the stay may still cover the day', async () => {
    const { pairing, ids } = await group('male', 'male', 'female', 'male');
    const [, second = ''] = ids;
    await make.clutch({ pairingId: pairing.id, laid: '2022-05-01' });
    for (const left of ['2022', '2022-05', '2022~', '2021/2022']) {
      await correctStay(pairing, second, { left });
      expect(await corrections(pairing)).toEqual([]);
    }
    await correctStay(pairing, second, { left: '2022-04' });
    expect(await corrections(pairing)).toHaveLength(1);
  });

  it('take in whoever may have joined in time for a vague laying', async () => {
    const { pairing, late } = await group('male', 'female', 'male');
    await make.clutch({ pairingId: pairing.id, laid: '2022' });
    await join(pairing, late, '2022-11');
    expect(sides((await corrections(pairing))[0]?.housed).sires).toContain(late);
  });

  it('leave a clutch alone whose day of laying nobody knows', async () => {
    const { pairing, late } = await group('male', 'female', 'male');
    await make.clutch({ pairingId: pairing.id });
    await join(pairing, late);
    expect(await corrections(pairing)).toEqual([]);
  });
});

describe('parents that are to come from the housing', () => {
  const refused = async (id: string, body: object): Promise<void> => {
    const answer = await api.http.patch(`/api/v1/clutches/${id}`).set('If-Match', '*').send(body).expect(422);
    expect(answer.body).toMatchObject({ errors: [{ pointer: '/parentsFromPairing' }] });
  };

  it('are known again when a client sends them in full', async () => {
    const { pairing, ids } = await group('male', 'female', 'male');
    const [sire = '', dam = ''] = ids;
    const sent = { sires: [{ individualId: sire }], dams: [{ individualId: dam }] };
    expect((await make.clutch({ pairingId: pairing.id, laid: '2022-05-01', ...sent })).parentsFromPairing).toBe(true);
  });

  it('need a pairing, and carry no odds or reasons of their own', async () => {
    await refused((await make.clutch({ laid: '2022-05-01' })).id, { parentsFromPairing: true });
    const { pairing, ids } = await group('male', 'female', 'male');
    const { id } = await make.clutch({ pairingId: pairing.id, laid: '2022-05-01' });
    const reasoned = [{ individualId: ids[0], reason: 'seen calling' }];
    await refused(id, { parentsFromPairing: true, sires: reasoned });
    await refused(id, { parentsFromPairing: true, sires: [{ individualId: ids[0] }, { individualId: null }] });
    await api.http.get('/api/v1/pairings/00000000-0000-7000-8000-000000000000/parent-corrections').expect(404);
    await api.http.get('/api/v1/pairings/tank/parent-corrections').expect(404);
  });
});
