import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { LineageSetView } from '../../../api/lineage/lineage-set.view.ts';
import type { NewBloodAnimalView, NewBloodView } from '../../../api/match/new-blood/new-blood.view.ts';
import { newId } from '../../../api/platform/ids.ts';
import { bodyOf, having, textWith, type ProblemBody } from '../../support/answer.ts';
import { AnimalsByCode } from '../../support/animals-by-code.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory, mediumPoisonFrog } from '../../support/factories.ts';

let api: TestApi;
let anna: TestKeeper;
let bruno: TestKeeper;
let make: Factory;
let speciesId: string;
let lineId: string;
let otherLine: string;
const animals = new AnimalsByCode();
const { idOf, codeOf } = animals;

const newBlood = async (query = '', http = anna.http): Promise<NewBloodView> =>
  bodyOf<NewBloodView>(await http.get(`/api/v1/lines/${lineId}/new-blood?${query}`).expect(200));
const codesOf = ({ items }: NewBloodView): string[] => items.map(({ animal }) => codeOf(animal.id));
const find = ({ items }: NewBloodView, code: string): NewBloodAnimalView => {
  const found = items.find(({ animal }) => animal.id === idOf(code));
  if (!found) throw new Error(`${code} is not there`);
  return found;
};
const diversityOf = async (codes: readonly string[]): Promise<number> =>
  bodyOf<LineageSetView>(
    await api.http
      .post('/api/v1/lineage/set')
      .send({ individuals: codes.map(idOf) })
      .expect(200),
  ).geneDiversity ?? NaN;

async function add(code: string, fields: Record<string, unknown>, by = make): Promise<void> {
  await animals.add(by, { code, speciesId, lineId, hatched: '2020-03-01', ...fields });
}

async function young(sires: string[], dam: string, sexes: Record<string, string>, by: Factory): Promise<void> {
  const clutch = await by.clutch({
    laid: '2022-02-10',
    hatched: 3,
    sires: sires.map((sire) => ({ individualId: idOf(sire) })),
    dams: [{ individualId: idOf(dam) }],
  });
  await animals.raise(
    by,
    clutch.id,
    Object.entries(sexes).map(([code, sex]) => ({ code, sex, hatched: '2022-03-01' })),
  );
}

