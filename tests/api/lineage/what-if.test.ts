import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { LineageView, OriginView } from '../../../api/lineage/lineage.view.ts';
import type { WhatIfView } from '../../../api/lineage/what-if.view.ts';
import { newId } from '../../../api/platform/ids.ts';
import { bodyOf, having, textWith, type ProblemBody } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;
let speciesId: string;
let lineId: string;
beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
  ({ id: speciesId } = await make.species());
  ({ id: lineId } = await make.line({ speciesId }));
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

type Fields = Record<string, unknown>;
const animal = (fields: Fields) => make.individual({ speciesId, lineId, ...fields });
const ask = (id: string, body: object, http = api.http) =>
  http.post(`/api/v1/individuals/${id}/lineage/what-if`).send(body);
const whatIf = async (id: string, body: object): Promise<WhatIfView> =>
  bodyOf<WhatIfView>(await ask(id, body).expect(200));
const lineageOf = async (id: string): Promise<LineageView> =>
  bodyOf<LineageView>(await api.http.get(`/api/v1/individuals/${id}/lineage`).expect(200));
const change = async (address: string, body: object): Promise<void> => {
  const { etag } = (await api.http.get(`/api/v1/${address}`).expect(200)).headers as { etag: string };
  await api.http.patch(`/api/v1/${address}`).set('If-Match', etag).send(body).expect(200);
};
const nameOf = ({ source, founder, unknownParentOf }: OriginView): string =>
  (source ?? founder ?? unknownParentOf)?.id ?? '';

/** Two sires and a dam of one import, a clutch of either sire, a brother and a sister bred, and their young. */
async function family() {
  const source = await make.source({ baseKinship: 0.05 });
  const founder = (sex: string, fields: Fields = {}) =>
    animal({ sex, sourceId: source.id, hatched: '2015-03-01', ...fields });
  const [sire, other, dam] = [await founder('male'), await founder('male'), await founder('female')];
  const first = await make.clutch({
    laid: '2018-01-01',
    sires: [
      { individualId: sire.id, weight: 3 },
      { individualId: other.id, weight: 1 },
    ],
    dams: [{ individualId: dam.id }],
  });
  const [brother, sister, third] = await make.offspring(first.id, {
    animals: [
      { sex: 'male', hatched: '2018-01-15' },
      { sex: 'female', hatched: '2018-01-15' },
      { hatched: '2018-01-16' },
    ],
  });
  if (!brother || !sister || !third) throw new Error('three young were asked for');
  const second = await make.clutch({
    laid: '2020-01-01',
    pairs: [
      { a: brother.id, b: sister.id, weight: 2 },
      { a: sister.id, b: third.id, weight: 1 },
      { a: sire.id, b: sister.id, weight: 1 },
    ],
  });
  const [young] = await make.offspring(second.id, { count: 2 });
  if (!young) throw new Error('two young were asked for');
  return { source, sire, other, dam, first, brother, sister, third, second, young };
}

/** Holds figures of one answer against those that the register tells once it is so recorded. */
function expectSame(figures: WhatIfView['assumed'], lineage: LineageView): void {
  const close = (actual: number | null, expected: number | null): void =>
    expect(Math.abs((actual ?? NaN) - (expected ?? NaN))).toBeLessThan(1e-12);
  close(figures.inbreeding.expected, lineage.inbreeding.expected);
  close(figures.inbreeding.least, lineage.inbreeding.least);
  close(figures.inbreeding.greatest, lineage.inbreeding.greatest);
  close(figures.inbreeding.bothParentsKnown, lineage.inbreeding.bothParentsKnown);
  close(figures.meanKinship, lineage.meanKinship);
  close(figures.ancestralInbreeding, lineage.ancestralInbreeding.recursion);
  close(figures.generationEquivalents, lineage.generationEquivalents);
  close(figures.completeness.index, lineage.completeness?.index ?? null);
  expect(figures).toMatchObject({
    depth: lineage.depth,
    fullDepth: lineage.fullDepth,
    filialGeneration: lineage.filialGeneration,
  });
  expect(figures.standings.map(({ standing }) => standing)).toEqual(
    lineage.label.shares.map(({ standing }) => standing),
  );
}

