import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LineOverTimeView } from '../../../api/lineage/over-time/line-over-time.view.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import type { PedigreeView } from '../../../api/lineage/pedigree.view.ts';
import { standings } from '../../../shared/vocabulary.ts';
import { bodyOf, type ProblemBody } from '../../support/answer.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { writeSketch, type RegisterSketch, type SketchIds } from '../../support/register-sketch.ts';

const certain = (individual: number) => [{ individual, probability: 1 }];

/** Two founders, a son that will be kept private, a brought-in female of another line, and their young; one clutch of an unsexed group. */
const sketch: RegisterSketch = {
  lines: [{ name: 'Quebrada Seca' }, { name: 'Other line' }],
  sources: [{ label: 'Quebrada Seca', kind: 'wild-collection', date: '1998-03-02' }],
  clutches: [
    { sires: certain(0), dams: certain(1), laid: '2001-05-01' },
    {
      sires: [
        { individual: 2, probability: 0.75 },
        { individual: -1, probability: 0.25 },
      ],
      dams: certain(4),
      laid: '2004-06-01',
    },
    {
      pairs: [
        { a: 3, b: 5, probability: 0.6 },
        { a: 3, b: 2, probability: 0.4 },
      ],
      laid: '2007-07-01',
    },
    { sires: certain(0), dams: certain(1), laid: '2000-04-01' },
  ],
  individuals: [
    { code: 'sire', source: 0, sex: 'male', line: 0, status: 'died' },
    { code: 'dam', source: 0, sex: 'female', line: 0, status: 'died' },
    { code: 'hidden', clutch: 0, sex: 'male', line: 0 },
    { code: 'sister', clutch: 0, sex: 'female', line: 0 },
    { code: 'brought in', clutch: 3, sex: 'female', line: 1 },
    { code: 'child', clutch: 1, line: 0 },
    { code: 'grandchild', clutch: 2, line: 0 },
  ],
};
const codes = sketch.individuals.map(({ code }) => code ?? '');

