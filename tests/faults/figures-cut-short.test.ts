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
    `with keeper as (insert into keeper (name) values ('Keeper') returning id)
     insert into access_token (keeper_id, name, scope, token_hash) select id, 'test', 'write', $1 from keeper`,
    [hashOfSecret(token)],
  );
}

async function untilCurrent({ url }: Service): Promise<void> {
  for (let turn = 0; turn < 900; turn++) {
    const answer = await fetch(`${url}/api/v1/lineage/progress`, { headers: { authorization: `Bearer ${token}` } });
    if (((await answer.json()) as { current: boolean }).current) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('the figures did not become current in a minute and a half');
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
  const clutches = await client.query<{ id: string; within: number }>(
    'select clutch_id as id, within from clutch_figures',
  );
  await client.query('commit');
  const state = new LineageMemory(parts).show();
  const wanted = new LineageSnapshot(revision, state, new Int32Array(state.knowledge.stale.length).fill(-1));
  expect(rows.length).toBe(wanted.size);
  expect(clutches.rows.length).toBe(state.knowledge.stale.length);
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
  for (const { id, within } of clutches.rows)
    furthest = Math.max(furthest, Math.abs(within - (wanted.inbreeding.clutchWithin[wanted.findClutch(id)] ?? NaN)));
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