function expectSameShares(answer: WhatIfView, side: 'recorded' | 'assumed', lineage: LineageView): void {
  const told = new Map(answer.shares.filter((one) => one[side] > 0).map((one) => [nameOf(one), one[side]]));
  expect([...told.keys()].sort()).toEqual(lineage.shares.map(nameOf).sort());
  for (const origin of lineage.shares) expect(told.get(nameOf(origin))).toBeCloseTo(origin.share, 12);
}

describe('what if', () => {
  it('nothing is assumed, the figures are those recorded, and it is told what can be assumed', async () => {
    const { source, first, second, young, sire, other } = await family();
    const answer = await whatIf(young.id, {});
    const lineage = await lineageOf(young.id);
    expectSame(answer.recorded, lineage);
    expect(answer.assumed).toEqual(answer.recorded);
    expect(new Set(Object.values(answer.difference))).toEqual(new Set([0]));
    expect(answer.sources).toEqual([having({ id: source.id, baseKinship: 0.05, isPrivate: false })]);
    expect(answer.clutches.map(({ id }) => id)).toEqual([second.id, first.id]);
    expect(answer.clutches[0]).toMatchObject({ sires: null, dams: null });
    expect(answer.clutches[0]?.pairs?.map(({ probability }) => probability).sort()).toEqual([0.25, 0.25, 0.5]);
    expect(
      new Map(answer.clutches[1]?.sires?.map(({ animal: candidate, probability }) => [candidate?.id, probability])),
    ).toEqual(
      new Map([
        [sire.id, 0.75],
        [other.id, 0.25],
      ]),
    );
    expect(answer.otherClutches).toBe(0);
  });

  it('a source were more akin and parents other ones, the figures are those of a register in which it is so recorded', async () => {
    const { source, first, second, young, sire, other, sister, third } = await family();
    const stranger = await animal({ sex: 'female', hatched: '2015-03-01' });
    const before = await lineageOf(young.id);
    const sides = {
      sires: [
        { individualId: sire.number, weight: 0.2 },
        { individualId: other.id, weight: 0.5 },
        { individualId: null, weight: 0.3 },
      ],
      dams: [{ individualId: stranger.id }],
    };
    const pairs = [
      { a: sister.id, b: third.id, weight: 7 },
      { a: sire.id, b: sister.id, weight: 2 },
    ];
    const answer = await whatIf(young.id, {
      sources: [{ id: source.id, baseKinship: 0.2 }],
      clutches: [
        { id: first.id, ...sides },
        { id: second.id, pairs },
      ],
    });
    expectSame(answer.recorded, before);
    expectSameShares(answer, 'recorded', before);
    // nothing was written
    expect((await lineageOf(young.id)).asOf).toEqual(before.asOf);

    await change(`sources/${source.id}`, { baseKinship: 0.2 });
    await change(`clutches/${first.id}`, sides);
    await change(`clutches/${second.id}`, { pairs });
    const after = await lineageOf(young.id);
    expectSame(answer.assumed, after);
    expectSameShares(answer, 'assumed', after);
    expect(answer.difference.inbreeding).toBeCloseTo(after.inbreeding.expected - before.inbreeding.expected, 12);
    expect(answer.difference.inbreeding).not.toBe(0);
    expect(answer.difference.meanKinship).toBeCloseTo((after.meanKinship ?? NaN) - (before.meanKinship ?? NaN), 12);
  });

  it('one side of a clutch is named, the other stays as recorded', async () => {
    const { first, sister, sire } = await family();
    const sires = [{ individualId: sire.id }];
    const answer = await whatIf(sister.id, { clutches: [{ id: first.id, sires }] });
    await change(`clutches/${first.id}`, { sires });
    expectSame(answer.assumed, await lineageOf(sister.id));
  });

  it('nothing were known of a clutch, nothing is told of its young but that', async () => {
    const { first, sister } = await family();
    const answer = await whatIf(sister.id, { clutches: [{ id: first.id, sires: [], dams: [] }] });
    expect(answer.assumed.inbreeding).toMatchObject({ expected: 0, nothingKnown: true, bothParentsKnown: 0 });
    expect(answer.shares.find(({ assumed }) => assumed > 0)).toMatchObject({
      unknownParentOf: { id: first.id },
      assumed: 1,
    });
  });
});

