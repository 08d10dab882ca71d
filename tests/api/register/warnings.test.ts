import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ClutchView } from '../../../api/register/clutches/clutch.view.ts';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory, mediumPoisonFrog, trio } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
});

afterAll(() => api.close());

const clutch = async (id: string): Promise<ClutchView> =>
  (await api.http.get(`/api/v1/clutches/${id}`).expect(200)).body as ClutchView;
const animal = async (id: string): Promise<IndividualView> =>
  (await api.http.get(`/api/v1/individuals/${id}`).expect(200)).body as IndividualView;
const change = (path: string, body: object) =>
  api.http.patch(`/api/v1/${path}`).set('If-Match', '*').send(body).expect(200);

async function youngMother(): Promise<{ made: ClutchView; damId: string }> {
  const { sire, dam } = await trio(make);
  await change(`individuals/${dam.id}`, { hatched: '2020-11-10' });
  return { made: await make.clutchOf(sire.id, dam.id, { laid: '2021-04-12', eggs: 7 }), damId: dam.id };
}

describe('a warning', () => {
  it('does not block, and is told with the record, with figures', async () => {
    const { made } = await youngMother();
    expect(made.warnings).toMatchObject([
      {
        code: 'young-dam',
        fields: ['laid', 'parents'],
        confirmed: null,
        detail: expect.stringMatching(/was 5 months old; usual is 10 or more/) as string,
      },
    ]);
    expect((await clutch(made.id)).warnings).toEqual(made.warnings);
  });

  it('looks at clutches of the same certain dam, at losses, and at the young in the register', async () => {
    const { sire, dam } = await trio(make);
    const first = await make.clutchOf(sire.id, dam.id, { laid: '2021-04-12' });
    const second = await make.clutchOf(sire.id, dam.id, {
      laid: '2021-04-14',
      eggs: 2,
      losses: [{ cause: 'eaten', count: 3 }],
    });
    await make.clutchOf(sire.id, dam.id, { laid: '2021-04-21' });
    await make.offspring(second.id, { count: 3 });
    expect((await clutch(first.id)).warnings.map((warning) => warning.code)).toEqual(['close-clutches']);
    expect((await clutch(second.id)).warnings.map((warning) => warning.code)).toEqual([
      'more-lost-than-laid',
      'more-young-than-eggs',
      'close-clutches',
    ]);
    await change(`clutches/${second.id}`, { dams: [{ individualId: dam.id }, { individualId: null }] });
    expect((await clutch(first.id)).warnings).toEqual([]);
  });

  it('looks at an animal’s dates, its sex, its measures and its parents’ line', async () => {
    const { sire, dam, speciesId } = await trio(make);
    const line = await make.line({ speciesId, name: 'Rio Claro' });
    const elsewhere = await make.line({ speciesId, name: 'Santa Rosa' });
    await change(`individuals/${dam.id}`, { lineId: elsewhere.id });
    const made = await make.clutchOf(sire.id, dam.id, { laid: '2021-04-12' });
    const young = await make.individual({
      speciesId,
      lineId: line.id,
      clutchId: made.id,
      hatched: '2021-04-14',
      outOfWater: '2021-05-01',
      sex: 'male',
      sexBasis: 'looks',
      sexedOn: '2021-08-01',
    });
    await make.observation({ individualId: young.id, kind: 'measurement', svlMm: 60, observedOn: '2023' });
    expect((await animal(young.id)).warnings.map((warning) => warning.code)).toEqual([
      'hatching-interval',
      'water-interval',
      'sexed-early',
      'size',
      'cross',
    ]);
  });

  it('tells of candidate pairs whose animals turned out to be of one sex', async () => {
    const [a, b, c] = await make.individuals({}, {}, {});
    const made = await make.clutch({
      pairs: [
        { a: a?.id, b: b?.id },
        { a: a?.id, b: c?.id },
      ],
    });
    await change(`individuals/${a?.id}`, { sex: 'male' });
    await change(`individuals/${c?.id}`, { sex: 'male' });
    expect((await clutch(made.id)).warnings).toMatchObject([
      {
        code: 'pair-of-one-sex',
        detail: `The possible parents ${a?.number} and ${c?.number} are both recorded as male.`,
      },
    ]);
  });

  it('is silent without a species profile', async () => {
    const { id: speciesId } = await make.species();
    expect((await make.individual({ speciesId, hatched: '1950' })).warnings).toEqual([]);
    await change(`species/${speciesId}`, { ranges: mediumPoisonFrog });
    const page = await api.http.get(`/api/v1/individuals?species=${speciesId}`);
    const [found] = (page.body as { items: { id: string }[] }).items;
    expect((await animal(found?.id ?? '')).warnings).toMatchObject([{ code: 'beyond-lifespan' }]);
  });
});

describe('a warning is accepted with a reason', () => {
  const path = (id: string, code = 'young-dam') => `/api/v1/clutches/${id}/warnings/${code}/confirmation`;

  it('which stays with it, who and when, until it is taken back', async () => {
    const { made } = await youngMother();
    const answer = await api.http.post(path(made.id)).send({ reason: ' seen laying ' }).expect(201);
    expect(answer.body).toMatchObject({
      code: 'young-dam',
      confirmed: { reason: 'seen laying', keeper: 'Keeper', at: expect.stringMatching(/^\d{4}-.*Z$/) as string },
    });
    await api.http.post(path(made.id)).send({ reason: 'seen twice' }).expect(201);
    expect((await clutch(made.id)).warnings).toMatchObject([{ confirmed: { reason: 'seen twice' } }]);
    await api.http.delete(path(made.id)).expect(204);
    expect((await clutch(made.id)).warnings).toMatchObject([{ confirmed: null }]);
    await api.http.delete(path(made.id)).expect(404);
  });

  it('and stands again once its figures change', async () => {
    const { made, damId } = await youngMother();
    await api.http.post(path(made.id)).send({ reason: 'seen laying' }).expect(201);
    await change(`individuals/${damId}`, { hatched: '2020-12-10' });
    expect((await clutch(made.id)).warnings).toMatchObject([{ code: 'young-dam', confirmed: null }]);
    await change(`individuals/${damId}`, { hatched: '2020-11-10' });
    expect((await clutch(made.id)).warnings).toMatchObject([{ confirmed: { reason: 'seen laying' } }]);
  });

  it('for an animal too', async () => {
    const { id: speciesId } = await make.species({ ranges: mediumPoisonFrog });
    const old = await make.individual({ speciesId, hatched: '1994~' });
    const confirmation = `/api/v1/individuals/${old.id}/warnings/beyond-lifespan/confirmation`;
    await api.http.post(confirmation).send({ reason: 'it sits before me' }).expect(201);
    expect((await animal(old.id)).warnings).toMatchObject([{ confirmed: { reason: 'it sits before me' } }]);
    await api.http.delete(confirmation).expect(204);
  });

  it('and only where there is one, with a reason that can be read', async () => {
    const { made } = await youngMother();
    for (const id of [made.id, 'seventeen', '00000000-0000-7000-8000-000000000000'])
      await api.http.post(path(id, 'old-dam')).send({ reason: 'why not' }).expect(404);
    await api.http.delete(path('seventeen')).expect(404);
    await api.http.post(path(made.id, '%00')).send({ reason: 'why not' }).expect(404);
    await api.http.delete(path(made.id, '%00')).expect(404);
    for (const reason of [undefined, null, '', 7, 'x'.repeat(501), 'a\0b'])
      await api.http.post(path(made.id)).send({ reason }).expect(422);
  });
});
