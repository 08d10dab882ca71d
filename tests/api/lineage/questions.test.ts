import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FiguresView } from '../../../api/lineage/figures.view.ts';
import type { ForecastView } from '../../../api/lineage/forecast.view.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import type { KinshipView } from '../../../api/lineage/kinship.view.ts';
import { mostInGrid } from '../../../shared/most-in-grid.ts';
import { bodyOf, having, textWith, type ProblemBody } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { writeSketch, type RegisterSketch, type SketchIds } from '../../support/register-sketch.ts';

const sure = (inbreeding: number) => ({ expected: inbreeding, least: inbreeding, greatest: inbreeding });
const certain = (individual: number) => [{ individual, probability: 1 }];

/** Two founders of one line with a son and a daughter, an unsexed stranger, and a female of another line. */
const sketch: RegisterSketch = {
  lines: [{ name: 'Quebrada Honda' }, { name: 'Río Verde' }],
  sources: [{ label: 'Quebrada Honda' }, { label: 'Río Verde' }],
  clutches: [
    { sires: certain(0), dams: certain(1) },
    {
      sires: [
        { individual: 0, probability: 0.5 },
        { individual: 2, probability: 0.5 },
      ],
      dams: certain(1),
    },
  ],
  individuals: [
    { code: 'father', source: 0, sex: 'male', line: 0 },
    { code: 'mother', source: 0, sex: 'female', line: 0 },
    { code: 'son', clutch: 0, sex: 'male', line: 0 },
    { code: 'daughter', clutch: 0, sex: 'female', line: 0 },
    { code: 'stranger', sex: 'unsexed', line: 0 },
    { code: 'foreigner', source: 1, sex: 'female', line: 1 },
    { code: 'doubtful', clutch: 1, sex: 'female', line: 0 },
  ],
};
const codes = sketch.individuals.map(({ code }) => code ?? '');

let api: TestApi;
let ids: SketchIds;
const idOf = (code: string): string => ids.individuals[codes.indexOf(code)] ?? '';
const numberOf = async (code: string): Promise<string> => {
  const answer = await api.http.post('/api/v1/lineage/kinship').send({ individuals: [idOf(code)] });
  return bodyOf<KinshipView>(answer).individuals[0]?.number ?? '';
};
const forecast = async (sires: unknown[], dams: unknown[]): Promise<ForecastView> =>
  (await api.http.post('/api/v1/lineage/forecast').send({ sires, dams }).expect(200)).body as ForecastView;

beforeAll(async () => {
  api = await startApi();
  ids = await writeSketch(api.dataSource, sketch);
});
afterAll(() => api.close());

