import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bringCookie, expectAccessible, findChromium, openBrowser, openPage } from '../support/browser.ts';
import { askAs, signInToDemo, startService, type Service } from '../support/service.ts';

const chromium = findChromium();

describe.skipIf(chromium === null)('the map of places', () => {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-places-'));
  const faults: string[] = [];
  let service: Service;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    service = await startService({ DATA_DIR: join(folder, 'data'), SEED_DEMO: 'true' });
    const cookie = await signInToDemo(service);
    const ask = async (path: string, body?: object): Promise<{ id: string; items: { id: string }[] }> => {
      const sent = body
        ? { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) }
        : {};
      const answer = await askAs(cookie, `${service.url}/api/v1${path}`, sent);
      return (await answer.json()) as { id: string; items: { id: string }[] };
    };
    const { items } = await ask('/sources');
    const place = { geodeticDatum: 'EPSG:4326', countryCode: 'EC', aspect: 'locality' };
    const at = { decimalLatitude: -3.7, decimalLongitude: -79.6, coordinateUncertaintyM: 30_000 };
    await ask('/claims', { ...place, ...at, sourceId: items[0]?.id, value: 'Invented ravine' });
    const there = { decimalLatitude: -0.9, decimalLongitude: -78.6, coordinateUncertaintyM: 100 };
    await ask('/claims', { ...place, ...there, sourceId: items[1]?.id, value: 'Invented hill' });
    browser = await openBrowser(chromium ?? '');
    const context = await browser.newContext({ viewport: { width: 1440, height: 1000 } });
    await bringCookie(context, service.url, cookie);
    page = await openPage(context, faults);
  });

  afterAll(async () => {
    await browser.close();
    service.process.kill('SIGTERM');
    rmSync(folder, { recursive: true, force: true });
  });

  it('is found from the sources, draws countries without any other server, and tells the same in a list', async () => {
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(`${service.url}/sources`);
    await page.getByRole('link', { name: 'Map of places' }).click();
    await page.locator('svg path.land').first().waitFor();
    expect(await page.locator('figure svg circle').count()).toBe(2);
    expect(await page.getByRole('list', { name: 'Places' }).innerText()).toMatch(
      /Invented ravine: stated.*\n?.*30 km/s,
    );
    expect(asked.filter((url) => !url.startsWith(service.url))).toEqual([]);
  });

  it('points at the mark of the place that has the keyboard', async () => {
    await page.getByRole('link', { name: 'Invented hill' }).focus();
    expect(await page.locator('figure svg circle.pointed title').textContent()).toBe('Invented hill, stated');
  });

  it.each([1440, 320])('can be read at %i pixels by day and by night', async (width) => {
    await page.setViewportSize({ width, height: 900 });
    for (const theme of ['day', 'night']) {
      await page.evaluate((name) => (document.documentElement.dataset['theme'] = name), theme);
      await expectAccessible(page, `the map of places, ${theme}`);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    expect(faults).toEqual([]);
  });
});
