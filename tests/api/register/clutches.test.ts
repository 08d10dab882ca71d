import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ClutchView, ParentListsView, ParentPairsView } from '../../../api/register/clutches/clutch.view.ts';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory, trio } from '../../support/factories.ts';

const nowhere = '00000000-0000-7000-8000-000000000000';

let api: TestApi;
let make: Factory;
let sire: IndividualView;
let dam: IndividualView;
let other: IndividualView;
let speciesId: string;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
  ({ sire, dam, other, speciesId } = await trio(make));
});

afterAll(() => api.close());

const get = async (id: string): Promise<ClutchView> =>
  (await api.http.get(`/api/v1/clutches/${id}`).expect(200)).body as ClutchView;
const change = (id: string, body: object) => api.http.patch(`/api/v1/clutches/${id}`).set('If-Match', '*').send(body);

describe('a clutch is entered', () => {
  it('with candidates whose weights become probabilities, and read back whole', async () => {
    const answer = await api.http
      .post('/api/v1/clutches')
      .send({
        code: 'C-1',
        laid: '2021-04-12',
        eggs: 7,
        fertile: 6,
        hatched: 5,
        outOfWater: 3,
        losses: [{ cause: 'mould', count: 2 }],
        site: 'film canister',
        sires: [{ individualId: sire.id, weight: 3, reason: 'seen calling' }, { individualId: other.number }],
        dams: [
          { individualId: dam.id, weight: 7 },
          { individualId: null, weight: 3 },
        ],
      })
      .expect(201);
    const clutch = answer.body as ClutchView;
    expect(answer.headers['etag']).toBe('"1"');
    expect(clutch).toMatchObject({
      title: 'clutch of 2021-04-12',
      eggs: 7,
      losses: [{ cause: 'mould', count: 2 }],
      pairing: null,
      young: [],
      parents: {
        mode: 'lists',
        sires: [
          {
            individual: { id: sire.id, number: sire.number, sex: 'male', status: 'alive' },
            probability: 0.75,
            reason: 'seen calling',
          },
          { individual: { id: other.id }, probability: 0.25, reason: null },
        ],
        dams: [{ individual: { id: dam.id } }, { individual: null }],
      },
    });
    const { dams } = clutch.parents as ParentListsView;
    expect(dams.map((candidate) => candidate.probability)).toEqual([expect.closeTo(0.7, 12), expect.closeTo(0.3, 12)]);
    expect(await get(clutch.id)).toEqual(clutch);
  });

  it('with joint pairs where nobody can be sexed', async () => {
    const [a, b, c] = await make.individuals({ speciesId }, { speciesId }, { speciesId });
    const clutch = await make.clutch({
      pairs: [
        { a: b?.id, b: a?.number },
        { a: b?.id, b: c?.id, weight: 3, reason: 'seen together' },
      ],
    });
    const { mode, pairs } = clutch.parents as ParentPairsView;
    expect(mode).toBe('pairs');
    expect(pairs.map((pair) => pair.probability)).toEqual([0.75, 0.25]);
    expect(new Set([pairs[1]?.a.id, pairs[1]?.b.id])).toEqual(new Set([a?.id, b?.id]));
  });

  it('with nothing known', async () => {
    expect(await make.clutch()).toMatchObject({
      title: 'clutch without a date',
      parents: { mode: 'lists', sires: [], dams: [] },
    });
  });

  it('with weights of any scale, which still sum to 1 for the database', async () => {
    const males = await make.individuals(...Array.from({ length: 30 }, () => ({ speciesId, sex: 'male' })));
    const sires = males.map((male, index) => ({
      individualId: male.id,
      weight: index === 0 ? 1_000_000 : 0.000001 * (index + 1),
    }));
    const clutch = await make.clutch({ sires });
    const sum = (clutch.parents as ParentListsView).sires.reduce(
      (total, candidate) => total + candidate.probability,
      0,
    );
    expect(sum).toBeCloseTo(1, 12);
  });
});

