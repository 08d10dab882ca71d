import type { Response } from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import type { PairingView } from '../../../api/register/pairings/pairing.view.ts';
import type { ChangedTogetherView } from '../../../api/register/together/together.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import { Factory } from '../../support/factories.ts';

let api: TestApi;
let keeper: TestKeeper;
let other: TestKeeper;
let make: Factory;
let others: Factory;
let speciesId: string;

beforeAll(async () => {
  api = await startApi();
  [keeper, other] = [await api.addKeeper('Ulla'), await api.addKeeper('Vidar')];
  make = new Factory(keeper.http);
  others = new Factory(other.http);
  speciesId = (await make.species()).id;
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

const animals = async (count: number, fields: object = {}, by = make): Promise<IndividualView[]> => {
  const made: IndividualView[] = [];
  for (let at = 0; at < count; at++) made.push(await by.individual({ speciesId, ...fields }));
  return made;
};
const at = (records: readonly IndividualView[]): { id: string; version: number }[] =>
  records.map(({ id, version }) => ({ id, version }));
const send = async (body: object, http: TestAgent = keeper.http): Promise<Response> =>
  http.post('/api/v1/individuals/changes').send(body);
const look = async (body: object, http: TestAgent = keeper.http): Promise<ChangedTogetherView> =>
  bodyOf(await http.post('/api/v1/individuals/changes?dryRun=true').send(body).expect(200));
const read = async ({ id }: { id: string }, http: TestAgent = api.http): Promise<IndividualView> =>
  bodyOf(await http.get(`/api/v1/individuals/${id}`).expect(200));
const undo = async (answer: Response, http: TestAgent = keeper.http): Promise<Response> =>
  http.post(`/api/v1/journal/${answer.headers['journal-entry']}/reversal`).send({});
const entries = (answer: Response): Promise<{ kind: string; action: string; record_id: string }[]> =>
  api.dataSource.query('select kind, action, record_id from journal_entry where request_id = $1 order by id', [
    answer.headers['x-request-id'],
  ]);

describe('several animals are changed together', () => {
  it('first only looked at: what each of them would become, and nothing is written', async () => {
    const [one, two] = await animals(2);
    const [three] = await animals(1, { sex: 'male' });
    if (!one || !two || !three) throw new Error('made three');
    const seen = await look({ animals: at([one, two, three]), fields: { sex: 'male', sexBasis: 'calling' } });
    expect([seen.changing, seen.same, seen.refused]).toEqual([3, 0, 0]);
    expect(seen.items[0]).toMatchObject({
      id: one.id,
      number: one.number,
      code: one.code,
      keeper: 'Ulla',
      outcome: 'changes',
      changes: [
        { field: 'sex', before: 'unsexed', after: 'male' },
        { field: 'sexBasis', before: null, after: 'calling' },
      ],
    });
    expect(seen.items[2]?.changes).toEqual([{ field: 'sexBasis', before: null, after: 'calling' }]);
    expect(await read(one)).toMatchObject({ sex: 'unsexed', version: 1 });
    expect(await api.dataSource.query(`select from journal_entry where record_id = $1`, [one.id])).toHaveLength(1);
  });

  it('all at once; as many as it said change, and those that are so already are left alone', async () => {
    const made = await animals(3);
    const done = await animals(1, { sex: 'female' });
    const body = { animals: at([...made, ...done]), fields: { sex: 'female' } };
    const seen = await look(body);
    const answer = await send(body);
    expect(answer.status).toBe(201);
    const changed = bodyOf<ChangedTogetherView>(answer);
    expect([changed.changing, changed.same, changed.refused]).toEqual([3, 1, 0]);
    expect([seen.changing, seen.same]).toEqual([3, 1]);
    expect(changed.items.map(({ version }) => version)).toEqual([2, 2, 2, 1]);
    for (const animal of made) expect(await read(animal)).toMatchObject({ sex: 'female', version: 2 });
  });

  it('with an entry for each animal, one that tells of all, and one undo that takes all of it back, and back again', async () => {
    const made = await animals(3);
    const answer = await send({ animals: at(made), fields: { sex: 'male' } });
    expect((await entries(answer)).map(({ kind, action }) => `${kind} ${action}`).sort()).toEqual([
      'change_together changed-together',
      'individual changed',
      'individual changed',
      'individual changed',
    ]);
    const told = bodyOf<{ record: { title: string }; action: string }>(
      await keeper.http.get(`/api/v1/journal/${answer.headers['journal-entry']}`).expect(200),
    );
    expect([told.action, told.record.title]).toEqual(['changed-together', '3 animals']);
    const back = await undo(answer);
    expect(back.status).toBe(201);
    for (const animal of made) expect(await read(animal)).toMatchObject({ sex: 'unsexed', version: 3 });
    const again = await undo(back);
    expect(again.status).toBe(201);
    for (const animal of made) expect(await read(animal)).toMatchObject({ sex: 'male', version: 4 });
  });

  it('and the undo is refused whole where one of them was changed since', async () => {
    const made = await animals(2);
    const answer = await send({ animals: at(made), fields: { sex: 'male' } });
    await keeper.http
      .patch(`/api/v1/individuals/${made[1]?.id}`)
      .set('If-Match', '"2"')
      .send({ notes: 'x' })
      .expect(200);
    const refused = await undo(answer);
    expect(refused.status).toBe(409);
    expect(bodyOf<{ since: unknown[] }>(refused).since).toHaveLength(1);
    for (const animal of made) expect((await read(animal)).sex).toBe('male');
  });

  it('with a date of death they are dead, with a line they belong to it, and its name is told', async () => {
    const line = await make.line({ speciesId, name: 'Quebrada Inventada' });
    const made = await animals(2);
    const body = { animals: at(made), fields: { died: '2026-02-11', lineId: line.id, visibility: 'public' } };
    expect((await look(body)).items[0]?.changes).toEqual([
      { field: 'status', before: 'alive', after: 'died' },
      { field: 'died', before: null, after: '2026-02-11' },
      { field: 'line', before: null, after: 'Quebrada Inventada' },
      { field: 'visibility', before: 'club', after: 'public' },
    ]);
    expect((await send(body)).status).toBe(201);
    for (const animal of made)
      expect(await read(animal)).toMatchObject({ status: 'died', line: 'Quebrada Inventada', visibility: 'public' });
  });
});

describe('what stands against it', () => {
  it('is told for each animal: another keeper’s, changed since, withdrawn, not there, and a rule of the register', async () => {
    const [mine, stale, gone, hatchling] = await animals(4);
    const [theirs] = await animals(1, {}, others);
    const [secret] = await animals(1, { visibility: 'private' }, others);
    if (!mine || !stale || !gone || !hatchling || !theirs || !secret) throw new Error('made them');
    const change = keeper.http.patch(`/api/v1/individuals/${stale.id}`).set('If-Match', '"1"');
    await change.send({ notes: 'seen' }).expect(200);
    await keeper.http
      .post(`/api/v1/individuals/${gone.id}/withdrawal`)
      .set('If-Match', '"1"')
      .send({ reason: 'a mistake' })
      .expect(201);
    const late = await keeper.http
      .patch(`/api/v1/individuals/${hatchling.id}`)
      .set('If-Match', '"1"')
      .send({ hatched: '2026-06-01' })
      .expect(200);
    const body = {
      animals: at([mine, stale, gone, theirs, secret, bodyOf<IndividualView>(late)]),
      fields: { died: '2026-02-11' },
    };
    const seen = await look(body);
    expect(seen.items.map(({ outcome, refusal }) => refusal ?? outcome)).toEqual([
      'changes',
      'stale',
      'withdrawn',
      'not-yours',
      'missing',
      'rule',
    ]);
    expect([seen.changing, seen.refused]).toEqual([1, 5]);
    expect(seen.items[4]).toMatchObject({
      number: null,
      code: null,
      keeper: null,
      detail: expect.any(String) as string,
    });
    expect(seen.items[3]?.detail).toContain('Vidar');
    expect(seen.items[5]?.detail).toMatch(/died|hatched|order/i);
    const refused = await send(body);
    expect(refused.status).toBe(409);
    expect(bodyOf<{ errors: { pointer: string }[] }>(refused).errors.map(({ pointer }) => pointer)).toEqual(
      [1, 2, 3, 4, 5].map((place) => `/animals/${place}`),
    );
    expect(await read(mine)).toMatchObject({ status: 'alive', version: 1 });
    const rest = await send({ ...body, animals: at([mine]) });
    expect(rest.status).toBe(201);
    expect((await entries(rest)).map(({ kind }) => kind)).toEqual(['individual']);
  });

  it('is found for the few among many, and the many go through without them', async () => {
    const made = await animals(12);
    const dams = [made[3], made[8]];
    for (const dam of dams) await make.clutch({ sires: [], dams: [{ individualId: dam?.id }], laid: '2026-01-01' });
    const seen = await look({ animals: at(made), fields: { sex: 'male' } });
    expect(seen.items.flatMap(({ outcome }, place) => (outcome === 'refused' ? [place] : []))).toEqual([3, 8]);
    expect([seen.changing, seen.refused]).toEqual([10, 2]);
    const rest = made.filter((animal) => !dams.includes(animal));
    const answer = await send({ animals: at(rest), fields: { sex: 'male' } });
    expect(bodyOf<ChangedTogetherView>(answer).changing).toBe(10);
  });

  it.each([
    [{ animals: [] }, '/animals'],
    [{ animals: [{ id: 'x', version: 1 }], fields: { sex: 'male' } }, '/animals/0/id'],
    [
      { animals: [{ id: '01890000-0000-7000-8000-000000000000', version: 0 }], fields: { sex: 'male' } },
      '/animals/0/version',
    ],
    [{ animals: [{ id: '01890000-0000-7000-8000-000000000000', version: 1 }] }, '/fields'],
    [{ animals: [{ id: '01890000-0000-7000-8000-000000000000', version: 1 }], fields: {} }, '/fields'],
    [{ animals: [{ id: '01890000-0000-7000-8000-000000000000', version: 1 }], fields: { sex: 'both' } }, '/fields/sex'],
    [
      {
        animals: [{ id: '01890000-0000-7000-8000-000000000000', version: 1 }],
        fields: { lineId: '01890000-0000-7000-8000-000000000001' },
      },
      '/fields/lineId',
    ],
    [
      {
        animals: [{ id: '01890000-0000-7000-8000-000000000000', version: 1 }],
        remark: { kind: 'note', observedOn: '2026-01-01' },
      },
      '/remark/text',
    ],
  ])('makes no sense at all: %j', async (body, pointer) => {
    const answer = await send(body);
    expect(answer.status).toBe(422);
    expect(bodyOf<{ errors: { pointer: string }[] }>(answer).errors[0]?.pointer).toBe(pointer);
  });

  it('names an animal twice', async () => {
    const made = await animals(1);
    expect((await send({ animals: at([...made, ...made]), fields: { sex: 'male' } })).status).toBe(422);
  });
});

describe('a move of several animals', () => {
  const members = async (pairing: PairingView): Promise<PairingView['members']> =>
    bodyOf<PairingView>(await keeper.http.get(`/api/v1/pairings/${pairing.id}`).expect(200)).members;

  it('ends where they live and begins where they go, as one change that one undo takes back', async () => {
    const made = await animals(3);
    const old = await make.pairing({
      members: made.slice(0, 2).map(({ id }) => ({ individualId: id, joined: '2025-01-01' })),
    });
    const next = await make.pairing({ members: [] });
    const body = { animals: at(made), move: { pairingId: next.id, on: '2026-03-01' } };
    expect((await look(body)).items.map(({ changes }) => changes)).toEqual([
      [{ field: 'pairing', before: old.name, after: next.name }],
      [{ field: 'pairing', before: old.name, after: next.name }],
      [{ field: 'pairing', before: null, after: next.name }],
    ]);
    const answer = await send(body);
    expect(answer.status).toBe(201);
    expect((await members(old)).map(({ left }) => left)).toEqual(['2026-03-01', '2026-03-01']);
    expect((await members(next)).map(({ joined, left }) => [joined, left])).toEqual([
      ['2026-03-01', null],
      ['2026-03-01', null],
      ['2026-03-01', null],
    ]);
    const back = await undo(answer);
    expect(back.status).toBe(201);
    expect((await members(old)).map(({ left }) => left)).toEqual([null, null]);
    expect(await members(next)).toEqual([]);
    expect((await undo(back)).status).toBe(201);
    expect(await members(next)).toHaveLength(3);
  });

  it('is refused for an animal that lives in a pairing of another keeper, and into one of another keeper', async () => {
    const [one] = await animals(1);
    if (!one) throw new Error('made one');
    const theirs = await others.pairing({ members: [{ individualId: one.id, joined: '2025-01-01' }] });
    const mine = await make.pairing({ members: [] });
    const seen = await look({ animals: at([one]), move: { pairingId: mine.id, on: '2026-03-01' } });
    expect(seen.items[0]?.refusal).toBe('elsewhere');
    const into = await send({ animals: at([one]), move: { pairingId: theirs.id, on: '2026-03-01' } });
    expect(into.status).toBe(403);
  });

  it('leaves alone who lives there already, and a day before they joined is refused by its rule', async () => {
    const made = await animals(2);
    const here = await make.pairing({ members: [{ individualId: made[0]?.id, joined: '2026-01-10' }] });
    const there = await make.pairing({ members: [{ individualId: made[1]?.id, joined: '2026-01-10' }] });
    const seen = await look({ animals: at(made), move: { pairingId: here.id, on: '2026-01-01' } });
    expect(seen.items.map(({ outcome, refusal }) => refusal ?? outcome)).toEqual(['same', 'rule']);
    expect((await members(there)).map(({ left }) => left)).toEqual([null]);
  });

  it('and fields, and a remark, go in one request', async () => {
    const [one] = await animals(1);
    if (!one) throw new Error('made one');
    const next = await make.pairing({ members: [] });
    const answer = await send({
      animals: at([one]),
      fields: { sex: 'male', sexBasis: 'calling' },
      move: { pairingId: next.id, on: '2026-03-01' },
      remark: { kind: 'measurement', observedOn: '2026-03-01', svlMm: 22.4 },
    });
    expect(answer.status).toBe(201);
    const now = await read(one);
    expect(now).toMatchObject({ sex: 'male' });
    expect(now.observations).toMatchObject([{ svlMm: 22.4 }]);
    expect(now.pairings).toHaveLength(1);
    expect((await undo(answer)).status).toBe(201);
    const then = await read(one);
    expect([then.sex, then.observations, then.pairings]).toEqual(['unsexed', [], []]);
  });
});

describe('a remark on several animals', () => {
  it('may be on those of others, and has one undo', async () => {
    const made = [...(await animals(1)), ...(await animals(1, {}, others))];
    const answer = await send({
      animals: at(made),
      remark: { kind: 'health', observedOn: '2026-03-01', text: 'Fed with springtails' },
    });
    expect(answer.status).toBe(201);
    for (const animal of made)
      expect((await read(animal)).observations).toMatchObject([{ text: 'Fed with springtails' }]);
    const undone = await undo(answer);
    expect(undone.status).toBe(201);
    for (const animal of made) expect((await read(animal)).observations).toEqual([]);
    expect((await undo(undone)).status).toBe(201);
    for (const animal of made)
      expect((await read(animal)).observations).toMatchObject([{ text: 'Fed with springtails' }]);
  });

  it('and the undo is refused whole where one of them was changed since, or by whom they are not', async () => {
    const made = await animals(3);
    const remark = { kind: 'note', observedOn: '2026-03-01', text: 'Misted' };
    const answer = await send({ animals: at(made), remark });
    expect((await undo(answer, other.http)).status).toBe(403);
    const [first] = made;
    const [said] = first ? (await read(first)).observations : [];
    await keeper.http
      .patch(`/api/v1/observations/${said?.id}`)
      .set('If-Match', '*')
      .send({ text: 'Misted twice' })
      .expect(200);
    const refused = await undo(answer);
    expect(refused.status).toBe(409);
    expect(bodyOf<{ since: unknown[] }>(refused).since).toHaveLength(1);
    for (const animal of made) expect((await read(animal)).observations).toHaveLength(1);
  });

  it('is taken back from a thousand animals in a few statements', async () => {
    const rows = Array.from({ length: 1000 }, (_, at) => `T-${at},Inventus multus`).join('\n');
    await keeper.http.post('/api/v1/imports').set('Content-Type', 'text/csv').send(`code,species\n${rows}`).expect(201);
    const found = await api.dataSource.query<{ id: string }[]>(
      `select i.id from individual i join species s on s.id = i.species_id where s.scientific_name = 'Inventus multus'`,
    );
    const answer = await send({
      animals: found.map(({ id }) => ({ id, version: 1 })),
      remark: { kind: 'note', observedOn: '2026-03-01', text: 'Counted' },
    });
    expect(answer.status).toBe(201);
    let statements = 0;
    const silent = (): void => undefined;
    const { options } = api.dataSource;
    const logger = {
      ...{ logQueryError: silent, logQuerySlow: silent, logSchemaBuild: silent, logMigration: silent, log: silent },
      logQuery: () => {
        statements += 1;
      },
    };
    api.dataSource.setOptions({ logging: ['query'], logger });
    const undone = await undo(answer);
    api.dataSource.setOptions({ logging: options.logging ?? false });
    expect(undone.status).toBe(201);
    const [left] = await api.dataSource.query<{ count: number }[]>(
      `select count(*)::integer from observation where text = 'Counted' and withdrawn_at is null`,
    );
    expect(left?.count).toBe(0);
    expect(statements).toBeGreaterThan(3);
    expect(statements).toBeLessThan(100);
  });
});

describe('who else learns of it', () => {
  it('nobody of private animals: the entry that tells of all is private, too', async () => {
    const made = await animals(2, { visibility: 'private' });
    const answer = await send({ animals: at(made), fields: { sex: 'male' } });
    const entry = answer.headers['journal-entry'];
    await other.http.get(`/api/v1/journal/${entry}`).expect(404);
    await other.http.post(`/api/v1/journal/${entry}/reversal`).send({}).expect(404);
    await keeper.http.get(`/api/v1/journal/${entry}`).expect(200);
  });

  it('members of those of the club, but only whoever may change them undoes it', async () => {
    const made = await animals(2);
    const answer = await send({ animals: at(made), fields: { sex: 'male' } });
    await other.http.get(`/api/v1/journal/${answer.headers['journal-entry']}`).expect(200);
    expect((await undo(answer, other.http)).status).toBe(403);
    for (const animal of made) expect((await read(animal)).sex).toBe('male');
    expect((await undo(answer, api.http)).status).toBe(201);
  });
});
