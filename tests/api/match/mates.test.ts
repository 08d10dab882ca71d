import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { LineageSetView } from '../../../api/lineage/lineage-set.view.ts';
import type { MatesView, PossibleMateView } from '../../../api/match/mates/mates.view.ts';
import { newId } from '../../../api/platform/ids.ts';
import { bodyOf, having, textWith, type ProblemBody } from '../../support/answer.ts';
import { AnimalsByCode } from '../../support/animals-by-code.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory, mediumPoisonFrog } from '../../support/factories.ts';

let api: TestApi;
let other: TestKeeper;
let gone: TestKeeper;
let make: Factory;
let speciesId: string;
let lineId: string;
let otherLine: string;
const animals = new AnimalsByCode();
const { idOf, codeOf } = animals;

const mates = async (code: string, query = '', http = api.http): Promise<MatesView> =>
  bodyOf<MatesView>(await http.get(`/api/v1/individuals/${idOf(code)}/mates?${query}`).expect(200));
const codesOf = (items: readonly PossibleMateView[]): string[] => items.map(({ animal }) => codeOf(animal.id));
const excludedOf = (view: MatesView): Record<string, string[]> =>
  Object.fromEntries(view.excluded.map(({ reason, animals }) => [reason, animals.map(({ id }) => codeOf(id)).sort()]));
const diversityOf = async (line: string): Promise<number> =>
  bodyOf<LineageSetView>(await api.http.get(`/api/v1/lineage/set?lineId=${line}&status=alive`).expect(200))
    .geneDiversity ?? NaN;

async function add(code: string, fields: Record<string, unknown>, by = make): Promise<void> {
  await animals.add(by, { code, speciesId, lineId, hatched: '2020-03-01', ...fields });
}

async function young(clutchId: string, raised: { code: string; sex: string }[]): Promise<void> {
  await animals.raise(
    make,
    clutchId,
    raised.map((animal) => ({ hatched: '2022-03-01', ...animal })),
  );
}

