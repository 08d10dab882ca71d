import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PedigreeView } from '../../api/lineage/pedigree.view.ts';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();
const run = promisify(execFile);

/** Paper in points, as `pdfinfo` tells it. */
const papers = {
  'a4 upright': [595, 842],
  'a4 across': [842, 595],
  'letter upright': [612, 792],
  'letter across': [792, 612],
} as const;

describe.skipIf(chromium === null)('a pedigree on paper', () => {
  let club: DemoClub;
  let page: Page;
  let id: string;
  let folder: string;

  const open = async (query: string): Promise<void> => {
    await page.goto(`${club.url}/animals/${id}/pedigree?${query}`);
    await page.getByRole('article', { name: 'Pedigree of RV-61 on paper' }).locator('.drawing svg').waitFor();
  };
  /** Prints the page; gives what a reader of PDFs finds in it. */
  const printed = async (name: string): Promise<{ pages: number; size: number[]; text: string; fonts: string }> => {
    const file = join(folder, `${name}.pdf`);
    writeFileSync(file, await page.pdf({ preferCSSPageSize: true, printBackground: true }));
    const { stdout: info } = await run('pdfinfo', [file]);
    const [, pages = '', width = '', height = ''] =
      /Pages:\s+(\d+)[\s\S]*Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(info) ?? [];
    const text = (await run('pdftotext', ['-layout', file, '-'])).stdout;
    const fonts = (await run('pdffonts', [file])).stdout;
    return { pages: Number(pages), size: [Math.round(Number(width)), Math.round(Number(height))], text, fonts };
  };

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'linekeeper-paper-'));
    club = await DemoClub.open(chromium);
    id = (await club.read<{ items: { id: string }[] }>('individuals?code=RV-61')).items[0]?.id ?? '';
    page = await club.page();
  });

  afterAll(async () => {
    await club.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('is led to from the chart, and chosen by form, generations and paper, which stand in the address', async () => {
    await page.goto(`${club.url}/animals/${id}`);
    await page.getByRole('region', { name: 'Ancestors' }).getByRole('link', { name: 'Print' }).click();
    await page.getByRole('heading', { name: 'Pedigree of RV-61' }).waitFor();
    await page.getByRole('radio', { name: 'Letter' }).check();
    await page.getByRole('radio', { name: 'Upright' }).check();
    await page.getByRole('radio', { name: '6', exact: true }).check();
    await page.waitForURL(/form=bracket&generations=6&paper=letter&stands=upright/);
    // six generations have no room across the paper: the nearest that has is taken
    await page.getByRole('radio', { name: 'Across' }).check();
    await page.waitForURL(/generations=5&paper=letter&stands=across/);
    expect(await page.getByRole('radio', { name: '6', exact: true }).count()).toBe(0);
    await expectAccessible(page, 'a pedigree on paper');
    expect(club.faults).toEqual([]);
  });

  it.each(Object.entries(papers))('fills one page of %s exactly, as a bracket', async (name, size) => {
    const [paper = '', stands = ''] = name.split(' ');
    await open(`form=bracket&generations=4&paper=${paper}&stands=${stands}`);
    const sheet = await printed(`bracket-${paper}-${stands}`);
    expect([sheet.pages, ...sheet.size]).toEqual([1, ...size]);
    const view = await club.read<PedigreeView>(`individuals/${id}/pedigree?generations=4`);
    for (const node of view.nodes) if (node.kind === 'individual') expect(sheet.text).toContain(node.code ?? '');
    // repeats are written once, uncertain parents with their odds, F with its depth
    expect(sheet.text).toMatch(/RV-41, see \d+/);
    expect(sheet.text).toContain('or RV-47 0.3');
    expect(sheet.text).toMatch(/F 15\.4\s%,?\s+depth 2 of 5/);
    expect(sheet.text).toContain('Bennett et al. 1995, 2022');
    expect(sheet.text).toContain('F counts only what the register knows');
    expect(sheet.text).not.toContain('Find or do anything');
  });

  it.each(Object.entries(papers))('fills one page of %s exactly, as a time chart', async (name, size) => {
    const [paper = '', stands = ''] = name.split(' ');
    await open(`form=time&generations=8&paper=${paper}&stands=${stands}`);
    await page.locator('a[data-animal]').nth(10).waitFor();
    const sheet = await printed(`time-${paper}-${stands}`);
    expect([sheet.pages, ...sheet.size]).toEqual([1, ...size]);
    const view = await club.read<PedigreeView>(`individuals/${id}/pedigree?generations=8`);
    for (const node of view.nodes) if (node.kind === 'individual') expect(sheet.text).toContain(node.code ?? '');
    expect(sheet.text).toContain('candidate parents');
  });

  it('is printed in black on white whatever the theme of the screen, with its own fonts', async () => {
    await page.evaluate(() => (document.documentElement.dataset['theme'] = 'night'));
    await open('form=bracket&generations=5&paper=a4&stands=across');
    await page.evaluate(() => (document.documentElement.dataset['theme'] = 'night'));
    const { fonts } = await printed('night');
    const embedded = fonts.trim().split('\n').slice(2);
    expect(embedded.length).toBeGreaterThanOrEqual(2);
    // letters of several weights are embedded as Custom, those of one as Identity-H
    for (const font of embedded) expect(font).toMatch(/(Custom|Identity-H)\s+yes/);
    const file = join(folder, 'night.pdf');
    await run('pdftoppm', ['-r', '40', '-gray', '-png', '-singlefile', file, join(folder, 'gray')]);
    await run('pdftoppm', ['-r', '40', '-png', '-singlefile', file, join(folder, 'colour')]);
    const { default: sharp } = await import('sharp');
    const { channels } = await sharp(join(folder, 'colour.png')).stats();
    const [red, green, blue] = channels;
    // no colour anywhere, and mostly white
    expect(Math.abs((red?.mean ?? 0) - (green?.mean ?? 255))).toBeLessThan(0.5);
    expect(Math.abs((red?.mean ?? 0) - (blue?.mean ?? 255))).toBeLessThan(0.5);
    expect(red?.mean).toBeGreaterThan(225);
    expect(red?.min).toBeLessThan(90);
    await page.evaluate(() => delete document.documentElement.dataset['theme']);
  });

  it.each(['light', 'dark'] as const)('is chosen on a phone, %s', async (colorScheme) => {
    const phone = await club.page({ width: 320, height: 700 });
    await phone.emulateMedia({ colorScheme });
    for (const form of ['bracket', 'time']) {
      await phone.goto(`${club.url}/animals/${id}/pedigree?form=${form}&generations=4`);
      await phone.locator('.drawing svg').waitFor();
      expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
      await expectAccessible(phone, `${form} on a phone, ${colorScheme}`);
      await club.look(phone, `paper-${form}-phone-${colorScheme}`);
    }
    await phone.close();
    expect(club.faults).toEqual([]);
  });
});
