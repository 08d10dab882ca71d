import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();
const phone = { width: 390, height: 844 };

/**
 * A hand at the tank: each tap takes about 1.2 s, to find the place and to hit it, each key of a phone's keyboard 0.4 s. Ten seconds are six taps and
 * six keys.
 */
class Hand {
  taps = 0;
  keys = 0;

  constructor(private readonly page: Page) {}

  async tap(what: Locator): Promise<void> {
    this.taps += 1;
    await what.click();
  }

  async type(text: string): Promise<void> {
    this.keys += text.length;
    await this.page.keyboard.type(text);
  }

  async press(key: string): Promise<void> {
    this.keys += 1;
    await this.page.keyboard.press(key);
  }

  get seconds(): number {
    return this.taps * 1.2 + this.keys * 0.4;
  }
}

describe.skipIf(chromium === null)('a clutch noted in less than ten seconds', () => {
  let club: DemoClub;
  let page: Page;
  let pairing: { id: string; name: string };
  const noted = async (): Promise<{ eggs: number | null; site: string | null; pairing: { id: string } | null }> => {
    const id = /clutches\/([\da-f-]{36})/.exec(page.url())?.[1] ?? '';
    return club.read(`clutches/${id}`);
  };
  const written = () => page.getByText(/^The Clutch of .* is written down\.$/i).waitFor();

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    page = await club.page(phone);
    const { items } = await club.read<{ items: { id: string; name: string; members: { left: string | null }[] }[] }>(
      'pairings?limit=100',
    );
    pairing = items.find(({ members }) => members.some(({ left }) => left === null)) ?? { id: '', name: '' };
  }, 120_000);

  afterAll(async () => {
    await club.close();
    expect(club.faults).toEqual([]);
  });

  it('on a phone that knows no place yet, from Today: at most six taps', async () => {
    await page.goto(`${club.url}/`);
    const hand = new Hand(page);
    await hand.tap(page.getByRole('navigation', { name: 'Quick ways' }).getByRole('link', { name: 'Note a clutch' }));
    const where = page.getByLabel('where');
    await where.locator('option', { hasText: pairing.name }).first().waitFor({ state: 'attached' });
    // a list of the phone: one tap opens it, one chooses
    hand.taps += 2;
    await where.selectOption({ label: pairing.name });
    await hand.tap(page.getByLabel('eggs', { exact: true }));
    await hand.type('14');
    await hand.tap(page.getByRole('radio', { name: 'leaf' }));
    await hand.tap(page.getByRole('button', { name: 'Write it down' }));
    await written();
    expect(await noted()).toMatchObject({ eggs: 14, site: 'leaf', pairing: { id: pairing.id } });
    expect(hand.taps).toBeLessThanOrEqual(6);
    expect(hand.seconds).toBeLessThan(10);
    // its page begins with its timeline, in words too
    const stations = page.locator('.timeline').getByRole('listitem');
    expect(await stations.first().innerText()).toMatch(/^14 eggs laid\s+\d+ \w+ \d{4}/);
    await stations.filter({ hasText: 'Today' }).waitFor();
  }, 60_000);

  it('the next one: the place is the last one, and the cursor stands in the eggs', async () => {
    await page.goto(`${club.url}/`);
    const hand = new Hand(page);
    await hand.tap(page.getByRole('navigation', { name: 'Quick ways' }).getByRole('link', { name: 'Note a clutch' }));
    await page.waitForFunction(() => document.activeElement?.matches('.eggs input'));
    await hand.type('9');
    await hand.tap(page.getByRole('button', { name: 'Write it down' }));
    await written();
    expect(await noted()).toMatchObject({ eggs: 9, pairing: { id: pairing.id } });
    expect([hand.taps, hand.keys]).toEqual([2, 1]);
  }, 60_000);

  it('by the keyboard alone, from the page of the group: its key, the number, Enter', async () => {
    await page.goto(`${club.url}/pairings/${pairing.id}`);
    await page.getByRole('heading', { level: 1, name: pairing.name }).waitFor();
    const hand = new Hand(page);
    await hand.press('c');
    await page.waitForFunction(() => document.activeElement?.matches('.eggs input'));
    await hand.type('11');
    await hand.press('Enter');
    await written();
    expect(await noted()).toMatchObject({ eggs: 11, pairing: { id: pairing.id } });
    expect([hand.taps, hand.keys]).toEqual([0, 4]);
  }, 60_000);
});