/** Four founders, a son of two of them, and females of every degree of kinship to him. */
beforeAll(async () => {
  api = await startApi();
  other = await api.addKeeper('Other keeper');
  await other.http
    .patch(`/api/v1/keepers/${other.id}`)
    .set('If-Match', '*')
    .send({ region: 'Upper valley' })
    .expect(200);
  gone = await api.addKeeper('Keeper who will leave');
  make = new Factory(api.http);
  ({ id: speciesId } = await make.species({ ranges: mediumPoisonFrog }));
  ({ id: lineId } = await make.line({ speciesId, name: 'Quebrada Inventada' }));
  ({ id: otherLine } = await make.line({ speciesId, name: 'Rio Ajeno' }));
  const source = await make.source({ labelAsReceived: 'Quebrada Inventada' });
  for (const [code, sex] of Object.entries({ a: 'male', b: 'male', c: 'female', d: 'female' }))
    await add(code, { sex, sourceId: source.id });
  const of = (sire: string, dam: string) => make.clutchOf(idOf(sire), idOf(dam), { laid: '2022-02-10', hatched: 3 });
  await young((await of('a', 'c')).id, [
    { code: 'son', sex: 'male' },
    { code: 'full sister', sex: 'female' },
  ]);
  await young((await of('a', 'd')).id, [{ code: 'half sister', sex: 'female' }]);
  await young((await of('b', 'd')).id, [{ code: 'unrelated', sex: 'female' }]);
  const doubtful = await make.clutch({
    laid: '2022-02-10',
    sires: [{ individualId: idOf('a') }, { individualId: idOf('b') }],
    dams: [{ individualId: idOf('d') }],
  });
  await young(doubtful.id, [{ code: 'doubtful', sex: 'female' }]);
  const today = new Date().toISOString().slice(0, 10);
  await add('froglet', { sex: 'female', hatched: `${Number(today.slice(0, 4)) - 1}-12-01/${today}` });
  await add('infant', { sex: 'female', hatched: today });
  await add('ancient', { sex: 'female', hatched: '1980-01-01' });
  await add('dead', { sex: 'female', status: 'died', died: '2023-01-01' });
  await add('unsexed', {});
  await add('ageless', { sex: 'female', hatched: undefined });
  await add('stranger', { sex: 'female', lineId: otherLine });
  await add('of nobody', { sex: 'female' }, new Factory(gone.http));
  await add('of the other', { sex: 'female' }, new Factory(other.http));
  await add('secret', { sex: 'female', visibility: 'private' }, new Factory(other.http));
  await dispute();
  await api.http.post(`/api/v1/keepers/${gone.id}/departure`).set('If-Match', '*').send({}).expect(201);
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

/** A founder whose source is said to come from one place, and by an accepted note from another; and a daughter of it. */
async function dispute(): Promise<void> {
  const source = await make.source();
  await add('disputed', { sex: 'male', sourceId: source.id });
  const claim = await make.claim({ sourceId: source.id, value: 'Quebrada Inventada' });
  const { id } = await make.evidence({ claimId: claim.id, bearing: 'contradicts' });
  const registrar = await api.addKeeper('Second registrar', ['registrar']);
  await registrar.http
    .post(`/api/v1/evidence/${id}/review`)
    .set('If-Match', '*')
    .send({ verdict: 'accepted', reason: 'The note is genuine.' })
    .expect(201);
  const clutch = await make.clutchOf(idOf('disputed'), idOf('d'), { laid: '2022-02-10' });
  await young(clutch.id, [{ code: 'daughter of the disputed', sex: 'female' }]);
}

describe('who for this one', () => {
  it('ranks grown females of the line by kinship, and gives the range where parents are uncertain', async () => {
    const { items, total, next } = await mates('son', 'kinshipTo=1');
    expect(next).toBeNull();
    expect(total).toBe(items.length);
    const byCode = new Map(items.map((item) => [codeOf(item.animal.id), item]));
    const ranked = items
      .filter(({ inbreeding }) => !inbreeding.nothingKnown)
      .map(({ inbreeding }) => inbreeding.expected);
    expect(ranked).toEqual([...ranked].sort((one, two) => one - two));
    // mother and full sister ¼, half-sister ⅛ (Wright 1922); the mother is a founder, so only one generation above the young is whole
    const kinship = (code: string) => byCode.get(code)?.inbreeding;
    const known = { nothingKnown: false, depth: 2, fullDepth: 2 };
    expect(kinship('c')).toEqual({ expected: 0.25, least: 0.25, greatest: 0.25, ...known, fullDepth: 1 });
    expect(kinship('full sister')).toEqual({ expected: 0.25, least: 0.25, greatest: 0.25, ...known });
    expect(kinship('half sister')).toEqual({ expected: 0.125, least: 0.125, greatest: 0.125, ...known });
    expect(kinship('doubtful')).toEqual({ expected: 0.0625, least: 0, greatest: 0.125, ...known });
    expect(kinship('unrelated')).toEqual({ expected: 0, least: 0, greatest: 0, ...known });
    // a founder whose source is recorded is a founder; one of nobody knows where is nothing at all
    expect(kinship('d')).toEqual({ expected: 0, least: 0, greatest: 0, ...known, fullDepth: 1 });
    expect(kinship('ageless')).toEqual({
      expected: 0,
      least: 0,
      greatest: 0,
      nothingKnown: true,
      depth: 2,
      fullDepth: 1,
    });
    expect([...byCode.keys()].sort()).toEqual(
      [
        'ageless',
        'c',
        'd',
        'doubtful',
        'froglet',
        'full sister',
        'half sister',
        'of the other',
        'secret',
        'unrelated',
      ].sort(),
    );
  });

  it('never passes want of knowledge for the best: of whom nothing is recorded comes last in either order, and says so', async () => {
    const unknown = ['ageless', 'froglet', 'of the other', 'secret'];
    for (const sort of ['kinship', 'diversity']) {
      const { items, nothingKnown, total } = await mates('son', `kinshipTo=1&sort=${sort}`);
      expect(nothingKnown).toBe(unknown.length);
      expect(codesOf(items.slice(total - nothingKnown)).sort(), sort).toEqual(unknown);
      for (const { animal, inbreeding, warnings } of items) {
        expect(inbreeding.nothingKnown).toBe(unknown.includes(codeOf(animal.id)));
        expect(warnings.some((warning) => /Neither a source nor a parent/.test(warning))).toBe(inbreeding.nothingKnown);
      }
    }
    const own = await mates('ageless', 'kinshipTo=1');
    expect(own.cautions).toContainEqual(textWith('Neither a source nor a parent of this animal'));
    expect(own.items.length).toBeGreaterThan(1);
    expect(own.items.every(({ inbreeding }) => inbreeding.nothingKnown)).toBe(true);
  });

  it('says of each mate how old it is, whether it has bred, who keeps it, and what the young would carry', async () => {
    const { items } = await mates('son', 'kinshipTo=1');
    const mate = (code: string) => items.find(({ animal }) => animal.id === idOf(code));
    expect(mate('d')).toMatchObject({
      proven: true,
      keeper: 'Keeper',
      line: { id: lineId, name: 'Quebrada Inventada' },
    });
    expect(mate('unrelated')?.proven).toBe(false);
    expect(mate('unrelated')?.age?.least).toBeGreaterThan(40);
    expect(mate('ageless')?.age).toBeNull();
    expect(mate('ageless')?.warnings).toEqual([textWith('Neither a source'), textWith('date is not recorded')]);
    expect(mate('of the other')).toMatchObject({ keeper: 'Other keeper', region: 'Upper valley' });
    expect(mate('unrelated')?.label.shares).toEqual([{ standing: 'stated', share: 1 }]);
    expect(mate('unrelated')?.label.flags.map(({ code }) => code)).toEqual(['label-beyond-evidence']);
    expect(mate('doubtful')?.label.flags.map(({ code }) => code)).toContain('parents-uncertain');
  });

  it('says of everybody left out why', async () => {
    expect(excludedOf(await mates('son'))).toEqual({
      'not-living': ['dead'],
      'keeper-left': ['of nobody'],
      unsexed: ['unsexed'],
      'too-young': ['infant'],
      'beyond-lifespan': ['ancient'],
      'disputed-label': ['daughter of the disputed'],
      related: ['c', 'full sister'],
      'other-line': [],
    });
    const { items } = await mates('son');
    expect(codesOf(items)).toContain('half sister'); // ⅛ is the limit, and within it
  });

  it('takes unsexed animals, disputed labels and other lines only where they are asked for, each with its warning', async () => {
    const { items, excluded } = await mates('son', 'unsexed=true&disputed=true&crossLines=true');
    const warningsOf = (code: string) => items.find(({ animal }) => animal.id === idOf(code))?.warnings;
    expect(warningsOf('unsexed')).toEqual([textWith('sex is not known'), textWith('Neither a source')]);
    expect(warningsOf('daughter of the disputed')).toEqual([textWith('disputed')]);
    expect(warningsOf('stranger')).toEqual([
      textWith('cross of Quebrada Inventada and Rio Ajeno'),
      textWith('Neither a source'),
    ]);
    expect(items.find(({ animal }) => animal.id === idOf('stranger'))?.label.flags[0]?.code).toBe('outside-line');
    expect(excluded.map(({ reason }) => reason)).not.toContain('other-line');
    expect(codesOf((await mates('son', `lineId=${otherLine}`)).items)).toEqual(['stranger']);
  });

  it('says what one young of each pair adds to the diversity of the line, and it comes so', async () => {
    const before = await mates('son', 'sort=diversity&kinshipTo=1');
    expect(before.geneDiversity).toBeCloseTo(await diversityOf(lineId), 12);
    const ranked = before.items.filter(({ inbreeding }) => !inbreeding.nothingKnown);
    const gains = ranked.map(({ diversityGain }) => diversityGain ?? NaN);
    expect(gains).toEqual([...gains].sort((one, two) => two - one));
    const doubtful = before.items.find(({ animal }) => animal.id === idOf('doubtful'));
    const clutch = await make.clutchOf(idOf('son'), idOf('doubtful'), { laid: '2024-02-10' });
    const [one] = await make.offspring(clutch.id, { count: 1 });
    expect(await diversityOf(lineId)).toBeCloseTo((before.geneDiversity ?? NaN) + (doubtful?.diversityGain ?? NaN), 12);
    await api.http
      .post(`/api/v1/individuals/${one?.id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'only a test' })
      .expect(201);
  });

  it('is filtered by keeper, age and having bred, and pages without loss', async () => {
    expect(codesOf((await mates('son', `keeperId=${other.id}`)).items).sort()).toEqual(['of the other', 'secret']);
    expect(codesOf((await mates('son', 'proven=true')).items)).toEqual(['d']);
    expect(codesOf((await mates('son', 'monthsFrom=60')).items)).not.toContain('froglet');
    const whole = codesOf((await mates('son')).items);
    const paged: string[] = [];
    for (let after = '', page = 0; page < 20; page++) {
      const { items, next } = await mates('son', `limit=2${after}`);
      paged.push(...codesOf(items));
      if (next === null) break;
      after = `&after=${encodeURIComponent(next)}`;
    }
    expect(paged).toEqual(whole);
  });

  it('tells a keeper nothing of animals that they may not see, neither as mates nor as left out', async () => {
    const third = await api.addKeeper('Third keeper');
    const view = await mates('son', 'kinshipTo=1', third.http);
    expect(codesOf(view.items)).not.toContain('secret');
    const all = await mates('son', 'kinshipTo=1');
    expect(view.total).toBe(all.total - 1);
    expect(view.items.map(({ animal, diversityGain }) => [animal.id, diversityGain])).toEqual(
      all.items
        .filter(({ animal }) => animal.id !== idOf('secret'))
        .map(({ animal, diversityGain }) => [animal.id, diversityGain]),
    );
  });

  it('warns of the asked animal itself', async () => {
    expect((await mates('dead')).cautions).toEqual([textWith('died'), textWith('Neither a source')]);
    expect((await mates('infant')).cautions).toEqual([textWith('younger'), textWith('Neither a source')]);
    expect((await mates('unsexed')).cautions).toEqual([textWith('sex of this animal'), textWith('Neither a source')]);
    expect((await mates('disputed')).cautions).toEqual([textWith('disputed')]);
    expect((await mates('son')).cautions).toEqual([]);
  });

  it('names what it cannot take', async () => {
    await api.http.get(`/api/v1/individuals/${newId()}/mates`).expect(404);
    const unknown = await api.http.get(`/api/v1/individuals/${idOf('son')}/mates?lineId=${newId()}`).expect(422);
    expect(bodyOf<ProblemBody>(unknown).errors).toEqual([having({ pointer: '/lineId' })]);
    await api.http.get(`/api/v1/individuals/${idOf('son')}/mates?kinshipTo=2`).expect(422);
    await api.http.get(`/api/v1/individuals/${idOf('son')}/mates?after=nonsense`).expect(422);
    await api.stranger.get(`/api/v1/individuals/${idOf('son')}/mates`).expect(401);
  });
});
