import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

/** Of a line of the demo club. */
describe.skipIf(chromium === null)('the audit of a line', () => {
  let club: DemoClub;
  let page: Page;

  const look = (name: string): Promise<void> => club.look(page, name);

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    page = await club.page();
  });

  afterAll(() => club.close());

  it('is opened from the page of the line and tells the flags, what clears them, and what to find out first', async () => {
    await page.goto(`${club.url}/lines`);
    await page.getByRole('link', { name: 'Río Zancaval' }).first().click();
    await page.getByRole('link', { name: 'Audit' }).click();
    const flags = page.getByRole('region', { name: 'Flags' });
    await flags.getByRole('columnheader', { name: 'cleared by' }).waitFor();
    expect(await flags.getByRole('row').count()).toBeGreaterThan(2);
    const first = page.getByRole('region', { name: 'What to find out first' }).first();
    await first
      .getByText(/settles .+ of the living genome/)
      .first()
      .waitFor();
    await page.getByRole('heading', { name: 'Blood from outside the line' }).waitFor();
    await look('audit-wide');
    await expectAccessible(page, 'the audit of a line');
    await page.evaluate(() => (document.documentElement.dataset['theme'] = 'night'));
    await look('audit-night');
    await expectAccessible(page, 'the audit of a line at night');
  });

  it('prints on A4 without what is only for the screen, and is there as a PDF and a CSV', async () => {
    await page.evaluate(() => delete document.documentElement.dataset['theme']);
    for (const kind of ['PDF', 'CSV']) {
      const link = page.getByRole('link', { name: kind, exact: true });
      expect(await link.getAttribute('href')).toMatch(new RegExp(`/audit\\.${kind.toLowerCase()}$`));
    }
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: 794, height: 1123 });
    expect(await page.getByRole('navigation').first().isVisible()).toBe(false);
    expect(await page.getByRole('link', { name: 'PDF', exact: true }).isVisible()).toBe(false);
    await page.getByRole('columnheader', { name: 'cleared by' }).waitFor();
    const folder = process.env['LOOK_AT'];
    if (folder)
      await page.pdf({
        path: `${folder}/audit-print.pdf`,
        format: 'A4',
        margin: { top: '16mm', bottom: '16mm', left: '16mm', right: '16mm' },
      });
    await page.emulateMedia({ media: 'screen' });
  });

  it('reads on a phone of 320 px without being pushed aside', async () => {
    await page.setViewportSize({ width: 320, height: 700 });
    await page.reload();
    await page.getByRole('region', { name: 'Flags' }).getByText('cleared by').first().waitFor({ state: 'attached' });
    await page
      .getByText(/settles .+ of the living genome/)
      .first()
      .waitFor();
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width).toBeLessThanOrEqual(320);
    await look('audit-phone');
    await expectAccessible(page, 'the audit of a line on a phone');
    expect(club.faults).toEqual([]);
  });
});
