import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bringCookie, expectAccessible, findChromium, openBrowser, openPage } from '../support/browser.ts';
import { VeryFullClub } from '../support/very-full-club.ts';

const chromium = findChromium();
/** Phones, a tablet either way up, desks; what is on the way between them follows the same rules. */
const widths = [320, 390, 768, 1100, 1280, 1920];
/** At these everything is read by axe, too. */
const read = [320, 1280];
const seen = process.env['LOOK_AT'];

/** Screens of a register with 5 000 animals in one line, 300 young of one sire, 40 claims, 60 photographs, and names without an end. */
describe.skipIf(chromium === null)('a very full register', () => {
  const faults: string[] = [];
  let club: VeryFullClub;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    club = await VeryFullClub.open();
    browser = await openBrowser(chromium ?? '');
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
    await bringCookie(context, club.url, club.cookie);
    page = await openPage(context, faults);
  }, 240_000);

  afterAll(async () => {
    await browser.close();
    await club.close();
    expect(faults).toEqual([]);
  });

  const routes: Record<string, () => string> = {
    today: () => '/',
    register: () => '/register',
    animal: () => `/animals/${club.ids.animal}`,
    descendants: () => `/animals/${club.ids.animal}/descendants`,
    mates: () => `/animals/${club.ids.animal}/mates`,
    pedigree: () => `/animals/${club.ids.animal}/pedigree`,
    round: () => `/round?animals=${club.ids.animal}`,
    merge: () => `/merge?kept=${club.ids.animal}`,
    cards: () => `/cards?pairings=${club.ids.pairing}&clutches=${club.ids.clutch}`,
    scan: () => '/scan',
    waiting: () => '/waiting',
    check: () => '/check',
    'a sheet from elsewhere': () => '/import/sheet',
    'a new animal': () => '/animals/new',
    lines: () => '/lines',
    line: () => `/lines/${club.ids.line}`,
    audit: () => `/lines/${club.ids.line}/audit`,
    'new blood': () => `/lines/${club.ids.line}/new-blood`,
    plan: () => `/lines/${club.ids.line}/plan`,
    'line over time': () => `/lines/${club.ids.line}/over-time`,
    measures: () => '/measures?status=alive',
    species: () => '/species',
    'one species': () => `/species/${club.ids.species}`,
    sources: () => '/sources',
    source: () => `/sources/${club.ids.source}`,
    places: () => '/places',
    review: () => '/review',
    pairings: () => '/pairings',
    pairing: () => `/pairings/${club.ids.pairing}`,
    'a new pairing': () => '/pairings/new',
    clutches: () => '/clutches',
    clutch: () => `/clutches/${club.ids.clutch}`,
    'a new clutch': () => `/clutches/new?pairing=${club.ids.pairing}`,
    match: () => '/match',
    group: () => '/match/group',
    plans: () => '/plans',
    transfers: () => '/transfers',
    'a new transfer': () => `/transfers/new?animals=${club.ids.animal}`,
    sheets: () => '/sheets',
    'a new sheet': () => `/sheets/new?animals=${club.ids.animal}`,
    labels: () => `/labels?animals=${club.ids.animal}`,
    import: () => '/import',
    export: () => '/export',
    journal: () => '/journal',
    club: () => '/club',
    account: () => '/club/account',
    figures: () => '/help/figures',
    glossary: () => '/help/glossary',
    'what is not there': () => '/animals/00000000-0000-7000-8000-000000000000',
  };

  for (const [name, address] of Object.entries(routes))
    it(`shows ${name} on every width and in both themes, with nothing cut off`, async () => {
      await page.setViewportSize({ width: 1280, height: 900 });
      await page.goto(`${club.url}${address()}`);
      await page.locator('h1').first().waitFor();
      // some screens go on reckoning; what they show meanwhile must fit, too
      await page.waitForLoadState('networkidle', { timeout: 6000 }).catch(() => undefined);
      for (const width of widths) {
        await page.setViewportSize({ width, height: 900 });
        await page.waitForTimeout(100); // what follows the width by script has followed it
        expect([name, width, await spillsOf(page)]).toEqual([name, width, []]);
        if (seen)
          await page.screenshot({ path: `${seen}/full-${name.replaceAll(' ', '-')}-${width}.png`, fullPage: true });
        for (const theme of read.includes(width) ? ['day', 'night'] : []) {
          await page.evaluate((to) => {
            if (to === 'night') document.documentElement.dataset['theme'] = to;
            else delete document.documentElement.dataset['theme'];
          }, theme);
          await expectAccessible(page, `${name}, ${width}, ${theme}`);
        }
      }
    }, 120_000);

  it('chooses a list of more than a thousand by the thousand, and says how to go on', async () => {
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.goto(`${club.url}/register`);
    await page.getByRole('button', { name: 'Choose the first thousand' }).click();
    const bar = page.getByRole('group', { name: 'Chosen animals' });
    const chosen = (): Promise<string> => bar.locator('b').innerText();
    await page.getByText(/Numbers 1 to 1\D?000 of this list of 5\D?\d{3} animals were chosen/).waitFor();
    expect(await chosen()).toBe('1000 chosen');
    await expectAccessible(page, 'the first thousand are chosen');
    if (seen) await page.screenshot({ path: `${seen}/chosen-thousand.png`, fullPage: true });
    for (const [from, to] of [
      ['1\\D?001', '2\\D?000'],
      ['2\\D?001', '3\\D?000'],
    ]) {
      await page.getByRole('button', { name: 'Choose the next thousand' }).click();
      await page.getByText(new RegExp(`Numbers ${from} to ${to} of`)).waitFor();
      expect(await chosen()).toBe('1000 chosen');
    }
  }, 60_000);
});

/** What makes the page scroll sideways, and what is cut off without another way to read it. */
function spillsOf(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const spills: string[] = [];
    const root = document.documentElement;
    const say = (element: Element): string =>
      `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''}: ${element.textContent.trim().slice(0, 60)}`;
    const scrolls = (element: Element | null): boolean =>
      element !== null &&
      element !== document.body &&
      (['auto', 'scroll', 'hidden', 'clip'].includes(getComputedStyle(element).overflowX) ||
        scrolls(element.parentElement));
    if (root.scrollWidth > root.clientWidth)
      for (const element of document.querySelectorAll('body *'))
        if (element.getBoundingClientRect().right > root.clientWidth + 1 && !scrolls(element))
          spills.push(say(element));
    if (root.scrollWidth > root.clientWidth && spills.length === 0) spills.push(`the page is ${root.scrollWidth} wide`);
    for (const element of document.querySelectorAll('main *, .spine *')) {
      const { overflowX, clipPath } = getComputedStyle(element);
      const isCut = ['hidden', 'clip'].includes(overflowX) && element.scrollWidth > element.clientWidth + 1;
      // a label on paper ends where it is cut; its number and its QR code open the whole record
      if (
        isCut &&
        !element.matches('.face') &&
        clipPath === 'none' &&
        !element.closest('svg, [title]') &&
        element.textContent.trim() !== ''
      )
        spills.push(`cut: ${say(element)}`);
    }
    return spills.slice(0, 5);
  });
}
