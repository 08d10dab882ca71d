import 'reflect-metadata';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { AppModule } from './app.module.ts';
import { configureHttp, openRequest } from './platform/http.ts';

/** Builds the application on a migrated database, ready to listen: the same for the service and for its tests. */
export async function createApp(
  databaseUrl: string,
  options: { quiet?: boolean } = {},
): Promise<NestExpressApplication> {
  const app = await NestFactory.create<NestExpressApplication>(AppModule.on(databaseUrl), {
    logger: options.quiet ? false : ['error', 'warn'],
    bodyParser: false,
    abortOnError: false,
  });
  app.use(openRequest);
  configureHttp(app);
  return app;
}
