import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PairingView } from '../../../api/register/pairings/pairing.view.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { containing } from '../../unit/exchange/matchers.ts';
import { Registrar } from './registrar.ts';

let api: TestApi;
let registrar: Registrar;

beforeAll(async () => {
  api = await startApi();
  registrar = new Registrar(api);
});
afterAll(() => api.close());

describe('undoing a merging', () => {
  it('puts everything back as it was, and can be done again', async () => {
    const line = await registrar.factory.line({ speciesId: await registrar.speciesId() });
    const parents = await registrar.factory.clutch({ sires: [{ individualId: (await registrar.twice())[0].id }] });
    const [kept, duplicate] = await registrar.twice(
      { code: 'K-9', hatched: '2020' },
      { code: 'D-9', lineId: line.id, clutchId: parents.id, hatched: '2020-04', notes: 'n', visibility: 'private' },
    );
    await registrar.factory.clutch({ sires: [{ individualId: duplicate.id }, { individualId: null, weight: 2 }] });
    await registrar.factory.clutch({ sires: [{ individualId: kept.id }, { individualId: duplicate.id }] });
    await registrar.factory.pairing({ members: [{ individualId: duplicate.id, joined: '2021' }] });
    await registrar.factory.observation({ individualId: duplicate.id });
    const before = await registrar.wholeRegister();
    for (let round = 0; round < 2; round++) {
      const take = [
        'code',
        'line',
        'sex',
        'origin',
        'hatched',
        'outOfWater',
        'status',
        'visibility',
        'keeper',
        'notes',
      ];
      const { id } = await registrar.merge(kept, duplicate, { take });
      expect(await registrar.wholeRegister()).not.toEqual(before);
      expect((await registrar.undo(id).expect(200)).body).toMatchObject({ id, undoneAt: containing('T') });
      expect(await registrar.wholeRegister()).toEqual(before);
      expect((await registrar.undo(id).expect(409)).text).toContain('undone already');
    }
  });

  it('is refused where what moved or was taken was changed since, which is named; changed back, it is done', async () => {
    const [kept, duplicate] = await registrar.twice({ notes: 'k' }, { notes: 'd' });
    const clutch = await registrar.factory.clutch({ sires: [{ individualId: duplicate.id }], laid: '2021-04-12' });
    const pairing = await registrar.factory.pairing({
      name: 'Tank X',
      members: [
        { individualId: kept.id, joined: '2020', left: '2023' },
        { individualId: duplicate.id, joined: '2021', left: '2024' },
      ],
    });
    const { id } = await registrar.merge(kept, duplicate, { take: ['notes'] });
    await registrar.change('individuals', kept, { notes: 'later' }).expect(200);
    await registrar
      .change('clutches', clutch, { sires: [{ individualId: kept.id }, { individualId: null }] })
      .expect(200);
    const member = ((await api.http.get(`/api/v1/pairings/${pairing.id}`)).body as PairingView).members[0];
    const stay = `/api/v1/pairings/${pairing.id}/members/${member?.id}`;
    await api.http.patch(stay).set('If-Match', '*').send({ left: '2025' }).expect(200);
    const answer = await registrar.undo(id).expect(409);
    expect((answer.body as { changed: unknown[] }).changed).toMatchObject([
      { kind: 'individual', id: kept.id, detail: containing('notes') },
      { kind: 'clutch', id: clutch.id, name: 'clutch of 2021-04-12' },
      { kind: 'pairing', id: pairing.id, name: 'Tank X' },
    ]);
    await registrar.change('individuals', kept, { notes: 'd' }).expect(200);
    await registrar.change('clutches', clutch, { sires: [{ individualId: kept.id }] }).expect(200);
    await api.http.patch(stay).set('If-Match', '*').send({ left: '2024' }).expect(200);
    await registrar.undo(id).expect(200);
    expect(await registrar.animal(kept)).toMatchObject({ notes: 'k', young: [] });
  });

  it('is refused where the code of the duplicate has another holder meanwhile', async () => {
    const [kept, duplicate] = await registrar.twice({}, { code: 'TAKEN-1' });
    const { id } = await registrar.merge(kept, duplicate);
    const holder = await registrar.factory.individual({ speciesId: await registrar.speciesId(), code: 'TAKEN-1' });
    expect((await registrar.undo(id).expect(409)).body).toMatchObject({
      changed: [{ id: holder.id, detail: containing('TAKEN-1') }],
    });
    await registrar.change('individuals', holder, { code: 'TAKEN-2' }).expect(200);
    await registrar.undo(id).expect(200);
  });

  it('is refused where it would close a loop by now', async () => {
    const [kept, duplicate] = await registrar.twice();
    const own = await registrar.factory.clutch({ sires: [{ individualId: duplicate.id }] });
    const [young] = await registrar.factory.offspring(own.id);
    const origin = await registrar.factory.clutch({});
    await registrar.change('individuals', duplicate, { clutchId: origin.id }).expect(200);
    const { id } = await registrar.merge(kept, duplicate);
    // the duplicate is nobody's parent now, so its own clutch may descend from what was its young
    await registrar.change('clutches', origin, { sires: [{ individualId: young?.id }] }).expect(200);
    const answer = await registrar.undo(id).expect(409);
    expect(answer.body).toMatchObject({ title: 'An animal cannot be its own ancestor' });
    expect(await registrar.animal(duplicate)).toMatchObject({ mergedInto: { id: kept.id } });
  });

  it('undoes a chain in reverse order, and numbers lead to the last record meanwhile', async () => {
    const [first, second] = await registrar.twice();
    const [third] = await registrar.twice();
    const clutch = await registrar.factory.clutch({ sires: [{ individualId: third.id }] });
    const before = await registrar.wholeRegister();
    const one = await registrar.merge(second, third);
    const two = await registrar.merge(first, second);
    expect(await registrar.animal(third)).toMatchObject({ mergedInto: { id: first.id } });
    expect(await registrar.clutch(clutch)).toMatchObject({ parents: { sires: [{ individual: { id: first.id } }] } });
    const found = await api.http.get(`/api/v1/individuals?number=${third.number}`);
    expect((found.body as { items: { id: string }[] }).items).toMatchObject([{ id: first.id }]);
    const early = await registrar.undo(one.id).expect(409);
    expect(early.body).toMatchObject({ changed: [{ kind: 'merge', id: two.id, detail: containing('Undo it first') }] });
    await registrar.undo(two.id).expect(200);
    expect(await registrar.animal(third)).toMatchObject({ mergedInto: { id: second.id } });
    await registrar.undo(one.id).expect(200);
    expect(await registrar.wholeRegister()).toEqual(before);
  });
});

