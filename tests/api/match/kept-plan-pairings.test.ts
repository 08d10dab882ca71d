import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { KeptPlanView } from '../../../api/match/kept-plans/kept-plan.view.ts';
import type { JournalEntryView } from '../../../api/journal/journal.view.ts';
import type { PairingView } from '../../../api/register/pairings/pairing.view.ts';
import { bodyOf, having, textWith, type ProblemBody } from '../../support/answer.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { storedEntries } from '../journal/stored-entries.ts';
import { PlanWorld } from './kept-plan-world.ts';

let api: TestApi;
let world: PlanWorld;
let member: TestKeeper;

const pairing = async (id: string | undefined, http = api.http): Promise<PairingView> =>
  bodyOf<PairingView>(await http.get(`/api/v1/pairings/${id}`).expect(200));
const pairings = async (): Promise<number> => {
  const [row] = await api.dataSource.query<{ count: number }[]>('select count(*)::integer as count from pairing');
  return row?.count ?? 0;
};
const errorsOf = (answer: { readonly body: unknown }): string[] =>
  bodyOf<ProblemBody>(answer).errors.map(({ pointer, detail }) => `${pointer}: ${detail}`);

beforeAll(async () => {
  api = await startApi();
  world = new PlanWorld(api);
  member = await api.addKeeper('Member');
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

describe('accepting pairs of a kept plan', () => {
  it('turns them into pairings of whoever accepts, and leaves the others', async () => {
    const line = await world.line('Uno', ['m1', 'm2', 'f1', 'f2']);
    const kept = await world.keep(line, {}, {}, member.http);
    const answer = await world.accept(
      kept,
      { pairs: [{ place: 1, name: 'tank 7' }], joined: '2026-05-01' },
      member.http,
    );
    expect(answer.status, answer.text).toBe(201);
    const view = bodyOf<KeptPlanView>(answer);
    expect(view).toMatchObject({ version: 2, pairCounts: { proposed: 1, accepted: 1, declined: 0 } });
    expect(view.pairs.map(({ state }) => state)).toEqual(['proposed', 'accepted']);
    const made = view.pairs[1]?.pairing;
    expect(made).toMatchObject({ name: 'tank 7', isWithdrawn: false });
    const { keeper, notes, members } = await pairing(made?.id);
    expect({ keeper, notes }).toEqual({ keeper: 'Member', notes: 'From the plan “spring”.' });
    const two = [view.pairs[1]?.male.animal.id, view.pairs[1]?.female.animal.id].sort();
    expect(members.map(({ individual, joined }) => [individual.id, joined]).sort()).toEqual(
      two.map((id) => [id, '2026-05-01']),
    );
    const entry = bodyOf<JournalEntryView>(
      await member.http.get(`/api/v1/journal/${answer.headers['journal-entry']}`).expect(200),
    );
    expect(entry).toMatchObject({ action: 'paired', record: { kind: 'kept_plan', title: 'plan “spring”' } });
    const told = entry.changes.find(({ field }) => field === 'pairs');
    expect(told).toMatchObject({ before: null, after: textWith('accepted as tank 7') });
  });

  it('names a pairing by the codes of the two, but never by that of a private animal', async () => {
    const line = await world.line('Dos', ['m1', 'm2', 'f1', 'f2'], { m1: { visibility: 'private' } });
    const kept = await world.keep(line);
    const view = bodyOf<KeptPlanView>(await world.accept(kept, { pairs: [{ place: 0 }, { place: 1 }] }));
    const nameOf = (code: string) => view.pairs.find(({ male }) => male.animal.code === code)?.pairing?.name;
    expect(nameOf('Dos m1')).toMatch(/^spring, pair [12]$/);
    expect(nameOf('Dos m2')).toMatch(/^Dos m2 × Dos f[12]$/);
  });

  it('is all or nothing: one animal that lives elsewhere at that time, and no pairing is made', async () => {
    const line = await world.line('Tres', ['m1', 'm2', 'f1', 'f2']);
    const kept = await world.keep(line);
    const second = kept.pairs[1]?.male.animal.id ?? '';
    await world.make.pairing({ name: 'old tank', members: [{ individualId: second, joined: '2025-01-01' }] });
    const before = await pairings();
    const answer = await world.accept(kept, { pairs: [{ place: 0 }, { place: 1 }], joined: '2026-05-01' });
    expect(answer.status).toBe(409);
    expect(errorsOf(answer)).toEqual([textWith('/pairs/1: ')]);
    expect(errorsOf(answer).join()).toContain('lives in “old tank”. Say when it left there');
    expect(await pairings()).toBe(before);
    expect((await world.read(kept)).pairCounts).toEqual({ proposed: 2, accepted: 0, declined: 0 });
  });

  it('lets the animals leave where they live, where that is asked for, and undo takes them back there', async () => {
    const line = await world.line('Mudanza', ['m1', 'm2', 'f1', 'f2']);
    const members = ['m1', 'f1', 'f2'].map((code) => ({ individualId: line.ids[code], joined: '2025-01-01' }));
    const old = await world.make.pairing({ name: 'old group', members });
    const kept = await world.keep(line);
    expect(kept.pairs.flatMap(({ now }) => now.livesIn.map(({ name }) => name))).toEqual(Array(3).fill('old group'));
    const all = { pairs: [{ place: 0 }, { place: 1 }], moveOut: true };
    const dayless = await world.accept(kept, all);
    expect([dayless.status, errorsOf(dayless)]).toEqual([422, [textWith('/joined: ')]]);
    const accepted = await world.accept(kept, { ...all, joined: '2026-05-01' });
    expect(accepted.status, accepted.text).toBe(201);
    const leftOf = async () => (await pairing(old.id)).members.map(({ left }) => left);
    expect(await leftOf()).toEqual(['2026-05-01', '2026-05-01', '2026-05-01']);
    expect(bodyOf<KeptPlanView>(accepted).pairs.map(({ now }) => now.livesIn)).toEqual([[], []]);
    const undone = await world.undo(accepted);
    expect(undone.status, undone.text).toBe(201);
    expect(await leftOf()).toEqual([null, null, null]);
    expect((await world.undo(undone)).status).toBe(201);
    expect(await leftOf()).toEqual(['2026-05-01', '2026-05-01', '2026-05-01']);
    expect((await world.read(kept)).pairCounts.accepted).toBe(2);
  });

  it('lets no animal leave a pairing of another keeper', async () => {
    const line = await world.line('Ajena', ['m1', 'f1']);
    await world.make.pairing({ name: 'theirs', members: [{ individualId: line.ids['m1'], joined: '2025-01-01' }] });
    const kept = await world.keep(line, { pairings: 1 }, {}, member.http);
    const asked = { pairs: [{ place: 0 }], moveOut: true, joined: '2026-05-01' };
    const answer = await world.accept(kept, asked, member.http);
    expect([answer.status, errorsOf(answer)]).toEqual([409, [textWith('/pairs/0: ')]]);
    expect(errorsOf(answer).join()).toContain('lives in a pairing of another keeper');
    expect((await world.read(kept)).pairCounts.accepted).toBe(0);
  });

  it('twice at the same moment makes one pairing', async () => {
    const line = await world.line('Cuatro', ['m1', 'f1']);
    const kept = await world.keep(line, { pairings: 1 });
    const before = await pairings();
    const send = (match: string) => world.accept(kept, { pairs: [{ place: 0 }] }, api.http, match);
    const answers = await Promise.all([send('"1"'), send('"1"'), send('*'), send('*')]);
    const statuses = answers.map(({ status }) => status).sort();
    expect(statuses.filter((status) => status === 201)).toHaveLength(1);
    expect(statuses.filter((status) => [409, 412].includes(status))).toHaveLength(3);
    expect(await pairings()).toBe(before + 1);
    const late = await world.accept(kept, { pairs: [{ place: 0 }] });
    expect(late.status).toBe(409);
    expect(bodyOf<ProblemBody>(late).detail).toContain('accepted already and is the pairing “Cuatro m1 × Cuatro f1”');
  });

  it('with one key is done once', async () => {
    const line = await world.line('Cinco', ['m1', 'f1']);
    const kept = await world.keep(line, { pairings: 1 });
    const before = await pairings();
    const send = () =>
      api.http
        .post(`/api/v1/kept-plans/${kept.id}/pairings`)
        .set({ 'If-Match': '"1"', 'Idempotency-Key': 'accept-1' })
        .send({ pairs: [{ place: 0 }] })
        .expect(201);
    expect((await send()).body).toEqual((await send()).body);
    expect(await pairings()).toBe(before + 1);
  });

  it('holds while the register changes all the time', async () => {
    const line = await world.line('Seis', ['m1', 'f1']);
    const kept = await world.keep(line, { pairings: 1 });
    const writers = Array.from({ length: 4 }, () =>
      world.make.individual({ speciesId: line.speciesId, lineId: line.id, sex: 'male', hatched: '2020' }),
    );
    const [answer] = await Promise.all([world.accept(kept, { pairs: [{ place: 0 }] }), ...writers]);
    expect([201, 409]).toContain(answer.status);
    if (answer.status === 409) expect(bodyOf<ProblemBody>(answer).detail).toContain('Try again shortly');
    expect((await world.accept(kept, { pairs: [{ place: 0 }] })).status).toBe(answer.status === 201 ? 409 : 201);
  });

  it.each<[string, object, number, string, string]>([
    ['no pairs', { pairs: [] }, 422, '/pairs', 'at least 1'],
    ['a place that the plan does not have', { pairs: [{ place: 7 }] }, 422, '/pairs/0/place', '0 to 1'],
    ['a pair twice', { pairs: [{ place: 0 }, { place: 0 }] }, 422, '/pairs/1/place', 'each pair once'],
    ['no place', { pairs: [{ place: 'first' }] }, 422, '/pairs/0/place', 'whole number'],
    ['a date that is none', { pairs: [{ place: 0 }], joined: 'soon' }, 422, '/joined', 'must be a date'],
    ['a leave that there is not', { pairs: [{ place: 0 }], allow: ['anything'] }, 422, '/allow', 'cross-lines'],
  ])('refuses %s', async (_, sent, status, pointer, words) => {
    const line = await world.line(`Mal ${pointer} ${words}`.slice(0, 20), ['m1', 'm2', 'f1', 'f2']);
    const answer = await world.accept(await world.keep(line), { ...sent });
    expect(answer.status).toBe(status);
    expect(errorsOf(answer)).toEqual([textWith(`${pointer}: `)]);
    expect(errorsOf(answer).join()).toContain(words);
  });

  it('wants the version that it was decided by, and a plan that there is', async () => {
    const kept = await world.keep(await world.line('Siete', ['m1', 'f1']), { pairings: 1 });
    const at = `/api/v1/kept-plans/${kept.id}`;
    await api.http
      .post(`${at}/pairings`)
      .send({ pairs: [{ place: 0 }] })
      .expect(428);
    await world.change(`kept-plans/${kept.id}`, { name: 'other' });
    expect((await world.accept(kept, { pairs: [{ place: 0 }] }, api.http, '"1"')).status).toBe(412);
    expect((await world.accept({ id: kept.line.id }, { pairs: [{ place: 0 }] })).status).toBe(404);
    await api.http.get(`/api/v1/kept-plans/nothing`).expect(404);
  });
});

describe('never silently', () => {
  it('crosses lines, exceeds the limit or uses a disputed label: only where it is asked for, and with a warning', async () => {
    const line = await world.line('Ocho', ['m1', 'm2', 'm3', 'f1', 'f2', 'f3', 'm0', 'f0']);
    const source = await world.make.source();
    const kept = await world.keep(line, {
      pairings: 3,
      individuals: ['m1', 'm2', 'm3', 'f1', 'f2', 'f3'].map((code) => line.ids[code]),
      fixed: ['1', '2', '3'].map((at) => ({ male: line.ids[`m${at}`], female: line.ids[`f${at}`] })),
    });
    const place = (code: string) => kept.pairs.find(({ male }) => male.animal.id === line.ids[code])?.place ?? -1;
    const [crossing, related, disputed] = [place('m1'), place('m2'), place('m3')];
    const { id: lineId } = await world.make.line({ speciesId: line.speciesId, name: 'Rio Ajeno' });
    await world.change(`individuals/${line.ids['f1']}`, { lineId });
    for (const code of ['m0', 'f0']) await world.change(`individuals/${line.ids[code]}`, { hatched: '2018-03-01' });
    const clutch = await world.make.clutchOf(line.ids['m0'] ?? '', line.ids['f0'] ?? '', { laid: '2020-02-10' });
    for (const code of ['m2', 'f2']) await world.change(`individuals/${line.ids[code]}`, { clutchId: clutch.id });
    await world.change(`individuals/${line.ids['m3']}`, { sourceId: source.id });
    await world.dispute(source.id);
    const all = { pairs: [crossing, related, disputed].map((one) => ({ place: one })) };
    const before = await pairings();
    const silent = await world.accept(kept, all);
    expect(silent.status).toBe(422);
    expect(errorsOf(silent)).toEqual([
      '/pairs/0: The young would be a cross of Ocho and Rio Ajeno, and belong to neither. Leave the pair out, or ask for it by cross-lines in allow.',
      '/pairs/1: F of the young would be 0.25, above the limit of the plan, 0.125. Leave the pair out, or ask for it by above-limit in allow.',
      '/pairs/2: The label of the male is disputed: the young would carry that on. Leave the pair out, or ask for it by disputed in allow.',
    ]);
    expect((await world.accept(kept, { ...all, allow: ['cross-lines', 'disputed'] })).status).toBe(422);
    expect(await pairings()).toBe(before);
    const view = await world.read(kept);
    expect(view.pairs[related]?.now).toMatchObject({ needs: ['above-limit'], canBeAccepted: true });
    const allow = ['cross-lines', 'above-limit', 'disputed'];
    const asked = await world.accept(kept, { ...all, allow });
    expect(asked.status, asked.text).toBe(201);
    const accepted = bodyOf<KeptPlanView>(asked).pairs[related];
    expect(accepted?.acceptedInSpiteOf).toEqual(['F of the young would be 0.25, above the limit of the plan, 0.125.']);
    expect((await pairing(accepted?.pairing?.id)).notes).toBe(
      'From the plan “spring”. F of the young would be 0.25, above the limit of the plan, 0.125.',
    );
  });

  it('accepts what can be made no more', async () => {
    const line = await world.line('Nueve', ['m1', 'm2', 'f1', 'f2']);
    const kept = await world.keep(line);
    const [first] = kept.pairs;
    await world.change(`individuals/${first?.male.animal.id}`, { status: 'died' });
    const answer = await world.accept(kept, {
      pairs: [{ place: 0 }],
      allow: ['cross-lines', 'above-limit', 'disputed'],
    });
    expect(answer.status).toBe(422);
    expect(errorsOf(answer)).toEqual([textWith(`${first?.male.animal.code} (${first?.male.animal.number}) died.`)]);
    expect((await world.accept(kept, { pairs: [{ place: 1 }] })).status).toBe(201);
  });

  it('accepts an animal that whoever accepts may not see', async () => {
    const line = await world.line('Diez', ['m1', 'f1']);
    const kept = await world.keep(line, { pairings: 1 }, {}, member.http);
    await world.change(`individuals/${line.ids['f1']}`, { visibility: 'private' });
    const answer = await world.accept(kept, { pairs: [{ place: 0 }] }, member.http);
    expect(answer.status).toBe(422);
    expect(errorsOf(answer)).toEqual([textWith('you may not see')]);
  });
});

describe('deciding and taking back', () => {
  it('declines pairs with a reason, and puts them back', async () => {
    const line = await world.line('Once', ['m1', 'm2', 'f1', 'f2']);
    const kept = await world.keep(line);
    const declined = await world.decide(kept, { pairs: [{ place: 0 }], state: 'declined', reason: 'no room' });
    expect(declined.status, declined.text).toBe(200);
    expect(bodyOf<KeptPlanView>(declined).pairs[0]).toMatchObject({ state: 'declined', reason: 'no room' });
    const refused = await world.accept(kept, { pairs: [{ place: 0 }] });
    expect([refused.status, bodyOf<ProblemBody>(refused).detail]).toEqual([409, textWith('declined. Put it back')]);
    const undone = await world.undo(declined);
    expect(undone.status, undone.text).toBe(201);
    expect((await world.read(kept)).pairs[0]).toMatchObject({ state: 'proposed', reason: null });
    expect((await world.undo(undone)).status).toBe(201);
    expect((await world.read(kept)).pairs[0]).toMatchObject({ state: 'declined', reason: 'no room' });
    const back = await world.decide(kept, { pairs: [{ place: 0 }], state: 'proposed' });
    expect(bodyOf<KeptPlanView>(back).pairs[0]).toMatchObject({ state: 'proposed', reason: null });
    expect((await world.decide(kept, { pairs: [{ place: 0 }], state: 'accepted' })).status).toBe(422);
  });

  it('undoes an accepting whole: the pairings are withdrawn and the pairs open, and all of it comes back', async () => {
    const line = await world.line('Doce', ['m1', 'm2', 'f1', 'f2']);
    const kept = await world.keep(line, {}, {}, member.http);
    const accepted = await world.accept(kept, { pairs: [{ place: 0 }, { place: 1 }] }, member.http);
    const ids = bodyOf<KeptPlanView>(accepted).pairs.map(({ pairing: made }) => made?.id ?? '');
    const undone = await world.undo(accepted, member.http);
    expect(undone.status, undone.text).toBe(201);
    expect(undone.body).toMatchObject({ action: 'pairing-undone', record: { id: kept.id } });
    for (const id of ids) expect((await pairing(id)).withdrawn?.reason).toBe('Its entry was undone');
    expect((await world.read(kept)).pairCounts).toEqual({ proposed: 2, accepted: 0, declined: 0 });
    const again = await world.undo(undone, member.http);
    expect(again.body).toMatchObject({ action: 'pairing-restored' });
    for (const id of ids) expect((await pairing(id)).withdrawn).toBeNull();
    const view = await world.read(kept);
    expect(view.pairs.map(({ pairing: made }) => made?.id)).toEqual(ids);
    expect((await world.undo(again, member.http)).status).toBe(201);
    for (const id of ids) {
      const entries = await storedEntries(api.dataSource, 'record_id = $1', [id]);
      expect(entries.map(({ action }) => action)).toEqual(['added', 'withdrawn', 'restored', 'withdrawn']);
    }
  });

  it('does not undo an accepting once one of its pairings was changed, or a clutch laid in it', async () => {
    const line = await world.line('Trece', ['m1', 'm2', 'f1', 'f2']);
    const kept = await world.keep(line);
    const accepted = await world.accept(kept, { pairs: [{ place: 0 }, { place: 1 }] });
    const [first] = bodyOf<KeptPlanView>(accepted).pairs;
    await world.change(`pairings/${first?.pairing?.id}`, { name: 'moved' });
    const changed = await world.undo(accepted);
    expect(changed.status).toBe(409);
    // the entry of the pairing itself is of the same moment as that of the plan: it may stand behind
    expect(bodyOf<{ since: { action: string }[] }>(changed).since[0]?.action).toBe('changed');
    const own = await world.keep(await world.line('Catorce', ['m1', 'f1']), { pairings: 1 });
    const laid = await world.accept(own, { pairs: [{ place: 0 }] });
    const id = bodyOf<KeptPlanView>(laid).pairs[0]?.pairing?.id;
    await world.make.clutch({ pairingId: id, laid: '2026-06-01' });
    const needed = await world.undo(laid);
    expect(needed.status).toBe(409);
    expect(needed.body).toMatchObject({ dependants: [having({ kind: 'clutch' })] });
    expect((await world.read(own)).pairs[0]?.state).toBe('accepted');
  });

  it('puts a pair back whose pairing was withdrawn, and accepts it again', async () => {
    const kept = await world.keep(await world.line('Quince', ['m1', 'f1']), { pairings: 1 });
    const accepted = bodyOf<KeptPlanView>(await world.accept(kept, { pairs: [{ place: 0 }] }));
    const id = accepted.pairs[0]?.pairing?.id;
    const back = () => world.decide(kept, { pairs: [{ place: 0 }], state: 'proposed' });
    const standing = await back();
    expect([standing.status, bodyOf<ProblemBody>(standing).detail]).toEqual([409, textWith('withdraw that pairing')]);
    await api.http
      .post(`/api/v1/pairings/${id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'fought' })
      .expect(201);
    const view = await world.read(kept);
    expect(view.pairs[0]).toMatchObject({ pairing: { isWithdrawn: true }, now: { canBeAccepted: false } });
    expect(view.pairs[0]?.now.changes).toMatchObject([{ kind: 'pairing-withdrawn', stops: false }]);
    expect((await back()).status).toBe(200);
    const again = bodyOf<KeptPlanView>(await world.accept(kept, { pairs: [{ place: 0 }] }));
    expect(again.pairs[0]?.pairing).toMatchObject({ isWithdrawn: false });
    expect(again.pairs[0]?.pairing?.id).not.toBe(id);
  });
});
