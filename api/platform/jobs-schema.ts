import PgBoss from 'pg-boss';
import type { DataSource } from 'typeorm';

/** Schema of the tables that hold jobs. */
export const jobsSchema = 'jobs';

/** Makes the tables of jobs where there are none. */
export async function installJobs(dataSource: DataSource): Promise<void> {
  const [found] = await dataSource.query<{ found: boolean }[]>(
    `select exists (select from pg_namespace where nspname = $1) as found`,
    [jobsSchema],
  );
  if (!found?.found) await dataSource.query(PgBoss.getConstructionPlans(jobsSchema));
}
