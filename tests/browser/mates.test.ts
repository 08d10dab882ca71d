import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

describe.skipIf(chromium === null)('who for this one', () => {
  let club: DemoClub;
  let page: Page;
  let animalId: string;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const { items } = await club.read<{ items: { id: string }[] }>('individuals?code=RV-61');
    animalId = items[0]?.id ?? '';
    page = await club.page();
  });

  afterAll(() => club.close());

  it('is asked from the page of an animal, and ranks its mates with what the young would be', async () => {
    await page.goto(`${club.url}/animals/${animalId}`);
    await page.getByRole('link', { name: 'Who for this one?' }).click();
    await page.getByRole('heading', { name: 'Who for RV-61?' }).waitFor();
    const rows = page.getByRole('table', { name: 'Possible mates of RV-61' }).getByRole('row');
    await rows.nth(1).waitFor();
    const answer = await club.read<{ total: number; items: { animal: { code: string } }[] }>(
      `individuals/${animalId}/mates`,
    );
    expect(await page.getByText(`${answer.total} possible mate`).count()).toBe(1);
    expect(await rows.nth(1).innerText()).toContain(answer.items[0]?.animal.code);
    expect(await page.getByRole('heading', { name: 'Left out, and why' }).count()).toBe(1);
    await expectAccessible(page, 'mates');
    await club.look(page, 'mates-desk');
  });

  it('keeps what was chosen in the address, and warns of a cross', async () => {
    await page.getByLabel('related', { exact: true }).selectOption({ label: 'whoever it is' });
    await page.waitForURL(/kinshipTo=1/);
    await page.getByLabel('other lines, for a cross').check();
    await page
      .getByText(/The young would be a cross of/)
      .first()
      .waitFor();
    expect(page.url()).toContain('crossLines=true');
    await page.reload();
    await page
      .getByText(/The young would be a cross of/)
      .first()
      .waitFor();
    await club.look(page, 'mates-crosses');
  });

  it('leads to a pairing in the register', async () => {
    await page.goto(`${club.url}/animals/${animalId}/mates`);
    await page
      .getByRole('link', { name: /^House together/ })
      .first()
      .click();
    await page.getByRole('heading', { name: 'House animals together' }).waitFor();
    await page.getByLabel('name', { exact: true }).fill('Tank of a proposal');
    await page.getByText('1.1').first().waitFor();
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByRole('heading', { name: 'Tank of a proposal' }).waitFor();
    const { items } = await club.read<{ items: { name: string }[] }>('pairings?limit=200');
    expect(items.map(({ name }) => name)).toContain('Tank of a proposal');
  });

  it.each([1440, 320])('reads at %i pixels by day and by night', async (width) => {
    await page.setViewportSize({ width, height: 900 });
    await page.goto(`${club.url}/animals/${animalId}/mates?crossLines=true&unsexed=true`);
    await page
      .getByText(/The young would be a cross of/)
      .first()
      .waitFor();
    for (const theme of ['day', 'night']) {
      await page.evaluate((name) => (document.documentElement.dataset['theme'] = name), theme);
      await expectAccessible(page, `mates at ${width}, ${theme}`);
      await club.look(page, `mates-${width}-${theme}`);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    expect(club.faults).toEqual([]);
  });
});
