import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { WeakNetwork } from '../support/weak-network.ts';

const chromium = findChromium();

describe.skipIf(chromium === null)('a round without a network', () => {
  let club: DemoClub;
  let network: WeakNetwork;
  let context: BrowserContext;
  let page: Page;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    network = await WeakNetwork.open(club.url);
    page = await club.page({ width: 390, height: 844 }, undefined, network.url);
    context = page.context();
  });

  afterAll(async () => {
    await network.close();
    await club.close();
  });

  it('measurements and remarks wait, one for each animal, and what wants a connection stays in the form', async () => {
    const { items } = await club.read<{ items: { id: string; code: string; sex: string }[] }>(
      'individuals?limit=40&status=alive',
    );
    const [one, other] = items.slice(-2) as [(typeof items)[0], (typeof items)[0]];
    const read = page.waitForResponse((answer) => answer.url().endsWith(`/individuals/${other.id}`));
    await page.goto(`${network.url}/round?animals=${one.id},${other.id}&do=sex,measure,remark`);
    await page.getByRole('heading', { name: one.code }).waitFor();
    await page.evaluate(() => navigator.serviceWorker.ready);
    // the next ones are read before one goes down to the tanks
    await read;
    network.cut();
    await context.setOffline(true);
    await page.getByText('No connection: what is measured and seen is kept').waitFor();
    const length = page.getByLabel('length', { exact: true });
    await length.fill('18,5');
    await page.getByLabel('what was seen').fill('Thin.');
    await club.look(page, 'round-offline-phone');
    await expectAccessible(page, 'a round without a network');
    await length.press('Enter');
    await page.getByText('2 of 2').waitFor();
    await page.getByText('Kept on this device until there is a connection.').waitFor();
    const isOther = other.sex === 'male' ? 'female' : 'male';
    await page.getByRole('radio', { name: isOther, exact: true }).check();
    await length.fill('20');
    await length.press('Enter');
    await page.getByText('What was measured and seen is kept.').waitFor();
    expect(await page.getByRole('radio', { name: isOther, exact: true }).isChecked()).toBe(true);
    expect(await length.inputValue()).toBe('');
    await club.look(page, 'round-offline-kept-phone');
    await expectAccessible(page, 'a round that waits in part');
    expect(network.writes).toEqual([]);

    network.mend();
    await context.setOffline(false);
    await expect
      .poll(() => network.writes.filter(({ path }) => path === '/api/v1/observations').length, { timeout: 20_000 })
      .toBe(2);
    expect(await page.getByRole('radio', { name: isOther, exact: true }).isChecked()).toBe(true);
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('Through. Which animal next?').waitFor();
    const after = await Promise.all(
      [one, other].map(({ id }) =>
        club.read<{ sex: string; observations: { svlMm: number | null; text: string | null }[] }>(`individuals/${id}`),
      ),
    );
    expect(after.map(({ observations }) => observations[0])).toMatchObject([
      { svlMm: 18.5, text: 'Thin.' },
      { svlMm: 20, text: null },
    ]);
    expect(after[1]?.sex).toBe(isOther);
    expect(network.writes.filter(({ path }) => path === '/api/v1/individuals/changes')).toHaveLength(1);
  });
});