describe('the journal of a merging', () => {
  it('stands in the history of both records and of what moved, and the entry undoes and redoes it', async () => {
    const [kept, duplicate] = await registrar.twice();
    const clutch = await registrar.factory.clutch({ sires: [{ individualId: duplicate.id }] });
    const before = await registrar.wholeRegister();
    const answer = await registrar.post(kept, duplicate).expect(201);
    const merged = await registrar.wholeRegister();
    const entry = answer.headers['journal-entry'] ?? '';
    for (const { id } of [kept, duplicate, clutch]) {
      const history = (await api.http.get(`/api/v1/journal?record=${id}`).expect(200)).body as {
        items: { id: string }[];
      };
      expect(history.items[0]).toMatchObject({ id: entry, action: 'merged', reason: 'same spots' });
    }
    const undone = await api.http.post(`/api/v1/journal/${entry}/reversal`).expect(201);
    expect(undone.body).toMatchObject({ action: 'unmerged', reverses: entry });
    expect(await registrar.wholeRegister()).toEqual(before);
    const again = await api.http.post(`/api/v1/journal/${(undone.body as { id: string }).id}/reversal`).expect(201);
    expect(again.body).toMatchObject({ action: 'merged' });
    expect(withoutMoments(await registrar.wholeRegister())).toEqual(withoutMoments(merged));
  });
});

