import type { Response } from 'supertest';
import type { TestApi } from '../../support/api.ts';

/** Sends a sheet as text/csv. Tests send in seconds more sheets than a keeper may in ten minutes. */
export async function importSheet(api: TestApi, sheet: string | Buffer, query = ''): Promise<Response> {
  await api.dataSource.query('delete from rate_limit');
  return api.http.post(`/api/v1/imports${query}`).set('Content-Type', 'text/csv').send(sheet);
}

/** How many rows each table of the register has. */
export async function counts(api: TestApi): Promise<Record<string, number>> {
  const tables = [
    'species',
    'line',
    'source',
    'clutch',
    'individual',
    'clutch_candidate',
    'clutch_pair',
    'register_import',
  ];
  const select = tables.map((table) => `(select count(*)::integer from ${table}) as ${table}`).join(', ');
  const [row] = await api.dataSource.query<Record<string, number>[]>(`select ${select}`);
  return row ?? {};
}

/** The errors of a problem document as `row column`. */
export function places(answer: Response): string[] {
  const errors = (answer.body as { errors: { row?: number; column?: string }[] }).errors;
  return errors.map(({ row, column }) => `${row ?? ''} ${column ?? ''}`.trim());
}
