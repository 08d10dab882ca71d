import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { KeptPlanView, PairChangeView } from '../../../api/match/kept-plans/kept-plan.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { keeperOf, PlanWorld, pairOf, type TestLine } from './kept-plan-world.ts';

let api: TestApi;
let world: PlanWorld;
let other: TestKeeper;
let serial = 0;

beforeAll(async () => {
  api = await startApi();
  world = new PlanWorld(api);
  other = await api.addKeeper('Other keeper');
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

interface Scene {
  readonly line: TestLine;
  readonly kept: KeptPlanView;
  /** The animal that something happens to, and its mate. */
  readonly id: string;
  readonly name: string;
  readonly mateId: string;
}

/** A plan of two pairs, one of which has m1. */
async function scene(assumptions: Record<string, unknown> = {}): Promise<Scene> {
  const line = await world.line(`Cambio ${++serial}`, ['m1', 'm2', 'f1', 'f2']);
  const kept = await world.keep(line, assumptions, { visibility: 'club' });
  const { male, female } = pairOf(kept, line.ids['m1']);
  return {
    line,
    kept,
    id: male.animal.id,
    name: `${male.animal.code} (${male.animal.number})`,
    mateId: female.animal.id,
  };
}

type Told = Partial<PairChangeView> & {
  readonly needs?: readonly string[];
  readonly broken?: readonly string[];
  readonly besides?: string;
};

const cases: Record<string, readonly [happen: (scene: Scene) => Promise<unknown>, told: (scene: Scene) => Told]> = {
  died: [
    ({ id }) => world.change(`individuals/${id}`, { status: 'died' }),
    ({ name }) => ({ kind: 'not-living', after: 'died', text: `${name} died.`, stops: true, broken: ['pairs'] }),
  ],
  'left the club': [
    ({ id }) => world.change(`individuals/${id}`, { status: 'gone' }),
    ({ name }) => ({
      kind: 'not-living',
      after: 'gone',
      text: `${name} left the club.`,
      stops: true,
      broken: ['pairs'],
    }),
  ],
  'was withdrawn': [
    ({ id }) =>
      api.http.post(`/api/v1/individuals/${id}/withdrawal`).set('If-Match', '*').send({ reason: 'error' }).expect(201),
    ({ name }) => ({
      kind: 'withdrawn',
      text: `${name} was withdrawn from the register.`,
      stops: true,
      broken: ['pairs'],
    }),
  ],
  'was merged into another record': [
    async ({ line, id }) => {
      const twin = await world.make.individual({ speciesId: line.speciesId, lineId: line.id, sex: 'male' });
      const merge = { keptId: twin.id, duplicateId: id, take: [], reason: 'same spots' };
      await api.http.post('/api/v1/merges').send(merge).expect(201);
    },
    () => ({ kind: 'merged', stops: true, broken: ['pairs'] }),
  ],
  'turned out to be a female': [
    ({ id }) => world.change(`individuals/${id}`, { sex: 'female' }),
    ({ name }) => ({
      kind: 'sex',
      before: 'male',
      after: 'female',
      text: `${name} is recorded as female by now.`,
      stops: true,
      broken: ['pairs'],
    }),
  ],
  'turned out to be too young': [
    ({ id }) => world.change(`individuals/${id}`, { hatched: new Date().toISOString().slice(0, 10) }),
    () => ({ kind: 'too-young', stops: true, broken: ['pairs'] }),
  ],
  'turned out to be too old': [
    ({ id }) => world.change(`individuals/${id}`, { hatched: '1980' }),
    () => ({ kind: 'beyond-lifespan', stops: true, broken: ['pairs'] }),
  ],
  'changed its keeper': [
    ({ id }) => keeperOf(api, id, other.id),
    ({ name }) => ({
      kind: 'keeper',
      before: 'Keeper',
      after: 'Other keeper',
      text: `${name} was kept by Keeper and is kept by Other keeper.`,
      stops: false,
    }),
  ],
  'belongs to a keeper who left': [
    async ({ id }) => {
      const leaving = await api.addKeeper(`Leaving ${serial}`);
      await keeperOf(api, id, leaving.id);
      await api.http.post(`/api/v1/keepers/${leaving.id}/departure`).set('If-Match', '*').send({}).expect(201);
    },
    () => ({ kind: 'keeper-left', stops: true, broken: ['pairs'], besides: 'keeper' }),
  ],
  'changed its line': [
    async ({ id, line }) => {
      const { id: lineId } = await world.make.line({ speciesId: line.speciesId, name: `Ajeno ${serial}` });
      await world.change(`individuals/${id}`, { lineId });
    },
    () => ({
      kind: 'line',
      before: `Cambio ${serial}`,
      after: `Ajeno ${serial}`,
      needs: ['cross-lines'],
      broken: ['lines'],
    }),
  ],
  'was housed with another one': [
    ({ id }) => world.make.pairing({ name: 'tank 3', members: [{ individualId: id, joined: '2026-01-01' }] }),
    ({ name }) => ({ kind: 'housed', after: 'tank 3', text: `${name} lives in “tank 3” by now.`, stops: false }),
  ],
  bred: [
    async ({ id, line }) => {
      const dam = await world.make.individual({ speciesId: line.speciesId, sex: 'female', hatched: '2020-03-01' });
      await world.young(line, id, dam.id, ['m9']);
    },
    ({ name }) => ({ kind: 'bred', text: `${name} has bred since.`, stops: false }),
  ],
  'got a disputed label': [
    async ({ id }) => {
      const source = await world.make.source();
      await world.change(`individuals/${id}`, { sourceId: source.id });
      await world.dispute(source.id);
    },
    ({ name }) => ({
      kind: 'label',
      after: 'disputed',
      text: `The label of ${name} is disputed by now.`,
      needs: ['disputed'],
      broken: ['labels'],
    }),
  ],
  'turned out to be a half-brother of its mate': [
    async ({ line, id, mateId }) => {
      const parents = await world.line(`Eltern ${serial}`, ['m1', 'f1', 'f2']);
      await api.dataSource.query('update individual set species_id = $1, line_id = $2 where line_id = $3', [
        line.speciesId,
        line.id,
        parents.id,
      ]);
      await api.dataSource.query('update lineage_revision set revision = revision + 1');
      for (const [animal, dam] of [
        [id, 'f1'],
        [mateId, 'f2'],
      ] as const) {
        const clutch = await world.make.clutchOf(parents.ids['m1'] ?? '', parents.ids[dam] ?? '');
        await world.change(`individuals/${animal}`, { clutchId: clutch.id });
      }
    },
    () => ({
      kind: 'inbreeding',
      before: '0',
      after: '0.125',
      text: 'F of the young was 0 and is 0.125.',
      stops: false,
    }),
  ],
};

describe('a kept plan says when the register has changed under it', () => {
  it.each(Object.entries(cases))('since an animal of it %s', async (_, [happen, told]) => {
    const made = await scene();
    await happen(made);
    const { needs = [], broken = [], besides, ...change } = told(made);
    const view = await world.read(made.kept);
    const pair = pairOf(view, made.id);
    expect(pair.now.changes).toMatchObject([change, ...(besides === undefined ? [] : [{ kind: besides }])]);
    expect(pair.now).toMatchObject({ needs, canBeAccepted: change.stops !== true });
    expect(pair.now.warnings).toHaveLength(needs.length);
    expect(view.since.conditions.filter(({ isMet }) => !isMet).map(({ condition }) => condition)).toEqual(broken);
    expect(view.since.word).toBe(broken.length > 0 ? 'broken' : 'differs');
    // what it was is told as it was, and the other pair is as before
    const { now, ...then } = pair;
    const { now: before, ...was } = pairOf(made.kept, made.id);
    expect(before.changes).toEqual([]);
    expect(now).not.toEqual(before);
    expect({ ...then, male: { ...then.male, animal: null } }).toEqual({ ...was, male: { ...was.male, animal: null } });
    expect(view.pairs.filter(({ now: today }) => today.changes.length > 0)).toHaveLength(1);
  });

  it('but holds where nothing that concerns it changed', async () => {
    const { kept, line } = await scene();
    await world.make.individual({ speciesId: line.speciesId, lineId: line.id });
    const view = await world.read(kept);
    expect(view.since).toMatchObject({ word: 'holds', asOf: { revision: expect.any(Number) as number } });
    expect(view.hasRegisterMoved).toBe(true);
    expect(view.since.asOf.revision).toBeGreaterThan(view.asOf.revision);
    expect(view.since.conditions.map(({ condition, isMet }) => [condition, isMet])).toEqual([
      ['pairs', true],
      ['inbreeding', true],
      ['lines', true],
      ['labels', true],
    ]);
  });

  it('holds its assumptions against today: moves, keepers who keep theirs together, old animals that have not bred', async () => {
    const keeperId = (await api.http.get('/api/v1/session').expect(200)).body as { keeper?: { id: string } };
    const { kept, id, mateId, line } = await scene({
      movesMost: 0,
      reserve: 4,
      keptTogether: keeperId.keeper ? [keeperId.keeper.id] : [],
    });
    await keeperOf(api, id, other.id);
    await world.young(line, line.ids['m2'] ?? '', mateId, ['m9']);
    const view = await world.read(kept);
    expect(view.since.word).toBe('broken');
    expect(view.since.conditions.filter(({ isMet }) => !isMet).map(({ detail }) => detail)).toEqual([
      '1 pair of two keepers, at most 0 were wanted.',
      '1 pair would take an animal from a keeper who keeps theirs together.',
      '2 old animals that have not bred are in it, at least 4 were wanted.',
    ]);
    // a pair that is declined counts no more
    const { place } = pairOf(view, id);
    await world.decide(kept, { pairs: [{ place }], state: 'declined' });
    const left = (await world.read(kept)).since.conditions.filter(({ isMet }) => !isMet);
    expect(left.map(({ condition }) => condition)).toEqual(['reserve']);
  });

  it('does not call its own pairings a change', async () => {
    const { kept } = await scene();
    await world.accept(kept, { pairs: [{ place: 0 }], joined: '2026-05-01' });
    const view = await world.read(kept);
    expect(view.pairs.map(({ now }) => now.changes)).toEqual([[], []]);
    expect(view.since.conditions.every(({ isMet }) => isMet)).toBe(true);
  });
});
