import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bringCookie, expectAccessible, findChromium, openBrowser, openPage } from '../support/browser.ts';
import { signInToDemo, startService, type Service } from '../support/service.ts';

const chromium = findChromium();
const seen = process.env['LOOK_AT'];

/** Of a line of the demo club. */
describe.skipIf(chromium === null)('the audit of a line', () => {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-audit-'));
  const faults: string[] = [];
  let service: Service;
  let browser: Browser;
  let page: Page;

  const look = async (name: string): Promise<void> => {
    if (seen) await page.screenshot({ path: join(seen, `${name}.png`), fullPage: true });
  };

  beforeAll(async () => {
    service = await startService({ DATA_DIR: join(folder, 'data'), SEED_DEMO: 'true' });
    browser = await openBrowser(chromium ?? '');
    const context = await browser.newContext({ viewport: { width: 1440, height: 1000 } });
    await bringCookie(context, service.url, await signInToDemo(service));
    page = await openPage(context, faults);
  });

  afterAll(async () => {
    await browser.close();
    service.process.kill('SIGTERM');
    await service.ended;
    rmSync(folder, { recursive: true, force: true });
  });

  it('is opened from the page of the line and tells the flags, what clears them, and what to find out first', async () => {
    await page.goto(`${service.url}/lines`);
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
    expect(faults).toEqual([]);
  });
});
