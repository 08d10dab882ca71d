import fc from 'fast-check';
import supertest, { type Response } from 'supertest';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { TransferItemView, TransferView } from '../../../api/selling/transfers/transfer.view.ts';
import { startApiOn, type TestApi, type TestKeeper } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import { TransferWorld } from './transfer-world.ts';

let world: TransferWorld;

beforeAll(async () => {
  world = await TransferWorld.found();
});

beforeEach(() => world.api.dataSource.query('delete from rate_limit'));

afterAll(() => world.api.close());

const statuses = (answers: readonly Response[]): number[] => answers.map(({ status }) => status).sort();

/** Who holds an animal, and how many open offers it is in, as the database has it. */
async function holding(id: string): Promise<{ keeper: string; offers: number }> {
  const [row] = await world.api.dataSource.query<{ keeper: string; offers: number }[]>(
    `select k.name as keeper, (select count(*)::integer from transfer_animal a where a.individual_id = i.id and a.state = 'offered') as offers
     from individual i join keeper k on k.id = i.keeper_id where i.id = $1`,
    [id],
  );
  if (!row) throw new Error('an animal is never destroyed');
  return row;
}

describe('at the same moment', () => {
  it('an animal that is offered to eight keepers is on offer to one', async () => {
    const { id } = await world.make.individual();
    const to = [world.ben.id, world.clara.id];
    const answers = await Promise.all(
      Array.from({ length: 8 }, (_, at) => world.offer({ animals: [id], to: to[at % 2] })),
    );
    expect(statuses(answers)).toEqual([201, 409, 409, 409, 409, 409, 409, 409]);
    expect(await holding(id)).toEqual({ keeper: 'Anna', offers: 1 });
  });

  it('offers that share animals in another order make one of them stand, whole', async () => {
    const animals = (await world.make.individuals({}, {}, {}, {}, {})).map(({ id }) => id);
    const orders = [animals, [...animals].reverse(), animals.slice(2), animals.slice(0, 3).reverse()];
    const answers = await Promise.all(orders.map((order) => world.offer({ animals: order })));
    // each animal is free or in one offer; of two offers that share one, one stands
    const stood = answers.flatMap((answer) => (answer.status === 201 ? [bodyOf<TransferView>(answer)] : []));
    expect(answers.every(({ status }) => status === 201 || status === 409)).toBe(true);
    const inOffers = stood.flatMap((transfer) => transfer.animals.map(({ id }) => id));
    expect(new Set(inOffers).size).toBe(inOffers.length);
    expect(stood.length).toBeGreaterThan(0);
  });

  it('accepted, declined and withdrawn: one of it happens, the others are told what', async () => {
    for (let round = 0; round < 12; round++) {
      const { id } = await world.make.individual();
      const transfer = await world.offered({ animals: [id] });
      const steps = [
        () => world.step(world.ben.http, transfer.id, 'acceptance', {}, '"1"'),
        () => world.step(world.ben.http, transfer.id, 'refusal', {}, '"1"'),
        () => world.step(world.anna.http, transfer.id, 'withdrawal', {}, '"1"'),
        () => world.step(world.ben.http, transfer.id, 'acceptance', {}, '"1"'),
      ];
      // each begins first once in a while
      const answers = await Promise.all(
        [...steps.slice(round % 4), ...steps.slice(0, round % 4)].map((step) => step()),
      );
      expect(statuses(answers)).toEqual([201, 409, 409, 409]);
      const won = bodyOf<TransferView>(answers.find(({ status }) => status === 201) ?? { body: {} });
      for (const { body } of answers.filter(({ status }) => status === 409))
        expect(body).toMatchObject({ current: { state: won.state, version: 2 } });
      expect(await holding(id)).toEqual({ keeper: won.state === 'accepted' ? 'Ben' : 'Anna', offers: 0 });
    }
  });

  it('accepted through two copies of the service: handed over once, with one entry in the journal', async () => {
    const copy = await startApiOn(world.api.databaseUrl);
    const ids = (await world.make.individuals({}, {}, {})).map(({ id }) => id);
    const transfer = await world.offered({ animals: ids });
    const through = ({ url }: TestApi): Promise<Response> =>
      supertest(url)
        .post(`/api/v1/transfers/${transfer.id}/acceptance`)
        .set({ 'If-Match': '*', Authorization: `Bearer ${world.ben.token}` })
        .send({})
        .then((answer) => answer);
    const answers = await Promise.all([through(copy), through(world.api), through(copy), through(world.api)]);
    await copy.close();
    expect(statuses(answers)).toEqual([201, 409, 409, 409]);
    const entries = await world.api.dataSource.query<unknown[]>(
      `select from journal_entry where record_id = $1 and action = 'accepted'`,
      [transfer.id],
    );
    expect(entries).toHaveLength(1);
    for (const id of ids) expect(await world.animal(id)).toMatchObject({ keeper: 'Ben', version: 2 });
  });

  it('left the club and offered: it is gone, or on offer, not both', async () => {
    for (let round = 0; round < 6; round++) {
      const { id } = await world.make.individual();
      const gone = (): Promise<Response> =>
        world.anna.http.post('/api/v1/transfers').send({ leftTo: null, animals: [id] });
      const answers = await Promise.all(
        round % 2 ? [gone(), world.offer({ animals: [id] })] : [world.offer({ animals: [id] }), gone()],
      );
      expect(answers.filter(({ status }) => status === 201)).toHaveLength(1);
      expect((await world.animal(id)).status === 'gone').toBe((await holding(id)).offers === 0);
    }
  });

  it('accepted and withdrawn from the register: it does not change hands as a withdrawn record', async () => {
    for (let round = 0; round < 6; round++) {
      const { id } = await world.make.individual();
      const transfer = await world.offered({ animals: [id] });
      const [taking, withdrawing] = await Promise.all([
        world.step(world.ben.http, transfer.id, 'acceptance'),
        world.anna.http.post(`/api/v1/individuals/${id}/withdrawal`).set('If-Match', '*').send({ reason: 'a mistake' }),
      ]);
      expect(taking.status).toBe(201);
      // while it is on offer, 409; once it is Ben's, 403
      expect([403, 409]).toContain(withdrawing.status);
    }
  });
});