/** When a record was withdrawn is another moment the second time. */
const withoutMoments = (state: unknown): unknown =>
  JSON.parse(JSON.stringify(state).replaceAll(/"withdrawn_at":"[^"]*"/g, '"withdrawn_at":"then"'));

describe('at the same moment', () => {
  const statuses = (answers: { status: number }[]): number[] => answers.map(({ status }) => status).sort();

  it('two mergings of the same records: one is made', async () => {
    const [kept, duplicate] = await registrar.twice();
    expect(statuses(await Promise.all([registrar.post(kept, duplicate), registrar.post(duplicate, kept)]))).toEqual([
      201, 422,
    ]);
    const [one, other] = [await registrar.animal(kept), await registrar.animal(duplicate)];
    expect([one.withdrawn === null, other.withdrawn === null].sort()).toEqual([false, true]);
  });

  it('a merging and an edit of either: nothing is lost', async () => {
    for (let round = 0; round < 4; round++) {
      const [kept, duplicate] = await registrar.twice();
      const edited = round % 2 === 0 ? kept : duplicate;
      const [merged, edit] = await Promise.all([
        registrar.post(kept, duplicate),
        registrar.change('individuals', edited, { notes: 'edited' }),
      ]);
      expect(merged.status).toBe(201);
      expect([200, 409]).toContain(edit.status);
      if (edit.status === 200) expect(await registrar.animal(edited)).toMatchObject({ notes: 'edited' });
    }
  });

  it('a merging and a clutch, a stay, a remark or a claim of the duplicate: it is with the kept record, or was refused', async () => {
    for (let round = 0; round < 12; round++) {
      const [kept, duplicate] = await registrar.twice();
      const individualId = duplicate.id;
      const other = [
        () => api.http.post('/api/v1/clutches').send({ sires: [{ individualId }] }),
        () => api.http.post('/api/v1/pairings').send({ name: 'At once', members: [{ individualId }] }),
        () => api.http.post('/api/v1/observations').send({ individualId, kind: 'note', observedOn: '2024', text: 'x' }),
        () => api.http.post('/api/v1/claims').send({ individualId, aspect: 'locality', value: 'Quebrada' }),
      ][round % 4];
      if (!other) throw new Error('there are four');
      const [merged, written] = await Promise.all([registrar.post(kept, duplicate), other()]);
      expect(merged.status).toBe(201);
      expect([201, 422]).toContain(written.status);
      const now = await registrar.animal(kept);
      const claims = (await api.http.get(`/api/v1/claims?individualId=${kept.id}`).expect(200)).body as {
        items: unknown[];
      };
      const count = now.young.length + now.pairings.length + now.observations.length + claims.items.length;
      expect(count).toBe(written.status === 201 ? 1 : 0);
    }
  });

  it('mergings that close a loop only together: one of them is refused', async () => {
    for (let round = 0; round < 4; round++) {
      const [a, b] = await registrar.twice();
      const [c, d] = await registrar.twice();
      // a is the parent of c, d the parent of b: a = b and c = d would make each its own grandparent
      const ofA = await registrar.factory.clutch({ sires: [{ individualId: a.id }] });
      const ofD = await registrar.factory.clutch({ sires: [{ individualId: d.id }] });
      await registrar.change('individuals', c, { clutchId: ofA.id }).expect(200);
      await registrar.change('individuals', b, { clutchId: ofD.id }).expect(200);
      const answers = await Promise.all([registrar.post(a, b, { take: ['origin'] }), registrar.post(c, d)]);
      expect(statuses(answers)).toEqual([201, 409]);
    }
  });
});
