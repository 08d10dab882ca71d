import pg from 'pg';
import { openDatabase } from '../platform/database.ts';
import { EmbeddedDatabaseError, reachEmbeddedDatabase } from '../platform/embedded-database.ts';
import { readSettings, SettingsError } from '../platform/settings.ts';
import { verifyJournal, type Verification } from './verify-chain.ts';

/** What was asked for cannot be done; the message says why. */
class UsageError extends Error {}

/** Checks the journal of the register of DATABASE_URL or DATA_DIR, and prints what it found. Gives the exit code. */
async function main(options: readonly string[]): Promise<number> {
  const hash = readHash(options);
  const settings = readSettings(process.env);
  const database =
    settings.databaseUrl === null ? await reachEmbeddedDatabase(settings.dataDir) : await openDatabase(settings);
  const client = new pg.Client({ connectionString: database.url, application_name: 'linekeeper journal:verify' });
  try {
    await client.connect();
    return report(await verifyJournal(client, hash), hash);
  } finally {
    await client.end();
    await database.stop();
  }
}

function readHash(options: readonly string[]): string | undefined {
  if (options.length === 0) return undefined;
  const [name, hash = ''] = options;
  if (name !== '--head' || options.length > 2)
    throw new UsageError('Use it as: npm run journal:verify, or npm run journal:verify -- --head <hash that was kept>');
  if (!/^[0-9a-f]{64}$/i.test(hash)) throw new UsageError('A hash has 64 hexadecimal digits. Copy it whole.');
  return hash.toLowerCase();
}

function report({ sealed, waiting, head, fault, placeOfHash }: Verification, hash: string | undefined): number {
  console.log(`Sealed entries in an unbroken chain: ${sealed}. Waiting for their seal: ${waiting}.`);
  console.log(`Hash of number ${sealed}: ${head}`);
  if (fault) {
    const place = fault.sequence === null ? '' : ` at number ${fault.sequence}`;
    const entry = fault.entryId === null ? '' : ` (entry ${fault.entryId})`;
    console.error(`The journal is broken${place}${entry}: ${fault.wrong}.`);
  }
  if (hash !== undefined && placeOfHash === null)
    console.error(
      'The hash that was kept is not part of this chain: entries that were there then were changed or removed.',
    );
  else if (hash !== undefined) console.log(`The hash that was kept is that of number ${placeOfHash}.`);
  return fault || (hash !== undefined && placeOfHash === null) ? 1 : 0;
}

function explain(error: unknown): string {
  const isForThePerson =
    error instanceof UsageError || error instanceof SettingsError || error instanceof EmbeddedDatabaseError;
  if (isForThePerson) return error.message;
  if (error instanceof Error && 'code' in error && error.code === '42P01')
    return 'This register has no journal yet. Start the service once: it brings the register up to date.';
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    console.error(explain(error));
    process.exitCode = 1;
  },
);