describe('a clutch noted in a pairing takes its parents from the animals housed there when it was laid', () => {
  it('males as sires, females as dams, each as likely', async () => {
    const [late, gone] = await make.individuals({ speciesId, sex: 'male' }, { speciesId, sex: 'female' });
    const pairing = await make.pairing({
      members: [
        { individualId: sire.id, joined: '2020-01' },
        { individualId: other.id, joined: '2020-01', left: '2022-06-15' },
        { individualId: dam.id, joined: '2020-01' },
        { individualId: late?.id, joined: '2022-06-02' },
        { individualId: gone?.id, joined: '2020-01', left: '2022-05-31' },
      ],
    });
    const clutch = await make.clutch({ pairingId: pairing.id, laid: '2022-06-01' });
    const { sires, dams } = clutch.parents as ParentListsView;
    expect(new Set(sires.map((candidate) => candidate.individual?.id))).toEqual(new Set([sire.id, other.id]));
    expect(sires.map((candidate) => candidate.probability)).toEqual([0.5, 0.5]);
    expect(dams).toMatchObject([{ individual: { id: dam.id }, probability: 1 }]);
    expect(clutch.pairing).toEqual({ id: pairing.id, name: pairing.name });
    for (const member of pairing.members)
      await api.http.delete(`/api/v1/pairings/${pairing.id}/members/${member.id}`).set('If-Match', '*').expect(200);
  });

  it('whoever lives there now, where the day is not known', async () => {
    const [male, female, dead] = await make.individuals(
      { sex: 'male' },
      { sex: 'female' },
      { sex: 'male', status: 'died' },
    );
    const pairing = await make.pairing({
      members: [male, female, dead].map((animal) => ({ individualId: animal?.id })),
    });
    const { parents } = await make.clutch({ pairingId: pairing.id });
    expect(parents).toMatchObject({
      sires: [{ individual: { id: male?.id } }],
      dams: [{ individual: { id: female?.id } }],
    });
    expect((parents as ParentListsView).sires).toHaveLength(1);
  });

  it('every couple that is possible, where an adult is not sexed', async () => {
    const [male, female, unsexed] = await make.individuals(
      { speciesId, sex: 'male' },
      { speciesId, sex: 'female' },
      { speciesId, hatched: '2018' },
    );
    const pairing = await make.pairing({
      members: [male, female, unsexed].map((animal) => ({ individualId: animal?.id })),
    });
    const { parents } = await make.clutch({ pairingId: pairing.id, laid: '2022-06-01' });
    const { mode, pairs } = parents as ParentPairsView;
    expect(mode).toBe('pairs');
    expect(pairs.map((pair) => pair.probability)).toEqual([1, 1, 1].map(() => expect.closeTo(1 / 3, 12) as number));
  });

  it('not a froglet that grows up among its parents', async () => {
    const [male, female, froglet] = await make.individuals(
      { speciesId, sex: 'male' },
      { speciesId, sex: 'female' },
      { speciesId, hatched: '2022-03' },
    );
    const pairing = await make.pairing({
      members: [male, female, froglet].map((animal) => ({ individualId: animal?.id })),
    });
    expect((await make.clutch({ pairingId: pairing.id, laid: '2022-06-01' })).parents).toMatchObject({
      mode: 'lists',
      sires: [{ individual: { id: male?.id } }],
      dams: [{ individual: { id: female?.id } }],
    });
  });

  it('nobody, where the keeper says so', async () => {
    const pairing = await make.pairing();
    expect((await make.clutch({ pairingId: pairing.id, sires: [], dams: [] })).parents).toEqual({
      mode: 'lists',
      sires: [],
      dams: [],
    });
  });
});

