import { DataSource } from 'typeorm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { entities } from '../../../api/app.module.ts';
import { dataSourceOptions } from '../../../api/platform/data-source.ts';

import { createDatabase, type TestDatabase } from '../../support/database.ts';

let database: TestDatabase;
let dataSource: DataSource;

beforeAll(async () => {
  database = await createDatabase();
  dataSource = await new DataSource(dataSourceOptions(database.url, entities)).initialize();
});

afterAll(async () => {
  await dataSource.destroy();
  await database.drop();
});

describe('the schema', () => {
  it('is what the entities say, to the name of every constraint', async () => {
    const drift = await dataSource.driver.createSchemaBuilder().log();
    expect(drift.upQueries.map((query) => query.query)).toEqual([]);
  });

  it('can be taken down step by step and put up again', async () => {
    const tables = async (): Promise<string[]> =>
      (
        await dataSource.query<{ name: string }[]>(
          `select tablename as name from pg_tables where schemaname = 'public' order by 1`,
        )
      ).map((row) => row.name);
    const before = await tables();
    for (let left = dataSource.migrations.length; left > 0; left--) await dataSource.undoLastMigration();
    expect(await tables()).toEqual(['migrations']);
    await dataSource.runMigrations();
    expect(await tables()).toEqual(before);
  });
});