describe('a line over time', () => {
  let api: TestApi;
  let ids: SketchIds;
  let other: TestKeeper;
  const idOf = (code: string): string => ids.individuals[codes.indexOf(code)] ?? '';
  const lineOf = async (http = api.http, query = ''): Promise<LineOverTimeView> =>
    bodyOf<LineOverTimeView>(await http.get(`/api/v1/lines/${ids.lines[0]}/over-time${query}`).expect(200));
  /** The names of the parents of the clutch that an animal hatched from. */
  const parentsOf = ({ animals, parents }: LineOverTimeView, id: string): string[] => {
    const clutch = animals.clutch[animals.id.indexOf(id)];
    return parents.clutch.flatMap((one, at) =>
      one === clutch
        ? [`${parents.role[at]} ${animals.code[parents.animal[at] ?? -1] ?? '?'} ${parents.probability[at]}`]
        : [],
    );
  };

  beforeAll(async () => {
    api = await startApi();
    ids = await writeSketch(api.dataSource, sketch);
    other = await api.addKeeper('Somebody else');
    await api.dataSource.query(`update individual set visibility = 'private' where id = $1`, [idOf('hidden')]);
  });
  afterAll(() => api.close());

  it('tells every member with its clutch, its source and its keeper, and parents of other lines after them', async () => {
    const line = await lineOf();
    const { animals } = line;
    expect(line.members).toBe(6);
    expect(animals.code).toEqual(['sire', 'dam', 'hidden', 'sister', 'child', 'grandchild', 'brought in']);
    expect(animals.id).toEqual(animals.code.map((code) => idOf(code ?? '')));
    expect(animals.clutch.map((clutch) => line.clutches.laid[clutch] ?? null)).toEqual([
      ...[null, null, '2001-05-01', '2001-05-01', '2004-06-01', '2007-07-01'],
      null,
    ]);
    expect(animals.source.map((source) => line.sources[source]?.title ?? null)).toEqual([
      ...['Wild collection, 1998-03-02', 'Wild collection, 1998-03-02'],
      ...[null, null, null, null, null],
    ]);
    expect(line.sources[0]).toMatchObject({ date: '1998-03-02', earliest: '1998-03-02', latest: '1998-03-02' });
    expect(new Set(animals.keeper.map((keeper) => line.keepers[keeper]?.name))).toEqual(new Set(['Keeper']));
    expect(animals.line.map((of) => line.lines[of] ?? 'this one')).toEqual([
      ...['this one', 'this one', 'this one', 'this one', 'this one', 'this one'],
      'Other line',
    ]);
    expect(parentsOf(line, idOf('child'))).toEqual(['sire hidden 0.75', 'dam brought in 1']);
    expect(parentsOf(line, idOf('grandchild')).sort()).toEqual([
      ...['either child 0.6', 'either hidden 0.4', 'either sister 1'],
    ]);
    expect(line.clutches.unknownSire[animals.clutch[4] ?? -1]).toBe(0.25);
  });

  it('has the inbreeding and the standing that each animal tells by itself', async () => {
    const { animals, clutches } = await lineOf();
    for (const [at, id] of animals.id.entries()) {
      const own = bodyOf<LineageView>(await api.http.get(`/api/v1/individuals/${id}/lineage`).expect(200));
      expect(animals.inbreeding[at]).toBeCloseTo(own.inbreeding.expected, 6);
      const clutch = animals.clutch[at] ?? -1;
      if (clutch < 0) continue;
      expect(clutches.inbreedingLeast[clutch]).toBeCloseTo(own.inbreeding.least, 6);
      expect(clutches.inbreedingGreatest[clutch]).toBeCloseTo(own.inbreeding.greatest, 6);
      const chart = bodyOf<PedigreeView>(await api.http.get(`/api/v1/individuals/${id}/pedigree`).expect(200));
      const node = chart.nodes.find((one) => one.id === id);
      if (node?.kind !== 'individual') throw new Error('the animal is not in its own chart');
      for (const standing of standings)
        expect(clutches.standings[standing][clutch]).toBeCloseTo(
          node.standings.find((one) => one.standing === standing)?.share ?? 0,
          6,
        );
    }
    expect(animals.standing.slice(0, 3)).toEqual(['stated', 'stated', null]);
    expect(animals.inbreeding.at(5)).toBeGreaterThan(0);
  });

  it('keeps the place of a private animal, so that descent is whole, and tells nothing else of it', async () => {
    const line = await lineOf(other.http);
    const { animals } = line;
    const at = animals.id.indexOf('private-1');
    expect(line.members).toBe(5);
    expect(at).toBeGreaterThanOrEqual(line.members);
    const told = [animals.number, animals.code, animals.hatched, animals.inbreeding, animals.standing];
    expect(told.map((column) => column[at])).toEqual([null, null, null, null, null]);
    expect([animals.sex[at], animals.status[at], animals.keeper[at], animals.line[at]]).toEqual([
      ...['unsexed', 'unknown', -1, -1],
    ]);
    // the same clutch as the sister's
    expect(animals.clutch[at]).toBe(animals.clutch[animals.id.indexOf(idOf('sister'))]);
    expect(JSON.stringify(line)).not.toContain(idOf('hidden'));
  });

  it('can be told for some years only, with the parents of those', async () => {
    const { animals, members } = await lineOf(api.http, '?hatchedFrom=2007&hatchedTo=2008');
    expect(members).toBe(0);
    expect(animals.id).toEqual([]);
    await api.dataSource.query(
      `update individual set hatched = '2007-08', hatched_earliest = '2007-08-01', hatched_latest = '2007-08-31' where id = $1`,
      [idOf('grandchild')],
    );
    const dated = await lineOf(api.http, '?hatchedFrom=2007&hatchedTo=2008');
    expect(dated.members).toBe(1);
    expect(dated.animals.code).toContain('sire');
    expect([dated.animals.earliest[0], dated.animals.latest[0]]).toEqual(['2007-08-01', '2007-08-31']);
  });

  it('refuses a line of more than 20 000 animals, and says how to see it in parts', async () => {
    await api.dataSource.query(
      `insert into individual (id, number, keeper_id, code, species_id, line_id, sex, status, hatched, hatched_earliest, hatched_latest)
       select gen_random_uuid(), 50000 + n, i.keeper_id, 'many ' || n, i.species_id, i.line_id, 'unsexed', 'alive', '2015', '2015-01-01', '2015-12-31'
       from individual i, generate_series(1, 20001) n where i.id = $1`,
      [idOf('sire')],
    );
    const answer = await api.http.get(`/api/v1/lines/${ids.lines[0]}/over-time`).expect(422);
    expect(bodyOf<ProblemBody>(answer)).toMatchObject({
      detail: expect.stringMatching(/20007 animals.*20 000.*shorter time/) as unknown,
      errors: [{ pointer: '/hatchedFrom' }, { pointer: '/hatchedTo' }],
    });
    await lineOf(api.http, '?hatchedTo=2014');
    const wrong = await api.http.get(`/api/v1/lines/${ids.lines[0]}/over-time?hatchedFrom=soon`).expect(422);
    expect(bodyOf<ProblemBody>(wrong).errors[0]?.pointer).toBe('/hatchedFrom');
    await api.http.get('/api/v1/lines/00000000-0000-4000-8000-000000000000/over-time').expect(404);
  });

  it('comes compressed to whoever takes it', async () => {
    const address = `/api/v1/lines/${ids.lines[0]}/over-time?hatchedFrom=2015&hatchedTo=2015`;
    await api.dataSource.query(`delete from individual where number > 54999`);
    const packed = await api.http.get(address).set('Accept-Encoding', 'gzip').expect(200);
    expect(packed.headers).toMatchObject({ 'content-encoding': 'gzip' });
    expect(packed.headers['vary']).toMatch(/\bAccept-Encoding\b/);
    expect(packed.headers['content-type']).toMatch(/^application\/json/);
    const plain = await api.http.get(address).set('Accept-Encoding', 'identity').expect(200);
    expect(plain.headers).not.toHaveProperty('content-encoding');
    expect(packed.body).toEqual(plain.body);
    expect((plain.body as LineOverTimeView).members).toBe(4999);
    expect(Number(packed.headers['content-length'])).toBeLessThan(Number(plain.headers['content-length']) / 3);
  });
});