describe('kinship of some animals', () => {
  it('is a full symmetric matrix in the order in which they were named', async () => {
    // parent and young ¼, full siblings ¼, an animal with itself ½ (Wright 1922; Malécot 1948)
    const answer = await api.http
      .post('/api/v1/lineage/kinship')
      .send({ individuals: [idOf('son'), await numberOf('father'), idOf('daughter'), idOf('stranger')] })
      .expect(200);
    expect(bodyOf<KinshipView>(answer).kinship).toEqual([
      [0.5, 0.25, 0.25, 0],
      [0.25, 0.5, 0.25, 0],
      [0.25, 0.25, 0.5, 0],
      [0, 0, 0, 0.5],
    ]);
    expect(bodyOf<KinshipView>(answer).individuals.map(({ code }) => code)).toEqual([
      'son',
      'father',
      'daughter',
      'stranger',
    ]);
    expect(bodyOf<KinshipView>(answer).asOf.revision).toBeGreaterThan(0);
  });

  it('tells what young of each two would be, with what that rests on, where it is asked for', async () => {
    const individuals = ['son', 'daughter', 'stranger', 'father', 'doubtful'].map(idOf);
    const answer = await api.http.post('/api/v1/lineage/kinship').send({ individuals, young: true }).expect(200);
    const { young } = bodyOf<KinshipView>(answer);
    const [son, daughter, stranger, father, doubtful] = [0, 1, 2, 3, 4];
    const of = (one: number, other: number) => young?.[one]?.[other];
    // reckoned by hand: young of full siblings 1/4; of a male with his young by a founder 1/4, with his young's young 1/8, at even odds
    const known = { nothingKnown: false };
    expect(of(son, daughter)).toEqual({ ...known, ...sure(0.25), depth: 2, fullDepth: 2 });
    expect(of(son, stranger)).toEqual({ nothingKnown: true, ...sure(0), depth: 2, fullDepth: 1 });
    const range = { expected: 0.1875, least: 0.125, greatest: 0.25 };
    expect(of(father, doubtful)).toEqual({ ...known, ...range, depth: 3, fullDepth: 1 });
    individuals.forEach((_, one) => {
      expect(of(one, one)).toBeNull();
      individuals.forEach((__, other) => expect(of(other, one)).toEqual(of(one, other)));
    });
    const unasked = await api.http.post('/api/v1/lineage/kinship').send({ individuals }).expect(200);
    expect(bodyOf<KinshipView>(unasked).young).toBeNull();
  });

  it('tells no young of more animals than a grid holds', async () => {
    const individuals = Array.from({ length: mostInGrid + 1 }, (_, at) => `EA-${at}`);
    const answer = await api.http.post('/api/v1/lineage/kinship').send({ individuals, young: true }).expect(422);
    expect(bodyOf<ProblemBody>(answer).errors).toEqual([
      { pointer: '/individuals', detail: textWith(`at most ${mostInGrid} animals`) },
    ]);
  });

  it('names unknown animals and animals named twice, each with its place', async () => {
    const individuals = [idOf('son'), 'EA-99', await numberOf('son'), idOf('father').toUpperCase(), idOf('father')];
    const answer = await api.http.post('/api/v1/lineage/kinship').send({ individuals }).expect(422);
    expect(bodyOf<ProblemBody>(answer).errors).toEqual([
      { pointer: '/individuals/1', detail: textWith('EA-99') },
      { pointer: '/individuals/2', detail: textWith('/individuals/0') },
      { pointer: '/individuals/4', detail: textWith('/individuals/3') },
    ]);
  });

  it('takes 500 animals and no more', async () => {
    const crowd = await writeSketch(api.dataSource, {
      individuals: Array.from({ length: 501 }, () => ({})),
      clutches: [],
    });
    const answer = await api.http
      .post('/api/v1/lineage/kinship')
      .send({ individuals: crowd.individuals.slice(0, 500) })
      .expect(200);
    expect(bodyOf<KinshipView>(answer).kinship).toHaveLength(500);
    const refused = await api.http.post('/api/v1/lineage/kinship').send({ individuals: crowd.individuals }).expect(422);
    expect(bodyOf<ProblemBody>(refused).errors[0]).toEqual({ pointer: '/individuals', detail: textWith('500') });
  });
});

