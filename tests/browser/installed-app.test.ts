import type { BrowserContext, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { WeakNetwork } from '../support/weak-network.ts';

const chromium = findChromium();
const phone = { width: 390, height: 844 };

/** Waits until the client is kept on the device. */
const kept = (page: Page): Promise<unknown> => page.evaluate(() => navigator.serviceWorker.ready);

describe.skipIf(chromium === null)('the installed client', () => {
  let club: DemoClub;
  let network: WeakNetwork;
  let context: BrowserContext;
  let page: Page;
  let animal: { id: string; code: string };
  let other: { id: string; code: string };

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    network = await WeakNetwork.open(club.url);
    const { items } = await club.read<{ items: { id: string; code: string }[] }>('individuals?limit=2&status=alive');
    [animal, other] = items as [typeof animal, typeof other];
    page = await club.page(phone, undefined, network.url);
    context = page.context();
  });

  afterAll(async () => {
    await network.close();
    await club.close();
  });

  it('can be installed: it says its name, its icons, its ways in', async () => {
    await page.goto(`${network.url}/register`);
    const href = await page.locator('link[rel=manifest]').getAttribute('href');
    const answer = await page.request.get(network.url + (href ?? ''));
    expect(answer.headers()['content-type']).toMatch(/^application\/manifest\+json/);
    const manifest = (await answer.json()) as {
      name: string;
      icons: { src: string; sizes: string; purpose?: string }[];
      shortcuts: { name: string; url: string }[];
    };
    expect(manifest.name).toBe('Linekeeper');
    expect(manifest.shortcuts.map(({ url }) => url)).toEqual(['/clutches/new', '/scan']);
    expect(manifest.icons.some(({ purpose }) => purpose === 'maskable')).toBe(true);
    for (const { src, sizes } of manifest.icons) {
      const icon = await page.request.get(network.url + src);
      const { width, height, format } = await sharp(await icon.body()).metadata();
      expect([`${width}x${height}`, format]).toEqual([sizes, 'png']);
    }
    const cdp = await context.newCDPSession(page);
    const { installabilityErrors } = (await cdp.send('Page.getInstallabilityErrors')) as {
      installabilityErrors: { errorId: string }[];
    };
    // a browser of tests has no profile that could be installed into
    expect(installabilityErrors.filter(({ errorId }) => errorId !== 'in-incognito')).toEqual([]);
  });

  it('opens at any address without a network, and says so calmly', async () => {
    await page.goto(`${network.url}/animals/${animal.id}`);
    await page.getByRole('heading', { name: animal.code }).first().waitFor();
    await kept(page);
    network.cut();
    await context.setOffline(true);
    const afresh = await context.newPage();
    await afresh.goto(`${network.url}/animals/${other.id}`);
    await afresh.getByRole('heading', { name: 'No answer' }).waitFor();
    await afresh.getByText('No connection.').waitFor();
    expect(await afresh.evaluate(() => document.fonts.check('16px "Brygada 1918 Variable"'))).toBe(true);
    await expectAccessible(afresh, 'a page never seen, without a network');
    await club.look(afresh, 'offline-unseen-phone');
    await afresh.close();
  });

  it('shows a record seen lately, and when it was seen', async () => {
    const afresh = await context.newPage();
    await afresh.goto(`${network.url}/animals/${animal.id}`);
    await afresh.getByRole('heading', { name: animal.code }).first().waitFor();
    await afresh.getByText(/^Seen \d{1,2} \w{3}, \d\d:\d\d; may have changed\.$/).waitFor();
    await expectAccessible(afresh, 'a record seen lately, without a network');
    await club.look(afresh, 'offline-seen-phone');
    // it is read anew as soon as there is a network again
    network.mend();
    await context.setOffline(false);
    await afresh.getByText('may have changed').waitFor({ state: 'detached' });
    await afresh.getByText('No connection.').waitFor({ state: 'detached' });
    await afresh.close();
  });

  it('announces a newer version, and loads it when asked, not under the typist', async () => {
    await page.goto(`${network.url}/animals/${animal.id}`);
    await kept(page);
    network.replaced.set('/service-worker.js', (text) => text.replace(/`shell-`/, '`shell-next-`'));
    await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
    const notice = page.getByText('A newer Linekeeper is here.');
    await notice.waitFor();
    await page.getByRole('button', { name: 'Add a note' }).click();
    await page.getByLabel('what was seen').fill('Calls at noon.');
    await page.getByRole('button', { name: 'Load it' }).click();
    await page.getByText('What you typed here is not written down yet').waitFor();
    expect(await page.getByLabel('what was seen').inputValue()).toBe('Calls at noon.');
    await club.look(page, 'newer-version-phone');
    await expectAccessible(page, 'a newer version');
    await page.getByRole('button', { name: 'Load the newer one' }).click();
    await page.waitForFunction(async () => (await caches.keys()).some((name) => name.startsWith('shell-next-')));
    await notice.waitFor({ state: 'detached' });
    await page.getByRole('heading', { name: animal.code }).first().waitFor();
    expect(await page.evaluate(async () => (await navigator.serviceWorker.ready).waiting)).toBeNull();
  });

  it('shows a record of each kind seen lately, whole', async () => {
    const first = async (list: string): Promise<string> =>
      (await club.read<{ items: { id: string }[] }>(`${list}?limit=1`)).items[0]?.id ?? '';
    const lines = await club.read<{ items: { id: string; name: string }[] }>('lines?limit=200');
    const lineId = lines.items.find(({ name }) => name === 'Río Zancaval')?.id ?? '';
    const sourceId = await first('sources');
    await club.write('claims', { sourceId, aspect: 'locality', value: 'Invented ravine' });
    const plan = await club.write('kept-plans', { lineId, name: 'Spring', assumptions: { pairings: 2 } });
    const addresses = [
      `/clutches/${await first('clutches')}`,
      `/pairings/${await first('pairings')}`,
      `/species/${await first('species')}`,
      `/lines/${lineId}`,
      `/sources/${sourceId}`,
      `/plans/${plan.id}`,
      '/plans',
      '/sources',
    ];
    const whole = async (): Promise<string[]> => {
      await page.getByRole('heading', { level: 1 }).waitFor();
      await page.waitForLoadState('networkidle');
      await page.waitForTimeout(300);
      return (await page.locator('main').innerText()).split('\n').filter((text) => !/may have changed/.test(text));
    };
    const seen = new Map<string, string[]>();
    for (const address of addresses) {
      await page.goto(network.url + address);
      seen.set(address, await whole());
    }
    await kept(page);
    network.cut();
    await context.setOffline(true);
    for (const address of addresses) {
      await page.goto(network.url + address);
      await page.getByText(/^Seen .*; may have changed\.$/).waitFor();
      const now = await whole();
      expect([address, now.filter((text) => /answer/i.test(text))]).toEqual([address, []]);
      expect([address, seen.get(address)?.filter((text) => !now.includes(text))]).toEqual([address, []]);
      await club.look(page, `offline${address.replaceAll('/', '-').slice(0, 12)}-phone`);
    }
    network.mend();
    await context.setOffline(false);
  });

  it('met no fault but the network', () => {
    expect(
      club.faults.filter((fault) => !/ERR_(INTERNET_DISCONNECTED|EMPTY_RESPONSE|CONNECTION|FAILED)/.test(fault)),
    ).toEqual([]);
  });
});
