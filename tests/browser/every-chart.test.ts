import { mkdtempSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { printPage } from '../support/printed.ts';

const chromium = findChromium();

interface Chart {
  name: string;
  address: () => string;
  /** Title that the files bear. */
  title: RegExp;
  /** What is done on the page until the chart stands there. */
  reach?: (page: Page) => Promise<unknown>;
  /** Where a page of its own is made for paper. */
  printPage?: () => string;
  /** Texts of the drawing that the page leaves out on paper. */
  leavesOut?: RegExp;
  /** It is wider than paper, which shows it in parts. */
  isInSheets?: true;
  /** It is part of a form; the page says on paper in words what was chosen by it. */
  isControl?: true;
}

/** Letters smaller than this cannot be read on paper, in points. */
const legible = 5;

/** What is cut into parts for paper has no reason to be smaller than this. */
const legibleInParts = 7;

/** Every chart of the client leaves as a drawing, as a picture and on paper. */
describe.skipIf(chromium === null)('every chart', () => {
  let club: DemoClub;
  let page: Page;
  /** Of no address, so that files are read without the client's rules. */
  let reader: Page;
  let folder: string;
  const ids = new Map<string, string>();
  const id = (name: string): string => ids.get(name) ?? '';

  const charts: Chart[] = [
    {
      name: 'ancestors',
      address: () => `/animals/${id('RV-61')}`,
      title: /^Ancestors of RV-61$/,
      printPage: () => `/animals/${id('RV-61')}/pedigree`,
    },
    { name: 'the pedigree on paper', address: () => `/animals/${id('RV-61')}/pedigree`, title: /^Ancestors of RV-61$/ },
    {
      name: 'descendants',
      address: () => `/animals/${id('RV-11')}/descendants?generations=3`,
      title: /^Descendants of RV-11$/,
    },
    {
      name: 'line over time',
      address: () => `/lines/${id('line')}/over-time`,
      title: /^Río Zancaval over time$/,
      isInSheets: true,
    },
    { name: 'over the years', address: () => `/lines/${id('line')}`, title: /^.*: over the years$/ },
    { name: 'spread of F', address: () => `/animals/${id('GT-41')}`, title: /^What F of GT-41 can be$/ },
    {
      name: 'kinship of two lists',
      address: () => `/match?animals=${id('pairIds')}`,
      title: /^F of the young, males down/,
      // the key of the page says it in its own words
      leavesOut: /^dog-ear/,
    },
    {
      name: 'kinship of more than one paper holds',
      address: () => `/match?animals=${id('manyIds')}`,
      title: /^F of the young, males down/,
      leavesOut: /^dog-ear/,
      isInSheets: true,
    },
    {
      name: 'kinship of a group',
      address: () => `/match/group?animals=${id('pair')}`,
      title: /^F of the young of every sire/,
      // by whom they are kept has no room there
      leavesOut: /^dog-ear|^[A-Z]\p{L}+ [A-Z]\p{L}+…?$/u,
    },
    {
      name: 'trade-off',
      address: () => `/lines/${id('line')}/plan?pairings=3`,
      title: /^What the weights do$/,
      isControl: true,
    },
    {
      name: 'forecast',
      address: () => `/lines/${id('line')}/plan?pairings=3`,
      title: /^the next generations of Río Zancaval$/,
      reach: forecast,
    },
    {
      name: 'founder shares',
      address: () => `/lines/${id('line')}/plan?pairings=3`,
      title: /^.*: whose genes they will be$/,
      reach: forecast,
    },
    { name: 'map of places', address: () => '/places', title: /^Map of places$/ },
  ];

  async function forecast(open: Page): Promise<void> {
    await open.getByRole('button', { name: 'What would come of it?' }).first().click();
  }

  beforeAll(async () => {
    folder = process.env['LOOK_AT'] ?? mkdtempSync(join(tmpdir(), 'linekeeper-charts-'));
    club = await DemoClub.open(chromium);
    page = await club.page();
    page.setDefaultTimeout(25_000);
    reader = await club.strangersPage();
    for (const code of ['RV-61', 'RV-11', 'GT-41'])
      ids.set(code, (await club.read<{ items: { id: string }[] }>(`individuals?code=${code}`)).items[0]?.id ?? '');
    const lines = (await club.read<{ items: { id: string; name: string }[] }>('lines?limit=200')).items;
    const lineId = lines.find(({ name }) => name === 'Río Zancaval')?.id ?? '';
    ids.set('line', lineId);
    const living = await club.read<{ items: { id: string; number: string; sex: string }[] }>(
      `individuals?lineId=${lineId}&status=alive&limit=200`,
    );
    const many = ['male', 'female'].flatMap((sex) => living.items.filter((one) => one.sex === sex).slice(0, 12));
    ids.set('manyIds', many.map((one) => one.id).join(','));
    const some = ['male', 'female'].flatMap((sex) => living.items.filter((one) => one.sex === sex).slice(0, 6));
    ids.set('pair', some.map(({ number }) => number).join(','));
    ids.set('pairIds', some.map((one) => one.id).join(','));
  });

  afterAll(async () => {
    await club.close();
    if (!process.env['LOOK_AT']) rmSync(folder, { recursive: true, force: true });
  });

  const saver = (kind: 'SVG' | 'PNG', title: RegExp): Locator => {
    // the line over time says its name in its heading
    const text = new RegExp(`^${kind}($|: ${title.source.replace('^', '')})`);
    return page
      .getByRole('button', { name: new RegExp(`^${kind}`) })
      .filter({ hasText: text })
      .first();
  };

  async function saved(kind: 'SVG' | 'PNG', title: RegExp): Promise<Buffer> {
    const [file] = await Promise.all([page.waitForEvent('download'), saver(kind, title).click()]);
    return readFile(await file.path());
  }

  async function open({ address, reach, title }: Chart): Promise<void> {
    await page.goto(`${club.url}${address()}`);
    await page.locator('h1').first().waitFor();
    await reach?.(page);
    await saver('SVG', title).waitFor({ timeout: 30_000 });
  }

  /** What another program finds in a file: its names, its texts, and what it wants from elsewhere. */
  const parsed = (svg: string) =>
    reader.evaluate((text) => {
      const file = new DOMParser().parseFromString(text, 'image/svg+xml');
      const all = [...file.querySelectorAll('*')];
      const wanted = all.flatMap((element) =>
        [...element.attributes]
          .filter(({ name }) => !name.startsWith('xmlns'))
          .flatMap(({ name, value }) => [
            ...(/^(xlink:)?href$|^src$/.test(name) ? [value] : []),
            ...[...value.matchAll(/url\(["']?([^"')]+)/g)].map(([, to]) => to ?? ''),
          ]),
      );
      const rules = [...file.querySelectorAll('style')].map(({ textContent }) => textContent).join('');
      for (const [, to = ''] of rules.matchAll(/url\(["']?([^"')]+)/g)) wanted.push(to);
      return {
        isBroken: file.querySelector('parsererror') !== null,
        // the page finds a drawing by its id, which differs from one opening to the next
        id: file.documentElement.id,
        title: file.querySelector('svg > title')?.textContent ?? '',
        texts: [...file.querySelectorAll('text')]
          .map(({ textContent }) => textContent.trim())
          .filter((one) => one !== ''),
        outside: wanted.filter((to) => !to.startsWith('#') && !to.startsWith('data:')),
        missing: wanted.filter((to) => to.startsWith('#') && !file.getElementById(to.slice(1))),
        fonts: rules.includes('@font-face'),
        size: [
          Number(file.documentElement.getAttribute('width')),
          Number(file.documentElement.getAttribute('height')),
        ] as const,
      };
    }, svg);

  it.each(charts)('leaves as a drawing and as a picture: $name', async (chart) => {
    await open(chart);
    const file = await parsed((await saved('SVG', chart.title)).toString());
    expect(file).toMatchObject({ isBroken: false, id: '', outside: [], missing: [] });
    expect(file.title).toMatch(chart.title);
    // the map has marks only; the places stand in its list
    if (chart.name !== 'map of places') expect([file.texts.length > 2, file.fonts]).toEqual([true, true]);
    const png = await saved('PNG', chart.title);
    const { width, height } = await sharp(png).metadata();
    const [wide, high] = file.size;
    expect(width / height).toBeCloseTo(wide / high, 1);
    expect(width).toBeGreaterThanOrEqual(Math.min(2 * Math.floor(wide), 3000));
    const { channels } = await sharp(png).stats();
    expect(Math.max(...channels.slice(0, 3).map(({ stdev }) => stdev))).toBeGreaterThan(8);
    expect(club.faults).toEqual([]);
  });

  it.each(charts.filter(({ isControl }) => !isControl))('is read on paper: $name', async (chart) => {
    await open(chart);
    const { texts } = await parsed((await saved('SVG', chart.title)).toString());
    if (chart.printPage) {
      await page.goto(`${club.url}${chart.printPage()}`);
      await page.locator('.drawing svg').waitFor();
    }
    const { text, leastLetter, ink } = await printPage(page, folder, chart.name.replaceAll(' ', '-'));
    expect(leastLetter).toBeGreaterThanOrEqual(chart.isInSheets ? legibleInParts : legible);
    if (chart.isInSheets) expect(text).toMatch(/\b1\/\d/);
    const bare = (written: string): string => written.normalize('NFKC').replace(/\s/g, '');
    const onPaper = bare(text);
    const isLeftOut = (one: string): boolean => chart.leavesOut?.test(one) ?? false;
    const wanted = chart.printPage ? [] : texts.filter((one) => !isLeftOut(one));
    // a line of the drawing may stand in several places of the page
    // where the drawing shortens a name, the page has it whole
    const parts = wanted.flatMap((one) => one.replace(/…$/, '').split(', ')).filter((one) => !isLeftOut(one));
    expect(parts.filter((one) => !onPaper.includes(bare(one)))).toEqual([]);
    expect(ink.mean).toBeGreaterThan(200);
    expect(ink.mean).toBeLessThan(252);
    expect(ink.darkest).toBeLessThan(110);
    expect(ink.colour).toBeLessThan(0.5);
  });
});
