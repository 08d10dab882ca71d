import { setTimeout as wait } from 'node:timers/promises';
import pg from 'pg';
import { DataSource } from 'typeorm';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { entities } from '../../../api/app.module.ts';
import { sealBatch } from '../../../api/journal/sealing.queries.ts';
import { verifyJournal, type Verification } from '../../../api/journal/verify-chain.ts';
import { dataSourceOptions } from '../../../api/platform/data-source.ts';
import { writeEntry } from '../../../api/platform/journal-entry.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';

let database: TestDatabase;
/** A register without a service: nobody seals here but the test. */
let dataSource: DataSource;
let other: pg.Client;

beforeAll(async () => {
  database = await createDatabase();
  dataSource = await new DataSource(dataSourceOptions(database.url, entities)).initialize();
  other = new pg.Client({ connectionString: database.url });
  await other.connect();
});

afterAll(async () => {
  await other.end();
  await dataSource.destroy();
  await database.drop();
});

/** Ends the connection that stands before the last statement of its batch. */
async function breakBatch(): Promise<void> {
  for (let tries = 0; tries < 500; tries++) {
    const ended = await dataSource.query<unknown[]>(
      `select pg_terminate_backend(pid) from pg_stat_activity
       where datname = current_database() and wait_event_type = 'Lock' and query like 'delete from journal_unsealed%'`,
    );
    if (ended.length > 0) return;
    await wait(10);
  }
  throw new Error('no batch came to its last statement');
}

const verify = (): Promise<Verification> => verifyJournal(other);

it('a connection that breaks in the middle of a batch loses no entry and seals none twice', async () => {
  await dataSource.transaction(async (manager) => {
    for (let index = 0; index < 50; index++)
      await writeEntry(manager, { action: 'seeded', kind: 'club', recordId: null, before: null, after: { index } });
  });
  // the seals are written, but the entries cannot be taken off the list: another connection holds them
  await other.query('begin');
  await other.query('select from journal_unsealed for update');
  const batch = sealBatch(dataSource).then(
    () => 'sealed',
    () => 'broken',
  );
  await breakBatch();
  expect(await batch).toBe('broken');
  await other.query('rollback');
  expect(await verify()).toMatchObject({ sealed: 0, waiting: 50, fault: null });
  expect(await sealBatch(dataSource)).toBe(50);
  expect(await verify()).toMatchObject({ sealed: 50, waiting: 0, fault: null });
});
