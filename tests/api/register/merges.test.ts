import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { IndividualItemView, IndividualView } from '../../../api/register/individuals/individual.view.ts';
import type { PairingView } from '../../../api/register/pairings/pairing.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { containing } from '../../unit/exchange/matchers.ts';
import { Registrar } from './registrar.ts';

let api: TestApi;
let registrar: Registrar;
let keeper: TestKeeper;

const noProvenance = { claims: 0, photographs: 0, acknowledgements: 0 };

beforeAll(async () => {
  api = await startApi();
  registrar = new Registrar(api);
  keeper = await api.addKeeper('No registrar');
});
afterAll(() => api.close());

describe('two records of one animal, side by side', () => {
  it('show every field, which differ, what would move, and nothing that stands against it', async () => {
    const line = await registrar.factory.line({ speciesId: await registrar.speciesId() });
    const [kept, duplicate] = await registrar.twice(
      { hatched: '2020', code: 'K-1' },
      { hatched: '2020-05-01', sexBasis: 'calling', lineId: line.id, died: '2024-02', code: 'D-1' },
    );
    await registrar.factory.clutch({ sires: [{ individualId: duplicate.id }] });
    await registrar.factory.pairing({ members: [{ individualId: duplicate.id, joined: '2021', left: '2022' }] });
    await registrar.factory.observation({ individualId: duplicate.id });
    const { fields, moves, obstacles } = await registrar.compare(kept, duplicate);
    expect(moves).toEqual({ clutches: 1, stays: 1, remarks: 1, confirmations: 0, records: 0, ...noProvenance });
    expect(obstacles).toEqual([]);
    expect(fields.filter((field) => field.isDifferent)).toEqual([
      { field: 'code', kept: 'K-1', duplicate: 'D-1', isDifferent: true },
      { field: 'line', kept: null, duplicate: line.name, isDifferent: true },
      { field: 'sex', kept: 'male', duplicate: 'male, by calling', isDifferent: true },
      { field: 'hatched', kept: '2020', duplicate: '2020-05-01', isDifferent: true },
      { field: 'status', kept: 'alive', duplicate: 'died, 2024-02', isDifferent: true },
    ]);
  });

  it('may be named by their numbers; one that is not there or stands no more is refused at its place', async () => {
    const [kept, duplicate] = await registrar.twice();
    await api.http.get(`/api/v1/merges/comparison?kept=${kept.number}&duplicate=${duplicate.number}`).expect(200);
    const missing = await api.http.get(`/api/v1/merges/comparison?kept=${kept.number}&duplicate=nobody`).expect(422);
    expect(missing.body).toMatchObject({ errors: [{ pointer: '/duplicate' }] });
    const same = await api.http.get(`/api/v1/merges/comparison?kept=${kept.number}&duplicate=${kept.id}`).expect(422);
    expect(same.body).toMatchObject({ errors: [{ pointer: '/duplicate', detail: containing('same record') }] });
  });

  it('are for registrars alone', async () => {
    const [kept, duplicate] = await registrar.twice();
    const path = `/api/v1/merges/comparison?kept=${kept.id}&duplicate=${duplicate.id}`;
    const body = { keptId: kept.id, duplicateId: duplicate.id, take: [], reason: 'x' };
    await keeper.http.get(path).expect(403);
    await keeper.http.post('/api/v1/merges').send(body).expect(403);
    const { id } = await registrar.merge(kept, duplicate);
    await keeper.http.get(`/api/v1/merges/${id}`).expect(403);
    await keeper.http.delete(`/api/v1/merges/${id}`).expect(403);
    await api.stranger.delete(`/api/v1/merges/${id}`).expect(401);
  });
});

