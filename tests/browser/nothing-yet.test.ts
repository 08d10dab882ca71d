import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

/** The screens of a club that was set up a minute ago, and what each says in place of records. */
const beforeAnything: Readonly<Record<string, RegExp>> = {
  '/': /You keep no animal here yet/,
  '/register': /This register is empty/,
  '/clutches': /No clutch is written down yet/,
  '/pairings': /No group is written down yet/,
  '/lines': /No line is recorded yet/,
  '/sources': /No source is recorded yet/,
  '/species': /No species is recorded yet/,
  '/plans': /No plan is kept yet/,
  '/places': /No claim names a place/,
  '/review': /Nothing waits/,
  '/sheets': /No sheet was made yet/,
  '/transfers': /Nothing was given or received yet/,
  '/journal': /set up the club/,
  '/match': /Choose at least one male and one female/,
  '/match/group': /Add the animals that live together/,
  '/import': /No sheet was taken yet/,
  '/export': /0 animals, and their ancestors/,
  '/waiting': /Nothing waits/,
  '/merge': /the record that goes on/,
  '/animals/new': /Write it down/,
  '/clutches/new': /no group/,
  '/pairings/new': /add an animal/,
  '/measures': /No animal fits this sentence/,
  '/labels': /0 labels/,
  '/cards': /0 cards/,
  '/round': /Which animal first/,
  '/transfers/new': /add an animal/,
  '/sheets/new': /add an animal/,
};

/** A register that holds nothing, and one that holds one bare record of each kind. */
describe.skipIf(chromium === null)('where there is nothing yet', () => {
  let club: DemoClub;
  let page: Page;

  beforeAll(async () => {
    club = await DemoClub.empty(chromium);
    page = await club.page();
    await page.emulateMedia({ reducedMotion: 'reduce' });
  });

  afterAll(() => club.close());

  /** Opens screens at a desk and on the narrowest phone. Gives what bars somebody, does not fit, or says nothing. */
  async function faultsOf(
    screens: readonly (readonly [name: string, address: string, says: RegExp])[],
  ): Promise<string[]> {
    const found: string[] = [];
    for (const width of [1440, 320]) {
      await page.setViewportSize({ width, height: 900 });
      for (const [name, address, says] of screens) {
        await page.goto(club.url + address);
        await page.locator('h1').first().waitFor();
        await page.waitForLoadState('networkidle');
        const text = await page.getByRole('main').innerText();
        if (!says.test(text)) found.push(`${name} does not say ${String(says)}: ${text.replaceAll(/\s+/g, ' ')}`);
        const reaches = await page.evaluate(() => document.documentElement.scrollWidth);
        if (reaches > width) found.push(`${name} at ${width} px reaches to ${reaches}`);
        await expectAccessible(page, `${name}, ${width} px`).catch((breach: unknown) =>
          found.push(String((breach as { actual?: unknown }).actual)),
        );
        await club.look(page, `nothing-${width}${name.replaceAll('/', '-')}`);
      }
    }
    return found;
  }

  const write = async (path: string, body: object): Promise<string> => (await club.write(path, body)).id;

  it('every screen says so, can be read by everybody and fits', async () => {
    const screens = Object.entries(beforeAnything).map(([address, says]) => [address, address, says] as const);
    expect(await faultsOf(screens)).toEqual([]);
    expect(club.faults).toEqual([]);
  }, 200_000);

  it('so does every page of a record of which nothing else is known', async () => {
    const speciesId = await write('species', { scientificName: 'Inventus solus' });
    const animal = await write('individuals', { speciesId });
    const line = await write('lines', { speciesId, name: 'Arroyo Primero' });
    const pairing = await write('pairings', { name: 'Tank 1' });
    const source = await write('sources', {});
    const clutch = await write('clutches', {});
    const sheet = await write('provenance-sheets', { animals: [animal] });
    expect(sheet).not.toBe('');
    expect(
      await faultsOf([
        ['/species/[id]', `/species/${speciesId}`, /Inventus solus/],
        ['/animals/[id]', `/animals/${animal}`, /nothing known/i],
        ['/animals/[id]/mates', `/animals/${animal}/mates`, /Nobody in the register fits/],
        ['/animals/[id]/descendants', `/animals/${animal}/descendants`, /No clutch names/],
        ['/animals/[id]/pedigree', `/animals/${animal}/pedigree`, /nobody knows its parents/],
        ['/lines/[id]', `/lines/${line}`, /No animal stands in this line/],
        ['/lines/[id]/audit', `/lines/${line}/audit`, /there is nothing to audit/],
        ['/lines/[id]/over-time', `/lines/${line}/over-time`, /There is no animal to draw/],
        ['/lines/[id]/new-blood', `/lines/${line}/new-blood`, /Nothing of Arroyo Primero/],
        ['/lines/[id]/plan', `/lines/${line}/plan`, /Make a plan/],
        ['/pairings/[id]', `/pairings/${pairing}`, /None is noted yet/],
        ['/sources/[id]', `/sources/${source}`, /No animal of this source is recorded/],
        ['/clutches/[id]', `/clutches/${clutch}`, /not known/],
        ['/measures', `/measures?line=Arroyo%20Primero`, /No animal fits this sentence/],
        ['/round', `/round?animals=${animal}`, /1 of 1/],
        ['/labels', `/labels?animals=${animal}`, /1 label/],
        ['/register', '/register?line=Arroyo%20Primero', /No animal fits this sentence/],
        ['/clutches', `/clutches?line=${line}`, /No clutch fits/],
      ]),
    ).toEqual([]);
    expect(club.faults).toEqual([]);
  }, 200_000);
});
