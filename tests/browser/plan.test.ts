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
    const pairs = page.getByRole('table', { name: 'The pairs of the plan' });
    expect(await pairs.getByRole('link', { name: /^House together/ }).count()).toBe(3);
    await pairs.getByText(/^Why /).first().click();
    await page.getByRole('heading', { name: 'What the weight does' }).waitFor();
    await expectAccessible(page, 'plan');
    await club.look(page, 'plan-desk');
  });

  it('shows what would come of it, in generations to come', async () => {
    await page.getByRole('button', { name: 'What would come of it?' }).click();
    await page.getByRole('heading', { name: 'The next generations' }).waitFor({ timeout: 60_000 });
    await club.look(page, 'plan-forecast');
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
