import { afterAll, beforeAll, expect, it } from 'vitest';
import { DataSource } from 'typeorm';
import { entities } from '../../../api/app.module.ts';
import { constraintMessages } from '../../../api/platform/constraints.ts';
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

it('every rule that the database holds is told in words, and no others are', async () => {
  // primary keys that are ids of records cannot be violated by a request; not-null rules carry no name of ours
  const named = await dataSource.query<{ name: string }[]>(`
    select conname as name from pg_constraint where connamespace = 'public'::regnamespace and contype in ('c', 'f', 'u', 'x')
    union select conname from pg_constraint where connamespace = 'public'::regnamespace and contype = 'p' and cardinality(conkey) > 1
    union select indexname from pg_indexes where schemaname = 'public' and indexdef like 'CREATE UNIQUE%' and indexname like '%\\_unique'
    union select (regexp_matches(prosrc, $$constraint = '([a-z_]+)'$$, 'g'))[1] from pg_proc where pronamespace = 'public'::regnamespace`);
  expect(Object.keys(constraintMessages).sort()).toEqual(named.map((row) => row.name).sort());
});

it('each message is a sentence with a remedy and a JSON pointer', () => {
  for (const [name, { pointer, detail }] of Object.entries(constraintMessages)) {
    expect(detail, name).toMatch(/^[A-Z].*[.]$/);
    expect(pointer, name).toMatch(/^(\/[A-Za-z-]+)*$/);
  }
});