describe('an assumption is refused', () => {
  it('that would make an animal its own ancestor, naming the loop', async () => {
    const { first, young, brother } = await family();
    const answer = await ask(young.id, { clutches: [{ id: first.id, sires: [{ individualId: young.id }] }] });
    // the young hatched on no day that is recorded, so that its age does not speak against it
    expect(answer.status).toBe(409);
    expect(bodyOf<ProblemBody>(answer)).toMatchObject({ type: '/api/problems/loop' });
    expect(bodyOf<ProblemBody>(answer).detail).toContain(young.number);
    expect(bodyOf<ProblemBody & { members: string[] }>(answer).members.join()).toMatch(
      new RegExp(`${young.number}|${brother.number}`),
    );
  });

  it('in a clutch beside the ancestry too', async () => {
    const { first, young, sire } = await family();
    await ask(sire.id, { clutches: [{ id: first.id, sires: [{ individualId: young.id }] }] }).expect(409);
  });

  it('that names a parent younger than the clutch', async () => {
    const { first, young } = await family();
    const late = await animal({ sex: 'male', hatched: '2019-01-01' });
    const answer = await ask(young.id, { clutches: [{ id: first.id, sires: [{ individualId: late.id }] }] });
    expect(answer.status).toBe(422);
    expect(bodyOf<ProblemBody>(answer).errors).toEqual([
      { pointer: '/clutches/0', detail: textWith(`before its possible parent ${late.number} hatched`) },
    ]);
  });

  it('that names an animal on both sides, twice, of the wrong sex, or one that is not there, at its place', async () => {
    const { first, second, young, sire, dam, brother } = await family();
    const unsexed = await animal({ hatched: '2015-03-01' });
    const errorsOf = async (clutch: object): Promise<readonly { pointer: string }[]> =>
      bodyOf<ProblemBody>(
        await ask(young.id, {
          clutches: [
            { id: second.id, pairs: [] },
            { id: first.id, ...clutch },
          ],
        }).expect(422),
      ).errors;
    const candidate = (individualId: string) => ({ individualId });
    expect(await errorsOf({ sires: [candidate(unsexed.id)], dams: [candidate(unsexed.id)] })).toEqual([
      having({ pointer: '/clutches/1/dams/0/individualId' }),
    ]);
    expect(await errorsOf({ sires: [candidate(sire.id), candidate(sire.id)] })).toEqual([
      having({ pointer: '/clutches/1/sires/1/individualId' }),
    ]);
    expect(await errorsOf({ dams: [candidate(brother.id)] })).toEqual([
      having({ pointer: '/clutches/1/dams/0/individualId' }),
    ]);
    expect(await errorsOf({ sires: [candidate(newId())] })).toEqual([
      having({ pointer: '/clutches/1/sires/0/individualId' }),
    ]);
    expect(await errorsOf({ pairs: [{ a: dam.id, b: dam.id }] })).toEqual([
      having({ pointer: '/clutches/1/pairs/0/b' }),
    ]);
    expect(await errorsOf({ sires: [candidate(sire.id)], pairs: [{ a: sire.id, b: dam.id }] })).toEqual([
      having({ pointer: '/clutches/1/pairs' }),
    ]);
    expect(await errorsOf({})).toEqual([having({ pointer: '/clutches/1' })]);
  });

  it.each([
    [{ sources: [{ id: newId(), baseKinship: 0.1 }] }, '/sources/0/id'],
    [{ clutches: [{ id: newId(), sires: [] }] }, '/clutches/0/id'],
    [{ sources: [{ id: newId(), baseKinship: 1.1 }] }, '/sources/0/baseKinship'],
    [{ sources: [{ id: newId(), baseKinship: '0.1' }] }, '/sources/0/baseKinship'],
    [{ sources: [{ id: 'import', baseKinship: 0.1 }] }, '/sources/0/id'],
    [{ clutches: [{ id: newId(), sires: [{ individualId: null, weight: -1 }] }] }, '/clutches/0/sires/0/weight'],
    [{ assume: [] }, '/assume'],
    [{ sources: null }, '/sources'],
  ])('where it says %j', async (body, pointer) => {
    const { id } = await animal({});
    const answer = await ask(id, body).expect(422);
    expect(bodyOf<ProblemBody>(answer).errors).toEqual([having({ pointer })]);
  });

  it('that names a source or a clutch twice', async () => {
    const { source, first, young } = await family();
    const answer = await ask(young.id, {
      sources: [
        { id: source.id, baseKinship: 0 },
        { id: source.id, baseKinship: 1 },
      ],
      clutches: [
        { id: first.id, sires: [] },
        { id: first.id, sires: [] },
      ],
    }).expect(422);
    expect(bodyOf<ProblemBody>(answer).errors.map(({ pointer }) => pointer)).toEqual([
      '/sources/1/id',
      '/clutches/1/id',
    ]);
  });

  it('for an animal that is not there', async () => {
    await ask('1-1', {}).expect(404);
  });
});

