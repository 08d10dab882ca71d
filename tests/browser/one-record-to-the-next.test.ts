import type { Locator, Page, Route } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { PlainRecords } from '../support/plain-records.ts';

const chromium = findChromium();
const keeper = 'Tobiah Quillmere';

interface Clutch {
  readonly parents: { readonly sires: readonly { readonly individual: { readonly code: string } | null }[] };
}

/** Who goes from one record straight to another one of the same kind. */
describe.skipIf(chromium === null)('From one record to the next', () => {
  let club: DemoClub;
  let page: Page;
  let made: PlainRecords;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    made = await PlainRecords.of(club, keeper, 'Inventus proximus');
  });
  beforeEach(async () => {
    page = await club.page(undefined, keeper);
  });
  afterEach(() => page.context().close());
  afterAll(async () => {
    await club.close();
    expect(club.faults).toEqual([]);
  });

  const heading = (name: string) => page.getByRole('heading', { level: 1, name, exact: true });
  /** One of the parents that the page of a clutch names. */
  const parent = (code: string) => page.getByRole('link', { name: code });
  async function open(address: string, there: Locator): Promise<void> {
    await page.goto(club.url + address);
    await there.first().waitFor();
  }
  /** To another record by the palette, as fast as it finds it. */
  async function goTo(text: string, there = heading(text), shownAs = new RegExp(text)): Promise<void> {
    await page.keyboard.press('Control+k');
    await page.getByRole('dialog').waitFor();
    await page.keyboard.type(text);
    await page.getByRole('option', { name: shownAs }).first().waitFor();
    await page.keyboard.press('Enter');
    await there.first().waitFor();
  }
  const press = (name: string): Promise<void> => page.getByRole('button', { name, exact: true }).click();
  const late =
    (ms: number) =>
    async (route: Route): Promise<void> => {
      await new Promise((resolve) => setTimeout(resolve, ms));
      await route.continue().catch(() => undefined);
    };
  /** The first request of these is late, the others are not. */
  async function holdFirst(address: string, method: string, ms = 1500): Promise<void> {
    let isHeld = false;
    await page.route(address, async (route) => {
      if (isHeld || route.request().method() !== method) return route.fallback();
      isHeld = true;
      await late(ms)(route);
    });
  }
  const writes = (): string[] => {
    const seen: string[] = [];
    page.on('request', (request) => {
      if (!['GET', 'HEAD'].includes(request.method()) && !request.url().includes('/lineage/'))
        seen.push(`${request.method()} ${new URL(request.url()).pathname}`);
    });
    return seen;
  };

  it('the forms of a clutch stay behind with it', async () => {
    const [first, second] = [
      await made.clutch('ONE-A', await made.pair('OA')),
      await made.clutch('ONE-B', await made.pair('OB')),
    ];
    const written = writes();
    await open(`/clutches/${first}`, parent('OA1'));
    await press('Correct the parents');
    await page.getByLabel('how many').fill('7');
    await goTo('ONE-B', parent('OB1'), /clutch/i);
    expect(await page.getByRole('button', { name: 'Write it down' }).count()).toBe(0);
    expect(await page.getByText('OA1').count()).toBe(0);
    expect(await page.getByLabel('how many').inputValue()).toBe('');
    await press('Edit');
    await page.getByRole('button', { name: 'Write it down' }).waitFor();
    await goTo('ONE-A', parent('OA1'), /clutch/i);
    expect(await page.getByRole('button', { name: 'Write it down' }).count()).toBe(0);
    expect(written).toEqual([]);
    for (const [id, sire] of [
      [first, 'OA1'],
      [second, 'OB1'],
    ])
      expect((await club.read<Clutch>(`clutches/${id}`)).parents.sires[0]?.individual?.code).toBe(sire);
  });

  it('what is begun about an animal stays behind with it', async () => {
    const [first] = await made.pair('TA');
    await made.pair('TB');
    await open(`/animals/${first}`, heading('TA1'));
    await press('Add a note');
    await page.getByLabel('what was seen').fill('limps');
    await press('Add a photograph');
    await page.getByRole('form', { name: 'A photograph' }).waitFor();
    await press('Add a claim');
    await page.getByLabel('the name').fill('Río Seco');
    await press('Withdraw this record');
    await page.getByLabel('why this record is withdrawn').fill('entered twice');
    await goTo('TB1');
    for (const field of ['what was seen', 'the name', 'why this record is withdrawn', 'picture'])
      expect([field, await page.getByLabel(field, { exact: true }).count()]).toEqual([field, 0]);
  });

  it('the next of a clutch comes by J without what was begun on the one before', async () => {
    const clutchId = await made.clutch('NXT', await made.pair('NA'));
    const [young] = await made.young(clutchId, ['NX-1', 'NX-2']);
    await open(`/animals/${young}`, heading('NX-1'));
    await press('Withdraw this record');
    await page.getByLabel('why this record is withdrawn').fill('never was');
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await page.keyboard.press('j');
    await page.getByRole('heading', { level: 1, name: 'NX-2' }).waitFor();
    expect(await page.getByLabel('why this record is withdrawn').count()).toBe(0);
  });

  it('an answer about one animal that comes late does not put it under the address of the other', async () => {
    const [first, second] = await made.pair('LA');
    await open(`/animals/${first}`, heading('LA1'));
    await page.keyboard.press('e');
    await page.getByLabel('notes').fill('written late');
    await holdFirst(`**/api/v1/individuals/${first}`, 'PATCH');
    await press('Write it down');
    await goTo('LA2');
    await page.getByText('LA1 changed: notes.').waitFor();
    await page.waitForTimeout(500);
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe('LA2');
    expect(new URL(page.url()).pathname).toBe(`/animals/${second}`);
    expect(await club.read(`individuals/${first}`)).toMatchObject({ notes: 'written late' });
    // what is offered to be taken back is of the first one
    await press('Undo');
    await page.getByText(/^Taken back: LA1 changed/).waitFor();
    expect(await club.read(`individuals/${first}`)).toMatchObject({ notes: null });
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe('LA2');
  });

  it('an animal that is open again shows what undo took back', async () => {
    const [first] = await made.pair('UA');
    await open(`/animals/${first}`, heading('UA1'));
    await page.keyboard.press('e');
    await page.getByLabel('notes').fill('taken back from afar');
    await press('Write it down');
    await page.getByText('UA1 changed: notes.').waitFor();
    await page.getByText('taken back from afar').waitFor();
    await goTo('UA2');
    await goTo('UA1');
    await page.getByText('taken back from afar').waitFor();
    await press('Undo');
    await page.getByText(/^Taken back: UA1 changed/).waitFor();
    await page.getByText('taken back from afar').waitFor({ state: 'detached' });
  });

  it('the history of one record, late, does not stand under another', async () => {
    const [first, second] = [
      await made.clutch('HIS-A', await made.pair('HA')),
      await made.clutch('HIS-B', await made.pair('HB')),
    ];
    await open(`/clutches/${first}`, parent('HA1'));
    await holdFirst(`**/api/v1/journal?*record=${first}*`, 'GET', 2500);
    await page.getByText('Who wrote what on this record').click();
    await goTo('HIS-B', parent('HB1'), /clutch/i);
    const entries = page.locator('[id^=entry-]');
    if ((await page.locator('details:has-text("Who wrote what on this record")[open]').count()) === 0)
      await page.getByText('Who wrote what on this record').click();
    await entries.first().waitFor();
    const { items } = await club.read<{ items: { id: string }[] }>(`journal?record=${second}`);
    await page.waitForTimeout(3000);
    expect(await entries.evaluateAll((rows) => rows.map(({ id }) => id))).toEqual(items.map(({ id }) => `entry-${id}`));
  });

  it('does not pull anybody off a page opened while the next of a clutch is looked for', async () => {
    const clutchId = await made.clutch('PUL', await made.pair('PU'));
    const [young] = await made.young(clutchId, ['PL-1', 'PL-2']);
    await open(`/animals/${young}`, heading('PL-1'));
    await holdFirst(`**/api/v1/clutches/${clutchId}`, 'GET');
    await page.keyboard.press('j');
    await page.keyboard.press('r');
    await page.waitForURL(/\/register/);
    await page.waitForTimeout(2000);
    expect(new URL(page.url()).pathname).toBe('/register');
  });

  it('what one keeper may take back is not offered to the next one', async () => {
    const [first] = await made.pair('KA');
    await open(`/animals/${first}`, heading('KA1'));
    await page.keyboard.press('e');
    await page.getByLabel('notes').fill('mine');
    await press('Write it down');
    await page.getByRole('button', { name: 'Undo', exact: true }).waitFor();
    await press('Sign out');
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.waitForURL(/sign-in/);
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).count()).toBe(0);
  });

  it('figures of a group are of those who live there now, though the answer about those before comes last', async () => {
    const ids = [...(await made.pair('GA')), ...(await made.pair('GB'))];
    const id = await made.group('Reckoned tank', ids);
    await holdFirst('**/api/v1/lineage/kinship', 'POST', 2500);
    await open(`/pairings/${id}`, heading('Reckoned tank'));
    await press('Left today for GB1');
    await page.getByText('GB1 left today.').waitFor();
    const grid = page.getByRole('grid');
    await grid.waitFor();
    await page.waitForTimeout(3000);
    expect(await grid.isVisible()).toBe(true);
    expect(await page.getByText('Reckoning …').count()).toBe(0);
  });
});
