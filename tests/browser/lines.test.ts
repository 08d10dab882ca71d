import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { bringCookie, expectAccessible, findChromium, openBrowser, openPage } from '../support/browser.ts';
import { askAs, signInToDemo, startService, type Service } from '../support/service.ts';

const chromium = findChromium();

interface Line {
  id: string;
  name: string;
  counts: { animals: number; alive: number };
}
interface Measures {
  animals: number;
  geneDiversity: number;
  years: { year: number; animals: number; geneDiversity: number }[];
}

/** The line Río Zancaval of the demo club: uncertain parents, a founder of unknown origin, years without young. */
describe.skipIf(chromium === null)('the measures of lines and other sets', () => {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-lines-'));
  const faults: string[] = [];
  let service: Service;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let cookie: string;
  let line: Line;

  const read = async <T>(path: string): Promise<T> =>
    (await (await askAs(cookie, `${service.url}/api/v1${path}`)).json()) as T;
  const go = (path: string) => page.goto(`${service.url}${path}`);
  const measuresOf = (of: string): Promise<Measures> => read(`/lineage/set?lineId=${line.id}${of}`);
  const printed = (fraction: number): string => `${Math.round(fraction * 1000) / 10}\u202f%`;
  const figure = (name: string) => page.locator('.strip dl > div', { has: page.getByText(name, { exact: true }) });

  beforeAll(async () => {
    service = await startService({ DATA_DIR: join(folder, 'data'), SEED_DEMO: 'true' });
    cookie = await signInToDemo(service);
    const lines = await read<{ items: Line[] }>('/lines');
    line = lines.items.find(({ name }) => name === 'Río Zancaval') as Line;
    browser = await openBrowser(chromium ?? '');
    context = await browser.newContext({ viewport: { width: 1440, height: 1000 }, acceptDownloads: true });
    await bringCookie(context, service.url, cookie);
    page = await openPage(context, faults);
  });

  afterAll(async () => {
    await browser.close();
    service.process.kill('SIGTERM');
    await service.ended;
    rmSync(folder, { recursive: true, force: true });
  });

  beforeEach(() => {
    faults.length = 0;
  });

  it('all lines are listed at once, and their figures come row by row', async () => {
    await go('/register');
    await page.getByRole('link', { name: 'Lines', exact: true }).first().click();
    await page.getByRole('heading', { level: 1, name: 'Lines' }).waitFor();
    const row = page.getByRole('row', { name: /Río Zancaval/ });
    expect(await row.getByRole('cell').nth(1).textContent()).toBe(String(line.counts.alive));
    const { geneDiversity } = await measuresOf('&status=alive');
    await row.getByText(printed(geneDiversity)).waitFor();
    await expectAccessible(page, 'lines');
    await row.getByRole('link', { name: 'Río Zancaval' }).click();
    await page.getByRole('heading', { level: 1, name: 'Río Zancaval' }).waitFor();
    expect(faults).toEqual([]);
  });

  it('the living are measured first, with all members beside them; the sentence chooses others and the address carries it', async () => {
    await go(`/lines/${line.id}`);
    const [living, all] = [await measuresOf('&status=alive'), await measuresOf('')];
    await figure('gene diversity').getByText(printed(living.geneDiversity), { exact: true }).waitFor();
    await figure('gene diversity')
      .getByText(`all members ${printed(all.geneDiversity)}`)
      .waitFor();
    await page.getByRole('button', { name: 'the living members' }).click();
    await page.getByRole('link', { name: 'all members, living or not' }).click();
    await page.waitForURL(/\?of=all$/);
    await figure('gene diversity').getByText(printed(all.geneDiversity), { exact: true }).waitFor();
    await page.getByRole('button', { name: 'anyone' }).click();
    await page.locator('.choices').getByRole('link', { name: 'Orla Venndrick' }).click();
    await page.waitForURL(/of=all&keeper=Orla\+Venndrick/);
    const hers = await measuresOf('&keeper=Orla%20Venndrick');
    await page.getByText(`of ${hers.animals} animals`, { exact: true }).waitFor();
    await page.reload();
    await page.getByText(`of ${hers.animals} animals`, { exact: true }).waitFor();
    expect(faults).toEqual([]);
  });

  it('every figure answers why, with its unit, its range, its source and a caution, and leads to an example', async () => {
    await go(`/lines/${line.id}`);
    await figure('mean kinship').waitFor();
    const names = await page.locator('.strip dt').allTextContents();
    expect(names).toHaveLength(9);
    for (const name of names) {
      const why = figure(name).getByRole('button');
      if ((await why.getAttribute('aria-expanded')) === 'false') await why.click();
      const note = page.locator('#set-note');
      for (const term of ['unit', 'range', 'source']) await note.getByText(term, { exact: true }).waitFor();
      expect(await note.locator('.caution').count()).toBe(1);
      const example = await note.getByRole('link', { name: 'A small example' }).getAttribute('href');
      expect(example).toMatch(/^\/help\/figures#[a-z-]+$/);
    }
    await page.getByRole('link', { name: 'A small example' }).click();
    await page.getByRole('heading', { level: 1, name: 'What the figures say' }).waitFor();
    expect(await page.locator('article:target').count()).toBe(1);
    await expectAccessible(page, 'help');
  });

  it('the years are walked by arrow keys and told in the margin, in a table and in a file', async () => {
    await go(`/lines/${line.id}?of=all`);
    const { years } = await measuresOf('');
    const last = years[years.length - 1];
    const before = years[years.length - 2];
    await page.locator(`[data-year="${last?.year}"]`).focus();
    await page.keyboard.press('ArrowUp');
    const note = page.getByRole('region', { name: String(before?.year), exact: true });
    await note
      .getByText(printed(before?.geneDiversity ?? 0))
      .first()
      .waitFor();
    await expectAccessible(page, 'a line');
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'SVG' }).click(),
    ]);
    expect(file.suggestedFilename()).toBe('line-rio-zancaval-years.svg');
    const svg = readFileSync(await file.path(), 'utf8');
    expect(svg).toContain('<pattern');
    expect(svg).not.toContain('var(');
    await page.getByRole('button', { name: 'Table', exact: true }).click();
    const rows = page.getByRole('region', { name: 'Table of the years' }).getByRole('row');
    for (const { year, animals } of years)
      expect(await rows.filter({ has: page.getByRole('rowheader', { name: String(year) }) }).textContent()).toContain(
        String(animals),
      );
    await note.getByRole('link', { name: /^Show/ }).click();
    await page.waitForURL(/\/register\?.*hatchedFrom=/);
    await page.getByText(new RegExp(`^${before?.animals} of`)).waitFor();
    expect(faults).toEqual([]);
  });

  it('animals picked in the register are measured together', async () => {
    await go('/register');
    for (const at of [0, 1, 2]) await page.getByRole('checkbox').nth(at).check();
    await page.getByRole('group', { name: 'Chosen animals' }).getByRole('link', { name: 'Measures of these' }).click();
    await page.getByText('of 3 animals', { exact: true }).waitFor();
    await expectAccessible(page, 'picked animals');
    await go('/measures?animals=nobody');
    await page.getByRole('alert').waitFor();
    expect(faults).toEqual([]);
  });

  it('a set without animals says so and what to do', async () => {
    await go(`/lines/${line.id}?hatchedFrom=1800&hatchedTo=1801&of=all`);
    await page.getByText('No animal fits this sentence').waitFor();
  });

  it('the name of the line on an animal’s label leads to its measures', async () => {
    const { items } = await read<{ items: { id: string }[] }>(`/individuals?lineId=${line.id}&limit=1`);
    await go(`/animals/${items[0]?.id}`);
    await page.getByRole('region', { name: 'Identity' }).getByRole('link', { name: 'Río Zancaval' }).click();
    await page.waitForURL(`**/lines/${line.id}`);
  });

  it('fits every width from 320 px on, by day and by night', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      for (const width of [320, 390, 720, 1000, 1440]) {
        await page.setViewportSize({ width, height: 900 });
        for (const path of ['/lines', `/lines/${line.id}?of=all`, '/help/figures']) {
          await go(path);
          await page.getByRole('heading', { level: 1 }).waitFor();
          await page.waitForLoadState('networkidle');
          const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
          expect(over, `${path} at ${width}`).toBeLessThanOrEqual(0);
          if (width === 320) await expectAccessible(page, `${path} at 320 px, ${colorScheme}`);
        }
      }
    }
    expect(faults).toEqual([]);
  });
});
