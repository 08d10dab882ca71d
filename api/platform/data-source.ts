import pg from 'pg';
import { DataSource, type DataSourceOptions } from 'typeorm';
import type { PostgresDriver } from 'typeorm/driver/postgres/PostgresDriver.js';
import type { PostgresDataSourceOptions } from 'typeorm/driver/postgres/PostgresDataSourceOptions.js';
import { Register1764000000000 } from '../../migrations/0001-register.ts';
import { RegisterRules1764000000001 } from '../../migrations/0002-register-rules.ts';
import { PeopleAndJournal1764000000002 } from '../../migrations/0003-people-and-journal.ts';
import { installJobs } from './jobs-schema.ts';
import { LineageFigures1764000000003 } from '../../migrations/0004-lineage-figures.ts';
import { Provenance1764000000004 } from '../../migrations/0005-provenance.ts';
import { FiguresOfClutches1764000000005 } from '../../migrations/0006-figures-of-clutches.ts';
import { LivingAnimals1764000000006 } from '../../migrations/0007-living-animals.ts';
import { RegionsOfKeepers1764000000012 } from '../../migrations/0013-regions-of-keepers.ts';
import { StagesOfClutches1764000000013 } from '../../migrations/0014-stages-of-clutches.ts';
import { OtherRegisters1764000000011 } from '../../migrations/0012-other-registers.ts';
import { NotesOfClaims1764000000007 } from '../../migrations/0008-notes-of-claims.ts';
import { KeptPlans1764000000008 } from '../../migrations/0009-kept-plans.ts';
import { Transfers1764000000009 } from '../../migrations/0010-transfers.ts';
import { ProvenanceSheets1764000000010 } from '../../migrations/0011-provenance-sheets.ts';

// calendar days stay texts: a JavaScript date would move them by the time zone and cannot hold 'infinity'
pg.types.setTypeParser(pg.types.builtins.DATE, (text) => text);

const migrations = [
  Register1764000000000,
  RegisterRules1764000000001,
  PeopleAndJournal1764000000002,
  LineageFigures1764000000003,
  Provenance1764000000004,
  FiguresOfClutches1764000000005,
  LivingAnimals1764000000006,
  NotesOfClaims1764000000007,
  KeptPlans1764000000008,
  Transfers1764000000009,
  ProvenanceSheets1764000000010,
  OtherRegisters1764000000011,
  RegionsOfKeepers1764000000012,
  StagesOfClutches1764000000013,
];

/** How the service talks to a PostgreSQL at `url`; each room brings its entities. */
export function dataSourceOptions(
  url: string,
  entities: NonNullable<DataSourceOptions['entities']>,
): PostgresDataSourceOptions {
  return {
    type: 'postgres',
    url,
    entities,
    migrations,
    migrationsTransactionMode: 'each',
    applicationName: 'linekeeper',
    poolSize: 10,
    // waiting for another writer ends first, so that it is told as that
    extra: {
      statement_timeout: 30_000,
      lock_timeout: 20_000,
      connectionTimeoutMillis: 10_000,
      idle_in_transaction_session_timeout: 60_000,
    },
  };
}

/** Brings the schema up to date. Several copies of the service may start at once: one migrates, the others wait. */
export async function migrate(url: string): Promise<void> {
  const dataSource = new DataSource({
    ...dataSourceOptions(url, []),
    poolSize: 3,
    extra: { statement_timeout: 0, lock_timeout: 0 },
  });
  await dataSource.initialize();
  const lock = dataSource.createQueryRunner();
  try {
    await lock.query(`select pg_advisory_lock(hashtext('linekeeper migrations'))`);
    await dataSource.runMigrations();
    await installJobs(dataSource);
  } finally {
    await lock.release();
    await dataSource.destroy();
  }
}

/** The connections of a data source, for libraries that speak to PostgreSQL themselves. */
export function poolOf(dataSource: DataSource): pg.Pool {
  // the driver knows its pool as anything
  return (dataSource.driver as PostgresDriver).master as pg.Pool;
}
