import { setTimeout as wait } from 'node:timers/promises';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { nodesInLoops } from '../../support/lineage-order.ts';

let api: TestApi;
/** A second copy of the service on the same database. */
let copy: TestApi;
let make: Factory;
let speciesId: string;

beforeAll(async () => {
  api = await startApi();
  copy = await startApiOn(api.databaseUrl);
  make = new Factory(api.http);
  speciesId = (await make.species()).id;
});

afterAll(async () => {
  await copy.close();
  await api.close();
});

/** An animal and the clutch it came from, of which nothing is known. */
async function animalWithClutch(): Promise<{ id: string; number: string; code: string | null; clutchId: string }> {
  const clutch = await make.clutch();
  const animal = await make.individual({ speciesId, clutchId: clutch.id });
  return { id: animal.id, number: animal.number, code: animal.code, clutchId: clutch.id };
}

/** Animals each of which is a parent of the next one's clutch. */
async function lineOf(
  generations: number,
): Promise<{ id: string; clutchId: string; number: string; code: string | null }[]> {
  const animals: Awaited<ReturnType<typeof animalWithClutch>>[] = [];
  for (let generation = 0; generation < generations; generation++) {
    const animal = await animalWithClutch();
    const parent = animals.at(-1);
    if (parent) await setSires(api, animal.clutchId, parent.id).expect(200);
    animals.push(animal);
  }
  return animals;
}

const setSires = (service: TestApi, clutchId: string, ...ids: (string | undefined)[]) =>
  service.http
    .patch(`/api/v1/clutches/${clutchId}`)
    .set('If-Match', '*')
    .send({ sires: ids.map((individualId) => ({ individualId })) });

describe('an animal cannot be its own ancestor', () => {
  it('as the sire of the clutch it came from', async () => {
    const animal = await animalWithClutch();
    const answer = await setSires(api, animal.clutchId, animal.id).expect(409);
    expect(answer.body).toMatchObject({
      type: '/api/problems/loop',
      members: ['clutch without a date', `${animal.number} ${animal.code}`],
    });
  });

  it('over four generations, the members of the loop named in order', async () => {
    const [first, second, third, fourth] = await lineOf(4);
    const answer = await setSires(api, first?.clutchId ?? '', fourth?.id).expect(409);
    const animals = [first, second, third, fourth].map((animal) => `${animal?.number} ${animal?.code}`);
    expect((answer.body as { members: string[] }).members.filter((name) => !name.startsWith('clutch'))).toEqual(
      animals,
    );
    expect((answer.body as { detail: string }).detail).toContain(animals.join(' → clutch without a date → '));
  });

  it('as one of a pair', async () => {
    const [first, second] = await lineOf(2);
    const stranger = await make.individual({ speciesId });
    await api.http
      .patch(`/api/v1/clutches/${first?.clutchId}`)
      .set('If-Match', '*')
      .send({ pairs: [{ a: second?.id, b: stranger.id }] })
      .expect(409);
  });

  it('by moving it into a clutch of its own offspring', async () => {
    const [first, second, third] = await lineOf(3);
    const ownClutch = second?.clutchId;
    const move = (clutchId?: string) =>
      api.http.patch(`/api/v1/individuals/${first?.id}`).set('If-Match', '*').send({ clutchId });
    const answer = await move(third?.clutchId).expect(409);
    expect(answer.body).toMatchObject({ type: '/api/problems/loop' });
    await move(ownClutch).expect(409);
    await move((await make.clutch()).id).expect(200);
  });

  it('and a refused change leaves the record as it was', async () => {
    const [first, second] = await lineOf(2);
    const before = await api.http.get(`/api/v1/clutches/${first?.clutchId}`);
    await setSires(api, first?.clutchId ?? '', second?.id).expect(409);
    expect((await api.http.get(`/api/v1/clutches/${first?.clutchId}`)).body).toEqual(before.body);
  });
});

describe('what stands below rises in rank when it gets an older parent', () => {
  it('over many generations and by several ways down', async () => {
    const upper = await lineOf(8);
    const lower = await lineOf(8);
    // a second way down, longer than the first
    await setSires(api, lower[6]?.clutchId ?? '', lower[1]?.id, lower[5]?.id).expect(200);
    await setSires(api, lower[0]?.clutchId ?? '', upper[7]?.id).expect(200);
    const ranks = await api.dataSource.query<{ id: string; tier: number }[]>(
      'select id, tier from individual where id = any($1)',
      [[...upper, ...lower].map((animal) => animal.id)],
    );
    const rankOf = new Map(ranks.map((row) => [row.id, row.tier]));
    const inOrder = [...upper, ...lower].map((animal) => rankOf.get(animal.id) ?? 0);
    expect(inOrder).toEqual([...inOrder].sort((a, b) => a - b));
    expect(new Set(inOrder).size).toBe(16);
    expect(await nodesInLoops(api.dataSource)).toEqual([]);
  });

  it('without a change of its version', async () => {
    const [first, second] = await lineOf(2);
    const before = await api.http.get(`/api/v1/individuals/${second?.id}`);
    await setSires(api, first?.clutchId ?? '', (await lineOf(3))[2]?.id).expect(200);
    const after = await api.http.get(`/api/v1/individuals/${second?.id}`);
    expect(after.headers['etag']).toBe(before.headers['etag']);
  });
});

