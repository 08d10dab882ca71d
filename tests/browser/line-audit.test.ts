import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { paperSizes, printPage } from '../support/printed.ts';

const chromium = findChromium();

/** Of a line of the demo club. */
describe.skipIf(chromium === null)('the audit of a line', () => {
  let club: DemoClub;
  let page: Page;
  let folder: string;

  const look = (name: string): Promise<void> => club.look(page, name);

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'linekeeper-audit-'));
    club = await DemoClub.open(chromium);
    page = await club.page();
  });

  afterAll(async () => {
    await club.close();
    rmSync(folder, { recursive: true, force: true });
  });

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

  it('is there as a PDF and a CSV', async () => {
    await page.evaluate(() => delete document.documentElement.dataset['theme']);
    for (const kind of ['PDF', 'CSV']) {
      const link = page.getByRole('link', { name: kind, exact: true });
      expect(await link.getAttribute('href')).toMatch(new RegExp(`/audit\\.${kind.toLowerCase()}$`));
    }
    const letter = page.getByRole('link', { name: 'PDF, Letter' });
    expect(await letter.getAttribute('href')).toMatch(/\/audit\.pdf\?paper=letter$/);
  });

  it.each(['a4', 'letter'] as const)(
    'is printed black on white on %s, whatever the theme of the screen',
    async (paper) => {
      await page.evaluate(() => (document.documentElement.dataset['theme'] = 'night'));
      const { pages, size, text, leastLetter, ink } = await printPage(page, folder, `audit-${paper}`, paper);
      await page.evaluate(() => delete document.documentElement.dataset['theme']);
      expect(size).toEqual(paperSizes[paper]);
      expect(pages).toBeGreaterThan(1);
      expect(pages).toBeLessThan(12);
      for (const head of ['Flags', 'cleared by', 'What to find out first', 'Blood from outside the line'])
        expect(text).toContain(head);
      // what is only for the screen stays there
      expect(text).not.toMatch(/Find or do anything|\bCSV\b/);
      expect(leastLetter).toBeGreaterThanOrEqual(5);
      expect(ink.colour).toBeLessThan(0.5);
      expect(ink.mean).toBeGreaterThan(220);
      expect(ink.darkest).toBeLessThan(90);
    },
  );

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
