import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

describe.skipIf(chromium === null)('a plan for a line', () => {
  let club: DemoClub;
  let page: Page;
  let lineId: string;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const { items } = await club.read<{ items: { id: string; name: string }[] }>('lines?limit=200');
    lineId = items.find(({ name }) => name === 'Río Zancaval')?.id ?? '';
    page = await club.page();
  });

  afterAll(() => club.close());

  it('is made from the page of the line, says of each pair why, and what the weight does', async () => {
    await page.goto(`${club.url}/lines/${lineId}`);
    await page.getByRole('link', { name: 'Plan its pairings' }).click();
    await page.getByRole('heading', { name: 'Plan for Río Zancaval' }).waitFor();
    await page.getByLabel('pairs wanted').fill('3');
    await page.getByRole('button', { name: 'Make a plan' }).click();
    await page.getByText(/^3 pairs, mean F of the young .* no plan is better/s).waitFor();
    expect(page.url()).toMatch(/plan\?pairings=3$/);
    const pairs = page.getByRole('table', { name: 'The pairs of the plan' });
    expect(await pairs.getByRole('link', { name: /^House together/ }).count()).toBe(3);
    await pairs.getByText(/^Why /).first().click();
    await page.getByRole('heading', { name: 'What the weight does' }).waitFor();
    await expectAccessible(page, 'plan');
    await club.look(page, 'plan-desk');
  });

  it('keeps one pair and not another, by a word in its row, in an address that tells the same plan again', async () => {
    const pairs = page.getByRole('table', { name: 'The pairs of the plan' });
    const said = () => page.getByText(/^3 pairs, mean F of the young/).innerText();
    const name = async (button: string) =>
      (await pairs.getByRole('button', { name: button }).first().textContent()) ?? '';
    const kept = (await name('Keep this pair')).replace('Keep this pair: ', '').trim();
    await pairs.getByRole('button', { name: new RegExp(`^Keep this pair.*${kept}$`) }).click();
    await pairs.getByRole('button', { name: new RegExp(`^Let this pair go.*${kept}$`) }).waitFor();
    const gone = (await name('Not this pair')).replace('Not this pair: ', '').trim();
    await pairs.getByRole('button', { name: new RegExp(`^Not this pair.*${gone}$`) }).click();
    await pairs.getByRole('button', { name: new RegExp(`^Not this pair.*${gone}$`) }).waitFor({ state: 'detached' });
    await pairs.getByRole('button', { name: new RegExp(`^Let this pair go.*${kept}$`) }).waitFor();
    expect(page.url()).toMatch(/fixed=[\dX-]+~[\dX-]+&forbidden=[\dX-]+~[\dX-]+/);
    const before = await said();
    // gone on and come back, and opened anew: the same plan
    await pairs
      .getByRole('link', { name: /^House together/ })
      .first()
      .click();
    await page.getByRole('heading', { name: 'House animals together' }).waitFor();
    await page.goBack();
    await pairs.getByRole('button', { name: new RegExp(`^Let this pair go.*${kept}$`) }).waitFor();
    expect(await said()).toBe(before);
    await page.reload();
    await pairs.getByRole('button', { name: new RegExp(`^Let this pair go.*${kept}$`) }).waitFor();
    expect(await said()).toBe(before);
  });

  it('lets a pair be typed, an animal be left out, and keepers keep theirs together', async () => {
    await page.goto(`${club.url}/lines/${lineId}/plan?pairings=3`);
    const pairs = page.getByRole('table', { name: 'The pairs of the plan' });
    await pairs.getByText(/^Why /).first().click();
    const leave = pairs.getByRole('button', { name: /^Leave .* out of the plan$/ }).first();
    const left = /^Leave (.*) out/.exec(await leave.innerText())?.[1] ?? '';
    await leave.click();
    await pairs.getByRole('rowheader', { name: left }).waitFor({ state: 'detached' });
    await page.getByText('More conditions, 1 set').click();
    expect(await page.getByLabel(`most pairs of ${left}`).inputValue()).toBe('0');
    const pick = async (label: string) => {
      await page.getByRole('combobox', { name: label, exact: true }).fill('ZV-1');
      const option = page.getByRole('option', { name: /ZV-1/ }).first();
      const code = /ZV-\d+/.exec(await option.innerText())?.[0] ?? '';
      await option.click();
      return code;
    };
    const two = [await pick('male of a pair'), await pick('female of a pair')];
    await page.getByRole('button', { name: 'must not be' }).click();
    await page
      .getByRole('list', { name: 'must not be' })
      .getByRole('link', { name: two[0] ?? '' })
      .waitFor();
    await page.getByLabel('Saskia Brunmoor').check();
    await page.getByRole('button', { name: 'Make a plan' }).click();
    await page.waitForURL(/forbidden=.*uses=.*keptTogether=/);
    await page.getByText(/^3 pairs, mean F of the young/).waitFor();
    await expectAccessible(page, 'plan with conditions');
    await club.look(page, 'plan-conditions');
  });

  it('has a slider for the weight, whose effect stands beside it before it is asked for', async () => {
    await page.goto(`${club.url}/lines/${lineId}/plan?pairings=4`);
    const slider = page.getByRole('slider', { name: 'weight of inbreeding' });
    await page.getByRole('img', { name: /The best plan under each weight/ }).waitFor();
    expect(await slider.getAttribute('aria-valuetext')).toMatch(/^1: mean F of the young [\d.]+\s%, mean kinship/);
    await slider.press('Home');
    expect(await slider.getAttribute('aria-valuetext')).toMatch(/^0: mean F of the young/);
    await page.waitForURL(/weight=0/);
    const words = (await slider.getAttribute('aria-valuetext')) ?? '';
    await page.getByText(new RegExp(`^4 pairs, ${/mean F of the young [\d.]+/.exec(words)?.[0]}`)).waitFor();
    await page.getByRole('button', { name: 'Table of what the weights do' }).click();
    await page.getByRole('button', { name: '8', exact: true }).click();
    await page.waitForURL(/weight=8/);
    await page.getByRole('button', { name: '1', exact: true }).click();
    await page.waitForURL(/pairings=4$/);
    await page.goto(`${club.url}/lines/${lineId}/plan?pairings=3`);
    await page.getByText(/^3 pairs, mean F of the young/).waitFor();
  });

  it('warns where it allows what is refused otherwise', async () => {
    // of the same species, and another line
    const { items } = await club.read<{ items: { code: string }[] }>(
      'individuals?line=Ember%20Saddle&status=alive&sex=female&sort=hatched&order=asc&limit=1',
    );
    const code = items[0]?.code ?? '';
    await page.getByText(/^More conditions/).click();
    await page.getByLabel('other lines, for a cross').check();
    await page.getByText('Young of two lines are a cross and belong to neither.').waitFor();
    await page.getByRole('combobox', { name: 'animals of other lines' }).fill(code);
    await page.getByRole('option', { name: code }).first().click();
    await page.getByRole('button', { name: 'Make a plan' }).click();
    await page.waitForURL(/also=.*allow=cross-lines/);
    await page
      .getByText(/3 pairs, mean F of the young|is of another species/)
      .first()
      .waitFor();
    await page.goto(`${club.url}/lines/${lineId}/plan?pairings=3`);
    await page.getByText(/^3 pairs, mean F of the young/).waitFor();
  });

  it('shows what would come of it, in generations to come', async () => {
    await page.getByLabel('generations', { exact: true }).fill('3');
    await page.getByLabel('seed').fill('7');
    await page.getByRole('button', { name: 'What would come of it?' }).click();
    await page.getByRole('heading', { name: 'The next generations' }).waitFor({ timeout: 60_000 });
    await page.getByText(/Gene diversity in generation 3/).waitFor();
    expect(page.url()).toMatch(/generations=3&seed=7$/);
    await page.getByRole('heading', { name: 'Whose genes they will be' }).waitFor();
    await page.getByRole('group', { name: /founder shares by way of breeding/ }).waitFor();
    await expectAccessible(page, 'forecast of a plan');
    await club.look(page, 'plan-forecast');
  });

  it('is stopped where nobody wants to wait for what would come of it', async () => {
    await page.getByLabel('generations', { exact: true }).fill('10');
    await page.getByLabel('young of a pair that grow up').fill('20');
    await page.getByRole('button', { name: 'What would come of it?' }).click();
    await page.getByRole('button', { name: /^Stop/ }).click();
    await page.getByText('Stopped.').waitFor();
    await page.getByLabel('generations', { exact: true }).fill('11');
    await page.getByRole('button', { name: 'What would come of it?' }).click();
    await page.getByText('Write a whole number from 1 to 10.').waitFor();
    await page.getByLabel('generations', { exact: true }).fill('3');
  });

  it('says plainly why there is none', async () => {
    await page.getByLabel('pairs wanted').fill('150');
    await page.getByRole('button', { name: 'Make a plan' }).click();
    await page.getByRole('alert').waitFor();
    expect(await page.getByRole('alert').innerText()).toMatch(/150|pairs/);
    await page.getByLabel('pairs wanted').fill('many');
    await page.getByRole('button', { name: 'Make a plan' }).click();
    await page.getByText('Write a whole number from 1 to 200.').waitFor();
    await club.look(page, 'plan-none');
  });

  it.each([1440, 320])('reads at %i pixels by day and by night', async (width) => {
    await page.setViewportSize({ width, height: 900 });
    await page.getByLabel('pairs wanted').fill('2');
    await page.getByRole('button', { name: 'Make a plan' }).click();
    await page.getByText(/^2 pairs, mean F/).waitFor();
    for (const theme of ['day', 'night']) {
      await page.evaluate((name) => (document.documentElement.dataset['theme'] = name), theme);
      await expectAccessible(page, `plan at ${width}, ${theme}`);
      await club.look(page, `plan-${width}-${theme}`);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    // the refusal of the plan that cannot be is told by the console of the browser, too
    expect(club.faults.filter((fault) => !fault.includes('422'))).toEqual([]);
  });
});
