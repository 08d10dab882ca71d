import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { expect, it } from 'vitest';
import { LineageMemory } from '../../api/lineage/lineage-memory.ts';
import { LineageSnapshot } from '../../api/lineage/lineage-snapshot.ts';
import { readLineage } from '../../api/lineage/read-lineage.ts';
import { hashOfSecret, tokenPrefix } from '../../api/people/secrets.ts';
import { migrate } from '../../api/platform/data-source.ts';
import { startEmbeddedDatabase } from '../../api/platform/embedded-database.ts';
import { fillRegister, MILLION } from '../bench/million.ts';
import { serversIn, startService, type Service } from '../support/service.ts';

const shape = { ...MILLION, name: '100 lines x 500', lines: 100, crosses: 0.05 };
const token = tokenPrefix + randomBytes(24).toString('base64url');

async function withClient<Result>(url: string, work: (client: pg.Client) => Promise<Result>): Promise<Result> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

async function addClub(client: pg.Client): Promise<void> {
  await client.query(`insert into club (name) values ('Faults')`);
  await client.query(
    `with keeper as (insert into keeper (name, roles) values ('Keeper', '{registrar}') returning id)
     insert into access_token (keeper_id, name, scope, token_hash) select id, 'test', 'write', $1 from keeper`,
    [hashOfSecret(token)],
  );
}

interface Progress {
  readonly current: boolean;
  readonly done: number;
}

async function ask<Answer>({ url }: Service, path: string, init: RequestInit = {}): Promise<Answer> {
  const headers = { authorization: `Bearer ${token}`, 'content-type': 'application/json', ...init.headers };
  const answer = await fetch(`${url}/api/v1${path}`, { ...init, headers });
  if (!answer.ok) throw new Error(`${path} was answered ${answer.status}: ${await answer.text()}`);
  return (await answer.json()) as Answer;
}

/** Waits until the progress is as wanted; gives the milliseconds that it took. */
async function until(service: Service, isReached: (progress: Progress) => boolean): Promise<number> {
  const started = performance.now();
  while (performance.now() - started < 90_000) {
    if (isReached(await ask<Progress>(service, '/lineage/progress'))) return performance.now() - started;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  throw new Error('the figures did not come that far in a minute and a half');
}

const untilCurrent = (service: Service): Promise<number> => until(service, ({ current }) => current);

/** Which copy of the service has the turn to write figures, by the name that its connections carry. */
async function whoWorks(client: pg.Client): Promise<string | undefined> {
  const { rows } = await client.query<{ name: string }>(
    `select application_name as name from pg_locks join pg_stat_activity using (pid) where locktype = 'advisory' and granted
       and objid::bigint = hashtext('linekeeper figures')::bigint & 4294967295`,
  );
  return rows[0]?.name;
}

interface StoredRow {
  readonly id: string;
  readonly inbreeding: number;
  readonly depth: number;
  readonly kinship: number | null;
}

/** Holds all that is stored against a computation from nothing. */
async function expectAllRight(client: pg.Client): Promise<void> {
  await client.query('begin isolation level repeatable read read only');
  const { revision, parts } = await readLineage(client, { frontierBytes: 2 ** 28 });
  const { rows } = await client.query<StoredRow>(
    'select individual_id as id, inbreeding, depth, mean_kinship as kinship from individual_figures',
  );
  await client.query('commit');
  const state = new LineageMemory(parts).show();
  const wanted = new LineageSnapshot(revision, state, new Int32Array(state.knowledge.stale.length).fill(-1));
  expect(rows.length).toBe(wanted.size);
  let furthest = 0;
  for (const { id, inbreeding, depth, kinship } of rows) {
    const animal = wanted.find(id);
    expect(depth).toBe(wanted.depthOf(animal).depth);
    furthest = Math.max(
      furthest,
      Math.abs(inbreeding - wanted.inbreedingOf(animal).expected),
      Math.abs((kinship ?? NaN) - (wanted.meanKinshipOf(animal) ?? NaN)),
    );
  }
  expect(furthest).toBeLessThanOrEqual(1e-12);
}

it.each([200, 1500, 4000])(
  'a recomputation of all figures that is killed after %i ms is done by the next start, nothing lost',
  async (delay) => {
    const folder = mkdtempSync(join(tmpdir(), 'linekeeper-figures-'));
    try {
      const before = await startEmbeddedDatabase(folder);
      await migrate(before.url);
      await withClient(before.url, addClub);
      await fillRegister(before.url, shape);
      const first = await startService({ DATABASE_URL: before.url, DATA_DIR: folder });
      await new Promise((resolve) => setTimeout(resolve, delay));
      first.process.kill('SIGKILL');
      for (const pid of serversIn(folder)) process.kill(pid, 'SIGKILL');
      await first.ended;

      const after = await startEmbeddedDatabase(folder);
      const second = await startService({ DATABASE_URL: after.url, DATA_DIR: folder });
      await untilCurrent(second);
      await withClient(after.url, expectAllRight);
      second.process.kill('SIGTERM');
      expect(await second.ended).toBe(0);
      await after.stop();
    } finally {
      for (const pid of serversIn(folder)) process.kill(pid, 'SIGQUIT');
      rmSync(folder, { recursive: true, force: true });
    }
  },
  180_000,
);

it('a recomputation of 50 000 animals whose copy of the service is killed is gone on with by another copy within seconds', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-figures-'));
  const copies = new Map<string, Service>();
  try {
    const database = await startEmbeddedDatabase(folder);
    await migrate(database.url);
    await withClient(database.url, addClub);
    await fillRegister(database.url, { ...MILLION, name: 'a line of 50 000', lines: 1, animalsPerLine: 50_000 });
    for (const name of ['first', 'second'])
      copies.set(
        name,
        await startService({ DATABASE_URL: `${database.url}?application_name=${name}`, DATA_DIR: join(folder, name) }),
      );
    const [correcting] = copies.values();
    if (!correcting) throw new Error('no copy was started');
    await untilCurrent(correcting);

    // every animal descends from the founders of the one source
    const { items } = await ask<{ items: { id: string }[] }>(correcting, '/sources');
    await ask(correcting, `/sources/${items[0]?.id}`, {
      method: 'PATCH',
      headers: { 'if-match': '*' },
      body: JSON.stringify({ baseKinship: 0.125 }),
    });
    await until(correcting, ({ done }) => done > 0);
    await withClient(database.url, async (client) => {
      const working = (await whoWorks(client)) ?? '';
      const dying = copies.get(working);
      dying?.process.kill('SIGKILL');
      await dying?.ended;
      copies.delete(working);
    });
    const [left, ...others] = copies.values();
    if (!left || others.length > 0) throw new Error('the copy that worked was not found');
    expect((await ask<Progress>(left, '/lineage/progress')).current).toBe(false);
    // the look of the copy that is left comes every two seconds, the work itself takes some more
    expect(await untilCurrent(left)).toBeLessThan(30_000);
    await withClient(database.url, expectAllRight);
    left.process.kill('SIGTERM');
    expect(await left.ended).toBe(0);
    await database.stop();
  } finally {
    for (const { process } of copies.values()) process.kill('SIGKILL');
    for (const pid of serversIn(folder)) process.kill(pid, 'SIGQUIT');
    rmSync(folder, { recursive: true, force: true });
  }
}, 240_000);
