import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { LineageSetView } from '../../../api/lineage/lineage-set.view.ts';
import type { ExchangeView, ProposedExchangeView } from '../../../api/match/new-blood/exchange.view.ts';
import { newId } from '../../../api/platform/ids.ts';
import { bodyOf, having, textWith, type ProblemBody } from '../../support/answer.ts';
import { AnimalsByCode } from '../../support/animals-by-code.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory, mediumPoisonFrog } from '../../support/factories.ts';

let api: TestApi;
let anna: TestKeeper;
let bruno: TestKeeper;
let clara: TestKeeper;
let make: Factory;
let speciesId: string;
let lineId: string;
let otherLine: string;
const animals = new AnimalsByCode();
const { idOf, codeOf } = animals;

const ask = (body: object, http = api.http) => http.post('/api/v1/match/exchange').send({ lineId, ...body });
const exchange = async (body: object = {}, http = api.http): Promise<ExchangeView> =>
  bodyOf<ExchangeView>(
    await ask({ one: { keeperId: anna.id }, other: { keeperId: bruno.id }, ...body }, http).expect(200),
  );
const refused = async (body: object): Promise<[string, string][]> => {
  const problem = bodyOf<ProblemBody>(
    await ask({ one: { keeperId: anna.id }, other: { keeperId: bruno.id }, ...body }).expect(422),
  );
  return problem.errors.map(({ pointer, detail }) => [pointer, detail]);
};
const swapOf = ({ give, take }: ProposedExchangeView): string =>
  `${codeOf(give.animal.id)} for ${codeOf(take.animal.id)}`;
const diversityOf = async (codes: string[]): Promise<LineageSetView> =>
  bodyOf<LineageSetView>(
    await api.http
      .post('/api/v1/lineage/set')
      .send({ individuals: codes.map(idOf) })
      .expect(200),
  );

async function add(code: string, fields: Record<string, unknown>, by = make): Promise<void> {
  await animals.add(by, { code, speciesId, lineId, hatched: '2020-03-01', ...fields });
}

async function young(sire: string, dam: string, sexes: Record<string, string>, by: Factory): Promise<void> {
  const clutch = await by.clutchOf(idOf(sire), idOf(dam), { laid: '2022-02-10', hatched: 3 });
  await animals.raise(
    by,
    clutch.id,
    Object.entries(sexes).map(([code, sex]) => ({ code, sex, hatched: '2022-03-01' })),
  );
}

