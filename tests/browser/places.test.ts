import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

describe.skipIf(chromium === null)('the map of places', () => {
  let club: DemoClub;
  let page: Page;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const { items } = await club.read<{ items: { id: string }[] }>('sources');
    const place = { geodeticDatum: 'EPSG:4326', countryCode: 'EC', aspect: 'locality' };
    const at = { decimalLatitude: -3.7, decimalLongitude: -79.6, coordinateUncertaintyM: 30_000 };
    await club.write('claims', { ...place, ...at, sourceId: items[0]?.id, value: 'Invented ravine' });
    const there = { decimalLatitude: -0.9, decimalLongitude: -78.6, coordinateUncertaintyM: 100 };
    await club.write('claims', { ...place, ...there, sourceId: items[1]?.id, value: 'Invented hill' });
    page = await club.page();
  });

  afterAll(() => club.close());

  it('is found from the sources, draws countries without any other server, and tells the same in a list', async () => {
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(`${club.url}/sources`);
    await page.getByRole('link', { name: 'Map of places' }).click();
    await page.locator('svg path.land').first().waitFor();
    // two of the demo club, and the two written above
    expect(await page.locator('figure svg circle').count()).toBe(4);
    expect(await page.getByRole('list', { name: 'Places' }).innerText()).toMatch(
      /Invented ravine: stated.*\n?.*30 km/s,
    );
    expect(asked.filter((url) => !url.startsWith(club.url))).toEqual([]);
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
    expect(club.faults).toEqual([]);
  });
});
