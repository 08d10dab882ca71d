import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bringCookie, expectAccessible, findChromium, openBrowser, openPage } from '../support/browser.ts';
import { askAs, setUpClub, startService, type Service } from '../support/service.ts';

const chromium = findChromium();

/** A keeper's sheet (invented animals): a group of two males, later a sib mating, semicolons and a remark column of their own. */
const sheet = `Code;Species;Line;Sex;Sire;Dam;Source;Source kind;Source date;Label;Hatched;Status;Tank
W-01;Epipedobates anthonyi;Quebrada Umbra;m;;;S-1;import;1994~;Quebrada Umbra;;died;
W-02;Epipedobates anthonyi;Quebrada Umbra;m;;;S-1;;;;;died;
W-03;Epipedobates anthonyi;Quebrada Umbra;f;;;S-1;;;;;died;
W-04;Epipedobates anthonyi;Quebrada Umbra;f;;;S-1;;;;;died;
W-10;Epipedobates anthonyi;Quebrada Umbra;m;W-01:0.7/W-02:0.3;W-03;;;;;2016-05-02;alive;7
W-11;Epipedobates anthonyi;Quebrada Umbra;f;W-01;W-03;;;;;2017-03-11;alive;7
W-12;Epipedobates anthonyi;Quebrada Umbra;f;W-02;W-04;;;;;2017-06;alive;9
W-20;Epipedobates anthonyi;Quebrada Umbra;f;W-10;W-11;;;;;2020-01-30;alive;9
`;
const brokenSheet = sheet
  .replace('W-01:0.7/W-02:0.3', 'W-01:0.7/W-02:0.7')
  .replace('2017-03-11', 'in March')
  .replace(';W-02;W-04;', ';W-02;W-44;');