describe('a merging', () => {
  it('moves all that names the duplicate, takes the fields that were chosen, and keeps the number of the duplicate findable', async () => {
    const [kept, duplicate] = await registrar.twice(
      { code: 'K-2', notes: 'kept' },
      { code: 'D-2', notes: 'duplicate', died: '2024' },
    );
    const dam = await registrar.factory.individual({ speciesId: await registrar.speciesId(), sex: 'female' });
    const own = await registrar.factory.clutchOf(kept.id, dam.id);
    const other = await registrar.factory.clutchOf(duplicate.id, dam.id);
    const pairing = await registrar.factory.pairing({
      members: [{ individualId: duplicate.id, joined: '2021', left: '2022' }],
    });
    const remark = await registrar.factory.observation({ individualId: duplicate.id, text: 'limps' });
    const made = await registrar.merge(kept, duplicate, { take: ['code', 'status'] });
    expect(made).toMatchObject({
      kept: { id: kept.id, number: kept.number, code: 'D-2' },
      duplicate: { id: duplicate.id, number: duplicate.number },
      taken: ['code', 'status'],
      moved: { clutches: 1, stays: 1, remarks: 1, confirmations: 0, records: 0 },
      reason: 'same spots',
      keeper: 'Keeper',
      undoneAt: null,
    });
    const now = await registrar.animal(kept);
    expect(now).toMatchObject({ code: 'D-2', notes: 'kept', status: 'died', died: '2024', mergedInto: null });
    expect(now.merges).toEqual([{ id: duplicate.id, number: duplicate.number, mergeId: made.id }]);
    expect(now.young.map(({ clutch }) => clutch.id).sort()).toEqual([own.id, other.id].sort());
    expect(now.pairings.map(({ id }) => id)).toEqual([pairing.id]);
    expect(now.observations.map(({ id }) => id)).toEqual([remark.id]);
    expect(await registrar.clutch(other)).toMatchObject({
      version: 2,
      parents: { sires: [{ individual: { id: kept.id } }] },
    });

    const gone = await registrar.animal(duplicate);
    expect(gone).toMatchObject({
      withdrawn: { reason: 'same spots' },
      mergedInto: { id: kept.id, number: kept.number },
      number: duplicate.number,
      code: 'D-2',
      young: [],
    });
    for (const query of [`number=${duplicate.number}`, `q=${duplicate.number}`]) {
      const found = (await api.http.get(`/api/v1/individuals?${query}`).expect(200)).body as {
        items: IndividualItemView[];
      };
      expect(found.items.map(({ id }) => id)).toEqual([kept.id]);
    }
  });

  it('leaves a record that is neither changed nor restored nor named anew, and says where to turn', async () => {
    const [kept, duplicate] = await registrar.twice();
    await registrar.merge(kept, duplicate);
    expect((await registrar.change('individuals', duplicate, { notes: 'x' }).expect(409)).body).toMatchObject({
      detail: containing('merged into another'),
    });
    const restored = await api.http.delete(`/api/v1/individuals/${duplicate.id}/withdrawal`).set('If-Match', '*');
    expect([restored.status, restored.text]).toEqual([409, containing('undo the merging')]);
    const named = await api.http.post('/api/v1/clutches').send({ sires: [{ individualId: duplicate.number }] });
    expect([named.status, named.text]).toEqual([422, containing(`merged into ${kept.number}`)]);
    const again = await registrar.post(kept, duplicate).expect(422);
    expect(again.body).toMatchObject({ errors: [{ pointer: '/duplicateId', detail: containing('already') }] });
  });

  it('takes the origin as one thing, and ranks the young of both below it', async () => {
    const source = await registrar.factory.source();
    const [kept, duplicate] = await registrar.twice({ sourceId: source.id });
    const [parent] = await registrar.twice();
    const clutch = await registrar.factory.clutch({ sires: [{ individualId: parent.id }] });
    await registrar.change('individuals', duplicate, { clutchId: clutch.id }).expect(200);
    const below = await registrar.factory.clutch({ sires: [{ individualId: kept.id }] });
    expect((await registrar.compare(kept, duplicate)).obstacles).toMatchObject([{ code: 'origin', blocks: false }]);
    await registrar.merge(kept, duplicate, { take: ['origin'] });
    expect(await registrar.animal(kept)).toMatchObject({ source: null, clutch: { id: clutch.id } });
    const closing = await registrar.change('clutches', clutch, { sires: [{ individualId: kept.id }] });
    expect(closing.body).toMatchObject({ title: 'An animal cannot be its own ancestor' });
    const [young] = await registrar.factory.offspring(below.id);
    const loop = await registrar.change('clutches', clutch, { sires: [{ individualId: young?.id }] });
    expect(loop.status).toBe(409);
  });

  it('adds the odds where a clutch named both, and leaves those of the others', async () => {
    const [kept, duplicate] = await registrar.twice();
    const [other] = await registrar.twice();
    const clutch = await registrar.factory.clutch({
      sires: [
        { individualId: kept.id, weight: 0.2, reason: 'calling' },
        { individualId: duplicate.id, weight: 0.3, reason: 'seen' },
        { individualId: other.id, weight: 0.5 },
      ],
    });
    expect((await registrar.compare(kept, duplicate)).obstacles).toMatchObject([{ code: 'one-clutch', blocks: false }]);
    const { id } = await registrar.merge(kept, duplicate);
    const { parents } = await registrar.clutch(clutch);
    expect(parents).toMatchObject({
      sires: [
        { individual: { id: kept.id }, reason: 'calling; seen' },
        { individual: { id: other.id }, probability: 0.5 },
      ],
    });
    await registrar.undo(id).expect(200);
    expect((await registrar.clutch(clutch)).parents).toEqual(clutch.parents);
  });

  it('adds the odds of pairs likewise', async () => {
    const make = async (): Promise<IndividualView> =>
      registrar.factory.individual({ speciesId: await registrar.speciesId() });
    const [kept, duplicate, third] = [await make(), await make(), await make()];
    const clutch = await registrar.factory.clutch({
      pairs: [
        { a: kept.id, b: third.id, weight: 1 },
        { a: third.id, b: duplicate.id, weight: 3 },
      ],
    });
    const { id } = await registrar.merge(kept, duplicate);
    expect((await registrar.clutch(clutch)).parents).toMatchObject({ mode: 'pairs', pairs: [{ probability: 1 }] });
    await registrar.undo(id).expect(200);
    expect((await registrar.clutch(clutch)).parents).toEqual(clutch.parents);
  });

  it('joins stays that overlap in one pairing, and keeps those that do not', async () => {
    const [kept, duplicate] = await registrar.twice();
    const pairing = await registrar.factory.pairing({
      members: [
        { individualId: kept.id, joined: '2020-01-01', left: '2020-06-01' },
        { individualId: duplicate.id, joined: '2020-03-01', left: '2020-09-01' },
        { individualId: duplicate.id, joined: '2022-01-01', left: '2022-02-01' },
      ],
    });
    const before = await registrar.wholeRegister();
    const { id } = await registrar.merge(kept, duplicate);
    const { members } = (await api.http.get(`/api/v1/pairings/${pairing.id}`)).body as PairingView;
    expect(members.map(({ joined, left, individual }) => [joined, left, individual.id])).toEqual([
      ['2020-01-01', '2020-09-01', kept.id],
      ['2022-01-01', '2022-02-01', kept.id],
    ]);
    await registrar.undo(id).expect(200);
    expect(await registrar.wholeRegister()).toEqual(before);
  });

  it('says 412 where either was changed since they were compared', async () => {
    const [kept, duplicate] = await registrar.twice();
    await registrar.change('individuals', duplicate, { notes: 'it is another one' }).expect(200);
    const answer = await registrar.post(kept, duplicate, { keptVersion: 1, duplicateVersion: 1 }).expect(412);
    expect(answer.body).toMatchObject({ current: { duplicate: { notes: 'it is another one' } } });
    await registrar.post(kept, duplicate, { keptVersion: 1, duplicateVersion: 2 }).expect(201);
  });

  it('refuses a request that says nothing sensible, at its field', async () => {
    const [kept, duplicate] = await registrar.twice();
    for (const [fields, pointer] of [
      [{ take: ['species'] }, '/take'],
      [{ take: ['code', 'code'] }, '/take'],
      [{ take: null }, '/take'],
      [{ reason: '' }, '/reason'],
      [{ keptId: 'x' }, '/keptId'],
      [{ duplicateId: kept.id }, '/duplicateId'],
    ] as const)
      expect((await registrar.post(kept, duplicate, fields).expect(422)).body).toMatchObject({ errors: [{ pointer }] });
    await registrar.post(kept, { id: crypto.randomUUID() }).expect(404);
    await api.http.get('/api/v1/merges/none').expect(404);
    await registrar.undo(crypto.randomUUID()).expect(404);
  });
});

