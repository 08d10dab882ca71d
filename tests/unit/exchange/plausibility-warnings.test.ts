import { expect, test } from 'vitest';
import type { RegisterKnowledge } from '../../../api/exchange/knowledge.ts';
import { warnOfImplausible } from '../../../api/exchange/plausibility-warnings.ts';
import { planSheet } from '../../../api/exchange/sheet-plan.ts';
import { SheetReport } from '../../../api/exchange/sheet-report.ts';
import type { RangesFacts } from '../../../api/register/warnings/facts.ts';
import { knowing, knownAnimal } from './plan-of.ts';
import { sheetOf } from './sheet-of.ts';

/** A medium-sized poison frog: common practice, no source. */
const profile: RangesFacts = {
  'laying-to-hatching': { usualLeast: 12, usualMost: 18, extremeLeast: 9, extremeMost: 25 },
  maturity: { usualLeast: 8, usualMost: 12, extremeLeast: 7, extremeMost: null },
  'between-clutches': { usualLeast: 6, usualMost: 10, extremeLeast: 5, extremeMost: null },
  lifespan: { usualLeast: 12, usualMost: 15, extremeLeast: null, extremeMost: 20 },
};

async function warnings(sheet: string, knowledge: RegisterKnowledge): Promise<string[]> {
  const read = await sheetOf(sheet);
  const plan = await planSheet(read, knowledge);
  if (plan === null) throw new Error(JSON.stringify(read.problems.list()));
  await warnOfImplausible(plan, knowledge, new SheetReport(read.table, read.problems, read.warnings));
  return read.warnings.list().map(({ row, column, detail }) => `${row} ${column}: ${detail}`);
}

const dam = knownAnimal({
  number: '1',
  code: 'OLD',
  sex: 'female',
  hatched: { earliest: '2021-01-01', latest: '2021-01-31' },
  line: 'Azul',
  lineId: 'azul',
});
const registry: RegisterKnowledge = {
  ...knowing([dam]),
  species: () => ({ id: 'anthonyi', isWithdrawn: false }),
  ranges: () => profile,
};

test('implausible ages, intervals and crosses are told at their cell, also where the parent is in the registry', async () => {
  const found = await warnings(
    'code,species,line,sex,sire,dam,clutch,laid,hatched\n' +
      'A,Epipedobates anthonyi,Verde,m,,,,,2021-01\n' +
      'Y1,,,,A,OLD,K1,2021-05-01,2021-05-15\n' +
      'Y2,,,,A,OLD,K2,2022-05-01,2022-07-15\n' +
      'Y3,,,,A,OLD,K3,2022-05-03,\n' +
      'M,Epipedobates anthonyi,,f,,,,,1950\n',
    registry,
  );
  const places = found.map((warning) => warning.split(':')[0]);
  expect(places.filter((place) => place === '3 laid')).toHaveLength(2);
  expect(found).toContainEqual(expect.stringMatching(/^3 laid: Laid when the dam.* old/));
  expect(found).toContainEqual(expect.stringMatching(/^4 hatched: It hatched 75 days after laying/));
  expect(found).toContainEqual(expect.stringMatching(/^5 laid: Laid 2 days after the clutch K2 of the same dam/));
  expect(found).toContainEqual(expect.stringMatching(/^3 dam: .*different lines, Verde and Azul/));
  expect(found).toContainEqual(expect.stringMatching(/^6 hatched: Hatched 1950 and still recorded as alive/));
});

test('a species that the registry does not know has no profile, so nothing is found implausible', async () => {
  const found = await warnings(
    'code,species,sire,dam,laid,hatched\nA,Abc def,,,,2021-01\nB,Abc def,,,,2021-01\nC,Abc def,A,B,2021-02,2021-12\n',
    knowing([]),
  );
  expect(found).toEqual([]);
});