describe.skipIf(chromium === null)('a keeper begins with an empty register', () => {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-story-'));
  const faults: string[] = [];
  let service: Service;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let cookie: string;

  beforeAll(async () => {
    service = await startService({ DATA_DIR: join(folder, 'data') });
    cookie = await setUpClub(service);
    browser = await openBrowser(chromium ?? '');
    context = await browser.newContext({ viewport: { width: 1440, height: 1000 }, reducedMotion: 'reduce' });
    await bringCookie(context, service.url, cookie);
    page = await openPage(context, faults);
  });

  afterAll(async () => {
    await browser.close();
    service.process.kill('SIGTERM');
    await service.ended;
    rmSync(folder, { recursive: true, force: true });
  });

  const take = (content: string): Promise<void> =>
    page
      .locator('input[type=file]')
      .setInputFiles({ name: 'frogs.csv', mimeType: 'text/csv', buffer: Buffer.from(content) });
  const choose = (group: string, option: string): Promise<void> =>
    page.getByRole('group', { name: group, exact: true }).getByRole('radio', { name: option, exact: true }).check();
  const pick = async (field: Locator, code: string): Promise<void> => {
    await field.fill(code);
    await page
      .getByRole('option', { name: new RegExp(`\\b${code}\\b`) })
      .first()
      .click();
  };

  it('is told how to begin', async () => {
    await page.goto(service.url);
    await page.getByText('You keep no animal here yet').waitFor();
    await expectAccessible(page, 'today in a new club');
    await page.getByRole('link', { name: 'Register', exact: true }).first().click();
    await page.getByText('This register is empty').waitFor();
    await expectAccessible(page, 'empty register');
    await page.getByRole('link', { name: 'Import your sheet' }).click();
    await page.getByRole('heading', { name: 'Import', level: 1 }).waitFor();
    await expectAccessible(page, 'import');
  });

  it('drops a sheet with mistakes and sees all of them with row and column; nothing is written', async () => {
    await take(brokenSheet);
    await expectAccessible(page, 'columns of a sheet');
    await page.getByRole('button', { name: 'Check these rows' }).click();
    await page.getByRole('heading', { name: 'Nothing was written' }).waitFor();
    const text = await page.locator('main').innerText();
    for (const row of ['row 6', 'row 7', 'row 8']) expect(text).toContain(row);
    expect(text).toContain('W-44');
    expect(text).toContain('in March');
    await expectAccessible(page, 'import with problems');
    const { items } = (await (await askAs(cookie, `${service.url}/api/v1/individuals`)).json()) as { items: unknown[] };
    expect(items).toEqual([]);
  });

  it('mends it, sees what would come in, and writes exactly that', async () => {
    await page.getByRole('button', { name: 'Take another sheet' }).click();
    await take(sheet);
    await page.getByRole('row', { name: /^Tank/ }).getByText('as you chose').waitFor();
    await page.getByRole('button', { name: 'Check these rows' }).click();
    const write = page.getByRole('button', { name: 'Write 8 animals' });
    await write.waitFor();
    expect(await page.locator('main').innerText()).toContain('Tank');
    await write.click();
    await page.getByRole('heading', { name: '8 animals written' }).waitFor();
    await expectAccessible(page, 'import written');
    await page.getByRole('link', { name: 'See them in the register' }).click();
    await page.getByRole('link', { name: 'W-20' }).waitFor();
    await expectAccessible(page, 'register');
  });

  it('finds an animal, sees its ancestors, how inbred it is, and how far its label can be trusted', async () => {
    await page.keyboard.press('/');
    await page.keyboard.type('W-20');
    await page.getByRole('link', { name: 'W-11' }).waitFor({ state: 'detached' });
    expect(new URL(page.url()).searchParams.get('q')).toBe('W-20');
    await page.getByRole('link', { name: 'W-20' }).click();
    await page.getByRole('heading', { name: /W-20/ }).first().waitFor();
    await page.getByRole('heading', { name: 'Ancestors' }).waitFor();
    await page.locator('svg').getByText('W-03', { exact: true }).waitFor();
    await page
      .getByText(/21[.,]3/)
      .first()
      .waitFor();
    const text = await page.locator('main').innerText();
    // W-10 is the full brother of W-11 with 0.7, her half brother through W-03 with 0.3: F = 0.7 · 1/4 + 0.3 · 1/8 = 0.2125
    expect(text).toMatch(/21[.,]3\s?%/);
    expect(text).toContain('stated');
    expect(text.toLowerCase()).toContain('parents uncertain');
    for (const code of ['W-01', 'W-02', 'W-03', 'W-10', 'W-11'])
      expect(await page.locator('svg').getByText(code, { exact: true }).count()).toBe(1);
    await expectAccessible(page, 'animal');
  });

  it('says that the label is a place, and sees at once that nothing proves it', async () => {
    await page.getByRole('button', { name: 'a place', exact: true }).click();
    await page.getByText('names a place').first().waitFor();
    await page.getByText('Beyond papers').first().waitFor();
    await expectAccessible(page, 'animal with a place for a label');
  });

  it('asks a figure why, and reads the ancestors as a table', async () => {
    await page.getByRole('button', { name: /why/i }).first().click();
    await page.getByRole('button', { name: 'Table', exact: true }).click();
    await page.getByRole('table').filter({ hasText: 'W-03' }).first().waitFor();
    await expectAccessible(page, 'animal with its table');
  });

  it('learns which of two possible mates is the less related one', async () => {
    await page.getByRole('link', { name: 'Match', exact: true }).first().click();
    await page.getByRole('heading', { name: 'Match', level: 1 }).waitFor();
    const { items } = (await (await askAs(cookie, `${service.url}/api/v1/individuals?sort=code`)).json()) as {
      items: { id: string; code: string }[];
    };
    const ids = ['W-10', 'W-11', 'W-12'].map((code) => items.find((item) => item.code === code)?.id);
    await page.goto(`${service.url}/match?animals=${ids.join(',')}`);
    // W-12 is the daughter of W-02: with W-10 half sibs with 0.3, else unrelated: 0.3 · 1/8 = 0.0375 against 0.2125
    const answer = page.getByText(/W-12 is the (least|less) related/);
    await answer.waitFor();
    expect(await answer.innerText()).toMatch(/3[.,]8\s?%/);
    await expectAccessible(page, 'match');
  });

  it('adds an animal, houses a group, notes its clutch and raises the young', async () => {
    await page.goto(`${service.url}/animals/new`);
    await page.getByLabel('code', { exact: true }).fill('W-30');
    await page.getByLabel('species', { exact: true }).selectOption({ label: 'Epipedobates anthonyi' });
    await page.getByLabel('line', { exact: true }).selectOption({ label: 'Quebrada Umbra' });
    await choose('sex', 'male');
    await page.getByLabel('hatched', { exact: true }).fill('2021~');
    await expectAccessible(page, 'adding an animal');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByRole('complementary', { name: 'Written just now' }).getByRole('link', { name: 'W-30' }).click();
    await page.getByRole('heading', { name: /W-30/ }).first().waitFor();
    await page.getByText('nothing known').first().waitFor();

    await page.goto(`${service.url}/pairings/new`);
    await page.getByLabel('name', { exact: true }).fill('tank 9');
    for (const code of ['W-30', 'W-12', 'W-20'])
      await pick(page.getByRole('combobox', { name: 'add an animal' }), code);
    const joined = page.getByLabel('joined');
    for (let at = 0; at < (await joined.count()); at++) await joined.nth(at).fill('2022-03-01');
    await expectAccessible(page, 'housing a group');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByRole('heading', { name: 'tank 9' }).waitFor();
    expect(await page.locator('main').innerText()).toContain('1.2.0');
    await expectAccessible(page, 'group');

    await page
      .getByRole('link', { name: /Note a clutch/ })
      .first()
      .click();
    await page.getByRole('combobox', { name: 'where' }).waitFor();
    await expectAccessible(page, 'noting a clutch');
    await page
      .getByRole('textbox', { name: 'eggs' })
      .or(page.getByRole('spinbutton', { name: 'eggs' }))
      .fill('7');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByRole('heading', { name: /clutch of/i }).waitFor();
    const clutch = await page.locator('main').innerText();
    for (const code of ['W-30', 'W-12', 'W-20']) expect(clutch).toContain(code);
    await expectAccessible(page, 'clutch');
    await page.getByLabel('how many').fill('3');
    await page.getByRole('button', { name: /^(Raise|Write)/ }).click();
    await page.getByText('3 froglets written down.').waitFor();
    const young = (await (await askAs(cookie, `${service.url}/api/v1/individuals?sex=unsexed`)).json()) as {
      items: { id: string; line: string; species: string }[];
    };
    expect(young.items.map((one) => `${one.species}, ${one.line}`)).toEqual(
      Array.from({ length: 3 }, () => 'Epipedobates anthonyi, Quebrada Umbra'),
    );
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('Taken back: 3 froglets written down.').waitFor();
  });

  it('works at night and on a phone', async () => {
    const phone = await browser.newContext({
      viewport: { width: 320, height: 700 },
      colorScheme: 'dark',
      reducedMotion: 'reduce',
      hasTouch: true,
    });
    const small = await openPage(phone, faults);
    const { items } = (await (await askAs(cookie, `${service.url}/api/v1/individuals?code=W-20`)).json()) as {
      items: { id: string }[];
    };
    for (const path of [
      '/register',
      `/animals/${items[0]?.id}`,
      '/match',
      '/import',
      '/pairings',
      '/clutches/new',
      '/animals/new',
    ]) {
      await small.goto(service.url + path);
      await small.waitForLoadState('networkidle');
      const overflow = await small.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(`${path} ${overflow}`).toBe(`${path} 0`);
      await expectAccessible(small, `${path} at night on a phone`);
    }
    await phone.close();
  });

  it('met no fault on the way, and no request left this machine', () => {
    expect(faults).toEqual([]);
  });
});
