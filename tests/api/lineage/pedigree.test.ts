import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type {
  ClutchNodeView,
  IndividualNodeView,
  PedigreeView,
  SourceNodeView,
} from '../../../api/lineage/pedigree.view.ts';
import { anyText, bodyOf, type ProblemBody } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { writeSketch, type RegisterSketch, type SketchIds } from '../../support/register-sketch.ts';

const certain = (individual: number) => [{ individual, probability: 1 }];

/** Two wild founders, full siblings out of them, their young, and a group that could not be sexed. */
const sketch: RegisterSketch = {
  lines: [{ name: 'Quebrada Honda' }],
  sources: [{ label: 'Quebrada Honda', kind: 'wild-collection', date: '1998-03-02', baseKinship: 0.1 }],
  clutches: [
    { sires: certain(0), dams: certain(1), laid: '2001-05-01' },
    {
      sires: [
        { individual: 2, probability: 0.75 },
        { individual: -1, probability: 0.25 },
      ],
      dams: certain(3),
      laid: '2004-06-01',
    },
    {
      pairs: [
        { a: 4, b: 5, probability: 0.6 },
        { a: 4, b: 2, probability: 0.4 },
      ],
      laid: '2007-07-01',
    },
  ],
  individuals: [
    { code: 'sire', source: 0, sex: 'male', line: 0, status: 'died' },
    { code: 'dam', source: 0, sex: 'female', line: 0, status: 'died' },
    { code: 'brother', clutch: 0, sex: 'unsexed', line: 0 },
    { code: 'sister', clutch: 0, sex: 'female', line: 0 },
    { code: 'child', clutch: 1, line: 0 },
    { code: 'stranger' },
    { code: 'grandchild', clutch: 2, line: 0 },
  ],
};
const codes = sketch.individuals.map(({ code }) => code ?? '');

