import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

/** Words that no figure may stand without: a 0 that nobody knows, and how deep a known one is. */
describe.skipIf(chromium === null)('animals of which neither a source nor a parent is recorded', () => {
  let club: DemoClub;
  let page: Page;
  let lineId: string;
  const ids: Record<string, string> = {};

  /** Two founders of a source and young of them, of which one is by either of two sires; and two found frogs of nobody knows where. */
  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const { items } = await club.read<{ items: { id: string }[] }>('species?limit=1');
    const speciesId = items[0]?.id ?? '';
    lineId = (await club.write('lines', { speciesId, name: 'Found frogs' })).id;
    const source = await club.write('sources', { kind: 'purchase', labelAsReceived: 'Found frogs' });
    const add = async (code: string, sex: string, more: object = {}) => {
      const { id } = await club.write('individuals', { code, sex, speciesId, lineId, hatched: '2020-03-01', ...more });
      ids[code] = id;
    };
    for (const [code, sex] of [
      ['FF-1', 'male'],
      ['FF-2', 'male'],
      ['FF-3', 'female'],
    ] as const)
      await add(code, sex, { sourceId: source.id });
    const of = async (sires: string[], code: string, sex: string) => {
      const clutch = await club.write('clutches', {
        laid: '2022-02-10',
        sires: sires.map((sire) => ({ individualId: ids[sire] })),
        dams: [{ individualId: ids['FF-3'] }],
        offspring: { animals: [{ code, sex, hatched: '2022-03-01' }] },
      });
      const { young } = await club.read<{ young: { id: string }[] }>(`clutches/${clutch.id}`);
      ids[code] = young[0]?.id ?? '';
    };
    await of(['FF-1'], 'FF-4', 'male');
    await of(['FF-1', 'FF-2'], 'FF-5', 'female');
    await add('FF-8', 'male');
    await add('FF-9', 'female');
    page = await club.page();
  });

  afterAll(() => club.close());

  const row = (table: string, name: RegExp) => page.getByRole('table', { name: table }).getByRole('row', { name });

  it('stand at the end of the mates, with words in place of a 0; a known 0 has its depth', async () => {
    await page.goto(`${club.url}/animals/${ids['FF-4']}/mates?kinshipTo=1`);
    const rows = page.getByRole('table', { name: 'Possible mates of FF-4' }).locator('tbody tr:not(.beware)');
    await rows.first().waitFor();
    const told = await rows.allInnerTexts();
    expect(told.map((text) => /FF-\d/.exec(text)?.[0])).toEqual(['FF-5', 'FF-3', 'FF-9']);
    // half or full sister: 3/16, from 1/8 to 1/4
    expect(told[0]).toMatch(/18\.8\s%[^]*12\.5 to 25\s%[^]*depth 2 of 2/);
    expect(told[1]).toMatch(/25\s%[^]*depth 1 of 2/);
    expect(told[2]).toMatch(/nothing known[^]*depth 1 of 2/);
    expect(told[2]).not.toMatch(/(^|\s)0\s%/);
    await page.getByText(/^At the end, whatever the order: 1 animal without/).waitFor();
    await page.getByText('Neither a source nor a parent of this animal is recorded', { exact: false }).waitFor();
    await expectAccessible(page, 'mates of unknown origin');
    await club.look(page, 'unknown-mates');
  });

  it('are paired in a plan with words in place of a 0, and in the plan that is kept', async () => {
    const both = ['FF-8', 'FF-9'].map((code) => ids[code]);
    const numbers = [];
    for (const id of both) numbers.push((await club.read<{ number: string }>(`individuals/${id}`)).number);
    await page.goto(`${club.url}/lines/${lineId}/plan?pairings=1&fixed=${numbers.join('~')}`);
    const pair = row('The pairs of the plan', /FF-8.*FF-9/).first();
    await pair.waitFor();
    expect(await pair.innerText()).toMatch(/nothing known[^]*depth 1 of 1/);
    expect(await pair.innerText()).not.toMatch(/(^|\s)0\s%[^]*label/);
    await page.getByText(/^1 pair, mean F of the young nothing known/).waitFor();
    await club.look(page, 'unknown-plan');
    const kept = await club.write('kept-plans', {
      lineId,
      name: 'Found ones',
      assumptions: { pairings: 1, fixed: [{ male: both[0], female: both[1] }] },
    });
    await page.goto(`${club.url}/plans/${kept.id}`);
    const told = row('The pairs of the plan, as they were and as they are', /FF-8.*FF-9/).first();
    await told.waitFor();
    expect((await told.innerText()).match(/nothing known/g)).toHaveLength(2);
    expect((await told.innerText()).match(/depth 1 of 1/g)).toHaveLength(2);
    await page.getByText(/mean F of the young then nothing known/).waitFor();
    await club.look(page, 'unknown-kept');
  });

  it('stand in the grid with words in place of a 0; a pair of uncertain parents has its range, each head its mean kinship and depth', async () => {
    await page.goto(
      `${club.url}/match?animals=${['FF-4', 'FF-8', 'FF-5', 'FF-9'].map((code) => ids[code]).join()}&limit=20`,
    );
    const grid = page.getByRole('grid', { name: /F of the young/ });
    const cell = (name: RegExp) => grid.getByRole('gridcell', { name });
    await cell(/^FF-4 and FF-5: young 18\.8\s%/).waitFor();
    expect(await cell(/^FF-4 and FF-5/).innerText()).toMatch(/18\.8[^]*12\.5 to 25/);
    expect(await cell(/^FF-4 and FF-5.*12\.5 to 25\s% by who the parents were, depth 2 of 2$/).count()).toBe(1);
    for (const name of [/^FF-4 and FF-9/, /^FF-8 and FF-9/, /^FF-8 and FF-5/])
      expect(await cell(name).innerText()).toMatch(/nothing\s+known$/);
    const heads = await grid.getByRole('columnheader').allInnerTexts();
    expect(heads.join(' ')).toMatch(/FF-5[^]*mk \d[^]*depth 1/);
    expect(heads.join(' ')).toMatch(/FF-9[^]*mk \d[^]*origin unknown/);
    expect(await page.getByText('over your limit of 20 %').count()).toBe(1);
    await page.getByLabel('young inbred at most').fill('6.25');
    await page.getByLabel('young inbred at most').press('Tab');
    await cell(/^FF-4 and FF-5.*over your limit$/).waitFor();
    await page.waitForURL((url) => !url.search.includes('limit='));
    await expectAccessible(page, 'grid of unknown origins');
    await club.look(page, 'unknown-grid');
    await page.setViewportSize({ width: 390, height: 844 });
    await club.look(page, 'unknown-grid-390');
    await page.setViewportSize({ width: 1440, height: 1000 });
  });

  it('is filled with the living of a line, and says how many were left out', async () => {
    const { items } = await club.read<{ items: { id: string; name: string }[] }>('lines?limit=200');
    const line = items.find(({ name }) => name === 'Río Zancaval')?.id ?? '';
    const count = async (sex: string) =>
      (await club.read<{ total: number }>(`individuals?line=${line}&sex=${sex}&status=alive&limit=1&total=true`)).total;
    const [males, females] = [await count('male'), await count('female')];
    const taken = Math.min(12, males) + Math.min(12, females);
    expect(males + females).toBeGreaterThan(taken);
    await page.goto(`${club.url}/match`);
    await page.getByLabel('or take the living of a line').selectOption({ label: 'Río Zancaval' });
    const notice = `the ${taken} that hatched last were taken; left out: ${males + females - taken}.`;
    await page.getByText(notice, { exact: false }).waitFor();
    const grid = page.getByRole('grid', { name: /F of the young/ });
    await grid.waitFor();
    expect(await grid.getByRole('gridcell').count()).toBe(Math.min(12, males) * Math.min(12, females));
    await club.look(page, 'line-grid');
  });
});
