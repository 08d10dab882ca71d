import { createHash } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startApi, type TestApi } from '../../support/api.ts';
import { importSheet } from './sheet-requests.ts';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

/** Two founders of one source, a clutch of theirs with a young. */
const sheet = (name: string): string =>
  [
    'code,species,line,sex,sire,dam,source,hatched',
    `${name}-1,Inventus ${name},Line ${name},m,,,S-${name},`,
    `${name}-2,Inventus ${name},Line ${name},f,,,S-${name},`,
    `${name}-3,Inventus ${name},Line ${name},,${name}-1,${name}-2,,2021-04-12`,
  ].join('\n');

test('every record that a sheet makes remembers it, and the import remembers the sheet', async () => {
  const text = sheet('alba');
  const id = ((await importSheet(api, text)).body as { id: string }).id;
  for (const [table, count] of Object.entries({ species: 1, line: 1, source: 1, clutch: 1, individual: 3 }))
    expect(
      await api.dataSource.query(`select count(*)::integer as made from ${table} where import_id = $1`, [id]),
      table,
    ).toEqual([{ made: count }]);
  expect(await api.dataSource.query('select sheet_sha256 from register_import where id = $1', [id])).toEqual([
    { sheet_sha256: createHash('sha256').update(text).digest('hex') },
  ]);
});
