import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LineageView } from '../../api/lineage/lineage.view.ts';
import type { IndividualView } from '../../api/register/individuals/individual.view.ts';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

describe.skipIf(chromium === null)('the descendants of an animal', () => {
  let club: DemoClub;
  let page: Page;
  let animal: IndividualView;

  const chart = () => page.getByRole('region', { name: 'Chart of descendants' });
  const names = () =>
    page.locator('[data-item]').evaluateAll((items) => items.map((item) => item.getAttribute('aria-label') ?? ''));
  const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');

  /** Names of what the left edge cuts, where the ruler that stays ends, and of the animal asked about where it is out of sight. */
  const cutSymbols = (code: string): Promise<string[]> =>
    chart().evaluate((frame, asked) => {
      const { left: edge, right: end } = frame.getBoundingClientRect();
      const ruler = frame.querySelector('.kept-ruler svg')?.getBoundingClientRect().width ?? 0;
      return [...frame.querySelectorAll('[data-item]')].flatMap((item) => {
        const { left, right } = item.getBoundingClientRect();
        const name = item.getAttribute('aria-label') ?? '';
        const symbol = item.tagName.toLowerCase() === 'g' ? 48 : 28;
        const isCut = left < edge + ruler && left + symbol > edge + ruler;
        const isLost = name.startsWith(`${asked} `) && (left < edge + ruler || right > end + 1);
        return isCut || isLost ? [name] : [];
      });
    }, code);

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const found = await club.read<{ items: { id: string }[] }>('individuals?code=RV-11');
    animal = await club.read<IndividualView>(`individuals/${found.items[0]?.id ?? ''}`);
    page = await club.page();
  });

  afterAll(() => club.close());

  it('are led to from its page, clutch by clutch, with those who have no young folded into a number', async () => {
    await page.goto(`${club.url}/animals/${animal.id}`);
    await page.getByRole('link', { name: 'Descendants' }).click();
    await page.getByRole('heading', { name: 'Descendants of RV-11' }).waitFor();
    await page.getByRole('radio', { name: '1', exact: true }).check();
    await page.waitForURL(/generations=1/);
    await chart().waitFor();
    const young = animal.young.flatMap(({ animals }) => animals);
    const withYoung = young.filter(({ hasYoung }) => hasYoung);
    expect(withYoung.length).toBeGreaterThan(0);
    expect(withYoung.length).toBeLessThan(young.length);
    const foldedOf = (told: string[]): number =>
      told.reduce((sum, name) => sum + Number(/^\+(\d+) without young/.exec(name)?.[1] ?? 0), 0);
    // two generations stand there until one is laid out
    await expect.poll(async () => foldedOf(await names()), { timeout: 10_000 }).toBe(young.length - withYoung.length);
    const told = await names();
    for (const { code } of withYoung)
      expect(told.some((name) => name.startsWith(`${code ?? ''} `) && name.includes('has young'))).toBe(true);
    const lineage = await club.read<LineageView>(`individuals/${animal.id}/lineage`);
    for (const { standing, share } of lineage.label.shares)
      if (standing !== 'by-looks') expect(told[0]).toContain(`${Math.round(share * 1000) / 10}\u202f% ${standing}`);
    const years = await page.locator('svg.chart .ruler text').allInnerTexts();
    expect(years.length).toBeGreaterThan(1);
    expect(years.map(Number)).toEqual(years.map(Number).sort((a, b) => a - b));
    await expectAccessible(page, 'descendants');
    await club.look(page, 'descendants-wide');
  });

  it('unfold one animal at a time, by the keyboard alone, and list who is folded', async () => {
    await page.locator('[data-item]').first().focus();
    expect(await focused()).toMatch(/^RV-11 /);
    await page.keyboard.press('ArrowDown');
    for (let step = 0; step < 20; step++) await page.keyboard.press('ArrowLeft');
    for (let step = 0; step < 20 && !(await focused()).includes('has young'); step++)
      await page.keyboard.press('ArrowRight');
    const opened = await focused();
    expect(opened).toContain('press the space bar to draw them');
    const before = (await names()).length;
    await page.keyboard.press('Space');
    await expect.poll(async () => (await names()).length).toBeGreaterThan(before);
    await page.keyboard.press('ArrowDown');
    expect(await focused()).not.toBe(opened);
    await page.keyboard.press('ArrowUp');
    expect(opened.startsWith((await focused()).slice(0, 5))).toBe(true);
    await page
      .getByRole('button', { name: /^\+\d+ without young/ })
      .first()
      .focus();
    await page.keyboard.press('Enter');
    const list = page.getByRole('region', { name: 'Young without young of their own' });
    expect(await list.getByRole('listitem').count()).toBeGreaterThan(0);
    await expectAccessible(page, 'descendants unfolded');
    await list.getByRole('button', { name: 'Close the list' }).click();
    await page.getByRole('button', { name: 'Fold again' }).click();
    await expect.poll(async () => (await names()).length).toBe(before);
    expect(club.faults).toEqual([]);
  });

  it('go three generations down, and say the same as a table and in files', async () => {
    await page.getByRole('radio', { name: '3', exact: true }).check();
    await page.waitForURL(/generations=3/);
    await expect.poll(async () => (await names()).filter((name) => /^RV-(35|36) /.test(name)).length).toBe(2);
    const [svg] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'SVG' }).click()]);
    expect(svg.suggestedFilename()).toBe(`descendants-${animal.number}.svg`);
    const drawing = await readFile(await svg.path(), 'utf8');
    expect([/<pattern id="p-[a-z-]+"/.test(drawing), />20\d\d<\/text>/.test(drawing)]).toEqual([true, true]);
    const [png] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'PNG' }).click()]);
    expect(png.suggestedFilename()).toBe(`descendants-${animal.number}.png`);
    await page.getByRole('button', { name: 'Table', exact: true }).click();
    const table = page.getByRole('table', { name: 'Descendants, clutch by clutch' });
    for (const code of ['RV-26', 'RV-35', 'RV-36']) await table.getByText(code).first().waitFor();
    await table
      .getByText(/% (documented|corroborated|stated|by looks|disputed|unknown)/)
      .first()
      .waitFor();
    await expectAccessible(page, 'table of descendants');
    await page.getByRole('button', { name: 'Chart', exact: true }).click();
  });

  it.each([1440, 390, 320])(
    'open with the animal in sight and no symbol cut at the left edge, %i px wide',
    async (width) => {
      await page.setViewportSize({ width, height: 900 });
      for (const code of ['RV-41', 'RV-11']) {
        const { items } = await club.read<{ items: { id: string }[] }>(`individuals?code=${code}`);
        await page.goto(`${club.url}/animals/${items[0]?.id ?? ''}/descendants`);
        await page.locator('[data-item]').first().waitFor();
        await expect.poll(() => cutSymbols(code)).toEqual([]);
      }
    },
  );

  it.each(['light', 'dark'] as const)('fit a phone and are moved without dragging, %s', async (colorScheme) => {
    await page.setViewportSize({ width: 320, height: 700 });
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await chart().waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    const left = () => chart().evaluate((frame) => frame.scrollLeft);
    const before = await left();
    await page.getByRole('button', { name: 'Right →' }).click();
    expect(await left()).toBeGreaterThan(before);
    await page.getByRole('button', { name: 'All of it' }).click();
    await expectAccessible(page, `descendants on a phone, ${colorScheme}`);
    await club.look(page, `descendants-phone-${colorScheme}`);
    await page.getByRole('button', { name: 'Larger' }).click();
    expect(club.faults).toEqual([]);
  });
});
