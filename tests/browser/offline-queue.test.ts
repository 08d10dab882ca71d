import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { WeakNetwork, type Passed } from '../support/weak-network.ts';

const chromium = findChromium();
const phone = { width: 390, height: 844 };

interface Clutch {
  id: string;
  version: number;
  title: string;
  eggs: number | null;
  hatched: number | null;
  outOfWater: number | null;
  notes: string | null;
}

describe.skipIf(chromium === null)('what is noted without a network', () => {
  let club: DemoClub;
  let network: WeakNetwork;
  let context: BrowserContext;
  let page: Page;
  let clutches: Clutch[];
  let animal: { id: string; code: string };

  const address = (path: string): string => network.url + path;
  const read = (id: string): Promise<Clutch> => club.read<Clutch>(`clutches/${id}`);
  const writesOf = (path: string): Passed[] => network.writes.filter((one) => one.path === `/api/v1${path}`);

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    network = await WeakNetwork.open(club.url);
    const listed = await club.read<{ items: { id: string }[] }>('clutches?limit=12');
    clutches = await Promise.all(listed.items.map(({ id }) => read(id)));
    const { items } = await club.read<{ items: (typeof animal)[] }>('individuals?limit=1&status=alive');
    animal = items[0] as typeof animal;
    // a session of its own: it ends in between
    page = await club.page(phone, 'Orla Venndrick', network.url);
    context = page.context();
  });

  beforeEach(async () => {
    await goOnline();
    network.writes.length = 0;
  });

  afterAll(async () => {
    await network.close();
    await club.close();
  });

  async function goOffline(): Promise<void> {
    network.cut();
    await context.setOffline(true);
  }

  async function goOnline(): Promise<void> {
    network.mend();
    await context.setOffline(false);
  }

  /** The clutch of that place in the list; each test has its own. */
  function clutch(at: number): Clutch {
    const found = clutches[at];
    if (!found) throw new Error('the invented club has too few clutches');
    return found;
  }

  /** Opens a page while there is a network, so that it is kept. */
  async function see(path: string, heading: string): Promise<void> {
    await page.goto(address(path));
    await page.getByRole('heading', { name: heading, exact: false }).first().waitFor();
    await page.evaluate(() => navigator.serviceWorker.ready);
  }

  async function correct(field: string, value: string): Promise<void> {
    await page.getByRole('button', { name: 'Edit', exact: true }).click();
    await page.getByLabel(field, { exact: true }).first().fill(value);
    await page.getByRole('button', { name: 'Write it down' }).first().click();
  }

  const nothingWaits = (): Promise<void> => page.getByText('Nothing waits.').waitFor();

  it('waits through a killed tab, and is sent once and in order when the network is back', async () => {
    const known = clutch(0);
    await see('/clutches/new', 'Note a clutch');
    await see(`/clutches/${known.id}`, known.title);
    await see(`/animals/${animal.id}`, animal.code);
    await goOffline();

    await page.goto(address('/clutches/new'));
    await page.getByText('Kept on this device until there is a connection.').waitFor();
    await page.getByLabel('where').selectOption({ index: 1 });
    await page.getByLabel('eggs').fill('11');
    await expectAccessible(page, 'noting a clutch without a network');
    await club.look(page, 'offline-clutch-phone');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByRole('heading', { name: 'Waiting to be sent' }).waitFor();
    await page.getByText(/^11 eggs/).waitFor();
    await page.getByRole('link', { name: 'Count' }).click();
    await page.getByLabel('hatched', { exact: true }).fill('4');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('Waits for its clutch to be written.').waitFor();

    await page.goto(address(`/clutches/${known.id}`));
    await page.getByText('may have changed').waitFor();
    await correct('out of water', '2');
    await page.getByRole('heading', { name: 'Waiting to be sent' }).waitFor();
    await club.look(page, 'offline-clutch-record-phone');
    await page.goto(address(`/animals/${animal.id}`));
    await page.getByRole('button', { name: 'Add a note' }).click();
    await page.getByLabel('what was seen').fill('Calls at noon.');
    await page.getByLabel('length').fill('21.5');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('what was seen: Calls at noon.').waitFor();

    await page.close({ runBeforeUnload: false });
    page = await context.newPage();
    await page.goto(address('/waiting'));
    await page.getByRole('navigation', { name: 'Quick ways' }).getByText('4 waiting').waitFor();
    await expectAccessible(page, 'what waits');
    await club.look(page, 'waiting-phone');
    expect(network.writes).toEqual([]);

    await goOnline();
    await nothingWaits();
    expect(
      network.writes.map(({ method, path }) => `${method} ${path}`.replace(/[\da-f]{8}-[\da-f-]{27}/, 'id')),
    ).toEqual([
      'POST /api/v1/clutches',
      'PATCH /api/v1/clutches/id',
      'PATCH /api/v1/clutches/id',
      'POST /api/v1/observations',
    ]);
    const made = await read(network.writes[1]?.path.split('/')[4] ?? '');
    expect([made.eggs, made.hatched]).toEqual([11, 4]);
    expect((await read(known.id)).outOfWater).toBe(2);
    await page.getByRole('heading', { name: 'In the register now' }).waitFor();
    await club.look(page, 'waiting-done-phone');
  });

  it('is done once although the answer was lost on the way', async () => {
    const known = clutch(1);
    await see(`/clutches/${known.id}`, known.title);
    network.loseAnswerTo(({ method }) => method === 'PATCH');
    await correct('eggs', '31');
    await page.getByRole('heading', { name: 'Waiting to be sent' }).waitFor();
    await page.goto(address('/waiting'));
    await page.getByText('Sent, but no answer came.').waitFor();
    expect((await read(known.id)).eggs).toBe(31);
    network.mend();
    await page.evaluate(() => window.dispatchEvent(new Event('focus')));
    await nothingWaits();
    const sent = writesOf(`/clutches/${known.id}`);
    expect(sent.length).toBeGreaterThan(1);
    expect(new Set(sent.map(({ key }) => key)).size).toBe(1);
    const after = await read(known.id);
    expect([after.eggs, after.version]).toEqual([31, known.version + 1]);
  });

  /** Counts eggs without a network that somebody else counts otherwise meanwhile. */
  async function meetConflict(at: number, mine: string, theirs: number): Promise<Clutch> {
    const known = clutch(at);
    await see(`/clutches/${known.id}`, known.title);
    await goOffline();
    await correct('eggs', mine);
    await page.getByRole('heading', { name: 'Waiting to be sent' }).waitFor();
    await club.change(`clutches/${known.id}`, { eggs: theirs, notes: 'Counted by torchlight.' });
    await page.goto(address('/waiting'));
    await goOnline();
    await page.getByText('Somebody changed this record after you read it.').waitFor();
    return known;
  }

  it('stops at what somebody changed meanwhile and shows both side by side; what the register has can stay', async () => {
    const known = await meetConflict(2, '37', 35);
    const row = page.getByRole('table', { name: 'Mine beside what the register has' }).getByRole('row').nth(1);
    expect((await row.innerText()).split(/\s+/)).toEqual(expect.arrayContaining(['eggs', '37', '35']));
    for (const theme of ['day', 'night']) {
      await page.evaluate((name) => (document.documentElement.dataset['theme'] = name), theme);
      await expectAccessible(page, `a conflict by ${theme}`);
      await club.look(page, `conflict-phone-${theme}`);
    }
    await page.setViewportSize({ width: 320, height: 700 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await club.look(page, 'conflict-320');
    await page.setViewportSize({ width: 1440, height: 1000 });
    await club.look(page, 'conflict-desk');
    await page.setViewportSize(phone);
    await page.getByRole('button', { name: 'Keep what the register has' }).click();
    await nothingWaits();
    // and is not lost even then
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('eggs: 37').waitFor();
    await page.getByText('Somebody changed this record after you read it.').waitFor();
    await page.getByRole('button', { name: 'Keep what the register has' }).click();
    await nothingWaits();
    expect((await read(known.id)).eggs).toBe(35);
  });

  it('is written on top where its keeper says so, and leaves what others wrote beside it', async () => {
    const known = await meetConflict(3, '38', 36);
    await page.getByRole('button', { name: 'Write mine on top' }).click();
    await nothingWaits();
    const after = await read(known.id);
    expect([after.eggs, after.notes]).toEqual([38, 'Counted by torchlight.']);
  });

  it('is changed against what the register has now', async () => {
    const known = await meetConflict(4, '39', 33);
    await page.getByRole('link', { name: 'Change mine' }).click();
    const field = page.getByLabel('eggs', { exact: true });
    expect(await field.inputValue()).toBe('39');
    expect(await page.getByLabel('notes').inputValue()).toBe('Counted by torchlight.');
    await expectAccessible(page, 'changing what waits');
    await field.fill('34');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await nothingWaits();
    expect((await read(known.id)).eggs).toBe(34);
  });

  it('stops where the register refuses, and is mended', async () => {
    const known = clutch(5);
    await see(`/clutches/${known.id}`, known.title);
    await goOffline();
    await correct('hatched', '99999');
    await page.getByRole('heading', { name: 'Waiting to be sent' }).waitFor();
    await page.goto(address('/waiting'));
    await goOnline();
    await page.getByText('The register does not take it as it is.').waitFor();
    await club.look(page, 'refused-phone');
    await expectAccessible(page, 'a refusal');
    await page.getByRole('link', { name: 'Change it' }).click();
    const field = page.getByLabel('hatched', { exact: true });
    expect(await field.inputValue()).toBe('99999');
    await field.fill(String(known.hatched ?? ''));
    await page.getByLabel('eggs', { exact: true }).fill('42');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await nothingWaits();
    expect(await read(known.id)).toMatchObject({ hatched: known.hatched, eggs: 42 });
  });

  it('stays for its keeper over a sign-out, and is neither shown to another nor sent in their name', async () => {
    const known = clutch(6);
    await see(`/clutches/${known.id}`, known.title);
    await goOffline();
    await correct('eggs', '23');
    await page.getByRole('heading', { name: 'Waiting to be sent' }).waitFor();
    // a network that reaches the service for the sign-out, and nothing else
    await context.route('**/api/v1/clutches/**', (route) =>
      route.request().method() === 'PATCH' ? route.abort() : route.continue(),
    );
    await goOnline();
    await page.setViewportSize({ width: 1440, height: 1000 });
    await page.goto(address('/register'));
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByRole('heading', { name: 'Sign out all the same?' }).waitFor();
    await expectAccessible(page, 'signing out while something waits');
    await club.look(page, 'waiting-leave-desk');
    await page.getByRole('button', { name: 'Sign out', exact: true }).last().click();
    await page
      .getByRole('heading', { name: 'Mirewell Amphibian Circle' })
      .or(page.getByText('Tobiah Quillmere'))
      .first()
      .waitFor();
    const keptOf = (): Promise<number[]> =>
      page.evaluate(async () => {
        const opened = indexedDB.open('linekeeper');
        await new Promise((resolve) => (opened.onsuccess = resolve));
        const count = (name: string): Promise<number> =>
          new Promise((resolve) => {
            const asked = opened.result.transaction(name).objectStore(name).count();
            asked.onsuccess = () => resolve(asked.result);
          });
        const counts = await Promise.all(['answers', 'records', 'session', 'queue'].map(count));
        opened.result.close();
        return counts;
      });
    await page
      .getByText('1 entry waits on this device for Orla Venndrick: sent once Orla Venndrick signs in here.')
      .waitFor();
    await expectAccessible(page, 'signing in while something waits');
    await club.look(page, 'waiting-sign-in');
    // of all that was kept nothing is left but what waits
    expect(await keptOf()).toEqual([0, 0, 0, 1]);
    await context.unroute('**/api/v1/clutches/**');
    network.writes.length = 0;
    await page.getByRole('button', { name: /Tobiah Quillmere/ }).click();
    await page.getByRole('link', { name: 'Tobiah Quillmere' }).waitFor();
    await page.goto(address('/waiting'));
    await nothingWaits();
    expect(writesOf(`/clutches/${known.id}`)).toEqual([]);
    expect((await read(known.id)).eggs).toBe(known.eggs);
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByRole('button', { name: /Orla Venndrick/ }).click();
    await expect.poll(async () => (await read(known.id)).eggs, { timeout: 20_000 }).toBe(23);
  });

  it('asks for the sign-in where the session has ended, and goes on', async () => {
    const known = clutch(7);
    await page.setViewportSize(phone);
    await see(`/clutches/${known.id}`, known.title);
    await goOffline();
    await correct('eggs', '14');
    await page.getByRole('heading', { name: 'Waiting to be sent' }).waitFor();
    await page.goto(address('/waiting'));
    await page.getByRole('navigation', { name: 'Quick ways' }).getByText('1 waiting').waitFor();
    await context.clearCookies();
    await goOnline();
    await page.getByText('Your session has ended. Sign in again, then what waits is sent.').waitFor();
    await club.look(page, 'waiting-signed-out-phone');
    expect(writesOf(`/clutches/${known.id}`)).toEqual([]);
    await page.getByRole('button', { name: 'Sign in to send' }).click();
    await page.getByRole('button', { name: /Sign in as Orla Venndrick again/ }).click();
    await nothingWaits();
    expect((await read(known.id)).eggs).toBe(14);
  });

  it('waits where the network takes the request and never answers, and is written once when it does again', async () => {
    const known = clutch(8);
    await see(`/clutches/${known.id}`, known.title);
    network.stall();
    await correct('eggs', '17');
    await page.getByRole('heading', { name: 'Waiting to be sent' }).waitFor({ timeout: 15_000 });
    expect((await read(known.id)).eggs).toBe(known.eggs);
    network.mend();
    await expect.poll(async () => (await read(known.id)).eggs, { timeout: 30_000 }).toBe(17);
    expect((await read(known.id)).version).toBe(known.version + 1);
  }, 90_000);

  it('is told where the device has no room left, and stays in the form until it is written', async () => {
    const known = clutch(9);
    // a device of its own, full from the beginning: browsers remember for a while how much room there was
    const full = await club.page(phone, 'Orla Venndrick', network.url);
    const devices = await full.context().newCDPSession(full);
    const origin = network.url;
    await devices.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    await full.goto(address(`/clutches/${known.id}`));
    await full.getByRole('button', { name: 'Edit', exact: true }).click();
    network.cut();
    const eggs = full.getByLabel('eggs', { exact: true }).first();
    await eggs.fill('19');
    const write = full.getByRole('button', { name: 'Write it down' }).first();
    await write.click();
    await full.getByText('This device has no room left, so it was not kept.').waitFor();
    expect(await eggs.inputValue()).toBe('19');
    await expectAccessible(full, 'no room left on the device');
    await club.look(full, 'waiting-no-room-phone');
    expect((await read(known.id)).eggs).toBe(known.eggs);
    // as soon as there is a connection, what was typed goes on from where it stands
    network.mend();
    await write.click();
    await expect.poll(async () => (await read(known.id)).eggs, { timeout: 20_000 }).toBe(19);
    expect((await read(known.id)).version).toBe(known.version + 1);
    await full.context().close();
  }, 90_000);

  it('goes on behind a clutch of which nobody could tell any more, once its keeper says which it is', async () => {
    await see('/clutches/new', 'Note a clutch');
    network.loseAnswerTo(({ method }) => method === 'POST');
    await page.getByLabel('where').selectOption({ index: 1 });
    await page.getByLabel('eggs').fill('23');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText(/^23 eggs/).waitFor();
    await page.getByRole('link', { name: 'Count' }).click();
    await page.getByLabel('hatched', { exact: true }).fill('6');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('Waits for its clutch to be written.').waitFor();
    // the device comes out of its drawer after a week
    await page.clock.setFixedTime(Date.now() + 7 * 86_400_000);
    network.mend();
    await page.evaluate(() => window.dispatchEvent(new Event('focus')));
    await page.getByText('Nobody can tell whether the register has it.').waitFor({ timeout: 20_000 });
    network.writes.length = 0;
    await page.getByRole('button', { name: 'The register has it: say which it is' }).click();
    await page.getByText('What belongs to it is written to the clutch that you name.').waitFor();
    await expectAccessible(page, 'which clutch it is');
    await club.look(page, 'waiting-which-clutch-phone');
    await page
      .locator('.which li', { hasText: '23 eggs' })
      .getByRole('button', { name: /this is it$/ })
      .click();
    await nothingWaits();
    expect(network.writes.map(({ method }) => method)).toEqual(['PATCH']);
    const made = await read(network.writes[0]?.path.split('/')[4] ?? '');
    expect([made.eggs, made.hatched, made.version]).toEqual([23, 6, 2]);
  }, 90_000);

  it('met no fault but the network', () => {
    const ofNetwork = /ERR_(INTERNET_DISCONNECTED|EMPTY_RESPONSE|CONNECTION|FAILED|CONTENT_LENGTH_MISMATCH)/;
    expect(club.faults.filter((fault) => !ofNetwork.test(fault))).toEqual([]);
  });
});