/** Anna has full sibs of a and b. Bruno has their half-sibs, and young of c and d, of whom Anna has nothing. */
beforeAll(async () => {
  api = await startApi();
  anna = await api.addKeeper('Anna');
  bruno = await api.addKeeper('Bruno');
  make = new Factory(api.http);
  ({ id: speciesId } = await make.species({ ranges: mediumPoisonFrog }));
  ({ id: lineId } = await make.line({ speciesId, name: 'Quebrada Inventada' }));
  ({ id: otherLine } = await make.line({ speciesId, name: 'Rio Ajeno' }));
  const source = await make.source({ labelAsReceived: 'Quebrada Inventada' });
  for (const [code, sex] of Object.entries({ a: 'male', b: 'female', c: 'male', d: 'female' }))
    await add(code, { sex, sourceId: source.id, status: 'died', died: '2023-01-01' });
  const [hers, his] = [new Factory(anna.http), new Factory(bruno.http)];
  await young(['a'], 'b', { 'anna 1': 'male', 'anna 2': 'female' }, hers);
  await young(['a'], 'd', { half: 'male' }, his);
  await young(['c'], 'd', { fresh: 'female' }, his);
  await young(['a', 'c'], 'd', { doubtful: 'female' }, his);
  await add('unsexed', {}, his);
  await add('froglet', { sex: 'male', hatched: new Date().toISOString().slice(0, 10) }, his);
  await add('stranger', { sex: 'female', lineId: otherLine }, his);
  await add('other species', { sex: 'female', lineId: undefined, speciesId: (await make.species()).id }, his);
  await add('secret', { sex: 'female', sourceId: source.id, visibility: 'private' }, his);
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

describe('who carries what a keeper’s part of a line lacks', () => {
  it('is ranked by what it adds to the diversity there, and it comes so', async () => {
    const view = await newBlood();
    expect(view).toMatchObject({ of: 'keeper', keeper: 'Anna', sort: 'animal', holding: { animals: 2, founders: 2 } });
    expect(codesOf(view)).toEqual(['fresh', 'doubtful', 'half']);
    const before = await diversityOf(['anna 1', 'anna 2']);
    expect(view.holding.geneDiversity).toBeCloseTo(before, 12);
    for (const item of view.items) {
      const after = await diversityOf(['anna 1', 'anna 2', codeOf(item.animal.id)]);
      expect(item.gain).toBeCloseTo(after - before, 12);
    }
    expect(find(view, 'fresh')).toMatchObject({
      meanKinship: 0,
      lacking: 1,
      unknown: 0,
      keeper: 'Bruno',
      housed: false,
    });
    // its sire is that of Anna's animals as often as not: ½ · ¼ of kinship
    expect(find(view, 'doubtful').meanKinship).toBeCloseTo(0.0625, 12);
  });

  it('is told with the founders that it brings, as expected and at least', async () => {
    const view = await newBlood();
    const lacked = view.lacks.map(({ founder }) => codeOf(founder?.id ?? ''));
    // an animal without recorded parents is a founder; a private one is told as private
    expect(lacked.sort()).toEqual(['c', 'd', 'froglet', 'private-1', 'unsexed']);
    expect(view.lacks[0]).toMatchObject({ inHolding: 0, source: having({ label: 'Quebrada Inventada' }) });
    const brings = Object.fromEntries(
      find(view, 'doubtful').brings.map(({ founder, share }) => [codeOf(founder?.id ?? ''), share]),
    );
    expect(brings).toEqual({ d: { expected: 0.5, least: 0.5 }, c: { expected: 0.25, least: 0 } });
  });

  it('is told with the partner of whom one young adds most, and that young comes so', async () => {
    const view = await newBlood('sort=young');
    const half = find(view, 'half');
    expect(codeOf(half.young?.partner.id ?? '')).toBe('anna 2');
    expect(half.young?.inbreeding).toMatchObject({
      ...{ expected: 0.125, least: 0.125, greatest: 0.125 },
      ...{ nothingKnown: false, depth: 2, fullDepth: 2 },
    });
    const gains = view.items.map((item) => item.young?.gain ?? NaN);
    expect(gains).toEqual([...gains].sort((one, other) => other - one));
    const before = await diversityOf(['anna 1', 'anna 2']);
    const clutch = await make.clutchOf(idOf('half'), idOf('anna 2'), { laid: '2024-02-10' });
    await animals.raise(make, clutch.id, [{ code: 'of half' }]);
    expect(await diversityOf(['anna 1', 'anna 2', 'of half'])).toBeCloseTo(before + (half.young?.gain ?? NaN), 12);
    await api.http
      .post(`/api/v1/individuals/${idOf('of half')}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'only a test' })
      .expect(201);
    expect(find(await newBlood('kinshipTo=0.1'), 'half').young).toBeNull();
  });

  it('comes last, and says so, where neither a source nor a parent is recorded', async () => {
    for (const sort of ['animal', 'young', 'lacking']) {
      const { items } = await newBlood(`sort=${sort}&unsexed=true&crossLines=true`);
      const unknown = items.filter(({ warnings }) => warnings.some((text) => /Neither a source/.test(text)));
      expect(unknown.map(({ animal }) => codeOf(animal.id)).sort()).toEqual(['stranger', 'unsexed']);
      expect(items.slice(-unknown.length), sort).toEqual(unknown);
      for (const { animal, young } of items)
        expect(young?.inbreeding.nothingKnown ?? false).toBe(['stranger', 'unsexed'].includes(codeOf(animal.id)));
    }
  });

  it('says of everybody left out why, and takes them only where they are asked for', async () => {
    const excluded = Object.fromEntries(
      (await newBlood()).excluded.map(({ reason, animals }) => [reason, animals.map(({ id }) => codeOf(id))]),
    );
    expect(excluded).toEqual({ unsexed: ['unsexed'], 'too-young': ['froglet'], 'other-line': [] });
    const asked = await newBlood('unsexed=true&crossLines=true');
    expect(codesOf(asked).sort()).toEqual(['doubtful', 'fresh', 'half', 'stranger', 'unsexed']);
    expect(find(asked, 'stranger').warnings[0]).toContain('crosses');
    expect(find(asked, 'unsexed').warnings.slice(0, 1)).toEqual([textWith('sex is not known')]);
    expect(asked.excluded.map(({ reason }) => reason)).not.toContain('other-line');
  });

  it('is asked for any keeper, of whose animals one knows what one may see', async () => {
    expect((await newBlood('', bruno.http)).holding.animals).toBe(6);
    const veiled = await newBlood(`keeperId=${bruno.id}`);
    expect(veiled).toMatchObject({ keeper: 'Bruno', holding: { animals: 5 } });
    expect(codesOf(veiled).sort()).toEqual(['anna 1', 'anna 2']);
    expect(JSON.stringify(veiled)).not.toContain('secret');
    expect(codesOf(await newBlood())).not.toContain('secret');
  });

  it('tells of a keeper who has nothing of the line that anything would be new', async () => {
    const view = await newBlood('', api.http);
    expect(view.holding).toMatchObject({ animals: 0, geneDiversity: null });
    expect(view.items.length).toBeGreaterThan(3);
    for (const item of view.items)
      expect(item).toMatchObject({ gain: null, young: null, meanKinship: null, lacking: 1 });
  });

  it('is, for a whole line, whose young would add most to it', async () => {
    const view = await newBlood('of=line');
    expect(view).toMatchObject({ of: 'line', keeper: null, sort: 'young' });
    expect(codesOf(view).sort()).toEqual(['anna 1', 'anna 2', 'doubtful', 'fresh', 'half']);
    expect(view.items.every(({ gain }) => gain === null)).toBe(true);
    const gains = view.items.map((item) => item.young?.gain ?? -2);
    expect(gains).toEqual([...gains].sort((one, other) => other - one));
    expect(view.holding.geneDiversity).toBe(view.whole.geneDiversity);
  });

  it('pages without loss', async () => {
    const whole = codesOf(await newBlood('sort=lacking'));
    const paged: string[] = [];
    for (let after = ''; paged.length < 20;) {
      const page = await newBlood(`sort=lacking&limit=1${after}`);
      paged.push(...codesOf(page));
      if (page.next === null) break;
      after = `&after=${encodeURIComponent(page.next)}`;
    }
    expect(paged).toEqual(whole);
  });

  it('says of an animal that lives in a pairing that it would have to be taken out', async () => {
    await new Factory(bruno.http).pairing({
      members: [
        { individualId: idOf('half'), joined: '2024-01-01' },
        { individualId: idOf('fresh'), joined: '2024-01-01' },
      ],
    });
    expect(find(await newBlood(), 'fresh')).toMatchObject({ housed: true, warnings: [textWith('lives in a pairing')] });
  });

  it('names what it cannot take', async () => {
    await anna.http.get(`/api/v1/lines/${newId()}/new-blood`).expect(404);
    const unknown = await anna.http.get(`/api/v1/lines/${lineId}/new-blood?keeperId=${newId()}`).expect(422);
    expect(bodyOf<ProblemBody>(unknown).errors).toEqual([having({ pointer: '/keeperId' })]);
    await anna.http.get(`/api/v1/lines/${lineId}/new-blood?after=nonsense`).expect(422);
    await anna.http.get(`/api/v1/lines/${lineId}/new-blood?of=everybody`).expect(422);
    await api.stranger.get(`/api/v1/lines/${lineId}/new-blood`).expect(401);
  });
});