describe('what is private', () => {
  it('stands in the answer without a name and can be assumed by nobody who may not see it', async () => {
    const keeper = await api.addKeeper('Owner of what is private');
    const own = new Factory(keeper.http);
    const reader = await api.addKeeper('Reader of what is not');
    const hidden = { visibility: 'private', speciesId };
    const source = await own.source({ baseKinship: 0.1, visibility: 'private' });
    const sires = [
      await own.individual({ ...hidden, sex: 'male', sourceId: source.id }),
      await own.individual({ ...hidden, sex: 'male', sourceId: source.id }),
    ];
    const dam = await own.individual({ speciesId, sex: 'female' });
    const clutch = await own.clutch({
      sires: sires.map(({ id }) => ({ individualId: id })),
      dams: [{ individualId: dam.id }],
    });
    const [young] = await own.offspring(clutch.id);
    if (!young) throw new Error('one young was asked for');
    const told = await ask(young.id, {}, reader.http).expect(200);
    expect(told.text).not.toContain(source.id);
    for (const { id, number } of sires) {
      expect(told.text).not.toContain(id);
      expect(told.text).not.toContain(number);
    }
    const answer = bodyOf<WhatIfView>(told);
    expect(answer.sources).toEqual([having({ isPrivate: true, baseKinship: null })]);
    expect(answer.clutches[0]?.sires?.map(({ animal: candidate }) => candidate?.isPrivate)).toEqual([true, true]);
    await ask(young.id, { sources: [{ id: source.id, baseKinship: 0.5 }] }, reader.http).expect(422);
    const [sire] = sires;
    const named = await ask(
      young.id,
      { clutches: [{ id: clutch.id, sires: [{ individualId: sire?.id }] }] },
      reader.http,
    ).expect(422);
    expect(bodyOf<ProblemBody>(named).errors).toEqual([having({ pointer: '/clutches/0/sires/0/individualId' })]);
    // the owner may
    const owned = await ask(young.id, { sources: [{ id: source.id, baseKinship: 0.5 }] }, keeper.http).expect(200);
    expect(bodyOf<WhatIfView>(owned).sources).toEqual([having({ id: source.id, baseKinship: 0.1 })]);
  });
});
