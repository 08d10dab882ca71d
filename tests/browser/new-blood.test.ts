import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AtRiskListView } from '../../api/match/new-blood/at-risk.view.ts';
import type { NewBloodView } from '../../api/match/new-blood/new-blood.view.ts';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

describe.skipIf(chromium === null)('new blood for a line', () => {
  let club: DemoClub;
  let page: Page;
  let lineId: string;
  let rareId: string;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const { items } = await club.read<{ items: { id: string; name: string }[] }>('lines?limit=200');
    const idOf = (line: string): string => items.find(({ name }) => name === line)?.id ?? '';
    lineId = idOf('Río Zancaval');
    rareId = idOf('Korrand stock');
    page = await club.page();
  });

  afterAll(() => club.close());

  it('is reached from the page of the line and by the palette, and says what is about to be lost', async () => {
    await page.goto(`${club.url}/lines/${lineId}`);
    await page.getByRole('link', { name: 'New blood' }).click();
    await page.getByRole('heading', { name: 'New blood for Río Zancaval' }).waitFor();
    await page.getByText('Nothing of Río Zancaval hangs on so few animals.').waitFor();
    await page.goto(`${club.url}/lines/${rareId}/new-blood`);
    const few = await club.read<AtRiskListView>(`match/at-risk?lineId=${rareId}&mostCarriers=3&limit=20`);
    expect(few.items.length).toBeGreaterThan(2);
    await page.getByLabel('few are').selectOption({ label: '3 carriers' });
    await page.waitForURL(/few=3/);
    const table = page.getByRole('table', { name: 'What of Korrand stock is about to be lost' });
    await table
      .getByText(few.items[0]?.why[0] ?? 'nothing')
      .first()
      .waitFor();
    await expect.poll(() => table.locator('tbody > tr').count()).toBe(few.items.length);
    await expectAccessible(page, 'about to be lost');
    await page.getByLabel('where', { exact: true }).selectOption({ label: 'in the whole club' });
    await page.getByRole('table', { name: 'What of the club is about to be lost' }).waitFor();
    await page.getByText('Korrand stock · Matthis Korrand').first().waitFor();
    await club.look(page, 'new-blood-at-risk');
    await page.goto(`${club.url}/lines/${lineId}`);
    await page.getByRole('heading', { name: 'Río Zancaval', exact: true }).waitFor();
    await page.keyboard.press('Control+k');
    await page.keyboard.type('match new blood');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'New blood for Río Zancaval' }).waitFor();
  });

  it('ranks who carries what a keeper lacks, with links to the animals', async () => {
    const rows = page.getByRole('table', { name: 'Animals that would bring new blood' });
    await rows.waitFor();
    const answer = await club.read<NewBloodView>(`lines/${lineId}/new-blood?limit=20`);
    expect(answer.items.length).toBeGreaterThan(2);
    const first = answer.items[0]?.animal;
    expect(await rows.locator('tbody > tr').first().innerText()).toContain(first?.code);
    expect(
      await rows
        .getByRole('link', { name: first?.code ?? '' })
        .first()
        .getAttribute('href'),
    ).toBe(`/animals/${first?.id}`);
    await expectAccessible(page, 'new blood');
    await club.look(page, 'new-blood-desk');
  });

  it('measures an exchange for both, proposes better ones, and keeps it in the address', async () => {
    await page
      .getByRole('button', { name: /^Exchange/ })
      .first()
      .click();
    await page.waitForURL(/other=.*take=/);
    await page
      .getByText(/exchanges? of one animal for one/)
      .first()
      .waitFor();
    const before = page.getByRole('table', { name: /before and after$/ });
    await expect.poll(() => before.count()).toBe(2);
    expect(
      await before
        .first()
        .getByRole('row', { name: /^gene diversity/ })
        .count(),
    ).toBe(1);
    const look = page.getByRole('button', { name: /^Look at it/ });
    if ((await look.count()) > 0) {
      await look.first().click();
      await page.waitForURL(/give=/);
      await page
        .getByText(/^\+.* points of gene diversity$/)
        .first()
        .waitFor();
    }
    await page.reload();
    await before.first().waitFor();
    await expectAccessible(page, 'exchange');
    await club.look(page, 'new-blood-exchange');
  });

  it('says plainly where there is nothing to exchange', async () => {
    await page.goto(`${club.url}/lines/${lineId}/new-blood?keeper=line`);
    await page.getByText('An exchange is between two keepers: choose one above').waitFor();
    await page.getByLabel('order').selectOption({ label: 'most of what is lacking' });
    await page.waitForURL(/sort=lacking/);
  });

  it.each([1440, 320])('reads at %i pixels by day and by night, and on paper', async (width) => {
    await page.setViewportSize({ width, height: 900 });
    await page.goto(`${club.url}/lines/${lineId}/new-blood?few=3`);
    await page.getByRole('table', { name: 'Animals that would bring new blood' }).waitFor();
    await page
      .getByRole('button', { name: /^Exchange/ })
      .first()
      .click();
    await page
      .getByRole('table', { name: /before and after$/ })
      .first()
      .waitFor();
    for (const theme of ['day', 'night']) {
      await page.evaluate((name) => (document.documentElement.dataset['theme'] = name), theme);
      await expectAccessible(page, `new blood at ${width}, ${theme}`);
      await club.look(page, `new-blood-${width}-${theme}`);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    await page.emulateMedia({ media: 'print' });
    await club.look(page, `new-blood-${width}-print`);
    await page.emulateMedia({ media: 'screen' });
    expect(club.faults).toEqual([]);
  });
});
