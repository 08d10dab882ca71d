import supertest from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import { DataSource } from 'typeorm';
import { createApp } from '../../api/create-app.ts';
import { prepareRegister } from '../../api/people/first-start.ts';
import { createDatabase } from './database.ts';

/** The whole service on a database of its own, listening on a free port. */
export interface TestApi {
  /** Speaks to the service; addresses begin at the host: `/api/v1/...`. */
  readonly http: TestAgent;
  readonly dataSource: DataSource;
  /** Address of the service, `http://127.0.0.1:port`. */
  readonly url: string;
  readonly databaseUrl: string;
  close(): Promise<void>;
}

/** Starts the service on a fresh register with its default keeper. */
export async function startApi(): Promise<TestApi> {
  const database = await createDatabase();
  const api = await startApiOn(database.url);
  return {
    ...api,
    close: async () => {
      await api.close();
      await database.drop();
    },
  };
}

/** Starts the service on a database that exists: a second copy of it, or one that a test prepared. */
export async function startApiOn(databaseUrl: string): Promise<TestApi> {
  const app = await createApp(databaseUrl, { quiet: true });
  const dataSource = app.get(DataSource);
  await prepareRegister(dataSource, null);
  await app.listen(0, '127.0.0.1');
  const url = await app.getUrl();
  return { http: supertest.agent(url), dataSource, url, databaseUrl, close: () => app.close() };
}
