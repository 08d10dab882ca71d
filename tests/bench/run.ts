import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { DataSource } from 'typeorm';
import { createApp } from '../../api/create-app.ts';
import { migrate } from '../../api/platform/data-source.ts';
import { startEmbeddedDatabase } from '../../api/platform/embedded-database.ts';
import { benchClientCharts } from './client-charts.ts';
import { benchFirstScreen } from './first-screen.ts';
import { benchForecasts } from './forecasts.ts';
import { benchImport } from './import.ts';
import { benchKernel } from './kernel.ts';
import { benchMeasures } from './measures.ts';
import { benchScale } from './kernel-scale.ts';
import { benchPlan } from './plan.ts';
import { benchReads } from './reads.ts';
import { benchMillion } from './service-million.ts';
import { benchWriters } from './writers.ts';
import { keeperWithToken } from '../support/token.ts';

/** Prints a table; figures with three digits, since the machine's noise is larger than the fourth. */
function print(title: string, rows: readonly object[]): void {
  console.log(`\n${title}`);
  const shortened = rows.map((row) =>
    Object.fromEntries(
      Object.entries(row).map(([name, value]) => [
        name,
        typeof value === 'number' ? Number(value.toPrecision(3)) : value,
      ]),
    ),
  );
  console.table(shortened);
}

/** Import and reads, on the service with a PostgreSQL of its own that is as durable as a keeper's. */
async function benchService(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-bench-'));
  const database = await startEmbeddedDatabase(folder);
  try {
    await migrate(database.url);
    const app = await createApp(database.url, { logLevel: 'silent' });
    const { id, token } = await keeperWithToken(app.get(DataSource), 'Keeper', []);
    await app.listen(0, '127.0.0.1');
    const service = { url: await app.getUrl(), databaseUrl: database.url, token };
    print('A register sheet of 100 000 animals', await benchImport(service));
    print('Reads at 100 000 animals, in milliseconds', await benchReads(service));
    const keeper = { id, name: 'Keeper', roles: [], via: 'token', scope: 'write' } as const;
    print('Sixteen writers at once', await benchWriters(app.get(DataSource), keeper));
    await app.close();
  } finally {
    await database.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What `npm run bench` measures, by the name that asks for it alone: `npm run bench -- screens charts`. */
const parts: Record<string, () => void | Promise<void>> = {
  kernel: async () => print('The kernel, in milliseconds', await benchKernel()),
  measures: async () => print('Measures of one animal and of sets, in milliseconds', await benchMeasures()),
  plan: async () => print('Plans with their reasons and the trade-off', await benchPlan()),
  forecasts: () => print('Forecasts of a plan by gene dropping, in milliseconds', benchForecasts()),
  scale: async () => print('Inbreeding of all as registers grow, in milliseconds', await benchScale()),
  service: benchService,
  screens: async () => print('First screens on a phone four times slower than this machine', await benchFirstScreen()),
  charts: async () => print('Charts in the browser, in milliseconds', await benchClientCharts()),
  million: async () => print('A register of a million animals, in milliseconds', await benchMillion()),
};

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !(name in parts));
if (unknown.length > 0) {
  console.error(`There is no part ${unknown.join(', ')}; there are ${Object.keys(parts).join(', ')}.`);
  process.exit(2);
}
console.log(`Node ${process.version}, ${availableParallelism()} cores, ${new Date().toISOString().slice(0, 10)}`);
for (const name of asked.length > 0 ? asked : Object.keys(parts)) await parts[name]?.();