describe('what stands against a merging refuses it and is named', () => {
  const refused = async (kept: IndividualView, duplicate: IndividualView, code: string): Promise<void> => {
    const before = await registrar.wholeRegister();
    expect((await registrar.compare(kept, duplicate)).obstacles[0]).toMatchObject({ code, blocks: true });
    const answer = await registrar.post(kept, duplicate).expect(409);
    if (code !== 'ancestor') expect(answer.body).toMatchObject({ obstacles: [{ code }] });
    expect(await registrar.wholeRegister()).toEqual(before);
  };

  it('two species', async () => {
    const [kept] = await registrar.twice();
    await refused(kept, await registrar.factory.individual({ sex: 'male' }), 'species');
  });

  it('two certain sexes', async () => {
    const [kept, duplicate] = await registrar.twice({}, { sex: 'female' });
    await refused(kept, duplicate, 'sex');
  });

  it('one descends from the other: the way is told, clutch by clutch', async () => {
    const [kept] = await registrar.twice({ code: 'TOP' });
    const first = await registrar.factory.clutch({ sires: [{ individualId: kept.id }], laid: '2020-01-01' });
    const [child] = await registrar.factory.offspring(first.id);
    const second = await registrar.factory.clutch({ sires: [{ individualId: child?.id }], laid: '2022-01-01' });
    const [grandchild] = await registrar.factory.offspring(second.id);
    const duplicate = await registrar.animal({ id: grandchild?.id ?? '' });
    for (const [one, other] of [
      [kept, duplicate],
      [duplicate, kept],
    ] as const) {
      await refused(one, other, 'ancestor');
      const { members, title } = (await registrar.post(one, other)).body as { members: string[]; title: string };
      expect(title).toBe('An animal cannot be its own ancestor');
      expect(members).toEqual([
        `${kept.number} TOP`,
        'clutch of 2020-01-01',
        containing(child?.number ?? ''),
        'clutch of 2022-01-01',
        containing(duplicate.number),
      ]);
    }
  });

  it('both the pair of one clutch, or its sire and its dam', async () => {
    const make = async (): Promise<IndividualView> =>
      registrar.factory.individual({ speciesId: await registrar.speciesId() });
    const [kept, duplicate, third] = [await make(), await make(), await make()];
    await registrar.factory.clutch({ pairs: [{ a: kept.id, b: duplicate.id }] });
    await refused(kept, duplicate, 'pair-of-both');
    await registrar.factory.clutchOf(kept.id, third.id);
    await refused(kept, third, 'both-sides');
  });

  it('a duplicate that is a parent in the role of the other sex, unless its sex is taken', async () => {
    const [kept, duplicate] = await registrar.twice({}, { sex: 'unsexed' });
    await registrar.factory.clutch({ dams: [{ individualId: duplicate.id }] });
    expect((await registrar.post(kept, duplicate).expect(409)).body).toMatchObject({
      obstacles: [{ code: 'role', blocks: true }],
    });
    const before = await registrar.wholeRegister();
    const { id } = await registrar.merge(kept, duplicate, { take: ['sex'] });
    expect(await registrar.animal(kept)).toMatchObject({ sex: 'unsexed' });
    await registrar.undo(id).expect(200);
    expect(await registrar.wholeRegister()).toEqual(before);
  });

  it('two homes at one time', async () => {
    const [kept, duplicate] = await registrar.twice();
    await registrar.factory.pairing({ name: 'Left tank', members: [{ individualId: kept.id, joined: '2020-01-01' }] });
    await registrar.factory.pairing({
      name: 'Right tank',
      members: [{ individualId: duplicate.id, joined: '2021-01-01' }],
    });
    await refused(kept, duplicate, 'stays');
    const { obstacles } = (await registrar.post(kept, duplicate)).body as { obstacles: { detail: string }[] };
    expect(obstacles[0]?.detail).toMatch(/Left tank from 2020-01-01 on while .* Right tank from 2021-01-01 on/);
  });

  it('dates that cannot be right together', async () => {
    const [kept, duplicate] = await registrar.twice({ hatched: '2022' });
    await registrar.factory.clutch({ sires: [{ individualId: duplicate.id }], laid: '2020-05-01' });
    expect((await registrar.post(kept, duplicate).expect(422)).text).toContain('laid before the animal hatched');
  });
});
