import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import { parseRegistryNumber } from '../../../shared/registry-number.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory, mediumPoisonFrog, trio } from '../../support/factories.ts';

const nowhere = '00000000-0000-7000-8000-000000000000';

let api: TestApi;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
});

afterAll(() => api.close());

const get = async (id: string): Promise<IndividualView> =>
  (await api.http.get(`/api/v1/individuals/${id}`).expect(200)).body as IndividualView;

describe('an animal is entered', () => {
  it('with a registry number whose check character fits, and read back whole', async () => {
    const line = await make.line({ name: 'Quebrada Honda' });
    const source = await make.source({ kind: 'import', date: '1994~', code: 'S-9' });
    const answer = await api.http
      .post('/api/v1/individuals')
      .send({
        code: ' EA-07 ',
        speciesId: line.speciesId,
        lineId: line.id,
        sex: 'female',
        sexBasis: 'eggs',
        sexedOn: '1996',
        sourceId: source.id,
        hatched: '199X',
        notes: 'came thin',
      })
      .expect(201);
    const animal = answer.body as IndividualView;
    expect(answer.headers['etag']).toBe('"1"');
    expect(parseRegistryNumber(animal.number)).toBeGreaterThan(1000);
    expect(animal).toMatchObject({
      version: 1,
      withdrawn: null,
      code: 'EA-07',
      species: line.species,
      line: 'Quebrada Honda',
      labelKind: 'locality',
      sex: 'female',
      sexBasis: 'eggs',
      sexedOn: '1996',
      status: 'alive',
      hatched: '199X',
      outOfWater: null,
      died: null,
      keeper: 'Keeper',
      source: { id: source.id, code: 'S-9', title: 'Import, about 1994' },
      clutch: null,
      proven: false,
      warnings: [],
      pairings: [],
      young: [],
      observations: [],
    });
    expect(await get(animal.id)).toEqual(animal);
  });

  it('as dead where a date of death is given', async () => {
    expect(await make.individual({ died: '2023-10' })).toMatchObject({ status: 'died', died: '2023-10' });
  });

  it('from a clutch, and stands below its parents', async () => {
    const { speciesId, sire, dam } = await trio(make);
    const clutch = await make.clutchOf(sire.id, dam.id, { laid: '2021-04-12', eggs: 7 });
    const young = await make.individual({ speciesId, clutchId: clutch.id, hatched: '2021-04-26' });
    expect(young.clutch).toEqual({
      id: clutch.id,
      code: null,
      title: 'clutch of 2021-04-12',
      laid: '2021-04-12',
      isPrivate: false,
    });
    const parent = await get(dam.id);
    expect(parent.proven).toBe(true);
    expect(parent.young).toMatchObject([
      {
        clutch: { id: clutch.id, role: 'dam', probability: 1, eggs: 7 },
        mates: [{ id: sire.id, probability: 1 }],
        animals: [{ id: young.id, number: young.number, sex: 'unsexed', status: 'alive', hasYoung: false }],
      },
    ]);
    const mate = await make.individual({ speciesId, sex: 'female' });
    await make.clutchOf(young.id, mate.id, { laid: '2023-03-01' });
    expect((await get(sire.id)).young).toMatchObject([{ animals: [{ id: young.id, hasYoung: true }] }]);
  });
});