describe('a clutch that cannot be is refused', () => {
  const refusals: [string, () => Record<string, unknown>, string, RegExp][] = [
    ['a sire that is not there', () => ({ sires: [{ individualId: nowhere }] }), '/sires/0/individualId', /no animal/],
    [
      'a number with a wrong check character',
      () => ({ sires: [{ individualId: '10704-5' }] }),
      '/sires/0/individualId',
      /check character/,
    ],
    [
      'a number that nobody has',
      () => ({ dams: [{ individualId: '999999-4' }] }),
      '/dams/0/individualId',
      /no animal|check character/,
    ],
    [
      'a female as a sire',
      () => ({ sires: [{ individualId: sire.id }, { individualId: dam.id }] }),
      '/sires/1/individualId',
      /recorded as female/,
    ],
    ['a male as a dam', () => ({ dams: [{ individualId: sire.id }] }), '/dams/0/individualId', /recorded as male/],
    [
      'a sire twice',
      () => ({ sires: [{ individualId: sire.id }, { individualId: sire.number }] }),
      '/sires/1/individualId',
      /twice/,
    ],
    [
      'the unknown twice',
      () => ({ sires: [{ individualId: null }, { individualId: null }] }),
      '/sires/1/individualId',
      /twice/,
    ],
    [
      'lists and pairs',
      () => ({ sires: [{ individualId: sire.id }], pairs: [{ a: sire.id, b: dam.id }] }),
      '/pairs',
      /not both/,
    ],
    ['a pair of one', () => ({ pairs: [{ a: sire.id, b: sire.number }] }), '/pairs/0/b', /with itself/],
    [
      'a pair twice',
      () => ({
        pairs: [
          { a: sire.id, b: dam.id },
          { a: dam.id, b: sire.id },
        ],
      }),
      '/pairs/1',
      /twice/,
    ],
    ['a pair of two males', () => ({ pairs: [{ a: sire.id, b: other.id }] }), '/pairs/0', /both recorded as male/],
    ['a weight of nothing', () => ({ sires: [{ individualId: sire.id, weight: 0 }] }), '/sires/0/weight', /at least/],
    [
      'a weight without end',
      () => ({ sires: [{ individualId: sire.id, weight: 1e300 }] }),
      '/sires/0/weight',
      /at most/,
    ],
    ['a weight in words', () => ({ sires: [{ individualId: sire.id, weight: 'much' }] }), '/sires/0/weight', /number/],
    ['a candidate without an animal', () => ({ sires: [{ weight: 1 }] }), '/sires/0/individualId', /text/],
    ['more hatched than laid', () => ({ eggs: 3, hatched: 4 }), '/hatched', /No more can hatch/],
    ['more fertile than laid', () => ({ eggs: 3, fertile: 4 }), '/fertile', /No more eggs/],
    ['more out of the water than hatched', () => ({ hatched: 1, outOfWater: 2 }), '/outOfWater', /No more can leave/],
    [
      'a cause of loss twice',
      () => ({
        losses: [
          { cause: 'mould', count: 1 },
          { cause: 'mould', count: 2 },
        ],
      }),
      '/losses/1/cause',
      /twice/,
    ],
    ['a pairing that is not there', () => ({ pairingId: nowhere }), '/pairingId', /no pairing/],
    [
      'laid before its dam hatched',
      () => ({ laid: '2018-02', dams: [{ individualId: dam.id }] }),
      '/laid',
      /before its dam .* hatched/,
    ],
  ];

  it.each(refusals)('%s', async (_, body, pointer, words) => {
    const answer = await api.http.post('/api/v1/clutches').send(body());
    expect(answer.status).toBe(422);
    expect(answer.body).toMatchObject({ errors: [{ pointer, detail: expect.stringMatching(words) as string }] });
  });

  it('with both sides holding one unsexed animal', async () => {
    const unsexed = await make.individual({ speciesId });
    const body = { sires: [{ individualId: unsexed.id }], dams: [{ individualId: unsexed.id }] };
    const answer = await api.http.post('/api/v1/clutches').send(body).expect(422);
    expect(answer.body).toMatchObject({ errors: [{ pointer: '/dams/0/individualId' }] });
  });

  it('with a parent that was withdrawn', async () => {
    const animal = await make.individual({ speciesId, sex: 'male' });
    await api.http
      .post(`/api/v1/individuals/${animal.id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'entered twice' })
      .expect(201);
    const answer = await api.http
      .post('/api/v1/clutches')
      .send({ sires: [{ individualId: animal.id }] })
      .expect(422);
    expect(answer.text).toContain('withdrawn');
  });

  it('with a code given before', async () => {
    await make.clutch({ code: 'C-twice' });
    const answer = await api.http.post('/api/v1/clutches').send({ code: 'c-TWICE' }).expect(409);
    expect(answer.body).toMatchObject({ errors: [{ pointer: '/code' }] });
  });
});

describe('a clutch is changed', () => {
  it('on one side of its parents, the other staying', async () => {
    const clutch = await make.clutch({
      sires: [{ individualId: sire.id, reason: 'seen calling' }],
      dams: [{ individualId: dam.id }, { individualId: null }],
    });
    const answer = await change(clutch.id, { sires: [{ individualId: other.id }] }).expect(200);
    expect(answer.body).toMatchObject({
      version: 2,
      parents: { sires: [{ individual: { id: other.id } }], dams: [{ probability: 0.5 }, { probability: 0.5 }] },
    });
  });

  it('from lists to pairs, and back to nothing known', async () => {
    const clutch = await make.clutchOf(sire.id, dam.id);
    const pairs = [{ a: sire.id, b: dam.id }];
    expect((await change(clutch.id, { pairs }).expect(200)).body).toMatchObject({
      parents: { mode: 'pairs', pairs: [{ probability: 1 }] },
    });
    expect((await change(clutch.id, { pairs: [] }).expect(200)).body).toMatchObject({
      parents: { mode: 'lists', sires: [], dams: [] },
    });
  });

  it('without touching its parents', async () => {
    const clutch = await make.clutchOf(sire.id, dam.id, { eggs: 5 });
    const answer = await change(clutch.id, { eggs: null, losses: [{ cause: 'eaten', count: 1 }], laid: '2023' }).expect(
      200,
    );
    expect(answer.body).toMatchObject({
      eggs: null,
      laid: '2023',
      losses: [{ cause: 'eaten', count: 1 }],
      parents: clutch.parents,
    });
  });

  it('but not to have been laid after a young of it hatched', async () => {
    const clutch = await make.clutchOf(sire.id, dam.id, { laid: '2021-04-12' });
    await make.offspring(clutch.id, { animals: [{ hatched: '2021-04-25' }] });
    expect((await change(clutch.id, { laid: '2021-05' }).expect(422)).body).toMatchObject({
      errors: [{ pointer: '/laid' }],
    });
  });
});

it('clutches are listed newest first, those without a date last, in pages', async () => {
  const [father, mother] = await make.individuals({ sex: 'male' }, { sex: 'female' });
  const laid = ['2021-04-12', '1994~', null, '2021', '199X', null, '../1993'];
  for (const date of laid) await make.clutchOf(father?.id ?? '', mother?.id ?? '', date === null ? {} : { laid: date });
  const seen: (string | null)[] = [];
  let after = '';
  for (let page = 0; page < 10; page++) {
    const answer = await api.http.get(`/api/v1/clutches?parentId=${father?.id}&limit=2&total=true${after}`).expect(200);
    const body = answer.body as { items: ClutchView[]; next: string | null; total: number };
    expect(body.total).toBe(laid.length);
    seen.push(...body.items.map((item) => item.laid));
    if (body.next === null) break;
    after = `&after=${encodeURIComponent(body.next)}`;
  }
  expect(seen).toEqual(['2021-04-12', '2021', '1994~', '199X', '../1993', null, null]);
});