describe('the forecast for a pairing not yet made', () => {
  it('gives brother and sister young of F = 1/4', async () => {
    // Wright (1922); regular-systems.json, full sibs, first generation
    const { inbreeding, label } = await forecast([idOf('son')], [await numberOf('daughter')]);
    expect(inbreeding).toMatchObject({ expected: 0.25, least: 0.25, greatest: 0.25 });
    expect(inbreeding.pairs).toEqual([
      {
        a: having({ code: 'son' }),
        b: having({ code: 'daughter' }),
        probability: 1,
        kinship: 0.25,
      },
    ]);
    expect(label).toMatchObject({
      names: ['Quebrada Honda'],
      shares: [{ standing: 'stated', share: 1 }],
      otherLabels: [],
      tracedShare: { expected: 0, least: 0 },
    });
  });

  it('weighs candidates on each side and tells the range over all pairs', async () => {
    // father 3 : stranger 1, with the daughter: φ = ¼ and 0, so F = ¾·¼
    const { inbreeding, flags } = await forecast(
      [{ individual: idOf('father'), weight: 3 }, idOf('stranger')],
      [idOf('daughter')],
    );
    expect(inbreeding).toMatchObject({ least: 0, greatest: 0.25 });
    expect(inbreeding.expected).toBeCloseTo(0.1875, 15);
    expect(inbreeding.pairs.map(({ a, probability }) => [a?.code, probability])).toEqual([
      ['father', 0.75],
      ['stranger', 0.25],
    ]);
    expect(flags.map(({ code }) => code).sort()).toEqual(['label-beyond-evidence', 'origin-gap', 'parents-uncertain']);
    const gap = flags.find(({ code }) => code === 'origin-gap');
    expect(gap?.records.map(({ id }) => id)).toEqual([idOf('stranger')]);
    expect(gap?.detail).toContain('12.5 %');
  });

  it('is what the lineage says once the clutch is laid', async () => {
    const planned = await forecast([idOf('father'), idOf('son')], [idOf('doubtful')]);
    const laid = await writeYoung();
    const lineage = (await api.http.get(`/api/v1/individuals/${laid}/lineage`).expect(200)).body as LineageView;
    expect(lineage.inbreeding.expected).toBeCloseTo(planned.inbreeding.expected, 14);
    expect([lineage.inbreeding.least, lineage.inbreeding.greatest]).toEqual([
      planned.inbreeding.least,
      planned.inbreeding.greatest,
    ]);
    expect(lineage.label.shares).toEqual(planned.label.shares);
    expect(lineage.label.flags.map(({ code }) => code)).toEqual(planned.flags.map(({ code }) => code));
  });

  /** A clutch of father or son with the doubtful daughter, and one young of it. */
  async function writeYoung(): Promise<string> {
    const [clutch] = await api.dataSource.query<{ id: string }[]>(
      `insert into clutch (keeper_id, tier) select keeper_id, 10 from individual limit 1 returning id`,
    );
    await api.dataSource.query(
      `insert into clutch_candidate (clutch_id, clutch_tier, role, individual_id, individual_tier, probability)
       select $1, 10, case sex when 'male' then 'sire' else 'dam' end, id, tier, case sex when 'male' then 0.5 else 1 end
       from individual where id = any($2)`,
      [clutch?.id, [idOf('father'), idOf('son'), idOf('doubtful')]],
    );
    const [young] = await api.dataSource.query<{ id: string }[]>(
      `insert into individual (keeper_id, species_id, line_id, clutch_id, clutch_tier, tier)
       select keeper_id, species_id, line_id, $1, 10, 11 from individual where id = $2 returning id`,
      [clutch?.id, idOf('father')],
    );
    return young?.id ?? '';
  }

  it('warns of a cross, with both lines and the animals that would make it', async () => {
    const { label, flags } = await forecast([idOf('son')], [idOf('foreigner')]);
    expect(label.names).toEqual(['Quebrada Honda', 'Río Verde']);
    expect(label.otherLabels).toEqual([]);
    expect(flags.map(({ code }) => code)).toEqual(['mixed-labels', 'outside-line']);
    expect(flags[1]?.records.map(({ id }) => id).sort()).toEqual([idOf('son'), idOf('foreigner')].sort());
  });

  it('takes an unsexed animal on either side, a sexed one on its own only', async () => {
    await forecast([idOf('stranger')], [idOf('daughter')]);
    await forecast([idOf('son')], [idOf('stranger')]);
    const answer = await api.http
      .post('/api/v1/lineage/forecast')
      .send({ sires: [idOf('father'), idOf('mother')], dams: [idOf('son')] })
      .expect(422);
    expect(bodyOf<ProblemBody>(answer).errors.map(({ pointer }) => pointer)).toEqual(['/sires/1', '/dams/0']);
  });

  it('refuses an animal on both sides', async () => {
    const answer = await api.http
      .post('/api/v1/lineage/forecast')
      .send({ sires: [idOf('stranger')], dams: [idOf('daughter'), idOf('stranger')] })
      .expect(422);
    expect(bodyOf<ProblemBody>(answer).errors).toEqual([{ pointer: '/dams/1', detail: textWith('/sires/0') }]);
  });

  it.each([
    ['no sire', { sires: [], dams: ['x'] }, '/sires'],
    ['no dams given', { sires: ['x'] }, '/dams'],
    ['a number for an animal', { sires: [7], dams: ['x'] }, '/sires/0'],
    ['null for an animal', { sires: [null], dams: ['x'] }, '/sires/0'],
    ['a list for an animal', { sires: [['x']], dams: ['x'] }, '/sires/0'],
    ['a list of good entries for an animal', { sires: [[{ individual: 'x' }]], dams: ['y'] }, '/sires/0'],
    ['a weight of 0', { sires: [{ individual: 'x', weight: 0 }], dams: ['y'] }, '/sires/0/weight'],
    ['a weight below 0', { sires: [{ individual: 'x', weight: -1 }], dams: ['y'] }, '/sires/0/weight'],
    ['a weight in words', { sires: [{ individual: 'x', weight: 'half' }], dams: ['y'] }, '/sires/0/weight'],
    ['a weight of null', { sires: [{ individual: 'x', weight: null }], dams: ['y'] }, '/sires/0/weight'],
    ['an entry without an animal', { sires: [{ weight: 1 }], dams: ['y'] }, '/sires/0/individual'],
    ['a field that is not there', { sires: [{ individual: 'x', odds: 1 }], dams: ['y'] }, '/sires/0/odds'],
    ['a text for a list', { sires: 'x', dams: ['y'] }, '/sires'],
    ['an object for a list', { sires: { individual: 'x' }, dams: ['y'] }, '/sires'],
    ['too many', { sires: Array.from({ length: 41 }, (_, place) => `x${place}`), dams: ['y'] }, '/sires'],
    ['an animal nobody has', { sires: ['EA-99'], dams: ['EA-98'] }, '/sires/0'],
  ])('refuses %s, naming the place', async (_, body, pointer) => {
    const answer = await api.http.post('/api/v1/lineage/forecast').send(body).expect(422);
    expect(bodyOf<ProblemBody>(answer).errors.map(({ pointer }) => pointer)).toContain(pointer);
  });
});