describe('an animal that cannot be is refused', () => {
  const refusals: [string, (speciesId: string) => Promise<Record<string, unknown>>, number, string, RegExp][] = [
    ['a species that is not there', () => Promise.resolve({ speciesId: nowhere }), 422, '/speciesId', /no species/],
    [
      'a line that is not there',
      (speciesId) => Promise.resolve({ speciesId, lineId: nowhere }),
      422,
      '/lineId',
      /no line/,
    ],
    [
      'a line of another species',
      async (speciesId) => ({ speciesId, lineId: (await make.line()).id }),
      422,
      '/lineId',
      /another species/,
    ],
    [
      'a source that is not there',
      (speciesId) => Promise.resolve({ speciesId, sourceId: nowhere }),
      422,
      '/sourceId',
      /no source/,
    ],
    [
      'a clutch that is not there',
      (speciesId) => Promise.resolve({ speciesId, clutchId: nowhere }),
      422,
      '/clutchId',
      /no clutch/,
    ],
    [
      'a source and a clutch',
      async (speciesId) => ({ speciesId, sourceId: (await make.source()).id, clutchId: (await make.clutch()).id }),
      422,
      '/sourceId',
      /not from both/,
    ],
    [
      'alive with a date of death',
      (speciesId) => Promise.resolve({ speciesId, status: 'alive', died: '2020' }),
      422,
      '/status',
      /date of death/,
    ],
    [
      'out of the water before hatching',
      (speciesId) => Promise.resolve({ speciesId, hatched: '2021-05', outOfWater: '2021-04' }),
      422,
      '/outOfWater',
      /out of order/,
    ],
    [
      'hatched before its clutch was laid',
      async (speciesId) => ({
        speciesId,
        hatched: '2021-04-01',
        clutchId: (await make.clutch({ laid: '2021-04-12' })).id,
      }),
      422,
      '/hatched',
      /before its clutch was laid/,
    ],
  ];

  it.each(refusals)('%s', async (_, body, status, pointer, words) => {
    const { id } = await make.species();
    const answer = await api.http.post('/api/v1/individuals').send(await body(id));
    expect(answer.status).toBe(status);
    expect(answer.body).toMatchObject({ errors: [{ pointer, detail: expect.stringMatching(words) as string }] });
  });

  it('with a code that the keeper has given before, whatever its case, but not once that animal is withdrawn', async () => {
    const first = await make.individual({ code: 'Twice-1' });
    const again = { code: 'TWICE-1', speciesId: first.speciesId };
    const answer = await api.http.post('/api/v1/individuals').send(again).expect(409);
    expect(answer.body).toMatchObject({ type: '/api/problems/conflict', errors: [{ pointer: '/code' }] });
    await api.http
      .post(`/api/v1/individuals/${first.id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'entered twice' })
      .expect(201);
    await api.http.post('/api/v1/individuals').send(again).expect(201);
  });

  it('without a species', async () => {
    const answer = await api.http.post('/api/v1/individuals').send({ code: 'no species' }).expect(422);
    expect(answer.body).toMatchObject({ errors: [{ pointer: '/speciesId' }] });
  });
});

describe('an animal is changed', () => {
  it('field by field, the others staying as they are', async () => {
    const animal = await make.individual({ sex: 'male', hatched: '2019', notes: 'loud' });
    const answer = await api.http
      .patch(`/api/v1/individuals/${animal.id}`)
      .set('If-Match', '"1"')
      .send({ notes: null, hatched: '2019-06~', outOfWater: '2019-09' })
      .expect(200);
    expect(answer.headers['etag']).toBe('"2"');
    expect(answer.body).toMatchObject({
      version: 2,
      sex: 'male',
      notes: null,
      hatched: '2019-06~',
      outOfWater: '2019-09',
      code: animal.code,
    });
  });

  it('to dead by giving the date of its death', async () => {
    const animal = await make.individual();
    const answer = await api.http
      .patch(`/api/v1/individuals/${animal.id}`)
      .set('If-Match', '*')
      .send({ died: '2024-01-03' })
      .expect(200);
    expect(answer.body).toMatchObject({ status: 'died' });
  });

  it('to another species together with its line', async () => {
    const from = await make.line();
    const to = await make.line();
    const animal = await make.individual({ speciesId: from.speciesId, lineId: from.id });
    const patch = (body: object) => api.http.patch(`/api/v1/individuals/${animal.id}`).set('If-Match', '*').send(body);
    await patch({ speciesId: to.speciesId }).expect(422);
    expect((await patch({ speciesId: to.speciesId, lineId: to.id }).expect(200)).body).toMatchObject({ line: to.name });
  });

  it('but not to a sex that does not fit a clutch of its own', async () => {
    const { sire, dam } = await trio(make);
    await make.clutchOf(sire.id, dam.id);
    const answer = await api.http
      .patch(`/api/v1/individuals/${sire.id}`)
      .set('If-Match', '*')
      .send({ sex: 'female' })
      .expect(422);
    expect(answer.body).toMatchObject({ errors: [{ pointer: '/sex' }] });
    await api.http.patch(`/api/v1/individuals/${sire.id}`).set('If-Match', '*').send({ sex: 'unsexed' }).expect(200);
  });

  it('but not to have hatched after a clutch of its own was laid', async () => {
    const { sire, dam } = await trio(make);
    await make.clutchOf(sire.id, dam.id, { laid: '2021-04' });
    const patch = (hatched: string) =>
      api.http.patch(`/api/v1/individuals/${dam.id}`).set('If-Match', '*').send({ hatched });
    expect((await patch('2021-05').expect(422)).body).toMatchObject({ errors: [{ pointer: '/hatched' }] });
    await patch('2021-04').expect(200);
  });

  it('nor without its species, or to what is not there', async () => {
    const animal = await make.individual();
    const patch = (body: object) => api.http.patch(`/api/v1/individuals/${animal.id}`).set('If-Match', '*').send(body);
    expect((await patch({ speciesId: null }).expect(422)).body).toMatchObject({ errors: [{ pointer: '/speciesId' }] });
    expect((await patch({ clutchId: nowhere }).expect(422)).body).toMatchObject({ errors: [{ pointer: '/clutchId' }] });
  });
});

describe('an animal shows', () => {
  it('its stays with the group as the trade writes it, newest first, and its last remarks', async () => {
    const { sire, dam, other } = await trio(make);
    const old = await make.pairing({ members: [{ individualId: dam.id, joined: '2019', left: '2020-02' }] });
    const now = await make.pairing({
      members: [{ individualId: dam.number, joined: '2020-03' }, { individualId: sire.id }, { individualId: other.id }],
    });
    await make.observation({ individualId: dam.id, observedOn: '2020-05-01', text: 'eggs visible' });
    await make.observation({
      individualId: dam.id,
      observedOn: '2020-06-01',
      kind: 'measurement',
      text: null,
      svlMm: 36.5,
    });
    expect(await get(dam.id)).toMatchObject({
      pairings: [
        { id: now.id, notation: '2.1.0', joined: '2020-03', left: null },
        { id: old.id, notation: '0.1.0', joined: '2019', left: '2020-02' },
      ],
      observations: [{ svlMm: 36.5, text: null }, { text: 'eggs visible' }],
    });
  });

  it('its clutches with every possible mate, in a group that cannot be sexed too', async () => {
    const [a, b, c] = await make.individuals({}, {}, {});
    const clutch = await make.clutch({
      laid: '2021',
      pairs: [
        { a: a?.id, b: b?.id, weight: 3 },
        { a: c?.id, b: a?.id },
      ],
    });
    const shown = await get(a?.id ?? '');
    expect(shown.young).toMatchObject([
      {
        clutch: { id: clutch.id, role: 'either' },
        mates: [
          { id: b?.id, probability: 0.75 },
          { id: c?.id, probability: 0.25 },
        ],
      },
    ]);
    expect(shown.young[0]?.clutch.probability).toBeCloseTo(1, 12);
    expect((await get(b?.id ?? '')).young).toMatchObject([{ clutch: { probability: 0.75 }, mates: [{ id: a?.id }] }]);
  });

  it('as proven only once a clutch that is certainly its own has hatched', async () => {
    const { sire, dam, other } = await trio(make);
    const clutch = await make.clutch({
      sires: [{ individualId: sire.id }, { individualId: other.id }],
      dams: [{ individualId: dam.id }],
      eggs: 6,
    });
    expect((await get(dam.id)).proven).toBe(false);
    await api.http.patch(`/api/v1/clutches/${clutch.id}`).set('If-Match', '*').send({ hatched: 2 }).expect(200);
    expect((await get(dam.id)).proven).toBe(true);
    expect((await get(sire.id)).proven).toBe(false);
  });
});

it('an id that is none, or nobody’s, is not found', async () => {
  for (const id of ['17', nowhere, 'x'.repeat(300), '%00']) {
    const answer = await api.http.get(`/api/v1/individuals/${id}`);
    expect(answer.status).toBe(404);
    expect(answer.body).toMatchObject({ type: '/api/problems/not-found' });
  }
});

it('the ranges of the trade are taken as a species profile and shown with units', async () => {
  const species = await make.species({ ranges: mediumPoisonFrog });
  expect(species.ranges.find((range) => range.trait === 'lifespan')).toMatchObject({
    unit: 'years',
    usualMost: 15,
    extremeMost: 20,
  });
});
