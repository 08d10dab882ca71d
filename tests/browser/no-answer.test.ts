import type { Page, Route } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { everyScreen, type Screen } from '../support/every-screen.ts';

const chromium = findChromium();

/** Screens that read nothing before somebody does something on them, or that show what stands on this device. */
const readNothing = [
  ...['/check', '/help/figures', '/help/glossary', '/import/sheet', '/scan', '/setup', '/sign-in'],
  ...['/waiting', '/waiting/[id]', '/club/account', '/merge', '/match', '/match/group', '/round'],
  ...['/animals/new', '/clutches/new', '/pairings/new', '/transfers/new'],
];

/** Every screen that shows something of the register says so where it gets no answer, and asks once more by a button. */
describe.skipIf(chromium === null)('a screen that gets no answer', () => {
  let club: DemoClub;
  let screens: Screen[];
  let page: Page;
  let isCut = true;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    screens = await everyScreen(club);
    page = await club.page();
    // who asks is known; nothing else is answered
    await page.context().route(/\/api\/v1\/(?!session$)/, (route: Route) => (isCut ? route.abort() : route.continue()));
  }, 180_000);

  afterAll(() => club.close());

  it('says so, offers to try again, and shows what there is once it is answered', async () => {
    const missing: string[] = [];
    for (const { route, address, signedOut } of screens) {
      if (readNothing.includes(route)) continue;
      const shown = signedOut ? await strangers() : page;
      await shown.goto(club.url + address);
      const again = shown.getByRole('button', { name: 'Try again' }).first();
      const alert = shown.locator('[role=alert]').filter({ hasText: /does not answer/ });
      const said = await Promise.all([again.waitFor({ timeout: 8000 }), alert.first().waitFor({ timeout: 8000 })]).then(
        () => true,
        () => false,
      );
      if (!said) missing.push(route);
      else await expectAccessible(shown, `${route} without an answer`);
      if (signedOut) await shown.context().close();
    }
    expect(missing).toEqual([]);
    await club.look(page, 'no-answer');

    await page.goto(`${club.url}/sources`);
    await page.getByRole('button', { name: 'Try again' }).waitFor();
    isCut = false;
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.getByRole('heading', { level: 1, name: 'Sources' }).waitFor();
    isCut = true;
  }, 400_000);

  it('asks again for a part of a screen alone, and leaves the rest as it is', async () => {
    isCut = false;
    const { address } = screens.find(({ route }) => route === '/sources/[id]') ?? { address: '' };
    let isPartCut = true;
    await page
      .context()
      .route(/\/api\/v1\/sources\/[^/]+\/living/, (route) => (isPartCut ? route.abort() : route.continue()));
    await page.goto(club.url + address);
    const part = page.getByRole('region', { name: 'Alive today' });
    await part.getByRole('button', { name: 'Try again' }).waitFor();
    await page.getByRole('heading', { name: 'Its founders' }).waitFor();
    isPartCut = false;
    await part.getByRole('button', { name: 'Try again' }).click();
    await part.getByText('descendants').waitFor();
    expect(await part.getByRole('button', { name: 'Try again' }).count()).toBe(0);
  }, 60_000);

  async function strangers(): Promise<Page> {
    const stranger = await club.strangersPage();
    await stranger.context().route(/\/api\/v1\/(?!session$)/, (route) => route.abort());
    return stranger;
  }
});
