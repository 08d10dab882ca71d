import { fileURLToPath } from 'node:url';
import { DataSource } from 'typeorm';
import { seedDemo } from '../seed-demo/seed-demo.ts';
import { createApp } from './create-app.ts';
import { prepareRegister } from './people/first-start.ts';
import { readClub } from './people/people.queries.ts';
import { offerSetup } from './people/setup-code.ts';
import { serveClient } from './platform/client-files.ts';
import { migrate } from './platform/data-source.ts';
import { answerOnlyToThisMachine } from './platform/http.ts';
import { openDatabase, type Database } from './platform/database.ts';
import { EmbeddedDatabaseError } from './platform/embedded-database.ts';
import { SigningKeyProblem } from './selling/signing-keys/signing-key-file.ts';
import { SigningKeys } from './selling/signing-keys/signing-keys.service.ts';
import { isExposed, isLoopback, readSettings, SettingsError, type Settings } from './platform/settings.ts';
import { watchConnections } from './platform/time-limits.ts';

const clientFolder = fileURLToPath(new URL('../../client/build', import.meta.url));

/** Starts the service and keeps it until SIGTERM or SIGINT; then nothing of it is left running. */
async function main(): Promise<void> {
  const settings = readSettings(process.env);
  const database = await openDatabase(settings);
  try {
    await serve(settings, database);
  } catch (error) {
    await database.stop();
    throw error;
  }
}

async function serve(settings: Settings, database: Database): Promise<void> {
  await migrate(database.url);
  const app = await createApp(database.url, settings);
  await prepareRegister(app.get(DataSource), settings.seedDemo ? seedDemo : null);
  if (isLoopback(settings.host)) app.use(answerOnlyToThisMachine(settings.publicUrl));
  serveClient(app.getHttpAdapter().getInstance(), clientFolder);
  const endConnections = watchConnections(app.getHttpServer());
  let isStopping = false;
  const stop = (): void => {
    if (isStopping) return;
    isStopping = true;
    endConnections();
    void app
      .close()
      .then(() => database.stop())
      .then(() => process.exit(0), fail);
  };
  process.on('SIGTERM', stop);
  process.on('SIGINT', stop);
  const unsigned = await readyToSign(app.get(SigningKeys));
  await app.listen(settings.port, settings.host);
  const address = settings.publicUrl ?? (await app.getUrl()).replace('127.0.0.1', 'localhost');
  console.log(
    [`Linekeeper is at ${address}`, ...(await whatToKnow(app.get(DataSource), settings)), ...unsigned].join('\n'),
  );
}

/** What whoever started the service has to know besides its address. */
async function whatToKnow(dataSource: DataSource, settings: Settings): Promise<string[]> {
  const code = await offerSetup(dataSource);
  if (code !== null)
    return [`Nobody administers this register yet. Open that address and set the club up with this code: ${code}`];
  const isDemo = (await readClub(dataSource.manager))?.demo ?? false;
  return isDemo && isExposed(settings)
    ? ['Everything in this club is invented. Whoever reaches the address can sign in as any of its keepers.']
    : [];
}

/** Without a key the register works, but no sheets are signed: why not. */
async function readyToSign(keys: SigningKeys): Promise<string[]> {
  try {
    await keys.ready();
    return [];
  } catch (error) {
    if (error instanceof SigningKeyProblem) return [`Provenance sheets cannot be signed. ${error.message}`];
    throw error;
  }
}

function fail(error: unknown): void {
  const isForThePerson = error instanceof SettingsError || error instanceof EmbeddedDatabaseError;
  console.error(isForThePerson ? error.message : describe(error));
  process.exit(1);
}

function describe(error: unknown): string {
  if (error instanceof Error && 'code' in error && error.code === 'EADDRINUSE')
    return 'That port is in use by another program. Set PORT to another one, for example PORT=3001 npm start.';
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}

main().catch(fail);
