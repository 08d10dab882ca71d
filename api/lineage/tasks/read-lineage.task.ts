import pg from 'pg';
import { longTask, longTaskModule } from '../../platform/long-task.ts';
import { readLineage, type LineageReading, type ReadingOptions } from '../read-lineage.ts';

/** Where the register is, and how to read it. */
interface ReadingInput extends ReadingOptions {
  readonly databaseUrl: string;
}

/** Reads a large register in a thread, on a connection of its own. */
export const readLineageTask = longTaskModule<ReadingInput, LineageReading>('./read-lineage.task.ts', import.meta.url);

export default longTask(async ({ databaseUrl, ...options }: ReadingInput): Promise<LineageReading> => {
  const client = new pg.Client({ connectionString: databaseUrl, application_name: 'linekeeper reading' });
  await client.connect();
  try {
    await client.query('begin isolation level repeatable read read only');
    const reading = await readLineage(client, options);
    await client.query('commit');
    return reading;
  } finally {
    await client.end();
  }
});
