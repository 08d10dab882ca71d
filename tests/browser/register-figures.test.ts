import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

interface List {
  items: { id: string; number: string; code: string | null }[];
  total: number;
}

/** The register of the demo club, by the figures of its animals. */
describe.skipIf(chromium === null)('the register by figures', () => {
  let club: DemoClub;
  let page: Page;

  const list = (query: string): Promise<List> => club.read(`individuals?limit=50&total=true&${query}`);
  const go = (path: string) => page.goto(`${club.url}${path}`);
  const head = (name: string) => page.getByRole('columnheader', { name });
  const codes = (): Promise<string[]> => page.locator('tbody .code').allTextContents();
  const codesOf = ({ items }: List): string[] => items.map(({ code }) => code ?? 'no code');

  /** Shows a column or hides it, and shuts the choice again. */
  const turn = async (column: string): Promise<void> => {
    await page.getByText(/^Columns, /).click();
    await page.getByRole('checkbox', { name: column, exact: true }).click();
    await page.getByText(/^Columns, /).click();
  };

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    for (let look = 0; look < 120; look++) {
      if ((await club.read<{ current: boolean }>('lineage/progress')).current) break;
      await new Promise((resolve) => setTimeout(resolve, 500));
    }
    expect(await club.read('lineage/progress')).toMatchObject({ current: true });
    page = await club.page();
  });

  afterAll(() => club.close());

  beforeEach(() => {
    club.faults.length = 0;
  });

  it.each([
    ['traced', 'tracedShare'],
    ['F', 'inbreeding'],
    ['kinship', 'meanKinship'],
  ] as const)('the head "%s" sorts by it, upwards and then downwards, by the keyboard too', async (name, sort) => {
    await go('/register');
    if (sort === 'meanKinship') await turn('kinship');
    await head(name).getByRole('link').click();
    await page.waitForURL(new RegExp(`sort=${sort}$`));
    await expect.poll(() => head(name).getAttribute('aria-sort')).toBe('ascending');
    expect(await codes()).toEqual(codesOf(await list(`sort=${sort}`)));
    await head(name).getByRole('link').focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(new RegExp(`sort=${sort}&order=desc$`));
    await expect.poll(() => head(name).getAttribute('aria-sort')).toBe('descending');
    expect(await codes()).toEqual(codesOf(await list(`sort=${sort}&order=desc`)));
    expect(club.faults).toEqual([]);
  });

  it('F never stands without its depth: in the next column, or beside it where that is hidden, which stays so', async () => {
    await go('/register?sort=inbreeding&order=desc');
    const cell = page.locator('tbody .of-inbreeding');
    await page.locator('tbody .of-depth').first().getByText(/^\d+$/).waitFor();
    expect(await cell.first().textContent()).not.toMatch(/depth/);
    await head('depth').getByRole('link').click();
    await page.waitForURL(/sort=depth/);
    await expect.poll(() => head('depth').getAttribute('aria-sort')).toBe('ascending');
    expect(await codes()).toEqual(codesOf(await list('sort=depth')));
    await expectAccessible(page, 'register with depth');
    await turn('depth');
    await page.reload();
    await cell
      .first()
      .getByText(/founder/)
      .waitFor();
    await go('/register?sort=inbreeding&order=desc');
    await cell
      .first()
      .getByText(/depth \d+/)
      .waitFor();
    for (const text of await cell.allTextContents()) expect(text).toMatch(/depth \d+|founder|nothing known/);
    await turn('depth');
    expect(club.faults).toEqual([]);
  });

  it('the usual columns fit a desk, and the form of all bounds shows its button', async () => {
    const desk = await club.page({ width: 1440, height: 900 });
    await desk.goto(`${club.url}/register?sort=inbreeding&order=desc&depthFrom=3&status=alive`);
    await desk.locator('tbody .of-depth').first().getByText(/^\d+$/).waitFor();
    const pan = await desk.locator('.pan-x').evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth);
    expect(pan).toBeLessThanOrEqual(0);
    await desk.goto(`${club.url}/register`);
    await desk.getByRole('button', { name: 'and by figures…' }).click();
    const choices = desk.locator('.choices');
    const hidden = await choices.evaluate(({ scrollHeight, clientHeight }) => scrollHeight - clientHeight);
    expect(hidden).toBeLessThanOrEqual(0);
    await desk.close();
    expect(club.faults).toEqual([]);
  });

  it('the sentence takes bounds, says what is wrong with one, and carries them in the address', async () => {
    await go('/register');
    await page.getByRole('button', { name: 'and by figures…' }).click();
    const form = page.locator('.choices form');
    const bounds = (name: RegExp) => form.getByRole('group', { name });
    await bounds(/^F,/).getByLabel('from').fill('much');
    await form.getByRole('button', { name: 'Show' }).click();
    await form.getByText('Write a percentage from 0 to 100, such as 6.25.').waitFor();
    await expectAccessible(page, 'bounds of figures');
    await bounds(/^F,/).getByLabel('from').fill('6,25');
    await bounds(/^depth/)
      .getByLabel('from')
      .fill('3');
    await form.getByRole('button', { name: 'Show' }).click();
    await page.waitForURL(/inbreedingFrom=0\.0625&depthFrom=3$/);
    await page.getByRole('button', { name: 'at least 6.25\u202f%' }).waitFor();
    const { total, items } = await list('inbreedingFrom=0.0625&depthFrom=3');
    expect(total).toBeGreaterThan(0);
    await page.getByText(new RegExp(`^\\s*${total} of 438 animals`)).waitFor();
    expect(await codes()).toEqual(items.map(({ code }) => code ?? 'no code'));
    await expectAccessible(page, 'register within bounds');
  });

  it('a bound is changed and let go where it stands, and the set is measured as it is shown', async () => {
    await go('/register?tracedShareTo=0&depthFrom=1');
    await page.getByRole('link', { name: 'Measures of these' }).click();
    await page.waitForURL(/\/measures\?.*tracedShareTo=0/);
    await page.getByText('traced 0\u202f%').first().waitFor();
    await page.goBack();
    await page.getByRole('button', { name: '0\u202f%', exact: true }).click();
    await page.locator('.choices').getByRole('button', { name: 'any figures' }).click();
    await page.waitForURL(/register\?depthFrom=1$/);
    await page.getByRole('button', { name: 'at least 1', exact: true }).waitFor();
    expect(club.faults).toEqual([]);
  });

  it('pages by a figure follow each other without a gap', async () => {
    await go('/register?sort=inbreeding&order=desc');
    await page.locator('tbody .code').first().waitFor();
    const all: string[] = [];
    for (;;) {
      all.push(...(await page.locator('tbody .of-number').allTextContents()).map((text) => text.trim()));
      const next = page.getByRole('link', { name: 'Next page' });
      if ((await next.count()) === 0) break;
      const first = page.locator('tbody .code').first();
      const before = await first.getAttribute('href');
      await next.click();
      await expect.poll(() => first.getAttribute('href')).not.toBe(before);
    }
    expect(new Set(all).size).toBe(438);
    expect(all).toHaveLength(438);
  });

  it('a phone has the same sentence, orders and figures', async () => {
    await page.setViewportSize({ width: 320, height: 780 });
    await go('/register?sort=meanKinship&depthFrom=3');
    await page
      .locator('.entry')
      .first()
      .getByText(/depth \d+/)
      .waitFor();
    await page.locator('.entry').first().getByText('kinship').waitFor();
    await page.getByRole('button', { name: 'and by figures…' }).click();
    await page.locator('.choices form').waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await expectAccessible(page, 'register on a phone');
    expect(club.faults).toEqual([]);
  });
});