/** What somebody does in a random story: whose turn, with which animals or which transfer, and what. */
const turns = fc.array(
  fc.record({
    who: fc.integer({ min: 0, max: 3 }),
    what: fc.constantFrom(
      ...['offer', 'depart', 'acceptance', 'acceptance', 'refusal', 'withdrawal', 'returns', 'undo', 'note', 'code'],
    ),
    at: fc.integer({ min: 0, max: 1000 }),
    count: fc.integer({ min: 1, max: 3 }),
  }),
  { minLength: 30, maxLength: 60 },
);

describe('whatever several keepers do', () => {
  it('every animal has one keeper, is in one open offer at most, and nothing of it is lost', async () => {
    const keepers = [world.anna, world.ben, world.clara];
    const everybody = [...keepers, { id: '', http: world.api.http } as TestKeeper];
    await fc.assert(
      fc.asyncProperty(turns, async (story) => {
        await world.api.dataSource.query('delete from rate_limit');
        const speciesId = (await world.make.species()).id;
        const animals: string[] = [];
        for (const keeper of keepers)
          for (let at = 0; at < 2; at++)
            animals.push((await world.of(keeper).individual({ speciesId, code: `R${at}` })).id);
        const entries: string[] = [];
        const before = await identities(animals);
        for (let at = 0; at < story.length; at += 2)
          await Promise.all(story.slice(at, at + 2).map((turn) => play(turn, everybody, keepers, animals, entries)));
        expect(await identities(animals)).toEqual(before);
        await checkInvariants(animals);
        await world.api.dataSource.query(
          `update individual set code = null, version = version + 1 where id = any($1::uuid[])`,
          [animals],
        );
      }),
      { numRuns: 12 },
    );
  }, 240_000);

  type Turn = typeof turns extends fc.Arbitrary<(infer One)[]> ? One : never;

  async function play(
    { who, what, at, count }: Turn,
    everybody: readonly TestKeeper[],
    keepers: readonly TestKeeper[],
    animals: readonly string[],
    entries: string[],
  ): Promise<void> {
    const { http } = everybody[who] ?? world.anna;
    const some = Array.from({ length: count }, (_, next) => animals[(at + next) % animals.length]);
    const send = async (): Promise<Response> => {
      if (what === 'offer')
        return http.post('/api/v1/transfers').send({ to: keepers[at % 3]?.id, animals: [...new Set(some)] });
      if (what === 'depart') return http.post('/api/v1/transfers').send({ leftTo: null, animals: [...new Set(some)] });
      if (what === 'undo')
        return http.post(`/api/v1/journal/${entries[at % Math.max(1, entries.length)] ?? animals[0]}/reversal`);
      if (what === 'note' || what === 'code')
        return http
          .patch(`/api/v1/individuals/${some[0]}`)
          .set('If-Match', '*')
          .send(what === 'note' ? { notes: `seen ${at}` } : { code: `R${at % 4}` });
      const list = bodyOf<{ items: TransferItemView[] }>(await http.get('/api/v1/transfers?limit=8'));
      const id = list.items[at % Math.max(1, list.items.length)]?.id;
      return world.step(http, id ?? animals[0] ?? '', what, what === 'acceptance' ? { codes: [] } : {});
    };
    const answer = await send();
    expect(answer.status, `${what}: ${answer.text}`).toBeLessThan(500);
    const entry = answer.headers['journal-entry'];
    if (entry !== undefined) entries.push(entry);
  }

  /** What no transfer may change. */
  const identities = (ids: readonly string[]): Promise<unknown> =>
    world.api.dataSource.query(
      'select id, number, species_id, clutch_id, withdrawn_at from individual where id = any($1::uuid[]) order by id',
      [ids],
    );

  async function checkInvariants(ids: readonly string[]): Promise<void> {
    const rows = await world.api.dataSource.query<Record<string, unknown>[]>(
      `select i.id, i.status, i.shown_to, i.keeper_id,
         (select count(*)::integer from transfer_animal a where a.individual_id = i.id and a.state = 'offered') as offers,
         (select count(*)::integer from transfer_animal a join transfer t on t.id = a.transfer_id where a.individual_id = i.id
            and a.state <> t.state) as unequal,
         (select t.to_id from transfer_animal a join transfer t on t.id = a.transfer_id where a.individual_id = i.id
            and t.state = 'accepted' and t.to_id is not null order by t.settled_at desc, t.id desc limit 1) as "lastReceiver",
         (select count(*)::integer from transfer_animal a join transfer t on t.id = a.transfer_id where a.individual_id = i.id
            and t.state = 'accepted' and t.to_id is null and a.returned is null) as departures,
         (select coalesce(array_agg(distinct case t.state when 'offered' then t.to_id else t.keeper_id end order by
             case t.state when 'offered' then t.to_id else t.keeper_id end), '{}')
            from transfer_animal a join transfer t on t.id = a.transfer_id where a.individual_id = i.id and t.to_id is not null
            and t.state in ('offered', 'accepted')) as "shouldBeShownTo"
       from individual i where i.id = any($1::uuid[])`,
      [ids],
    );
    expect(rows).toHaveLength(ids.length);
    for (const row of rows) {
      expect(row['offers']).toBeLessThanOrEqual(1);
      expect(row['unequal']).toBe(0);
      expect(row['shown_to']).toEqual(row['shouldBeShownTo']);
      if (row['lastReceiver'] !== null) expect(row['keeper_id']).toBe(row['lastReceiver']);
      expect([row['id'], row['status'] === 'gone']).toEqual([row['id'], (row['departures'] as number) > 0]);
      if (row['status'] === 'gone') expect(row['offers']).toBe(0);
    }
  }
});
