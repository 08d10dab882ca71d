import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { mediumPoisonFrog } from '../support/factories.ts';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub, desk } from '../support/demo-club.ts';

const chromium = findChromium();
const keeper = 'Tobiah Quillmere';
const phoneSize = { width: 390, height: 844 };

/** A calendar day so many days ago, where this machine stands. */
function daysAgo(days: number): string {
  const day = new Date();
  day.setDate(day.getDate() - days);
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

/** The morning round of a keeper by phone and by desk: what is due, and the count that is noted where it is told. */
describe.skipIf(chromium === null)('what is due today', () => {
  let club: DemoClub;
  let phone: Page;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const { id: speciesId } = await club.write(
      'species',
      { scientificName: 'Inventus hodiernus', ranges: mediumPoisonFrog },
      keeper,
    );
    const animal = (fields: object) => club.write('individuals', { speciesId, ...fields }, keeper);
    const [sire, dam] = [
      await animal({ sex: 'male', code: 'TD-1', hatched: '2020' }),
      await animal({ sex: 'female', code: 'TD-2', hatched: '2020' }),
    ];
    const members = [sire, dam].map(({ id }) => ({ individualId: id, joined: '2021' }));
    const pairing = await club.write('pairings', { name: 'Tank 9', members }, keeper);
    const clutch = (fields: object) => club.write('clutches', { pairingId: pairing.id, ...fields }, keeper);
    await clutch({ laid: daysAgo(12), eggs: 14 });
    await clutch({ laid: daysAgo(22), eggs: 6 });
    await clutch({ laid: daysAgo(100), eggs: 9, hatched: 7, hatchedOn: daysAgo(86) });
    await clutch({ laid: daysAgo(3), eggs: 5 });
    for (const code of ['TD-5', 'TD-6']) await animal({ code, hatched: daysAgo(400) });
    phone = await club.page(phoneSize, keeper);
  });

  afterAll(() => club.close());

  const row = (page: Page, text: RegExp | string) => page.getByRole('listitem').filter({ hasText: text }).first();
  const expectNoSideways = async (page: Page): Promise<void> =>
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);

  it('is the first page, with each thing once and the days that it is expected', async () => {
    await phone.goto(club.url);
    await phone.getByRole('heading', { name: 'eggs to hatch' }).waitFor();
    await row(phone, '14 eggs of TD-2').getByText('day 12').waitFor();
    await row(phone, '6 eggs of TD-2').getByText('late', { exact: true }).waitFor();
    await row(phone, '7 tadpoles of TD-2').getByText('day 86').waitFor();
    await row(phone, 'TD-5').getByText('13 months out of the egg').waitFor();
    expect(await phone.getByText('5 eggs of TD-2').count()).toBe(0);
    await expectNoSideways(phone);
    await club.look(phone, 'today-phone');
    await expectAccessible(phone, 'today on a phone');
  });

  it('takes a count where it is told, and takes it back', async () => {
    const eggs = row(phone, '14 eggs of TD-2');
    await eggs.getByRole('button', { name: /^Count/ }).click();
    await eggs.getByLabel('hatched').fill('15');
    await eggs.getByRole('button', { name: 'Write it down' }).click();
    await eggs.getByText('No more than 14 eggs are left.').waitFor();
    await eggs.getByLabel('hatched').fill('11');
    await eggs.getByRole('button', { name: 'one more' }).click();
    await club.look(phone, 'today-count-phone');
    await expectAccessible(phone, 'counting tadpoles');
    await eggs.getByRole('button', { name: 'Write it down' }).click();
    await phone.getByText('12 tadpoles hatched.').waitFor();
    await phone.getByRole('link', { name: '14 eggs of TD-2' }).waitFor({ state: 'detached' });
    await phone.getByRole('button', { name: 'Undo' }).click();
    await phone.getByRole('link', { name: '14 eggs of TD-2' }).waitFor();
  });

  it('raises froglets with their numbers, and sexes clutch-mates, each in one go', async () => {
    const tadpoles = row(phone, '7 tadpoles of TD-2');
    await tadpoles.getByRole('button', { name: /^Count/ }).click();
    await tadpoles.getByLabel('out of the water').fill('3');
    await tadpoles.getByText('some were lost').click();
    await tadpoles.getByLabel('how many').fill('1');
    await club.look(phone, 'today-raise-phone');
    await tadpoles.getByRole('button', { name: 'Write it down' }).click();
    await phone.getByText('3 froglets out of the water.').waitFor();
    const animal = row(phone, 'TD-5');
    await animal.getByRole('button', { name: /^Note/ }).click();
    await animal.getByRole('radio', { name: 'female' }).check();
    await club.look(phone, 'today-sex-phone');
    // the bars at the bottom lie over whatever is scrolled below them
    await phone.setViewportSize({ ...phoneSize, height: 3000 });
    await expectAccessible(phone, 'noting a sex');
    await phone.setViewportSize(phoneSize);
    await animal.getByRole('button', { name: 'Write it down' }).click();
    await phone.getByText('The sex of 1 animal is noted.').waitFor();
    await phone.getByRole('link', { name: 'TD-5' }).waitFor({ state: 'detached' });
  });

  it('reads at a desk, at night and on the narrowest phone, also of the whole club', async () => {
    const wide = await club.page(desk, keeper);
    await wide.goto(club.url);
    await wide.getByRole('heading', { name: 'eggs to hatch' }).waitFor();
    await club.look(wide, 'today-desk');
    await expectAccessible(wide, 'today at a desk');
    await wide
      .getByRole('button', { name: /^Count/ })
      .first()
      .click();
    await club.look(wide, 'today-count-desk');
    await wide.getByRole('button', { name: 'in your tanks' }).click();
    await wide.getByRole('link', { name: 'in the whole club' }).click();
    await wide.waitForURL(/of=club/);
    await club.look(wide, 'today-club-desk');
    await wide.getByRole('button', { name: 'Night theme' }).click();
    await club.look(wide, 'today-night-desk');
    await expectAccessible(wide, 'today at night');
    const small = await club.page({ width: 320, height: 640 }, keeper);
    await small.emulateMedia({ colorScheme: 'dark' });
    await small.goto(club.url);
    await small.getByRole('heading', { name: 'eggs to hatch' }).waitFor();
    await expectNoSideways(small);
    await club.look(small, 'today-320');
    await wide.keyboard.press('R');
    await wide.waitForURL(/register/);
    await wide.keyboard.press('T');
    await wide.waitForURL((url) => url.pathname === '/');
  });

  it('says what to do first to whoever keeps nothing', async () => {
    const newcomer = await club.page(phoneSize);
    await newcomer.goto(club.url);
    await newcomer.getByRole('heading', { level: 1 }).waitFor();
    await club.look(newcomer, 'today-orla-phone');
    const orla = await club.page(desk);
    await orla.goto(club.url);
    await orla.getByRole('heading', { level: 1 }).waitFor();
    await club.look(orla, 'today-orla-desk');
  });

  it('leads to the list of clutches, which is walked by keys', async () => {
    const wide = await club.page(desk, keeper);
    await wide.goto(`${club.url}/clutches?stage=egg`);
    await wide.getByRole('button', { name: 'in the egg' }).waitFor();
    await club.look(wide, 'clutches-desk');
    await expectAccessible(wide, 'the list of clutches');
    await wide.keyboard.press('J');
    await wide.keyboard.press('J');
    expect(await wide.evaluate(() => document.activeElement?.closest('[data-row]')?.getAttribute('data-row'))).toBe(
      '1',
    );
    await phone.goto(`${club.url}/clutches`);
    await phone.getByRole('heading', { name: 'Clutches' }).waitFor();
    await club.look(phone, 'clutches-phone');
    await expectNoSideways(phone);
    await expectAccessible(phone, 'the list of clutches on a phone');
    expect(club.faults).toEqual([]);
  });
});
