import type pg from 'pg';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { computeInbreeding, inbreedingOf } from '../../../api/lineage/kernel/inbreeding.ts';
import { pedigreeDepth } from '../../../api/lineage/kernel/depth.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { readRegister } from '../../../api/lineage/read-register.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { planOf } from '../../unit/exchange/plan-of.ts';
import { importSheet } from './sheet-requests.ts';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const cellsOf: Readonly<Record<string, readonly string[]>> = {
  code: [
    '',
    'A',
    'B',
    'a',
    'Ä-1',
    '2021/03',
    'x:1',
    '?',
    '1001-9',
    'c\\N',
    "'; drop table individual; --",
    '__proto__',
    'C'.repeat(41),
  ],
  species: ['', 'Epipedobates anthonyi', 'EPIPEDOBATES ANTHONYI', 'Xy', 'Ranitomeya imitator'],
  line: ['', 'Azul', 'azul', '\u0130', 'L'.repeat(120)],
  sex: ['', 'm', 'f', 'u', 'Male', 'x'],
  sire: [
    '',
    '?',
    'A',
    'B',
    'A/B',
    'A:0.5/B:0.5',
    'A:0.3/?:0.7',
    'A:0.00001/B:0.99999',
    'A/A',
    'a/A',
    '2021/03',
    'nobody',
    'A:2',
    '/',
    ':',
  ],
  dam: ['', '?', 'B', 'Ä-1', 'B/Ä-1/?', 'x:1', 'x:1:0.25/?:0.75', 'B:NaN', '1001-9'],
  parents: ['', 'A/B', 'A/B/Ä-1/2021/03', 'A', 'A/?'],
  clutch: ['', 'K', 'k', 'K-2'],
  source: ['', 'S', 's', 'S-2'],
  'source kind': ['', 'import', 'Wild collection', 'gift'],
  'source date': ['', '1994~', '../1999', '1990/..', '0000', '2021-13'],
  'source base kinship': ['', '0', '1', '0,25', '1e-320', '-0', '2'],
  'country of export': ['', 'EC', 'ec', 'ZZ', 'Peru'],
  label: ['', 'Azul'],
  laid: ['', '2020', '2021-04-12', '202X', '2199-12-31', '1700', '2021-24', '2021-04-31'],
  hatched: ['', '2020', '2021-04-26', '2021/2022', '..'],
  'out of water': ['', '2021-07', '19XX', '2021-07-01?'],
  died: ['', '2022', '2019%'],
  status: ['', 'alive', 'died', 'DIED', 'ill'],
  notes: ['', 'fine', '\\.', 'tab\tand\nline', '\u202e', '😀'],
};

const codes = ['A', 'B', 'Ä-1', '2021/03', 'x:1', '1001-9'];
const columns = Object.keys(cellsOf);
const cell = (column: string): fc.Arbitrary<string> =>
  fc.oneof(
    { weight: 6, arbitrary: fc.constant('') },
    { weight: 1, arbitrary: fc.constantFrom(...(cellsOf[column] ?? [])) },
  );

/** Rows of sound codes with a strange cell here and there; about half of the sheets can be taken. */
const sheets = fc
  .tuple(
    fc.array(fc.record(Object.fromEntries(columns.map((column) => [column, cell(column)]))), {
      minLength: 1,
      maxLength: codes.length,
    }),
    fc.subarray(columns, { minLength: 1, maxLength: 6 }),
    fc.boolean(),
  )
  .map(([rows, used, hasStrangeCodes]) => {
    const header = ['code', ...used.filter((column) => column !== 'code')];
    const lines = rows.map((cells, place) =>
      header.map((column) =>
        column === 'code' ? (hasStrangeCodes && cells[column]) || (codes[place] ?? '') : (cells[column] ?? ''),
      ),
    );
    return [header, ...lines].map((line) => line.map((text) => `"${text.replaceAll('"', '""')}"`).join(',')).join('\n');
  });

