import pg from 'pg';
import { startEmbeddedDatabase, type EmbeddedDatabase } from './embedded-database.ts';
import { SettingsError, type Settings } from './settings.ts';

/** A database that is ready to be migrated and used. */
export interface Database {
  readonly url: string;
  stop(): Promise<void>;
}

/** Opens the given PostgreSQL, or starts our own. Throws with words for the person at the terminal. */
export async function openDatabase(settings: Settings): Promise<Database> {
  if (settings.databaseUrl === null) return startEmbeddedDatabase(settings.dataDir) satisfies Promise<EmbeddedDatabase>;
  await checkGiven(settings.databaseUrl);
  return { url: settings.databaseUrl, stop: () => Promise.resolve() };
}

async function checkGiven(url: string): Promise<void> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 10_000 });
  client.on('error', () => undefined);
  try {
    await client.connect();
  } catch (error) {
    throw new SettingsError(`DATABASE_URL cannot be reached: ${error instanceof Error ? error.message : 'no answer'}.`);
  }
  try {
    const { rows } = await client.query<{ version: string; encoding: string }>(
      `select current_setting('server_version_num') as version, current_setting('server_encoding') as encoding`,
    );
    if (Number(rows[0]?.version) < 150_000)
      throw new SettingsError('DATABASE_URL is a PostgreSQL older than 15. Give it a newer one.');
    if (rows[0]?.encoding !== 'UTF8')
      throw new SettingsError(`The database of DATABASE_URL is encoded as ${rows[0]?.encoding}. Make one with UTF8.`);
  } finally {
    await client.end();
  }
}
