import type { Page, Route } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

/** What was found before stands on the screen while the next text is looked for: Enter must not take it. */
describe.runIf(chromium)('Hands that are quicker than answers', () => {
  let club: DemoClub;
  let page: Page;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    page = await club.page();
    await page.route('**/api/v1/individuals?*', later);
    await page.route('**/api/v1/lines?*', later);
  });
  afterAll(async () => club.close());

  async function later(route: Route): Promise<void> {
    await new Promise((resolve) => setTimeout(resolve, 700));
    await route.continue().catch(() => undefined);
  }

  const palette = () => page.getByRole('dialog', { name: /Find or do anything|What with/ });
  const first = () => palette().getByRole('option').first();

  /** Opens the palette on a list whose first animal is another one than the one sought. */
  async function findOther(): Promise<void> {
    await page.goto(`${club.url}/register`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.keyboard.press('Control+k');
    await page.keyboard.type('GT-4');
    await first().getByText(/^GT-/).waitFor();
    await palette().getByText('Looking…').waitFor({ state: 'hidden' });
    await page.keyboard.press('Control+A');
  }

  it('are heard before the palette itself has come', async () => {
    // its part of the client is long on its way
    let bring = (): void => undefined;
    const brought = new Promise<void>((resolve) => (bring = resolve));
    const other = await club.page();
    const parts: string[] = [];
    await other.context().route('**/_app/immutable/**', async (route) => {
      const { body, response } = await route
        .fetch()
        .then(async (answer) => ({ body: await answer.text(), response: answer }));
      if (body.includes('palette-list')) {
        parts.push(route.request().url());
        await brought;
      }
      await route.fulfill({ response, body });
    });
    await other.goto(`${club.url}/register`);
    await other.getByRole('heading', { level: 1 }).waitFor();
    await expect.poll(() => parts.length).toBe(1);
    await other.keyboard.press('Control+k');
    await other.keyboard.type('rv-61');
    bring();
    const field = other.getByRole('dialog', { name: 'Find or do anything' }).getByRole('combobox');
    await field.waitFor();
    expect(await field.inputValue()).toBe('rv-61');
    await other.getByRole('option', { name: /RV-61/ }).first().waitFor();
    await other.keyboard.press('Enter');
    await other.getByRole('heading', { name: 'RV-61', exact: true }).waitFor();
    await other.context().unrouteAll({ behavior: 'ignoreErrors' });
    await other.context().close();
  });

  it('open the animal that is typed', async () => {
    await findOther();
    await page.keyboard.type('RV-61');
    expect(await first().innerText()).toContain('GT-4');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'RV-61', exact: true }).waitFor();
  });

  it('ask what to do with the animal that is typed', async () => {
    await findOther();
    await page.keyboard.type('RV-61');
    await page.keyboard.press('ArrowRight');
    await palette().getByText('What with RV-61?').first().waitFor();
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
  });

  it('do what is typed, though animals stood there for its first letters', async () => {
    await findOther();
    await page.keyboard.type('go to the lines');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/lines$/);
  });

  it('open the line that is typed, which is found after the actions are', async () => {
    await findOther();
    await page.keyboard.type('velisqua');
    await page.keyboard.press('Enter');
    await palette().waitFor({ state: 'hidden' });
    const found = await club.read<{ items: unknown[] }>('individuals?q=velisqua&limit=1');
    await page.waitForURL(found.items.length > 0 ? /\/animals\// : /\/lines\//);
  });

  it('change their mind: what is typed after Enter counts, and Escape takes the wish back', async () => {
    await findOther();
    await page.keyboard.type('RV-61');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('RV-41');
    await palette().getByText('Looking…').waitFor();
    await first().getByText('RV-41').waitFor();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('RV-61');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+k');
    await page.waitForTimeout(1500);
    expect(await palette().isVisible()).toBe(true);
    expect(new URL(page.url()).pathname).toBe('/register');
    await page.keyboard.press('Escape');
  });

  it('keep the line chosen by hand when others are found before it', async () => {
    await findOther();
    await page.keyboard.type('line');
    const chosen = palette().getByRole('option', { name: /Go to the lines/ });
    while ((await chosen.getAttribute('aria-selected')) !== 'true') await page.keyboard.press('ArrowDown');
    await palette().getByText('Looking…').waitFor({ state: 'hidden' });
    expect(await chosen.getAttribute('aria-selected')).toBe('true');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/lines$/);
  });

  it('take the animal that is typed into a form, and none where nothing fits or nothing is typed', async () => {
    await page.goto(`${club.url}/pairings/new`);
    const members = page.getByRole('group', { name: 'members' }).getByRole('button', { name: /^Take out/ });
    await page.getByRole('combobox', { name: 'add an animal' }).click();
    await page.keyboard.type('GT-4');
    await page.getByRole('option', { name: /GT-4/ }).first().waitFor();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('RV-61');
    await page.keyboard.press('Enter');
    await page.getByText('Looking…').waitFor();
    await members.first().waitFor();
    expect(await members.count()).toBe(1);
    expect(await members.textContent()).toContain('RV-61');
    await page.keyboard.type('qqzz');
    await page.keyboard.press('Enter');
    await page.getByText('Nothing fits “qqzz”.').waitFor();
    await page.keyboard.press('Control+A');
    await page.keyboard.press('Backspace');
    await page.getByRole('option').first().waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await expect.poll(() => members.count()).toBe(2);
    await page.keyboard.press('ArrowDown');
    await page.getByRole('option').first().waitFor();
    await page.keyboard.press('Enter');
    await page
      .getByText(/what the place or group is called/)
      .first()
      .waitFor();
    expect(await members.count()).toBe(2);
  });
});
