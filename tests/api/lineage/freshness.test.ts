import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import pg from 'pg';
import type { EntityManager } from 'typeorm';
import type { KinshipView } from '../../../api/lineage/kinship.view.ts';
import { lockPedigree } from '../../../api/platform/revision.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';
import { writeSketch, type SketchIds } from '../../support/register-sketch.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { SlowRecursion } from '../../unit/kernel/slow-recursion.ts';

/** The register in one revision, as a test reads it for itself: animals in the order of their numbers. */
interface State {
  readonly ids: readonly string[];
  readonly pedigree: Pedigree;
}

/** Reads the whole register within the transaction at hand; every clutch here has one certain pair. */
async function readState(manager: EntityManager): Promise<State> {
  const animals = await manager.query<
    { id: string; clutch: string | null; source: string | null; sire: string | null; dam: string | null }[]
  >(
    `select i.id, i.clutch_id as clutch, i.source_id as source, s.individual_id as sire, d.individual_id as dam from individual i
     left join clutch_candidate s on s.clutch_id = i.clutch_id and s.role = 'sire'
     left join clutch_candidate d on d.clutch_id = i.clutch_id and d.role = 'dam' order by i.number`,
  );
  const sources = await manager.query<{ id: string; base: number }[]>(
    'select id, base_kinship as base from source order by id',
  );
  const ids = animals.map(({ id }) => id);
  const bred = animals.filter(({ clutch }) => clutch !== null);
  const clutches = [...new Map(bred.map((animal) => [animal.clutch, animal])).values()];
  const number = (id: string | null): number => (id === null ? -1 : ids.indexOf(id));
  return {
    ids,
    pedigree: {
      clutchOf: Int32Array.from(animals, ({ clutch }) =>
        clutches.findIndex((other) => clutch !== null && other.clutch === clutch),
      ),
      sourceOf: Int32Array.from(animals, ({ source }) => sources.findIndex(({ id }) => id === source)),
      baseKinship: Float64Array.from(sources, ({ base }) => base),
      pairStart: Int32Array.from({ length: clutches.length + 1 }, (_, clutch) => clutch),
      pairSire: Int32Array.from(clutches, ({ sire }) => number(sire)),
      pairDam: Int32Array.from(clutches, ({ dam }) => number(dam)),
      pairProbability: new Float64Array(clutches.length).fill(1),
    },
  };
}

/** Lays a clutch of the two animals with two young, or says that a shipment was closer kin than was thought. */
async function change(manager: EntityManager, turn: number): Promise<void> {
  if (turn % 4 === 3) {
    await manager.query('update source set base_kinship = $1', [0.01 * (1 + (turn % 20))]);
    return;
  }
  const [clutch] = await manager.query<{ id: string; tier: number }[]>(
    `insert into clutch (keeper_id, tier) select k.id, (select 1 + max(tier) from individual) from keeper k limit 1 returning id, tier`,
  );
  // the newest animals but for the last few, so that parents differ from turn to turn and lines cross back
  await manager.query(
    `insert into clutch_candidate (clutch_id, clutch_tier, role, individual_id, individual_tier, probability)
     select $1, $2, case row_number() over (order by number) when 1 then 'sire' else 'dam' end, id, tier, 1
     from (select * from individual order by number desc offset $3 limit 2) parent`,
    [clutch?.id, clutch?.tier, turn % 3],
  );
  await manager.query(
    `insert into individual (keeper_id, species_id, clutch_id, clutch_tier, tier)
     select i.keeper_id, i.species_id, $1, $2, $2 + 1 from (select * from individual limit 1) i, generate_series(1, 2)`,
    [clutch?.id, clutch?.tier],
  );
}

