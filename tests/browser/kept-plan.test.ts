import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

interface Kept {
  readonly id: string;
  readonly pairs: readonly { readonly male: { readonly animal: { readonly id: string } }; readonly state: string }[];
}

describe.skipIf(chromium === null)('a plan that is kept', () => {
  let club: DemoClub;
  let page: Page;
  let lineId: string;
  let address: string;

  const pairs = () => page.getByRole('table', { name: 'The pairs of the plan, as they were and as they are' });
  const undo = async () => {
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await page.getByText(/^Taken back: /).waitFor();
  };

  /** Makes a pairing of the first pair that can be chosen; its animals live elsewhere, and leave there. */
  const accept = async () => {
    await pairs().getByRole('checkbox').first().press('Space');
    await page.getByRole('button', { name: 'Make 1 pairing' }).click();
    const refused = page.getByRole('alert').getByText(/lives in/);
    const made = page.getByText(/^1 pairing made from Spring/);
    await refused.or(made).first().waitFor();
    if (await refused.first().isVisible()) {
      await page.getByLabel('they leave the pairings that they live in on that day').check();
      await page.getByRole('button', { name: 'Make 1 pairing' }).click();
    }
    await made.waitFor();
  };

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const { items } = await club.read<{ items: { id: string; name: string }[] }>('lines?limit=200');
    lineId = items.find(({ name }) => name === 'Río Zancaval')?.id ?? '';
    page = await club.page();
  });

  afterAll(() => club.close());

  it('comes from the plan of a line, with its assumptions as a sentence', async () => {
    await page.goto(`${club.url}/lines/${lineId}/plan`);
    await page.getByLabel('pairs wanted').fill('3');
    await page.getByRole('button', { name: 'Make a plan' }).click();
    await page.getByRole('button', { name: 'Keep this plan' }).click();
    await page.getByLabel('what it is called').fill('Spring of the long tank');
    await page.getByLabel('notes').fill('Ask Orla about the tubs first.');
    await expectAccessible(page, 'keep a plan');
    await club.look(page, 'keep-plan');
    await page.getByRole('button', { name: 'Keep it', exact: true }).click();
    await page.getByRole('heading', { name: 'Spring of the long tank', level: 1 }).waitFor();
    address = page.url();
    await page.getByText(/^3 pairs among the living of Río Zancaval, F of the young at most 12.5/).waitFor();
    await page.getByText('The register has not changed since.').waitFor();
    await page.getByText('Spring of the long tank is kept.').waitFor();
    expect(
      await pairs()
        .getByRole('button', { name: /^Decline/ })
        .count(),
    ).toBe(3);
  });

  it('is declined in part and put back by undo', async () => {
    await pairs()
      .getByRole('button', { name: /^Decline/ })
      .first()
      .click();
    await pairs()
      .getByRole('button', { name: /^Put back/ })
      .waitFor();
    await undo();
    expect(
      await pairs()
        .getByRole('button', { name: /^Decline/ })
        .count(),
    ).toBe(3);
    await pairs()
      .getByRole('button', { name: /^Decline/ })
      .first()
      .click();
    await pairs()
      .getByRole('button', { name: /^Put back/ })
      .waitFor();
  });

  it('is accepted in part: a pairing in the register, which one undo takes back', async () => {
    await accept();
    await expectAccessible(page, 'kept plan, in part');
    await club.look(page, 'kept-plan-desk');
    await undo();
    await accept();
    const pairing = pairs()
      .getByRole('row')
      .getByRole('link', { name: / × |, pair / });
    await pairing.click();
    await page.getByText('From the plan “Spring of the long tank”.').waitFor();
    expect(page.url()).toContain('/pairings/');
    await page.goto(address);
    const kept = await club.read<Kept>(`kept-plans/${address.split('/').pop()}`);
    expect(kept.pairs.map(({ state }) => state).sort()).toEqual(['accepted', 'declined', 'proposed']);
  });

  it('says what the register changed under it', async () => {
    const kept = await club.read<Kept>(`kept-plans/${address.split('/').pop()}`);
    const open = kept.pairs.find(({ state }) => state === 'proposed')?.male.animal.id ?? '';
    await page.goto(`${club.url}/animals/${open}`);
    await club.change(`individuals/${open}`, { status: 'died' });
    await page.goto(address);
    await page
      .getByText(/The plan no longer holds\. Of its 2 pairs that were not declined, 1 cannot be made any more/)
      .waitFor();
    await pairs()
      .getByText(/died\./)
      .waitFor();
    expect(await pairs().getByRole('checkbox').count()).toBe(0);
    await page.getByText('Does it still meet its assumptions?').click();
    await club.look(page, 'kept-plan-broken');
  });

  it('is shared with the club, stands on the page of its line and among all plans', async () => {
    const other = await club.page({ width: 1000, height: 800 }, 'Noor Elstavik');
    await other.goto(address);
    await other.getByText('There is no plan with the id').waitFor();
    await page.getByRole('button', { name: 'Rename, note, share' }).click();
    await page.getByRole('radio', { name: 'the club' }).check();
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('shared with the club').waitFor();
    await other.goto(`${club.url}/lines/${lineId}`);
    await other.getByRole('heading', { name: 'Plans kept for it' }).waitFor();
    await expectAccessible(other, 'line with plans');
    await other.getByRole('link', { name: 'Spring of the long tank' }).click();
    await other.getByRole('heading', { name: 'Spring of the long tank', level: 1 }).waitFor();
    expect(await other.getByRole('button', { name: /^(Decline|Put back|Withdraw)/ }).count()).toBe(0);
    await page.goto(`${club.url}/pairings`);
    await page.getByRole('link', { name: 'Kept plans' }).click();
    await page.getByRole('link', { name: 'Spring of the long tank' }).waitFor();
    await expectAccessible(page, 'kept plans');
    await club.look(page, 'kept-plans');
  });

  it.each([1440, 320])('reads at %i pixels by day and by night', async (width) => {
    await page.setViewportSize({ width, height: 900 });
    for (const at of [address, `${club.url}/plans`]) {
      await page.goto(at);
      await page.getByRole('table').first().waitFor();
      for (const theme of ['day', 'night']) {
        await page.evaluate((name) => (document.documentElement.dataset['theme'] = name), theme);
        await expectAccessible(page, `${at} at ${width}, ${theme}`);
        await club.look(page, `${at === address ? 'kept-plan' : 'kept-plans'}-${width}-${theme}`);
      }
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    }
    // that a plan is not there for another keeper, and that animals live elsewhere, is told by the console of the browser, too
    expect(club.faults.filter((fault) => !/404|409/.test(fault))).toEqual([]);
  });
});
