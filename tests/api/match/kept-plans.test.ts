import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { KeptPlanItemView, KeptPlanView } from '../../../api/match/kept-plans/kept-plan.view.ts';
import type { PlanView } from '../../../api/match/plan/plan.view.ts';
import { newId } from '../../../api/platform/ids.ts';
import type { Page } from '../../../api/platform/paging.ts';
import { bodyOf, textWith, type ProblemBody } from '../../support/answer.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { PlanWorld, type TestLine } from './kept-plan-world.ts';

let api: TestApi;
let world: PlanWorld;
let member: TestKeeper;
let other: TestKeeper;
let line: TestLine;

const list = async (query: string, http = api.http): Promise<Page<KeptPlanItemView>> =>
  bodyOf<Page<KeptPlanItemView>>(await http.get(`/api/v1/kept-plans?${query}`).expect(200));
const idsOf = ({ items }: Page<KeptPlanItemView>): string[] => items.map(({ id }) => id);
const body = (more: object = {}): object => ({ lineId: line.id, name: 'x', assumptions: { pairings: 1 }, ...more });

beforeAll(async () => {
  api = await startApi();
  world = new PlanWorld(api);
  member = await api.addKeeper('Member');
  other = await api.addKeeper('Other member');
  line = await world.line('Arroyo', ['m1', 'm2', 'm3', 'f1', 'f2', 'f3']);
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

describe('keeping a plan', () => {
  it('keeps what the plan told, with its assumptions and the revision it was made at', async () => {
    const assumptions = { pairings: 2, weight: 2, reserve: 1, allow: ['disputed'] };
    const shown = bodyOf<PlanView>(
      await member.http.post(`/api/v1/lines/${line.id}/plan`).send(assumptions).expect(200),
    );
    const pairs = shown.pairs.map(({ male, female }) => ({ male: male.animal.id, female: female.animal.id }));
    const more = { notes: 'for May', shown: pairs };
    const kept = await world.keep(line, assumptions, more, member.http);
    expect(kept).toMatchObject({
      name: 'spring',
      notes: 'for May',
      keeper: 'Member',
      line: { id: line.id, name: 'Arroyo' },
      visibility: 'private',
      revision: shown.asOf.revision,
      hasRegisterMoved: false,
      pairCounts: { proposed: 2, accepted: 0, declined: 0 },
      asOf: shown.asOf,
      objective: shown.objective,
      cautions: shown.cautions,
      excluded: shown.excluded,
      leftOut: shown.leftOut,
      moves: shown.moves,
      since: { word: 'unchanged', sentence: 'The register has not changed since.' },
    });
    expect(kept.assumptions).toMatchObject({ ...assumptions, individuals: null, inbreedingTo: 0.125, movesMost: null });
    expect(kept.pairs.map(({ why, inbreeding, male }) => ({ why, inbreeding, male }))).toEqual(
      shown.pairs.map(({ why, inbreeding, male }) => ({ why, inbreeding, male })),
    );
    expect(kept.pairs.map(({ now }) => now)).toEqual(
      shown.pairs.map(({ inbreeding }) => ({
        inbreeding,
        changes: [],
        livesIn: [],
        needs: [],
        warnings: [],
        canBeAccepted: true,
      })),
    );
    const again = await member.http.get(`/api/v1/kept-plans/${kept.id}`).expect(200);
    expect(again.body).toEqual(kept);
    expect(again.headers['etag']).toBe('"1"');
  });

  it('says that nothing is known of the young of animals without a recorded origin, in plans that were kept without it too', async () => {
    const kept = await world.keep(line);
    const nothing = { expected: 0, least: 0, greatest: 0, nothingKnown: true, depth: 1, fullDepth: 1 };
    expect(kept.pairs.map(({ inbreeding, now }) => [inbreeding, now.inbreeding])).toEqual([
      [nothing, nothing],
      [nothing, nothing],
    ]);
    await api.dataSource.transaction(async (manager) => {
      await manager.query('set local session_replication_role = replica');
      await manager.query(
        `update kept_plan_answer set record = jsonb_set(record, '{young,0,inbreeding}', '{"expected": 0, "least": 0, "greatest": 0}')
          where plan_id = $1`,
        [kept.id],
      );
    });
    const [older] = (await world.read(kept)).pairs;
    expect(older?.inbreeding).toEqual({ ...nothing, depth: null, fullDepth: null });
    expect(older?.now.inbreeding).toEqual(nothing);
  });

  it('keeps animals that were named by number under their ids', async () => {
    const named = [];
    for (const code of ['m1', 'f1'])
      named.push(
        bodyOf<{ number: string }>(await api.http.get(`/api/v1/individuals/${line.ids[code]}`).expect(200)).number,
      );
    const [male, female] = named;
    const assumptions = { pairings: 1, individuals: named, fixed: [{ male, female }], uses: [] };
    const kept = await world.keep(line, assumptions);
    expect(kept.assumptions.fixed).toMatchObject([{ male: { id: line.ids['m1'] }, female: { id: line.ids['f1'] } }]);
    expect(kept.assumptions.individuals?.map(({ number }) => number)).toEqual(named);
    expect(kept.pairs).toMatchObject([{ isFixed: true, why: ['The request fixed it.'] }]);
  });

  it('is refused where the plan comes out with other pairs by now than were shown', async () => {
    const own = await world.line('Fosa', ['m1', 'f1', 'm2', 'f2']);
    const wrong = [{ male: own.ids['m1'], female: own.ids['m2'] }];
    const count = async () => (await list(`lineId=${own.id}&total=true`)).total;
    const answer = await api.http
      .post('/api/v1/kept-plans')
      .send({ lineId: own.id, name: 'x', assumptions: { pairings: 2 }, shown: wrong })
      .expect(409);
    expect(answer.body).toMatchObject({ detail: textWith('other pairs by now'), pairs: [{}, {}] });
    expect(await count()).toBe(0);
  });

  it('holds a plan of 150 pairs', async () => {
    const many = await world.line('Grande', ['m', 'f']);
    await api.dataSource.query(
      `insert into individual (species_id, line_id, keeper_id, sex, hatched, hatched_earliest, hatched_latest, code)
       select i.species_id, i.line_id, i.keeper_id, i.sex, i.hatched, i.hatched_earliest, i.hatched_latest, i.code || n
       from individual i, generate_series(1, 149) n where i.line_id = $1`,
      [many.id],
    );
    await api.dataSource.query('update lineage_revision set revision = revision + 1');
    const kept = await world.keep(many, { pairings: 150, seconds: 40 });
    expect(kept.pairs).toHaveLength(150);
    const accepted = await world.accept(kept, { pairs: kept.pairs.map(({ place }) => ({ place })) });
    expect(accepted.status, accepted.text).toBe(201);
    expect(bodyOf<KeptPlanView>(accepted).pairCounts.accepted).toBe(150);
  });

  it.each<[string, () => object, number, string, string]>([
    ['a line that there is not', () => body({ lineId: newId() }), 422, '/lineId', 'no line'],
    ['no name', () => body({ name: ' ' }), 422, '/name', '1 to 120'],
    ['nonsense as assumptions', () => body({ assumptions: 7 }), 422, '/assumptions', 'object'],
    ['no pairs', () => body({ assumptions: { pairings: 0 } }), 422, '/assumptions/pairings', 'at least 1'],
    [
      'an unknown wish',
      () => body({ assumptions: { pairings: 1, wish: 1 } }),
      422,
      '/assumptions/wish',
      'no such field',
    ],
    ['everybody as readers', () => body({ visibility: 'public' }), 422, '/visibility', 'private, club'],
    ['figures of its own', () => body({ pairs: [] }), 422, '/pairs', 'no such field'],
    ['a plan that cannot be', () => body({ assumptions: { pairings: 9 } }), 422, '/assumptions/pairings', 'Ask for'],
  ])('refuses %s', async (_, sent, status, pointer, words) => {
    const problem = bodyOf<ProblemBody>(await api.http.post('/api/v1/kept-plans').send(sent()).expect(status));
    expect(problem.errors).toMatchObject([{ pointer }]);
    expect(`${problem.detail} ${problem.errors[0]?.detail}`).toContain(words);
  });

  it('is altered by nobody, not even in the database', async () => {
    const kept = await world.keep(line);
    const alter = `update kept_plan_answer set record = '{}' where plan_id = $1`;
    await expect(api.dataSource.query(alter, [kept.id])).rejects.toThrow('never altered');
    await expect(api.dataSource.query('delete from kept_plan_answer where plan_id = $1', [kept.id])).rejects.toThrow(
      'never altered',
    );
  });

  it('is done once for one key', async () => {
    const own = await world.line('Llave', ['m1', 'f1']);
    const send = () =>
      api.http
        .post('/api/v1/kept-plans')
        .set('Idempotency-Key', 'keep-1')
        .send({ lineId: own.id, name: 'once', assumptions: { pairings: 1 } })
        .expect(201);
    expect((await send()).body).toEqual((await send()).body);
    expect((await list(`lineId=${own.id}`)).items).toHaveLength(1);
  });
});

describe('a kept plan', () => {
  it('is read by its keeper and registrars, and by the club once it is shared, until it is taken back', async () => {
    const kept = await world.keep(line, {}, {}, member.http);
    const read = (http = other.http) => http.get(`/api/v1/kept-plans/${kept.id}`);
    await read().expect(404);
    await read(member.http).expect(200);
    await read(api.http).expect(200);
    expect(idsOf(await list(`lineId=${line.id}`, other.http))).not.toContain(kept.id);
    const patch = (http: TestKeeper['http'], sent: object) =>
      http.patch(`/api/v1/kept-plans/${kept.id}`).set('If-Match', '*').send(sent);
    // who may not see it learns nothing by trying
    await patch(other.http, { visibility: 'club' }).expect(404);
    const shared = await patch(member.http, { visibility: 'club', name: 'summer', notes: null }).expect(200);
    expect(shared.body).toMatchObject({ visibility: 'club', name: 'summer', version: 2 });
    await read().expect(200);
    await read(api.stranger).expect(401);
    expect(idsOf(await list(`lineId=${line.id}`, other.http))).toContain(kept.id);
    await patch(other.http, { name: 'mine' }).expect(403);
    expect((await world.accept(kept, { pairs: [{ place: 0 }] }, other.http)).status).toBe(403);
    expect((await world.decide(kept, { pairs: [{ place: 0 }], state: 'declined' }, other.http)).status).toBe(403);
    await patch(api.http, { name: 'by a registrar' }).expect(200);
    await patch(member.http, { visibility: 'private' }).expect(200);
    await read().expect(404);
    const stale = await member.http
      .patch(`/api/v1/kept-plans/${kept.id}`)
      .set('If-Match', '"1"')
      .send({ name: 'x' })
      .expect(412);
    expect(stale.body).toMatchObject({ current: { id: kept.id, version: 4 } });
    await member.http.patch(`/api/v1/kept-plans/${kept.id}`).send({ name: 'x' }).expect(428);
  });

  it('stands in lists by line and keeper, the newest first, page by page', async () => {
    const own = await world.line('Lista', ['m1', 'f1']);
    const made: string[] = [];
    for (const name of ['one', 'two', 'three'])
      made.unshift((await world.keep(own, { pairings: 1 }, { name }, member.http)).id);
    const first = await list(`lineId=${own.id}&limit=2&total=true`, member.http);
    expect([idsOf(first), first.total]).toEqual([made.slice(0, 2), 3]);
    const second = await list(`lineId=${own.id}&limit=2&after=${first.next}`, member.http);
    expect([idsOf(second), second.next]).toEqual([made.slice(2), null]);
    expect(idsOf(await list(`keeperId=${member.id}&limit=3`, member.http))).toEqual(made);
    expect((await list(`keeperId=${member.id}`, other.http)).items).toEqual([]);
    await api.http.get('/api/v1/kept-plans?after=x').expect(422);
  });

  it('is withdrawn and restored like any record', async () => {
    const kept = await world.keep(line, {}, {}, member.http);
    const at = `/api/v1/kept-plans/${kept.id}/withdrawal`;
    await member.http.post(at).set('If-Match', '*').send({ reason: 'too late' }).expect(201);
    expect(idsOf(await list(`lineId=${line.id}`, member.http))).not.toContain(kept.id);
    expect(await world.read(kept, member.http)).toMatchObject({ withdrawn: { reason: 'too late' } });
    expect((await world.accept(kept, { pairs: [{ place: 0 }] }, member.http)).status).toBe(409);
    await member.http.delete(at).set('If-Match', '*').expect(200);
    expect((await world.accept(kept, { pairs: [{ place: 0 }] }, member.http)).status).toBe(201);
  });

  it('says of private animals to others no more than that they are there', async () => {
    const theirs = new Factory(member.http);
    const own = await world.line('Velado', ['m1', 'f1', 'f2']);
    const secret = await theirs.individual({
      code: 'VELADO-9',
      speciesId: own.speciesId,
      lineId: own.id,
      sex: 'male',
      hatched: '2020-03-01',
      visibility: 'private',
    });
    const fixed = [{ male: secret.id, female: own.ids['f1'] }];
    const kept = await world.keep(own, { fixed }, { visibility: 'club', name: 'veiled' }, member.http);
    const text = JSON.stringify(await world.read(kept, other.http));
    for (const told of [secret.id, secret.number, 'VELADO-9', member.id]) {
      expect(JSON.stringify(await world.read(kept, member.http))).toContain(told);
      if (told !== member.id) expect(text).not.toContain(told);
    }
    const view = await world.read(kept, other.http);
    const pair = view.pairs.find(({ isFixed }) => isFixed);
    expect(pair?.male).toMatchObject({
      animal: { id: 'private-1', number: null, isPrivate: true },
      keeper: null,
      keeperId: null,
      line: null,
      age: null,
    });
    expect(pair?.now).toMatchObject({ changes: [], canBeAccepted: false });
    expect(view.assumptions.fixed[0]?.male.id).toBe('private-1');
    // what happens to it later is not told to them either
    await world.change(`individuals/${secret.id}`, { status: 'died' }, member.http);
    expect((await world.read(kept, other.http)).pairs.find(({ isFixed }) => isFixed)?.now.changes).toEqual([]);
    expect((await world.read(kept, member.http)).pairs.find(({ isFixed }) => isFixed)?.now.changes).toMatchObject([
      { kind: 'not-living', stops: true },
    ]);
  });
});