describe('figures of a list of animals', () => {
  it('are those of the lineage of each, in the order in which they were named', async () => {
    const all = [...ids.individuals].reverse();
    const { items } = (await api.http.post('/api/v1/lineage/figures').send({ individuals: all }).expect(200))
      .body as FiguresView;
    expect(items.map(({ id }) => id)).toEqual(all);
    for (const item of items) {
      const lineage = (await api.http.get(`/api/v1/individuals/${item.id}/lineage`).expect(200)).body as LineageView;
      const { expected, least, greatest, nothingKnown, bothParentsKnown } = lineage.inbreeding;
      // the stored value follows by a job; tests/api/lineage/stored-figures holds it to the computed one
      if (item.meanKinship !== null) expect(item.meanKinship).toBeCloseTo(lineage.meanKinship ?? NaN, 12);
      expect(item).toEqual({
        id: item.id,
        meanKinship: item.meanKinship,
        inbreeding: { expected, least, greatest, nothingKnown, bothParentsKnown },
        depth: lineage.depth,
        standings: lineage.label.shares,
        tracedShare: lineage.label.tracedShare,
        flags: lineage.label.flags.map(({ code }) => code),
        acknowledged: [],
      });
    }
  });

  it('take 200 animals and no more', async () => {
    const answer = await api.http
      .post('/api/v1/lineage/figures')
      .send({ individuals: Array.from({ length: 201 }, (_, place) => `${place}`) })
      .expect(422);
    expect(bodyOf<ProblemBody>(answer).errors[0]).toEqual({ pointer: '/individuals', detail: textWith('200') });
  });
});

describe.each(['kinship', 'forecast', 'figures'])('a malformed question to %s', (question) => {
  const ask = (body: string, type = 'application/json') =>
    api.http.post(`/api/v1/lineage/${question}`).set('Content-Type', type).send(body);

  it.each(['{"individuals":', '{]', 'null', '"text"', '\u0000'])('of broken JSON is answered 400: %j', async (body) => {
    const answer = await ask(body).expect(400);
    expect(answer.body).toMatchObject({ type: '/api/problems/malformed', status: 400 });
  });

  it.each([
    '[]',
    '{}',
    '{"individuals":null,"sires":null,"dams":null}',
    '{"individuals":{},"sires":{},"dams":{}}',
    '{"unknown":1}',
    '',
  ])('of the wrong shape is answered 422: %j', async (body) => {
    const answer = await ask(body).expect(422);
    expect(bodyOf<ProblemBody>(answer).errors.length).toBeGreaterThan(0);
  });

  it('with entries of the wrong kind is answered 422', async () => {
    for (const entry of ['\u0000', '\ud800', 7, true, null, {}, [], ['x'], '', ' ', 'x'.repeat(5000)])
      await api.http
        .post(`/api/v1/lineage/${question}`)
        .send({ individuals: [entry], sires: [entry], dams: [entry] })
        .expect(422);
  });

  it('beyond a megabyte is answered 413', async () => {
    await ask(JSON.stringify({ individuals: ['x'.repeat(1_100_000)] })).expect(413);
  });
});
