import 'reflect-metadata';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { DestinationStream } from 'pino';
import { DataSource } from 'typeorm';
import { AppModule } from './app.module.ts';
import { FiguresInterceptor } from './lineage/figures.interceptor.ts';
import { SessionStore } from './people/session-store.ts';
import { sessionsOf } from './people/sessions.ts';
import { configureHttp } from './platform/http.ts';
import { FrameworkLog, openLog } from './platform/log.ts';
import { readSettings, type Settings } from './platform/settings.ts';

/**
 * Builds the application on a migrated database, ready to listen: the same for the service and for its tests. What is not set
 * is as for a person who sets nothing. `logTo` takes the log in place of the standard output.
 */
export async function createApp(
  databaseUrl: string,
  given: Partial<Settings> = {},
  logTo?: DestinationStream,
): Promise<NestExpressApplication> {
  const settings = { ...readSettings({}), ...given };
  const log = openLog(settings.logLevel, logTo);
  const app = await NestFactory.create<NestExpressApplication>(AppModule.on(databaseUrl, settings), {
    logger: new FrameworkLog(log),
    bodyParser: false,
    abortOnError: false,
  });
  // outside of all others: it works on what is committed, and on answers that are given again
  app.useGlobalInterceptors(app.get(FiguresInterceptor));
  configureHttp(app, settings, log);
  app.use('/api/v1', await sessionsOf(app.get(DataSource), app.get(SessionStore), settings));
  return app;
}
