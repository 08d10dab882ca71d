import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { LineageSetView } from '../../../api/lineage/lineage-set.view.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import { bodyOf, having, textWith, type ProblemBody } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { writeSketch, type RegisterSketch, type SketchIds } from '../../support/register-sketch.ts';

const certain = (individual: number) => [{ individual, probability: 1 }];

/**
 * Two founders of a source, a brother and a sister of them and two of their young; beside them a lone animal nobody knows
 * anything of, and a line whose founders are kin.
 */
const sketch: RegisterSketch = {
  lines: [{ name: 'Siblings' }, { name: 'Nobody knows' }, { name: 'Kin founders' }],
  sources: [{ label: 'Siblings' }, { label: 'Kin founders', baseKinship: 0.125 }],
  clutches: [
    { sires: certain(0), dams: certain(1) },
    { sires: certain(2), dams: certain(3) },
    { sires: certain(7), dams: certain(8) },
  ],
  individuals: [
    { code: 'grandfather', source: 0, sex: 'male', line: 0, status: 'died' },
    { code: 'grandmother', source: 0, sex: 'female', line: 0, status: 'died' },
    { code: 'brother', clutch: 0, sex: 'male', line: 0 },
    { code: 'sister', clutch: 0, sex: 'female', line: 0 },
    { code: 'elder', clutch: 1, line: 0 },
    { code: 'younger', clutch: 1, line: 0 },
    { code: 'lone', line: 1 },
    { code: 'kin sire', source: 1, sex: 'male', line: 2 },
    { code: 'kin dam', source: 1, sex: 'female', line: 2 },
    { code: 'kin young', clutch: 2, line: 2 },
  ],
};
const codes = sketch.individuals.map(({ code }) => code ?? '');
const hatched = { brother: '2020', sister: '2020-05', elder: '2021-07-01', younger: '2021/2022' };

let api: TestApi;
let ids: SketchIds;
const idOf = (code: string): string => ids.individuals[codes.indexOf(code)] ?? '';
const ofFilters = async (query: object): Promise<LineageSetView> =>
  bodyOf<LineageSetView>(await api.http.get('/api/v1/lineage/set').query(query).expect(200));
const ofPicked = async (...names: string[]): Promise<LineageSetView> =>
  bodyOf<LineageSetView>(
    await api.http
      .post('/api/v1/lineage/set')
      .send({ individuals: names.map(idOf) })
      .expect(200),
  );

