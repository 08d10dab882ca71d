import pg from 'pg';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { FiguresUpkeep } from '../../../api/lineage/figures-upkeep.ts';
import { poolOf } from '../../../api/platform/data-source.ts';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';
import { writeSketch } from '../../support/register-sketch.ts';

/** Milliseconds after which a test gives up waiting: less than a copy of the service waits for a connection. */
const PATIENCE = 9000;
const turn = `hashtext('linekeeper figures')`;

async function until(isReached: () => Promise<boolean>, what: string): Promise<void> {
  const end = performance.now() + PATIENCE;
  while (!(await isReached())) {
    if (performance.now() > end) throw new Error(`waited in vain until ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

/**
 * The writing of stored figures, held up at chosen points by locks of the test's own. Each case is one that went wrong once, or would:
 * it ends with figures that nothing would ever correct.
 */
describe('stored figures', () => {
  let api: TestApi;
  let clients: pg.Client[];

  beforeEach(async () => {
    api = await startApi();
    clients = [];
  });
  afterEach(async () => {
    await Promise.all(clients.map((client) => client.end()));
    await api.close();
  });

  async function connect(): Promise<pg.Client> {
    const client = new pg.Client({ connectionString: api.databaseUrl, application_name: 'test' });
    clients.push(client);
    await client.connect();
    return client;
  }

  const holds = async (client: pg.Client, condition: string): Promise<boolean> =>
    (await client.query<{ holds: boolean }>(`select ${condition} as holds`)).rows[0]?.holds ?? false;

  /** Waits until every change is settled and every line has its mean kinships. */
  const quiet = (client: pg.Client): Promise<void> =>
    until(
      () =>
        holds(
          client,
          `not exists (select from lineage_change where not settled) and not exists (select from line_figures where due_since is not null)`,
        ),
      'the figures are current',
    );

  /** Waits until a statement of the service that begins so waits for a lock. */
  const untilBlocked = (client: pg.Client, statement: string): Promise<void> =>
    until(
      () =>
        holds(
          client,
          `exists (select from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock' and query like '${statement}%')`,
        ),
      `"${statement}" is held up`,
    );

  async function stored(client: pg.Client, id: string | undefined, figure: string): Promise<number | null> {
    const { rows } = await client.query<{ value: number | null }>(
      `select ${figure} as value from individual_figures where individual_id = $1`,
      [id],
    );
    if (!rows[0]) throw new Error(`no figures of ${id} are stored`);
    return rows[0].value;
  }

  it('follow a change that is committed after the job looked at the notes, or leave it to be settled', async () => {
    const { individuals, sources } = await writeSketch(api.dataSource, {
      sources: [{}, {}],
      clutches: [],
      individuals: [...Array.from({ length: 600 }, () => ({ source: 0 })), { source: 1 }],
    });
    const [test, writer] = [await connect(), await connect()];
    await quiet(test);
    await test.query(`select pg_advisory_lock(${turn})`);
    // 1200 notes: too many for a request, few enough to be followed one by one
    for (const sex of ['male', 'female'])
      await test.query('update individual set sex = $1 where source_id = $2', [sex, sources[0]]);

    await writer.query('begin');
    await writer.query('lock table lineage_revision in access exclusive mode');
    await test.query(`select pg_advisory_unlock(${turn})`);
    await api.app.get(FiguresUpkeep).wanted(true);
    // whatever the job read before, it read without the change that follows
    await untilBlocked(test, 'select revision');
    await writer.query('update source set base_kinship = 0.25 where id = $1', [sources[1]]);
    await writer.query('commit');

    await quiet(test);
    expect(await stored(test, individuals[600], 'inbreeding')).toBeCloseTo(0.25, 12);
  });

  it('are not taken back to older ones by a copy of the service that has lost its turn without noticing', async () => {
    const { individuals, sources } = await writeSketch(api.dataSource, {
      sources: [{}, { baseKinship: 0.5 }],
      clutches: [],
      individuals: Array.from({ length: 6000 }, () => ({ source: 0 })),
    });
    const last = individuals[5999];
    const [test, holder] = [await connect(), await connect()];
    await quiet(test);

    // the copy is held up in its first slice; its connections are taken, so that it cannot begin the second one
    await test.query(`select pg_advisory_lock(${turn})`);
    await test.query('update source set base_kinship = 0.125 where id = $1', [sources[0]]);
    await holder.query('begin');
    await holder.query('select 1 from lineage_revision for update');
    await test.query(`select pg_advisory_unlock(${turn})`);
    await api.app.get(FiguresUpkeep).wanted(true);
    await untilBlocked(test, 'select 1 from lineage_revision');
    const pool = poolOf(api.dataSource);
    const taken = Array.from({ length: pool.options.max }, () => pool.connect());
    await holder.query('rollback');
    await until(() => holds(test, '(select done = 5000 from figures_progress)'), 'the first slice is written');
    expect(await stored(test, individuals[0], 'inbreeding')).toBeCloseTo(0.125, 12);
    expect(await stored(test, last, 'inbreeding')).toBe(0);

    // its turn ends with the connection that has it, and another copy goes on
    await test.query(
      `select pg_terminate_backend(pid) from pg_locks where locktype = 'advisory' and granted
         and database = (select oid from pg_database where datname = current_database())
         and objid::bigint = ${turn}::bigint & 4294967295`,
    );
    const other = await startApiOn(api.databaseUrl);
    try {
      const change = { sourceId: sources[1] };
      await other.http.patch(`/api/v1/individuals/${last}`).set('If-Match', '*').send(change).expect(200);
      await quiet(test);
      expect(await stored(test, last, 'inbreeding')).toBeCloseTo(0.5, 12);

      const work = api.app.get(FiguresUpkeep).ended();
      for (const client of taken) (await client).release();
      await work;
      await quiet(test);
      expect(await stored(test, last, 'inbreeding')).toBeCloseTo(0.5, 12);
    } finally {
      await other.close();
    }
  });

  it('are settled although the job has failed halfway, which keeps the turn from nobody', async () => {
    const { individuals, sources } = await writeSketch(api.dataSource, {
      sources: [{}],
      clutches: [],
      individuals: Array.from({ length: 2000 }, () => ({ source: 0 })),
    });
    const [test, holder] = [await connect(), await connect()];
    await quiet(test);
    await test.query(`select pg_advisory_lock(${turn})`);
    await test.query('update source set base_kinship = 0.125 where id = $1', [sources[0]]);
    await holder.query('begin');
    await holder.query('select 1 from lineage_revision for update');
    await test.query(`select pg_advisory_unlock(${turn})`);
    await api.app.get(FiguresUpkeep).wanted(true);
    await untilBlocked(test, 'select 1 from lineage_revision');
    const work = api.app.get(FiguresUpkeep).ended();
    // the connection of its slice is lost, the one that has the turn is not
    await test.query(
      `select pg_terminate_backend(pid) from pg_stat_activity
       where datname = current_database() and wait_event_type = 'Lock' and query like 'select 1 from lineage_revision%'`,
    );
    await work;
    const isTaken = `exists (select from pg_locks where locktype = 'advisory' and granted
      and database = (select oid from pg_database where datname = current_database())
      and objid::bigint = ${turn}::bigint & 4294967295)`;
    expect(await holds(test, isTaken)).toBe(false);
    await holder.query('rollback');
    await quiet(test);
    expect(await stored(test, individuals[1999], 'inbreeding')).toBeCloseTo(0.125, 12);
  });

  it('keep a line due that has changed again while its mean kinships were written, be it in the same millisecond', async () => {
    const { individuals, lines } = await writeSketch(api.dataSource, {
      lines: [{ name: 'Line' }],
      clutches: [],
      individuals: Array.from({ length: 4 }, () => ({ line: 0 })),
    });
    const [test, holder] = [await connect(), await connect()];
    await quiet(test);
    await test.query(`select pg_advisory_lock(${turn})`);
    await test.query(`update individual set status = 'died' where id = $1`, [individuals[3]]);
    await holder.query('begin');
    await holder.query('select 1 from individual_figures where individual_id = $1 for update', [individuals[0]]);
    await test.query(`select pg_advisory_unlock(${turn})`);
    await api.app.get(FiguresUpkeep).wanted(true);
    await untilBlocked(test, 'update individual_figures');

    const { rows } = await test.query<{ since: string }>(
      'select due_since::text as since from line_figures where line_id = $1',
      [lines[0]],
    );
    const [species] = await api.dataSource.query<{ id: string }[]>('select id from species');
    await api.http.post('/api/v1/individuals').send({ speciesId: species?.id, lineId: lines[0] }).expect(201);
    await test.query('update line_figures set due_since = $1 where line_id = $2', [rows[0]?.since, lines[0]]);
    await holder.query('rollback');

    await quiet(test);
    // one of four living animals, with itself ½
    expect(await stored(test, individuals[0], 'mean_kinship')).toBeCloseTo(0.125, 12);
  });

  it('of mean kinship follow the base kinship of a source whose animals have no young', async () => {
    const { individuals, sources } = await writeSketch(api.dataSource, {
      sources: [{}],
      lines: [{ name: 'Line' }],
      clutches: [],
      individuals: [0, 1, 2].map(() => ({ source: 0, line: 0 })),
    });
    const test = await connect();
    await quiet(test);
    await api.http.patch(`/api/v1/sources/${sources[0]}`).set('If-Match', '*').send({ baseKinship: 0.2 }).expect(200);
    await quiet(test);
    // ½(1 + 0.2) with itself, 0.2 with the two others
    for (const id of individuals) expect(await stored(test, id, 'mean_kinship')).toBeCloseTo((0.6 + 0.2 + 0.2) / 3, 12);
  });

  it('of mean kinship go when an animal leaves its line', async () => {
    const { individuals } = await writeSketch(api.dataSource, {
      lines: [{ name: 'Line' }],
      clutches: [],
      individuals: [{ line: 0 }, { line: 0 }],
    });
    const test = await connect();
    await quiet(test);
    expect(await stored(test, individuals[0], 'mean_kinship')).toBeCloseTo(0.25, 12);
    await api.http
      .patch(`/api/v1/individuals/${individuals[0]}`)
      .set('If-Match', '*')
      .send({ lineId: null })
      .expect(200);
    await quiet(test);
    expect(await stored(test, individuals[0], 'mean_kinship')).toBeNull();
    expect(await stored(test, individuals[1], 'mean_kinship')).toBeCloseTo(0.5, 12);
  });
});