describe('two writers at once cannot close a loop that neither of them sees', () => {
  /**
   * What a program does that knows the tables but not the lock: raise what lies below the new parent, then write the parent.
   * Gives the SQLSTATE that refused it, or null where it went in.
   */
  async function writeBehindTheService(
    parent: string,
    clutchId: string,
    youngId: string,
    pause: () => Promise<unknown>,
  ): Promise<string | null> {
    const client = new pg.Client({ connectionString: api.databaseUrl });
    await client.connect();
    try {
      await client.query('begin');
      // two that wait for each other are told so at once
      await client.query(`set local deadlock_timeout = '20ms'`);
      const { rows } = await client.query<{ tier: number }>('select tier from individual where id = $1', [parent]);
      const tier = rows[0]?.tier ?? 0;
      await pause();
      await client.query('update individual set tier = greatest(tier, $2 + 2) where id = $1', [youngId, tier]);
      await client.query('update clutch set tier = greatest(tier, $2 + 1) where id = $1', [clutchId, tier]);
      await pause();
      await client.query(
        `insert into clutch_candidate (clutch_id, clutch_tier, role, individual_id, individual_tier, probability)
         select id, tier, 'sire', $2, $3, 1 from clutch where id = $1`,
        [clutchId, parent, tier],
      );
      await pause();
      await client.query('commit');
      return null;
    } catch (error) {
      await client.query('rollback');
      return (error as { code?: string }).code ?? 'no code';
    } finally {
      await client.end();
    }
  }

  it('by SQL on two connections, without the lock of the service', { timeout: 60_000 }, async () => {
    for (let round = 0; round < 12; round++) {
      const [one, two] = [await animalWithClutch(), await animalWithClutch()];
      const pause = (): Promise<unknown> => wait(Math.random() * 4);
      const results = await Promise.all([
        writeBehindTheService(two.id, one.clutchId, one.id, pause),
        writeBehindTheService(one.id, two.clutchId, two.id, pause),
      ]);
      expect(results.filter((code) => code === null).length).toBeLessThanOrEqual(1);
      // deadlock, serialisation, a rank that moved away, or a parent that does not rank above
      for (const code of results) expect([null, '40P01', '40001', '23503', '23514']).toContain(code);
    }
    expect(await nodesInLoops(api.dataSource)).toEqual([]);
  });

  it('by SQL that bends the ranks as it likes', async () => {
    const [first, second] = await lineOf(2);
    const write = api.dataSource.query(
      `insert into clutch_candidate (clutch_id, clutch_tier, role, individual_id, individual_tier, probability)
       select c.id, c.tier, 'dam', i.id, i.tier, 1 from clutch c, individual i where c.id = $1 and i.id = $2`,
      [first?.clutchId, second?.id],
    );
    await expect(write).rejects.toMatchObject({
      driverError: { code: '23514', constraint: 'clutch_candidate_before_clutch' },
    });
    const raise = api.dataSource.query('update clutch set tier = 100 where id = $1', [first?.clutchId]);
    await expect(raise).rejects.toMatchObject({ driverError: { code: '23514' } });
    const forget = api.dataSource.query('update clutch_candidate set individual_tier = null where clutch_id = $1', [
      second?.clutchId,
    ]);
    await expect(forget).rejects.toMatchObject({ driverError: { code: '23514' } });
  });

  it(
    'by two requests, to two copies of the service: one of them is told of the loop',
    { timeout: 60_000 },
    async () => {
      for (let round = 0; round < 12; round++) {
        const [one, two] = [await animalWithClutch(), await animalWithClutch()];
        const later = Math.random() * 6;
        const answers = await Promise.all([
          setSires(api, one.clutchId, two.id),
          wait(later).then(() => setSires(copy, two.clutchId, one.id)),
        ]);
        expect(answers.map((answer) => answer.status).sort()).toEqual([200, 409]);
        expect(answers.find((answer) => answer.status === 409)?.body).toMatchObject({ type: '/api/problems/loop' });
      }
      expect(await nodesInLoops(api.dataSource)).toEqual([]);
    },
  );
});

it(
  'whatever many writers change at once, the lineage stays without loops and every writer gets a plain answer',
  { timeout: 90_000 },
  async () => {
    const animals = await Promise.all(Array.from({ length: 14 }, () => animalWithClutch()));
    const any = <T>(list: readonly T[]): T => list[Math.floor(Math.random() * list.length)] as T;
    const changes = [
      (service: TestApi) => setSires(service, any(animals).clutchId, any(animals).id),
      (service: TestApi) => setSires(service, any(animals).clutchId, any(animals).id, any(animals).id),
      (service: TestApi) =>
        service.http
          .patch(`/api/v1/clutches/${any(animals).clutchId}`)
          .set('If-Match', '*')
          .send({ dams: [{ individualId: any(animals).id }] }),
      (service: TestApi) =>
        service.http
          .patch(`/api/v1/clutches/${any(animals).clutchId}`)
          .set('If-Match', '*')
          .send({ pairs: [{ a: any(animals).id, b: any(animals).id }] }),
      (service: TestApi) =>
        service.http
          .patch(`/api/v1/individuals/${any(animals).id}`)
          .set('If-Match', '*')
          .send({ clutchId: any(animals).clutchId }),
    ];
    const answers = new Map<number, number>();
    const writer = async (service: TestApi): Promise<void> => {
      for (let turn = 0; turn < 40; turn++) {
        const { status } = await any(changes)(service);
        answers.set(status, (answers.get(status) ?? 0) + 1);
      }
    };
    await Promise.all([api, copy, api, copy, api, copy].map(writer));
    expect([...answers.keys()].filter((status) => ![200, 409, 422].includes(status))).toEqual([]);
    expect(answers.get(200) ?? 0).toBeGreaterThan(20);
    expect(answers.get(409) ?? 0).toBeGreaterThan(5);
    expect(await nodesInLoops(api.dataSource)).toEqual([]);
  },
);