describe('the ancestor chart', () => {
  let api: TestApi;
  let ids: SketchIds;
  const idOf = (code: string): string => ids.individuals[codes.indexOf(code)] ?? '';
  const chartOf = async (code: string, query = ''): Promise<PedigreeView> =>
    (await api.http.get(`/api/v1/individuals/${idOf(code)}/pedigree${query}`).expect(200)).body as PedigreeView;
  const individual = (chart: PedigreeView, code: string): IndividualNodeView => {
    const node = chart.nodes.find(({ id }) => id === idOf(code));
    if (node?.kind !== 'individual') throw new Error(`${code} is not in the chart`);
    return node;
  };

  beforeAll(async () => {
    api = await startApi();
    ids = await writeSketch(api.dataSource, sketch);
  });
  afterAll(() => api.close());

  it('holds every ancestor, clutch and source once, in the order of their ids', async () => {
    const chart = await chartOf('grandchild');
    const all = chart.nodes.map(({ id }) => id);
    expect(all).toEqual([...ids.individuals, ...ids.clutches, ...ids.sources].sort());
    expect(chart).toMatchObject({ root: idOf('grandchild'), truncated: false, nodeLimit: 5000 });
  });

  it('joins parents to clutches with their odds, clutches to young, sources to founders', async () => {
    const { edges } = await chartOf('grandchild');
    const name = (id: string): string =>
      codes[ids.individuals.indexOf(id)] ??
      (ids.clutches.includes(id) ? `clutch ${ids.clutches.indexOf(id)}` : 'source');
    const told = edges.map(({ from, to, kind, role, probability }) => [name(from), name(to), kind, role, probability]);
    expect(told.sort()).toEqual(
      [
        ['source', 'sire', 'founder', undefined, undefined],
        ['source', 'dam', 'founder', undefined, undefined],
        ['sire', 'clutch 0', 'parent', 'sire', 1],
        ['dam', 'clutch 0', 'parent', 'dam', 1],
        ['clutch 0', 'brother', 'young', undefined, undefined],
        ['clutch 0', 'sister', 'young', undefined, undefined],
        ['brother', 'clutch 1', 'parent', 'sire', 0.75],
        ['sister', 'clutch 1', 'parent', 'dam', 1],
        ['clutch 1', 'child', 'young', undefined, undefined],
        ['child', 'clutch 2', 'parent', 'either', 1],
        ['stranger', 'clutch 2', 'parent', 'either', 0.6],
        ['brother', 'clutch 2', 'parent', 'either', 0.4],
        ['clutch 2', 'grandchild', 'young', undefined, undefined],
      ].sort(),
    );
  });

  it('describes an animal, its dates, its standing and its inbreeding', async () => {
    await api.dataSource.query(
      `update individual set hatched = '2004-06~', hatched_earliest = '2004-06-01', hatched_latest = '2004-06-30' where id = $1`,
      [idOf('child')],
    );
    const chart = await chartOf('grandchild');
    // the brother with his sister: F = ¼(φ(s,s)+φ(d,d)+2φ(s,d)) = ¼(0.55+0.55+0.2) with θ = 0.1; odds ¾, else a stranger
    expect(individual(chart, 'child')).toMatchObject({
      code: 'child',
      sex: 'unsexed',
      status: 'alive',
      line: 'Quebrada Honda',
      species: 'Epipedobates anthonyi',
      hatched: '2004-06~',
      earliest: '2004-06-01',
      latest: '2004-06-30',
      unknownOrigin: false,
      hasMoreAncestors: false,
      withdrawn: false,
    });
    expect(individual(chart, 'child').inbreeding).toBeCloseTo(0.75 * 0.325, 14);
    expect(individual(chart, 'child').standings).toEqual([
      { standing: 'stated', share: 0.875 },
      { standing: 'unknown', share: 0.125 },
    ]);
    expect(individual(chart, 'stranger')).toMatchObject({
      unknownOrigin: true,
      inbreeding: null,
      standings: [{ standing: 'unknown', share: 1 }],
    });
  });

  it('leaves a date open where it is open', async () => {
    await api.dataSource.query(
      `update individual set hatched = '../2000', hatched_earliest = '-infinity', hatched_latest = '2000-12-31' where id = $1`,
      [idOf('sire')],
    );
    expect(individual(await chartOf('sire'), 'sire')).toMatchObject({
      hatched: '../2000',
      earliest: null,
      latest: '2000-12-31',
    });
  });

  it('describes clutches, with joint pairs and with parents that nobody knows', async () => {
    const { nodes } = await chartOf('grandchild');
    const clutch = (place: number): ClutchNodeView =>
      nodes.find(({ id }) => id === ids.clutches[place]) as ClutchNodeView;
    expect(clutch(1)).toMatchObject({
      title: 'clutch of 2004-06-01',
      laid: '2004-06-01',
      earliest: '2004-06-01',
      pairs: null,
      unknownDam: 0,
    });
    expect(clutch(1).unknownSire).toBeCloseTo(0.25, 14);
    const pairs = clutch(2).pairs?.map(({ a, b, probability }) => [[a, b].sort(), probability]);
    expect(pairs).toEqual([
      [[idOf('child'), idOf('stranger')].sort(), 0.6],
      [[idOf('child'), idOf('brother')].sort(), 0.4],
    ]);
  });

  it('describes sources', async () => {
    const { nodes } = await chartOf('grandchild');
    expect(nodes.find(({ kind }) => kind === 'source') as SourceNodeView).toEqual({
      kind: 'source',
      id: ids.sources[0],
      isPrivate: false,
      title: 'Wild collection, 1998-03-02',
      sourceKind: 'wild-collection',
      label: 'Quebrada Honda',
      date: '1998-03-02',
      earliest: '1998-03-02',
      latest: '1998-03-02',
      standing: 'stated',
      baseKinship: 0.1,
    });
  });

  it('goes back no further than asked, and says where more is recorded', async () => {
    const one = await chartOf('grandchild', '?generations=1');
    expect(one.nodes).toHaveLength(5);
    expect(['child', 'brother', 'stranger'].map((code) => individual(one, code).hasMoreAncestors)).toEqual([
      true,
      true,
      false,
    ]);
    const two = await chartOf('grandchild', '?generations=2');
    // the brother's parents are two generations back through the one clutch, though four through the other
    expect(individual(two, 'sister').hasMoreAncestors).toBe(false);
    expect(two.nodes).toHaveLength(all);
  });
  const all = sketch.individuals.length + sketch.clutches.length + 1;

  it('is the same however often it is asked', async () => {
    expect(await chartOf('grandchild', '?generations=12')).toEqual(await chartOf('grandchild', '?generations=12'));
  });

  it('ends early rather than grow beyond what can be drawn', async () => {
    const count = 2600;
    const crowd = await writeSketch(api.dataSource, {
      individuals: [...Array.from({ length: count }, () => ({})), { clutch: 0 }],
      clutches: [
        { sires: Array.from({ length: count }, (_, individual) => ({ individual, probability: 1 / count })), dams: [] },
      ],
    });
    const chart = (await api.http.get(`/api/v1/individuals/${crowd.individuals[count]}/pedigree`).expect(200))
      .body as PedigreeView;
    expect(chart.truncated).toBe(true);
    expect(chart.nodes.map((node) => node.kind === 'individual' && node.hasMoreAncestors)).toEqual([true]);
  });

  it.each(['0', '13', '2.5', 'many', '', '1e1', '-1'])(
    'refuses %s generations, naming the field',
    async (generations) => {
      const answer = await api.http
        .get(`/api/v1/individuals/${idOf('child')}/pedigree?generations=${generations}`)
        .expect(422);
      expect(bodyOf<ProblemBody>(answer).errors).toEqual([{ pointer: '/generations', detail: anyText }]);
    },
  );

  it('refuses what it does not know', async () => {
    const answer = await api.http.get(`/api/v1/individuals/${idOf('child')}/pedigree?depth=3`).expect(422);
    expect(bodyOf<ProblemBody>(answer).errors[0]?.pointer).toBe('/depth');
  });

  it('answers 404 to an animal that does not exist', async () => {
    const answer = await api.http.get('/api/v1/individuals/nobody/pedigree').expect(404);
    expect(answer.headers['content-type']).toContain('application/problem+json');
  });
});
