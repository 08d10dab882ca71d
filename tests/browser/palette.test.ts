import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

describe.runIf(chromium)('The palette', () => {
  let club: DemoClub;
  let page: Page;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    page = await club.page();
    await open('/register');
  });
  afterAll(async () => club.close());

  async function open(path: string): Promise<void> {
    await page.goto(club.url + path);
    await page.getByRole('heading', { level: 1 }).waitFor();
  }
  const palette = () => page.getByRole('dialog', { name: /Find or do anything|What with/ });
  const current = () => palette().locator('[aria-selected=true]');
  async function find(text: string): Promise<void> {
    await page.keyboard.press('Control+k');
    await palette().waitFor();
    await page.keyboard.type(text);
  }

  it('finds an animal by the middle of its code, by the beginning of its number, and lines and pairings by their names', async () => {
    await find('v-61');
    await palette().getByRole('option', { name: /RV-61/ }).waitFor();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('1351');
    await palette().getByRole('option', { name: /RV-61/ }).waitFor();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('zancaval');
    await palette()
      .getByRole('option', { name: /^Río Zancaval line$/ })
      .waitFor();
    await club.look(page, 'palette-found');
    await page.keyboard.press('Escape');
    await palette().waitFor({ state: 'hidden' });
  });

  it('asks what to do with the animal, and goes there; Escape leads back to the search first', async () => {
    await find('RV-61');
    await current().getByText('RV-61').waitFor();
    await page.keyboard.press('ArrowRight');
    await palette().getByText('What with RV-61?').first().waitFor();
    expect(await current().textContent()).toContain('Open RV-61');
    await club.look(page, 'palette-what-with');
    await page.keyboard.press('Escape');
    await current().getByText('RV-61').waitFor();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.type('who for');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/mates$/);
  });

  it('shows the animals looked at last first, and forgets them for the next keeper of this browser', async () => {
    await open('/register');
    await page.keyboard.press('Control+k');
    expect(await current().textContent()).toContain('RV-61');
    await page.keyboard.press('Escape');
    const id = await page.evaluate(() => localStorage.getItem('linekeeper.recent-animals'));
    expect(id).toContain('RV-61');
    await page.evaluate(() =>
      localStorage.setItem(
        'linekeeper.recent-animals',
        (localStorage.getItem('linekeeper.recent-animals') ?? '').replace(/"keeper":"[^"]*"/, '"keeper":"another"'),
      ),
    );
    await page.keyboard.press('Control+k');
    await palette().waitFor();
    expect(await palette().getByRole('option', { name: /RV-61/ }).count()).toBe(0);
    await page.keyboard.press('Escape');
  });

  it('says that nothing fits, that it is looking, and why it cannot, and still does what needs no answer', async () => {
    await find('qqzzxx');
    await palette().getByText('Nothing fits.').waitFor();
    await page.route('**/api/v1/individuals?q=slow*', async (route) => {
      await new Promise((resolve) => setTimeout(resolve, 1500));
      await route.continue();
    });
    await page.keyboard.press('Control+A');
    await page.keyboard.type('slow');
    await palette().getByText('Looking…').waitFor();
    await palette().getByText('Nothing fits.').waitFor();
    await page.route('**/api/v1/individuals?q=lines*', (route) => route.abort());
    await page.keyboard.press('Control+A');
    await page.keyboard.type('lines');
    await palette()
      .getByText(/no answer|does not answer|did not answer/i)
      .waitFor();
    await palette()
      .getByRole('option', { name: /Go to the lines/ })
      .waitFor();
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/lines$/);
    // the console tells of the request that was cut
    club.faults.splice(0);
  });

  it('opens again for a hand that is faster than its closing', async () => {
    for (let round = 0; round < 25; round++) {
      await find('');
      await Promise.all([page.keyboard.press('Escape'), page.keyboard.press('Control+k')]);
      await expect.poll(() => palette().isVisible(), { timeout: 2000 }).toBe(true);
      await page.keyboard.press('Escape');
      await palette().waitFor({ state: 'hidden' });
    }
  });

  it('can be read by everybody', async () => {
    await find('RV-61');
    await current().getByText('RV-61').waitFor();
    await expectAccessible(page, 'palette');
    expect(club.faults).toEqual([]);
  });
});
