import { rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { DestinationStream } from 'pino';
import supertest from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import { DataSource } from 'typeorm';
import { createApp } from '../../api/create-app.ts';
import type { Settings } from '../../api/platform/settings.ts';
import { watchConnections } from '../../api/platform/time-limits.ts';
import type { Role } from '../../shared/vocabulary.ts';
import { createDatabase } from './database.ts';
import { keeperWithToken } from './token.ts';

/** Somebody who speaks to the service. */
export interface TestKeeper {
  readonly id: string;
  readonly name: string;
  /** The bearer token that `http` sends. */
  readonly token: string;
  /** Sends this keeper's token for reading and writing. */
  readonly http: TestAgent;
}

/** The whole service on a database of its own, listening on a free port. */
export interface TestApi {
  /** Speaks to the service as "Keeper", who is registrar and administrator; addresses begin at the host: `/api/v1/...`. */
  readonly http: TestAgent;
  /** Speaks to the service without saying who asks. */
  readonly stranger: TestAgent;
  readonly dataSource: DataSource;
  /** The application itself, for what only it knows. */
  readonly app: NestExpressApplication;
  /** Address of the service, `http://127.0.0.1:port`. */
  readonly url: string;
  readonly databaseUrl: string;
  /** Folder of its files, if no other one was set. */
  readonly filesDir: string;
  /** Adds a keeper to the club, with a token; if not given, without any role besides, and for writing. */
  addKeeper(name: string, roles?: readonly Role[], scope?: 'read' | 'write'): Promise<TestKeeper>;
  close(): Promise<void>;
}

/** Starts the service on a fresh register with one keeper who may do everything; silent, if nothing is set. */
export async function startApi(settings: Partial<Settings> = {}, log?: DestinationStream): Promise<TestApi> {
  const database = await createDatabase();
  const api = await startApiOn(database.url, settings, log);
  return {
    ...api,
    close: async () => {
      await api.close();
      await rm(api.filesDir, { recursive: true, force: true });
      await database.drop();
    },
  };
}

/** Starts the service on a database that exists: a second copy of it, or one that a test prepared. */
export async function startApiOn(
  databaseUrl: string,
  settings: Partial<Settings> = {},
  log?: DestinationStream,
): Promise<TestApi> {
  const filesDir = join(tmpdir(), `linekeeper-files-${new URL(databaseUrl).pathname.slice(1)}`);
  const app = await createApp(
    databaseUrl,
    { logLevel: 'silent', filesDir, signingKeyFile: join(filesDir, 'signing-key.pem'), ...settings },
    log,
  );
  const dataSource = app.get(DataSource);
  const endConnections = watchConnections(app.getHttpServer());
  await app.listen(0, '127.0.0.1');
  const url = await app.getUrl();
  const addKeeper: TestApi['addKeeper'] = (name, roles = [], scope = 'write') =>
    addKeeperTo(dataSource, url, name, roles, scope);
  const keeper = await addKeeper('Keeper', ['registrar', 'administrator']);
  return {
    http: keeper.http,
    stranger: supertest.agent(url),
    dataSource,
    app,
    url,
    databaseUrl,
    filesDir,
    addKeeper,
    close: () => {
      endConnections();
      return app.close();
    },
  };
}

async function addKeeperTo(
  dataSource: DataSource,
  url: string,
  name: string,
  roles: readonly Role[],
  scope: 'read' | 'write',
): Promise<TestKeeper> {
  const { id, token } = await keeperWithToken(dataSource, name, roles, scope);
  const http = supertest.agent(url);
  http.set('Authorization', `Bearer ${token}`);
  return { id, name, token, http };
}