beforeAll(async () => {
  api = await startApi();
  ids = await writeSketch(api.dataSource, sketch);
  for (const [code, date] of Object.entries(hatched)) {
    const { etag } = (await api.http.get(`/api/v1/individuals/${idOf(code)}`).expect(200)).headers as { etag: string };
    await api.http
      .patch(`/api/v1/individuals/${idOf(code)}`)
      .set('If-Match', etag)
      .send({ hatched: date })
      .expect(200);
  }
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

describe('the measures of a line', () => {
  it('are those of its animals as a set, withdrawn and other lines left out', async () => {
    // the living: brother and sister (F 0, self ½, with each other ¼) and their young (F ¼, self 5/8)
    const living = await ofFilters({ line: 'Siblings', status: 'alive' });
    expect(living).toMatchObject({ animals: 4, nothingKnown: 0, undated: 1 });
    expect(living.inbreeding).toEqual({ animals: 4, mean: 0.125, least: 0, greatest: 0.25 });
    // (2·½ + 2·¼ + 2·5/8 + 2·3/8 + 8·3/8)/16
    const mean = (1 + 0.5 + 1.25 + 0.75 + 3) / 16;
    expect(living.meanKinship).toBeCloseTo(mean, 12);
    expect(living.geneDiversity).toBeCloseTo(1 - mean, 12);
    expect(living.founderGenomeEquivalents).toBeCloseTo(1 / (2 * mean), 12);
    expect(living.effectiveFounders).toBeCloseTo(2, 12);
    expect(living.effectiveAncestors.effective).toBeCloseTo(2, 12);
    expect(living.effectiveAncestors.items.map(({ ancestor }) => ancestor?.code).sort()).toEqual([
      'grandfather',
      'grandmother',
    ]);
    expect(living.contributions).toEqual({
      items: [{ source: having({ id: ids.sources[0] }), share: 1, standing: 'stated' }],
      standings: [{ standing: 'stated', share: 1 }],
      others: 0,
      othersShare: 0,
    });
    expect(living.depth).toEqual({ mean: 1.5, greatest: 2, full: 1.5, generationEquivalents: 1.5 });
  });

  it('are told by year of hatching, without those that are not dated to a year', async () => {
    const { years, undated } = await ofFilters({ line: 'Siblings' });
    expect(undated).toBe(3);
    expect(years).toEqual([
      {
        year: 2020,
        animals: 2,
        inbreeding: { animals: 2, mean: 0, least: 0, greatest: 0 },
        geneDiversity: 1 - 0.375,
        shares: [1],
      },
      {
        year: 2021,
        animals: 1,
        inbreeding: { animals: 1, mean: 0.25, least: 0.25, greatest: 0.25 },
        geneDiversity: 1 - 0.625,
        shares: [1],
      },
    ]);
  });

  it('have an effective size where inbreeding has grown, and say why where there is none', async () => {
    // ΔF = 1 − (1 − ¼)^(1/(2 − 1)) for both young, none for animals of one generation
    const { effectiveSize } = await ofFilters({ line: 'Siblings', hatchedFrom: 2021 });
    expect(effectiveSize).toEqual({ animals: 2, increase: 0.25, effectiveSize: 2, standardError: 0, note: null });
    const parents = await ofPicked('brother', 'sister');
    expect(parents.effectiveSize).toEqual({
      animals: 0,
      increase: null,
      effectiveSize: null,
      standardError: null,
      note: textWith('more than one complete generation'),
    });
  });

  it('count the base kinship of a source', async () => {
    const { inbreeding, meanKinship, cautions } = await ofFilters({ line: 'Kin founders' });
    expect(inbreeding).toEqual({ animals: 3, mean: 0.125, least: 0.125, greatest: 0.125 });
    // selves 9/16; founders ⅛; a parent with its young ½(9/16 + ⅛)
    expect(meanKinship).toBeCloseTo((3 * (9 / 16) + 2 * 0.125 + 4 * 0.5 * (9 / 16 + 0.125)) / 9, 12);
    expect(cautions).toContain(
      'The pedigrees reach back fewer than two complete generations on average: relatives further back would not show.',
    );
  });
});

describe('sets of which little can be told', () => {
  it('are empty where nothing meets the filters: every mean is null', async () => {
    const empty = await ofFilters({ code: 'stands nowhere' });
    expect(empty).toMatchObject({
      animals: 0,
      meanKinship: null,
      geneDiversity: null,
      founderGenomeEquivalents: null,
      effectiveFounders: null,
      inbreeding: { animals: 0, mean: null, least: null, greatest: null },
      depth: { mean: null, greatest: null, full: null, generationEquivalents: null },
      contributions: { items: [], others: 0, othersShare: 0 },
      effectiveAncestors: { effective: null, items: [], picked: 0, unexplained: 0 },
      years: [],
      undated: 0,
    });
    expect(empty.cautions).toEqual([textWith('No animal')]);
  });

  it('have no inbreeding where nothing is known of any of them', async () => {
    const lone = await ofFilters({ line: 'Nobody knows' });
    expect(lone).toMatchObject({ animals: 1, nothingKnown: 1, meanKinship: 0.5, founderGenomeEquivalents: 1 });
    expect(lone.inbreeding).toEqual({ animals: 0, mean: null, least: null, greatest: null });
    expect(lone.contributions.items).toEqual([{ founder: having({ code: 'lone' }), share: 1, standing: 'unknown' }]);
    expect(lone.cautions[0]).toMatch(/no inbreeding can be told, not 0/);
  });

  it('may be one animal picked by its number, with the same answer as by its id', async () => {
    const elder = await ofPicked('elder');
    expect(elder).toMatchObject({ animals: 1, meanKinship: 0.625, effectiveFounders: 2 });
    const shown = bodyOf<{ number: string }>(await api.http.get(`/api/v1/individuals/${idOf('elder')}`)).number;
    const answer = await api.http
      .post('/api/v1/lineage/set')
      .send({ individuals: [shown] })
      .expect(200);
    expect(bodyOf<LineageSetView>(answer)).toEqual(elder);
  });
});

describe('what cannot be measured', () => {
  it('is refused by name: unknown animals, an animal twice, too many, unknown filters', async () => {
    const refused = async (individuals: unknown): Promise<ProblemBody> =>
      bodyOf(await api.http.post('/api/v1/lineage/set').send({ individuals }).expect(422));
    expect((await refused([idOf('elder'), 'EA-99', idOf('elder')])).errors).toEqual([
      { pointer: '/individuals/1', detail: textWith('EA-99') },
      { pointer: '/individuals/2', detail: textWith('/individuals/0') },
    ]);
    expect((await refused([])).errors).toEqual([{ pointer: '/individuals', detail: textWith('at least one') }]);
    const many = Array.from({ length: 5001 }, () => idOf('elder'));
    expect((await refused(many)).errors).toEqual([{ pointer: '/individuals', detail: textWith('5000') }]);
    const problem = bodyOf<ProblemBody>(await api.http.get('/api/v1/lineage/set?limit=5').expect(422));
    expect(problem.errors[0]?.pointer).toBe('/limit');
  });

  it('is for members: a set costs arithmetic', async () => {
    await api.stranger.get('/api/v1/lineage/set').expect(401);
    await api.stranger
      .post('/api/v1/lineage/set')
      .send({ individuals: [idOf('elder')] })
      .expect(401);
  });

  it('leaves out animals that whoever asks may not see, and conceals founders', async () => {
    await api.dataSource.query(`update individual set visibility = 'private' where id = any($1::uuid[])`, [
      [idOf('younger'), idOf('grandfather'), idOf('lone')],
    ]);
    const other = await api.addKeeper('Somebody else');
    const seen = bodyOf<LineageSetView>(await other.http.get('/api/v1/lineage/set?line=Siblings').expect(200));
    expect(seen.animals).toBe(4);
    const names = seen.effectiveAncestors.items.map(({ ancestor }) => `${ancestor?.code} ${ancestor?.isPrivate}`);
    expect(names.sort()).toEqual(['grandmother false', 'null true']);
    await other.http
      .post('/api/v1/lineage/set')
      .send({ individuals: [idOf('younger')] })
      .expect(422);
    const hidden = bodyOf<LineageSetView>(await other.http.get('/api/v1/lineage/set?line=Nobody knows').expect(200));
    expect(hidden.animals).toBe(0);
  });
});

describe('the lineage of one animal', () => {
  const lineageOf = async (code: string): Promise<LineageView> =>
    bodyOf(await api.http.get(`/api/v1/individuals/${idOf(code)}/lineage`).expect(200));

  it('sets its mean kinship beside those of its line, the rarest genes first', async () => {
    // the living: brother, sister (mean (½ + ¼ + 2·3/8)/4 each), elder and younger ((2·3/8 + 5/8 + 3/8)/4 each)
    const [brother, elder, dead] = [
      await lineageOf('brother'),
      await lineageOf('elder'),
      await lineageOf('grandfather'),
    ];
    const { meanKinship } = await ofFilters({ line: 'Siblings', status: 'alive' });
    expect(brother.lineKinship).toEqual({ mean: meanKinship, living: 4, rank: 1 });
    expect(elder.lineKinship).toEqual({ mean: meanKinship, living: 4, rank: 3 });
    expect(dead.lineKinship).toEqual({ mean: meanKinship, living: 4, rank: null });
    expect((await lineageOf('lone')).lineKinship).toEqual({ mean: 0.5, living: 1, rank: 1 });
  });

  it('takes F apart by source, and tells ancestral inbreeding', async () => {
    const elder = await lineageOf('elder');
    expect(elder.partialInbreeding).toEqual([
      { source: having({ id: ids.sources[0] }), part: 0.25, standing: 'stated' },
    ]);
    expect(elder.ancestralInbreeding).toEqual({ recursion: 0, exact: 0, oldInbreeding: 0, newInbreeding: 0.25 });
    const young = await lineageOf('kin young');
    expect(young.partialInbreeding).toEqual([
      { source: having({ id: ids.sources[1] }), part: 0.125, standing: 'stated' },
    ]);
    // both parents are founders as inbred as their source says
    expect(young.ancestralInbreeding.recursion).toBe(0.125);
    expect(young.ancestralInbreeding.exact).toBeCloseTo(0.125, 12);
    expect((await lineageOf('kin sire')).partialInbreeding).toEqual([
      { source: having({ id: ids.sources[1] }), part: 0.125, standing: 'stated' },
    ]);
    expect((await lineageOf('lone')).partialInbreeding).toEqual([]);
    expect((await lineageOf('brother')).partialInbreeding).toEqual([]);
  });
});