/** Anna and Bruno each have three full sibs, of unrelated parents that died; Clara has her own, and a secret. */
beforeAll(async () => {
  api = await startApi();
  [anna, bruno, clara] = [await api.addKeeper('Anna'), await api.addKeeper('Bruno'), await api.addKeeper('Clara')];
  make = new Factory(api.http);
  ({ id: speciesId } = await make.species({ ranges: mediumPoisonFrog }));
  ({ id: lineId } = await make.line({ speciesId, name: 'Quebrada Inventada' }));
  ({ id: otherLine } = await make.line({ speciesId, name: 'Rio Ajeno' }));
  const source = await make.source({ labelAsReceived: 'Quebrada Inventada' });
  for (const [code, sex] of Object.entries({ a: 'male', b: 'female', c: 'male', d: 'female' }))
    await add(code, { sex, sourceId: source.id, status: 'died', died: '2023-01-01' });
  const [hers, his, theirs] = [anna, bruno, clara].map(({ http }) => new Factory(http));
  if (!hers || !his || !theirs) throw new Error('three keepers were made');
  await young('a', 'b', { 'anna 1': 'male', 'anna 2': 'female', 'anna 3': 'male' }, hers);
  await young('c', 'd', { 'bruno 1': 'male', 'bruno 2': 'female' }, his);
  const today = new Date().toISOString().slice(0, 10);
  await add('froglet', { sex: 'female', hatched: today }, his);
  await add('unsexed', {}, his);
  await add('stranger', { sex: 'female', lineId: otherLine }, his);
  await add('dead', { sex: 'female', status: 'died', died: '2023-01-01' }, his);
  await add('clara 1', { sex: 'female', sourceId: source.id }, theirs);
  await add('secret', { sex: 'male', sourceId: source.id, visibility: 'private' }, theirs);
  await dispute(theirs);
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

/** An animal of Clara's whose source is said to come from one place, and by an accepted note from another. */
async function dispute(by: Factory): Promise<void> {
  const source = await make.source();
  await add('disputed', { sex: 'male', sourceId: source.id }, by);
  const claim = await make.claim({ sourceId: source.id, value: 'Quebrada Inventada' });
  const { id } = await make.evidence({ claimId: claim.id, bearing: 'contradicts' });
  const registrar = await api.addKeeper('Second registrar', ['registrar']);
  await registrar.http
    .post(`/api/v1/evidence/${id}/review`)
    .set('If-Match', '*')
    .send({ verdict: 'accepted', reason: 'The note is genuine.' })
    .expect(201);
}

describe('one exchange between two keepers', () => {
  it('is proposed where it helps both, tried one by one, and comes out as if it had been made', async () => {
    const view = await exchange();
    expect(view.one).toMatchObject({ keeper: 'Anna', before: { animals: 3, males: 2, females: 1, founders: 2 } });
    // three and two that may go; the froglet and the unsexed one stay
    expect(view.tried).toBe(6);
    expect(view.helping).toBeGreaterThan(0);
    expect(view.outcome).toBe(`Of 6 exchanges of one animal for one ${view.helping} would help both.`);
    const [best] = view.proposals;
    if (!best) throw new Error('no exchange is proposed');
    const [give, take] = [codeOf(best.give.animal.id), codeOf(best.take.animal.id)];
    const before = await diversityOf(['anna 1', 'anna 2', 'anna 3']);
    const hers = await diversityOf([...['anna 1', 'anna 2', 'anna 3'].filter((code) => code !== give), take]);
    const his = await diversityOf([
      ...['bruno 1', 'bruno 2', 'froglet', 'unsexed'].filter((code) => code !== take),
      give,
    ]);
    expect(view.one.before.geneDiversity).toBeCloseTo(before.geneDiversity ?? NaN, 12);
    expect(best.one.after.geneDiversity).toBeCloseTo(hers.geneDiversity ?? NaN, 12);
    expect(best.one.after.founderGenomeEquivalents).toBeCloseTo(hers.founderGenomeEquivalents ?? NaN, 12);
    expect(best.other.after.meanKinship).toBeCloseTo(his.meanKinship ?? NaN, 12);
    expect(best.one.gain).toBeCloseTo((hers.geneDiversity ?? NaN) - (before.geneDiversity ?? NaN), 12);
    const leasts = view.proposals.map(({ one, other }) => Math.min(one.gain ?? NaN, other.gain ?? NaN));
    expect(leasts.every((least) => least > 0)).toBe(true);
    leasts.slice(1).forEach((least, place) => expect(least).toBeLessThanOrEqual((leasts[place] ?? NaN) + 1e-12));
    expect(best.one.won.map(({ founder }) => codeOf(founder?.id ?? '')).sort()).toEqual(['c', 'd']);
    expect(best.one.won[0]?.source?.label).toBe('Quebrada Inventada');
    expect(view.cautions.join(' ')).toContain('veterinarian');
  });

  it('proposes a male for a male only, where that is asked for, and tells whom it leaves out', async () => {
    const view = await exchange({ sameSex: true });
    expect(view.tried).toBe(3);
    expect(view.proposals.map(swapOf).sort()).toEqual([
      'anna 1 for bruno 1',
      'anna 2 for bruno 2',
      'anna 3 for bruno 1',
    ]);
    const left = Object.fromEntries(
      view.notProposed.map(({ reason, animals }) => [reason, animals.map(({ id }) => codeOf(id))]),
    );
    expect(left).toEqual({ 'too-young': ['froglet'], unsexed: ['unsexed'] });
    expect((await exchange({ allow: ['unsexed'] })).tried).toBe(9);
  });

  it('is measured as it is asked for, with what either has to know', async () => {
    const { asked, outcome, proposals } = await exchange({
      give: [idOf('anna 1'), idOf('anna 3')],
      take: [idOf('froglet')],
      proposals: 0,
    });
    expect([outcome, proposals]).toEqual([null, []]);
    expect(asked?.give.map(({ animal }) => codeOf(animal.id))).toEqual(['anna 1', 'anna 3']);
    expect(asked?.take[0]).toMatchObject({ housed: false, proven: false, warnings: [textWith('younger')] });
    expect(asked?.one).toMatchObject({
      after: { animals: 2, males: 0, females: 2 },
      warnings: [textWith('No male')],
      // the froglet has no parents on record: it is a founder of unknown origin
      won: [having({ founder: having({ id: idOf('froglet') }), source: null })],
      lost: [],
    });
    const [had, has] = [await diversityOf(['anna 1', 'anna 2', 'anna 3']), await diversityOf(['anna 2', 'froglet'])];
    expect(asked?.one.gain).toBeCloseTo((has.geneDiversity ?? NaN) - (had.geneDiversity ?? NaN), 12);
    expect(asked?.other.after).toMatchObject({ animals: 5, males: 3, females: 1, unsexed: 1 });
  });

  it('says plainly that none helps both, and proposes none then', async () => {
    // unrelated founders on both sides: whoever goes, nothing is won
    const sides = { one: { individuals: [idOf('clara 1')] }, other: { individuals: [idOf('unsexed')] } };
    const view = await exchange({ ...sides, allow: ['unsexed'] });
    expect(view).toMatchObject({ tried: 1, helping: 0, proposals: [], asked: null });
    expect(view.outcome).toContain('would not help both');
    const none = await exchange(sides);
    expect(none.tried).toBe(0);
    expect(none.outcome).toContain('no animal on both sides');
  });

  it('takes other lines and disputed labels only where they are asked for, each with its warning', async () => {
    const crossing = { other: { individuals: [idOf('stranger')] }, take: [idOf('stranger')] };
    expect(await refused(crossing)).toEqual([['/other/individuals/0', textWith('not of this line')]]);
    const crossed = await exchange({ ...crossing, allow: ['cross-lines'] });
    expect(crossed.asked?.take[0]?.warnings[0]).toContain('crosses');
    const disputing = { other: { keeperId: clara.id }, take: [idOf('disputed')] };
    expect(await refused(disputing)).toEqual([['/take/0', textWith('is disputed')]]);
    const view = await exchange({ ...disputing, allow: ['disputed'] });
    expect(view.asked?.take[0]?.warnings).toEqual([textWith('disputed')]);
    const careful = await exchange({ other: { keeperId: clara.id } });
    expect(careful.notProposed.map(({ reason }) => reason)).toEqual(['disputed-label']);
  });

  it('knows of the animals of a keeper only those that whoever asks may see', async () => {
    const sides = { other: { keeperId: clara.id } };
    expect((await exchange(sides, clara.http)).other.before.animals).toBe(3);
    const veiled = await exchange(sides, bruno.http);
    expect(veiled.other.before.animals).toBe(2);
    expect(JSON.stringify(veiled)).not.toContain('secret');
    await ask({ one: { keeperId: anna.id }, other: { individuals: [idOf('secret')] } }, bruno.http).expect(422);
  });

  it('names each place of the question that cannot be', async () => {
    expect(await refused({ lineId: newId() })).toEqual([['/lineId', textWith('no line')]]);
    expect(await refused({ other: {} })).toEqual([['/other', textWith('either')]]);
    expect(await refused({ other: { keeperId: anna.id } })).toEqual([['/other/keeperId', textWith('same keeper')]]);
    expect(await refused({ other: { keeperId: newId() } })).toEqual([
      ['/other/keeperId', textWith('no living animal')],
    ]);
    expect(await refused({ other: { individuals: [idOf('anna 1')] } })).toEqual([
      ['/other/individuals', textWith('first side')],
    ]);
    expect(await refused({ other: { individuals: [idOf('dead')] } })).toEqual([
      ['/other/individuals/0', textWith('does not live')],
    ]);
    expect(await refused({ give: [idOf('bruno 1')], take: [idOf('anna 1')] })).toEqual([
      ['/give/0', textWith('no living animal of the first side')],
      ['/take/0', textWith('no living animal of the other side')],
    ]);
    expect(await refused({ give: [newId()] })).toEqual([['/give/0', textWith('There is no animal')]]);
    expect((await refused({ other: { individuals: [] } }))[0]?.[0]).toContain('/other');
    await ask({ one: { keeperId: anna.id } }).expect(422);
    await api.stranger.post('/api/v1/match/exchange').send({}).expect(401);
  });
});