test('whatever stands in the cells, a sheet is taken or refused with places; what the plan takes, the database takes', async () => {
  const statuses = new Map<number, number>();
  await fc.assert(
    fc.asyncProperty(sheets, async (sheet) => {
      const runner = api.dataSource.createQueryRunner();
      await runner.query('truncate register_import, individual, clutch, source, line, species cascade');
      await runner.release();
      const checked = await importSheet(api, sheet, '?dryRun=true');
      const answer = await importSheet(api, sheet);
      statuses.set(answer.status, (statuses.get(answer.status) ?? 0) + 1);
      expect([201, 422], JSON.stringify(answer.body)).toContain(answer.status);
      expect(checked.status === 200).toBe(answer.status === 201);
      if (answer.status === 422) expect((answer.body as { errors: unknown[] }).errors.length).toBeGreaterThan(0);
    }),
    { numRuns: 150 },
  );
  for (const status of [201, 422]) expect(statuses.get(status) ?? 0).toBeGreaterThan(20);
});

test('the kernel sees the same pedigree in the register as in the sheet', async () => {
  await api.dataSource.query('truncate register_import, individual, clutch, source, line, species cascade');
  const sheet =
    'code,species,sex,sire,dam,parents,clutch,source,source base kinship,laid\n' +
    'Z,Abc def,,Y1,X2,,,,,2024\nY1,Abc def,m,A:0.7/B:0.3,C/?,,K,,,2022\nY2,Abc def,,,,,K,,,\n' +
    'A,Abc def,m,,,,,S,0.25,\nB,Abc def,m,,,,,S,,\nC,Abc def,f,,,,,S,,\nD,Abc def,u,,,,,,,\nE,Abc def,u,,,,,,,\n' +
    'X1,Abc def,,,,D/E/A/C,,,,2021\nX2,Abc def,f,A,C,,,,,2020-04-12\nX3,Abc def,,A,C,,,,,2020-04-12\nX4,Abc def,,A,X2,,,,,\nW,Abc def,,?,X2,,,,,\n';
  const plan = await planOf(sheet);
  expect((await importSheet(api, sheet)).status).toBe(201);
  const register = await api.dataSource.transaction('REPEATABLE READ', async (manager) =>
    (await readRegister((await manager.queryRunner?.connect()) as pg.PoolClient)).show(),
  );
  const animals = await api.dataSource.query<{ id: string; code: string }[]>('select id, code from individual');
  const inRegister = Object.fromEntries(animals.map(({ id, code }) => [code, register.individuals.find(id)]));
  const inSheet = Object.fromEntries(
    animals.map(({ code }) => [
      code,
      Array.from({ length: plan.table.length }, (_, animal) => plan.table.text('code', animal)).indexOf(code),
    ]),
  );
  expect(figures(register.pedigree, inRegister)).toEqual(figures(plan.pedigree, inSheet));
});

/** Per code the figures that depend on everything in a pedigree, to 12 digits. */
function figures(pedigree: Pedigree, animals: Readonly<Record<string, number>>): Record<string, string> {
  const inbreeding = computeInbreeding(pedigree);
  const { depth, fullDepth, generationEquivalents } = pedigreeDepth(pedigree, inbreeding.order);
  return Object.fromEntries(
    Object.entries(animals)
      .sort()
      .map(([code, animal]) => {
        const { expected, least, greatest } = inbreedingOf(pedigree, inbreeding, animal);
        const within = inbreeding.clutchWithin[pedigree.clutchOf[animal] ?? -1] ?? -1;
        const numbers = [expected, least, greatest, within, generationEquivalents[animal] ?? -1].map((value) =>
          value.toFixed(12),
        );
        return [code, `${numbers.join(' ')} ${depth[animal] ?? -1} ${fullDepth[animal] ?? -1}`];
      }),
  );
}