describe('figures while others write', () => {
  let first: TestApi;
  let second: TestApi;
  let founders: SketchIds;

  beforeAll(async () => {
    first = await startApi();
    second = await startApiOn(first.databaseUrl);
    founders = await writeSketch(first.dataSource, {
      sources: [{ baseKinship: 0.05 }],
      individuals: Array.from({ length: 4 }, () => ({ source: 0 })),
      clutches: [],
    });
  });
  const foundersF = async (api: TestApi): Promise<number> => {
    const answer = await api.http.get(`/api/v1/individuals/${founders.individuals[0] ?? ''}/lineage`).expect(200);
    return bodyOf<LineageView>(answer).inbreeding.expected;
  };
  afterAll(async () => {
    await second.close();
    await first.close();
  });

  it('belong whole to the revision they name, in two copies of the service, and are never older than the question', async () => {
    const states = new Map<number, State>();
    const answers: { view: KinshipView; atLeast: number; asked: readonly string[] }[] = [];
    const known = [...founders.individuals];
    let newest = 0;
    let isWriting = true;

    const write = async (api: TestApi, turns: number): Promise<void> => {
      for (let turn = 0; turn < turns; turn++) {
        const { revision, state } = await api.dataSource.transaction(async (manager) => {
          await lockPedigree(manager);
          await change(manager, turn);
          const [row] = await manager.query<{ revision: string }[]>('select revision from lineage_revision');
          return { revision: Number(row?.revision), state: await readState(manager) };
        });
        states.set(revision, state);
        newest = Math.max(newest, revision);
        known.splice(0, known.length, ...state.ids);
      }
    };
    const read = async (api: TestApi): Promise<void> => {
      while (isWriting) {
        const atLeast = newest;
        const asked = known.slice(-12);
        const answer = await api.http.post('/api/v1/lineage/kinship').send({ individuals: asked }).expect(200);
        answers.push({ view: bodyOf<KinshipView>(answer), atLeast, asked });
      }
    };
    const [initial] = await first.dataSource.query<{ revision: string }[]>('select revision from lineage_revision');
    states.set(Number(initial?.revision), await readState(first.dataSource.manager));

    const writers = Promise.all([write(first, 24), write(second, 24)]).finally(() => (isWriting = false));
    await Promise.all([writers, read(first), read(first), read(second), read(second)]);

    expect(answers.length).toBeGreaterThan(20);
    expect(new Set(answers.map(({ view }) => view.asOf.revision)).size).toBeGreaterThan(5);
    for (const { view, atLeast, asked } of answers) {
      expect(view.asOf.revision).toBeGreaterThanOrEqual(atLeast);
      const state = states.get(view.asOf.revision);
      if (!state) throw new Error(`an answer names revision ${view.asOf.revision}, which nobody wrote`);
      const slow = new SlowRecursion(state.pedigree);
      const numbers = asked.map((id) => state.ids.indexOf(id));
      const wanted = numbers.map((a) => numbers.map((b) => slow.kinship(a, b)));
      view.kinship.forEach((row, a) => row.forEach((value, b) => expect(value).toBeCloseTo(wanted[a]?.[b] ?? NaN, 12)));
    }
  });

  it('are the same from both copies once it is quiet', async () => {
    const [animal] = await first.dataSource.query<{ id: string }[]>(
      'select id from individual order by number desc limit 1',
    );
    const of = async (api: TestApi): Promise<unknown> =>
      (await api.http.get(`/api/v1/individuals/${animal?.id}/lineage`).expect(200)).body as unknown;
    expect(withoutRounding(await of(first))).toEqual(withoutRounding(await of(second)));
  });

  it('follow a change that the other copy wrote', async () => {
    await foundersF(second);
    await first.dataSource.query('update source set base_kinship = 0.75');
    expect(await foundersF(second)).toBe(0.75);
  });

  it('are read anew when a backup takes the register back to an earlier revision', async () => {
    await foundersF(second);
    await first.dataSource.transaction(async (manager) => {
      await manager.query('update source set base_kinship = 0.5');
      await manager.query(`update lineage_revision set revision = 3, changed_at = '2020-01-01'`);
    });
    expect(await foundersF(second)).toBe(0.5);
  });

  it('are not taken from a reading that began before the question', async () => {
    await first.dataSource.query('update source set base_kinship = 0.3');
    // a new clutch lets the reading look for its parents
    await first.dataSource.query('insert into clutch (keeper_id) select id from keeper limit 1');
    const gate = first.dataSource.createQueryRunner();
    await gate.startTransaction();
    await gate.query('lock table clutch_pair in access exclusive mode');
    const early = foundersF(first);
    await waitingReaders(second, 1);
    await second.dataSource.query('update source set base_kinship = 0.4');
    const asked = nextRevisionRead(first);
    const late = foundersF(first);
    await asked;
    await gate.rollbackTransaction();
    await gate.release();
    expect(await early).toBe(0.3);
    expect(await late).toBe(0.4);
  });

  it('cost one reading when many ask at once', async () => {
    await first.dataSource.query('update source set base_kinship = 0.6');
    const counted = countReadings();
    const ask = () => first.http.get(`/api/v1/individuals/${founders.individuals[0]}/lineage`).expect(200);
    await Promise.all(Array.from({ length: 12 }, ask));
    counted.stop();
    // those that asked while the first reading had begun already may need a second one, never one each
    expect(counted.readings()).toBeLessThanOrEqual(2);
    expect(counted.readings()).toBeGreaterThan(0);
  });
});

/** Counts the transactions that read the register, of all copies. */
function countReadings(): { readings(): number; stop(): void } {
  const connection = pg.Client.prototype as { query: (...parts: unknown[]) => unknown };
  const { query } = connection;
  let readings = 0;
  connection.query = function (...parts: unknown[]): unknown {
    if (parts[0] === 'begin isolation level repeatable read read only') readings++;
    return query.apply(this, parts);
  };
  return { readings: () => readings, stop: () => void (connection.query = query) };
}

/** Waits until so many readings of the register stand before the locked table. */
async function waitingReaders({ dataSource }: TestApi, count: number): Promise<void> {
  for (;;) {
    const rows = await dataSource.query<unknown[]>(
      `select 1 from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock' and query like '%from clutch_pair%'`,
    );
    if (rows.length >= count) return;
  }
}

/** Resolves when the service has next learnt the revision of the register. */
function nextRevisionRead({ dataSource }: TestApi): Promise<void> {
  const { manager } = dataSource;
  const query = manager.query.bind(manager) as (...parts: unknown[]) => Promise<unknown>;
  return new Promise((resolve) => {
    const watched = async (...parts: unknown[]): Promise<unknown> => {
      const answer = await query(...parts);
      if (String(parts[0]).includes('lineage_revision')) {
        Object.assign(manager, { query });
        // the service takes the answer before anything that this promise lets go on
        setImmediate(resolve);
      }
      return answer;
    };
    Object.assign(manager, { query: watched });
  });
}

/** An answer whose numbers are told to 12 places: each copy sums in the order in which it came to know the animals. */
function withoutRounding(answer: unknown): unknown {
  return JSON.parse(JSON.stringify(answer), (_, value: unknown) =>
    typeof value === 'number' ? Number(value.toFixed(12)) : value,
  ) as unknown;
}
