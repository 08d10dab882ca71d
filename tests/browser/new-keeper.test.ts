import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bringCookie, expectAccessible, findChromium, openBrowser, openPage } from '../support/browser.ts';
import { askAs, signInToDemo, startService, type Service } from '../support/service.ts';

const chromium = findChromium();

/** Somebody who looks around in the demo club for the first time. */
describe.skipIf(chromium === null)('a new keeper', () => {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-new-'));
  const faults: string[] = [];
  let service: Service;
  let browser: Browser;
  let page: Page;
  let cookie: string;

  beforeAll(async () => {
    service = await startService({ DATA_DIR: join(folder, 'data'), SEED_DEMO: 'true' });
    browser = await openBrowser(chromium ?? '');
    cookie = await signInToDemo(service);
    const context = await browser.newContext({ viewport: { width: 1440, height: 1000 } });
    await bringCookie(context, service.url, cookie);
    page = await openPage(context, faults);
  });

  afterAll(async () => {
    await browser.close();
    service.process.kill('SIGTERM');
    await service.ended;
    rmSync(folder, { recursive: true, force: true });
  });

  it('asks from the page of RV-61 who would suit him, and sees the best pair at once', async () => {
    const answer = await askAs(cookie, `${service.url}/api/v1/individuals?code=RV-61`);
    const { items } = (await answer.json()) as { items: { id: string }[] };
    await page.goto(`${service.url}/animals/${items[0]?.id}`);
    await page.getByRole('link', { name: 'Who for this one?' }).click();
    await page.getByRole('link', { name: 'Compare in a grid' }).click();
    await page.getByRole('button', { name: 'Compare with the living females of Cerro Velisqua' }).click();
    const young = page.getByRole('region', { name: /The young of RV-61 × / });
    await young.getByText('label of the young').waitFor();
    await young.getByText(/^Recorded: .*above RV-61/).waitFor();
    // a code that breaks at its dash is taller than its line
    const heights = await page
      .getByRole('grid')
      .getByRole('link')
      .evaluateAll((links) => links.map((link) => link.getClientRects().length));
    expect(heights.length).toBeGreaterThan(5);
    expect(new Set(heights)).toEqual(new Set([1]));
    await expectAccessible(page, 'match by line');
    expect(faults).toEqual([]);
  });

  it('chooses in the sentence of the register with the keyboard alone', async () => {
    await page.goto(`${service.url}/register`);
    await page.getByRole('button', { name: 'living, dead or gone' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('link', { name: 'alive', exact: true }).waitFor();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.waitForURL(/status=alive/);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('alive');
    expect(faults).toEqual([]);
  });

  it('keeps what was typed when the service stops, and is told plainly', async () => {
    await page.goto(`${service.url}/animals/new`);
    await page.getByLabel('code', { exact: true }).fill('NEW-1');
    await page.getByLabel('species', { exact: true }).selectOption({ label: 'Ranitomeya imitator' });
    service.process.kill('SIGTERM');
    await service.ended;
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('The service does not answer. What you wrote is still here').waitFor();
    expect(await page.getByLabel('code', { exact: true }).inputValue()).toBe('NEW-1');
    await page.getByRole('link', { name: 'Pairings', exact: true }).first().click();
    await page.getByRole('heading', { name: 'No answer', level: 1 }).waitFor();
    expect(await page.getByRole('main').innerText()).toContain('The service does not answer');
    await page.getByRole('button', { name: 'Try again' }).waitFor();
    await expectAccessible(page, 'page that did not open');
  });
});
