import { rmSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import type { TestProject } from 'vitest/node';
import { migrate } from '../../api/platform/data-source.ts';
import { startEmbeddedDatabase } from '../../api/platform/embedded-database.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the test server's `postgres` database. */
    postgresUrl: string;
  }
}

export const templateName = 'template_registry';

/**
 * One PostgreSQL for the whole run, with a migrated template that each test file clones: the embedded one, durability
 * switched off, or the server of TEST_DATABASE_URL.
 */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const given = process.env['TEST_DATABASE_URL'];
  const folder = await mkdtemp(join(tmpdir(), 'linekeeper-tests-'));
  const server = given
    ? { url: given, stop: () => Promise.resolve() }
    : await startEmbeddedDatabase(folder, [
        'fsync=off',
        'synchronous_commit=off',
        'full_page_writes=off',
        'max_connections=200',
      ]);
  const url = new URL(server.url);
  url.pathname = '/postgres';
  await runOn(url.href, `drop database if exists ${templateName} with (force)`, `create database ${templateName}`);
  const template = new URL(url);
  template.pathname = `/${templateName}`;
  await migrate(template.href);
  project.provide('postgresUrl', url.href);
  return async () => {
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  };
}

async function runOn(url: string, ...statements: string[]): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    for (const statement of statements) await client.query(statement);
  } finally {
    await client.end();
  }
}
