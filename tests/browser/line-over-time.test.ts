import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { inventedLine, sheetOfLine } from '../support/invented-line.ts';

const chromium = findChromium();

interface OverTime {
  members: number;
  animals: { id: string[]; number: string[]; code: string[]; clutch: number[]; status: string[] };
  parents: { clutch: number[]; animal: number[]; probability: number[] };
}

/** The line Río Zancaval of the invented club, one of 5000 animals, one of three, and one without any. */
describe.skipIf(chromium === null)('a line over time', () => {
  let club: DemoClub;
  let page: Page;
  let line: { id: string; name: string };
  let told: OverTime;
  const lines = new Map<string, string>();

  const stage = (of = page) => of.getByRole('application');
  const said = (of = page) => of.locator('[role=status][aria-live=polite]').last();
  const open = async (name: string, query = '', of = page): Promise<void> => {
    await of.goto(`${club.url}/lines/${lines.get(name)}/over-time${query}`);
    await painted(of);
  };
  const painted = (of: Page) =>
    of.waitForFunction(() => performance.getEntriesByName('line-painted').length > 0, null, { timeout: 30_000 });

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const small =
      'code,species,line,sex,sire,dam,laid,source,source kind,source date,status\n' +
      'Z-1,Epipedobates anthonyi,Tres Ranas,m,,,,Z-S,purchase,2023-05,alive\n' +
      'Z-2,Epipedobates anthonyi,Tres Ranas,f,,,,Z-S,,,alive\nZ-3,Epipedobates anthonyi,Tres Ranas,u,Z-1,Z-2,2025-04-02,,,,alive\n';
    for (const sheet of [sheetOfLine(inventedLine(5000), 'Quebrada Larga'), small]) await club.sheet(sheet);
    const { items } = await club.read<{ items: { id: string; name: string }[] }>('lines?limit=200');
    for (const { id, name } of items) lines.set(name, id);
    line = items.find(({ name }) => name === 'Río Zancaval') as { id: string; name: string };
    told = await club.read<OverTime>(`lines/${line.id}/over-time`);
    page = await club.page();
  }, 120_000);

  afterAll(() => club.close());
  beforeEach(() => {
    club.faults.length = 0;
  });

  it('is reached from the page of the line, and says itself in a sentence', async () => {
    await page.goto(`${club.url}/lines/${line.id}`);
    await page.getByRole('link', { name: 'Over time', exact: true }).click();
    await painted(page);
    const name = (await stage().getAttribute('aria-label')) ?? '';
    expect(name).toMatch(
      new RegExp(`^Río Zancaval over time: ${told.members} animals in \\d+ clutches, 1994 to 20\\d\\d; \\d+ alive$`),
    );
    await club.look(page, 'over-time-day');
    await expectAccessible(page, 'line over time');
    expect(club.faults).toEqual([]);
  });

  it('is walked by the keys alone: to a parent, to the young, to a sibling; Enter opens the animal', async () => {
    const at = told.animals.clutch.findLastIndex((clutch) => clutch >= 0);
    await open('Río Zancaval');
    await page.getByRole('combobox', { name: 'Find' }).fill(told.animals.code[at] ?? '');
    await page.keyboard.press('Enter');
    await stage().and(page.locator(':focus')).waitFor();
    await said().getByText(`${told.animals.code[at]}, ${told.animals.number[at]}, `).waitFor();
    const parents = told.parents.animal
      .filter((_, link) => told.parents.clutch[link] === told.animals.clutch[at])
      .map((animal) => `${told.animals.code[animal]}, ${told.animals.number[animal]}`);
    await page.keyboard.press('ArrowUp');
    await page.waitForFunction((number) => !location.search.includes(number), told.animals.number[at] ?? '');
    const parent = (await said().textContent()) ?? '';
    expect(parents.some((name) => parent.startsWith(name))).toBe(true);
    expect(parent).toMatch(/; F \d|; inbreeding not known/);
    expect(parent).toMatch(/\d+ young of \d+ clutch/);
    await page.keyboard.press('ArrowDown');
    await said().getByText(`${told.animals.code[at]}, ${told.animals.number[at]}, `).waitFor();
    await expectAccessible(page, 'line over time, an animal picked');
    await club.look(page, 'over-time-picked');
    await page.keyboard.press('Enter');
    await page.waitForURL(`**/animals/${told.animals.id[at]}`);
    expect(club.faults).toEqual([]);
  });

  it('keeps in its address what one looks at, and shows it again', async () => {
    await open('Río Zancaval');
    await stage().focus();
    await page.keyboard.press('ArrowDown');
    await page.waitForFunction(() => location.search.includes('animal='));
    await page.getByRole('button', { name: 'how well the label is carried' }).click();
    await page.getByRole('link', { name: 'inbreeding', exact: true }).click();
    await page.getByRole('button', { name: 'living or not' }).click();
    await page.getByRole('link', { name: 'alive', exact: true }).click();
    await page.getByText('to 12.5').waitFor();
    await page.waitForFunction(() => /bars=inbreeding.*living=yes/.test(location.search));
    const words = await said().textContent();
    await page.reload();
    await painted(page);
    expect(await said().textContent()).toBe(words);
    await page.getByRole('button', { name: 'inbreeding', exact: true }).waitFor();
    await page.getByRole('button', { name: 'alive', exact: true }).waitFor();
    await club.look(page, 'over-time-inbreeding');
    await stage().focus();
    await page.keyboard.press('Escape');
    await page.waitForFunction(() => !location.search.includes('animal='));
    expect(club.faults).toEqual([]);
  });

  it('comes closer and moves by buttons, keys and the wheel', async () => {
    await open('Quebrada Larga');
    const whole = page.getByRole('button', { name: 'Whole line' });
    expect(await whole.isDisabled()).toBe(true);
    expect(await page.getByRole('button', { name: 'Move left' }).isDisabled()).toBe(true);
    const shot = async (): Promise<string> => (await stage().screenshot()).toString('base64');
    const pictures = [await shot()];
    const does = [
      () => page.getByRole('button', { name: 'Closer' }).click(),
      () => page.getByRole('button', { name: 'Move right' }).click(),
      () => stage().press('+'),
      () => stage().press('Shift+ArrowDown'),
      async () => {
        await stage().hover();
        await page.mouse.wheel(0, 60);
      },
    ];
    for (const act of does) {
      await act();
      await page.waitForTimeout(150);
      pictures.push(await shot());
    }
    expect(new Set(pictures).size).toBe(pictures.length);
    await whole.click();
    await page.waitForTimeout(150);
    expect(await whole.isDisabled()).toBe(true);
    await club.look(page, 'over-time-5000');
    expect(club.faults).toEqual([]);
  });

  it('finds one animal among 5000, lights its kin, and sets the others aside', async () => {
    await open('Quebrada Larga');
    const find = page.getByRole('combobox', { name: 'Find' });
    await find.fill('OT-47');
    await page.getByRole('option').first().waitFor();
    expect(await page.getByRole('option').count()).toBe(8);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.getByText(/\d+ ancestors and \d+ descendants? lit\./).waitFor();
    const link = page.getByRole('link', { name: 'Its ancestors' });
    expect(await link.getAttribute('href')).toMatch(/^\/animals\/[\da-f-]{36}#ancestor-chart$/);
    const below = page.getByRole('link', { name: 'Its descendants' });
    expect(await below.getAttribute('href')).toMatch(/^\/animals\/[\da-f-]{36}\/descendants$/);
    await page.waitForTimeout(200);
    await club.look(page, 'over-time-5000-found');
    await find.fill('nobody');
    await page.getByText('No animal in this drawing is called that.').waitFor();
    expect(club.faults).toEqual([]);
  });

  it('says the same as a table, a year a page', async () => {
    await open('Quebrada Larga');
    await page.getByRole('button', { name: 'Table' }).click();
    const year = page.getByRole('combobox', { name: 'Year' });
    await year.selectOption({ label: (await year.locator('option').allTextContents())[8]?.trim() ?? '' });
    await page.waitForFunction(() => /table=yes&year=\d{4}/.test(location.search));
    const rows = page.getByRole('row', { name: /^OT-/ });
    expect(await rows.count()).toBeGreaterThan(20);
    await expectAccessible(page, 'table of a line over time');
    await club.look(page, 'over-time-table');
    await page.getByRole('button', { name: 'Year after' }).click();
    await page.getByRole('button', { name: 'Drawing' }).click();
    await stage().waitFor();
    expect(club.faults).toEqual([]);
  });

  it('leaves as an SVG and as a picture, whole, and goes on paper', async () => {
    await open('Quebrada Larga');
    const save = async (name: string): Promise<Buffer> => {
      const [file] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name, exact: true }).click(),
      ]);
      expect(file.suggestedFilename()).toBe(`line-quebrada-larga-over-time.${name.toLowerCase()}`);
      return readFileSync(await file.path());
    };
    const svg = (await save('SVG')).toString();
    expect(svg).toContain('<title>Quebrada Larga over time</title>');
    expect(svg).toContain('@font-face');
    expect(svg).not.toMatch(/var\(--/);
    const png = await save('PNG');
    expect(png.subarray(1, 4).toString()).toBe('PNG');
    // width of the picture, in dots
    expect(png.readUInt32BE(16)).toBeGreaterThan(3000);
    const before = await page.evaluate(() => {
      window.dispatchEvent(new Event('beforeprint'));
      return document.querySelectorAll('.paper svg path').length;
    });
    expect(before).toBeGreaterThan(10);
    await page.emulateMedia({ media: 'print' });
    await club.look(page, 'over-time-paper');
    await page.emulateMedia({ media: 'screen' });
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    expect(await page.locator('.paper svg').count()).toBe(0);
    expect(club.faults).toEqual([]);
  });

  it('draws three animals, and says what to do about none', async () => {
    await open('Tres Ranas');
    expect(await stage().getAttribute('aria-label')).toBe(
      'Tres Ranas over time: 3 animals in 1 clutch, 2023 to 2025; 3 alive',
    );
    await club.look(page, 'over-time-three');
    const { id } = await club.write('lines', {
      speciesId: (await club.read<{ items: { id: string }[] }>('species')).items[0]?.id,
      name: 'Nobody yet',
      labelKind: 'unlabelled',
    });
    await page.goto(`${club.url}/lines/${id}/over-time`);
    await page.getByText('There is no animal to draw').waitFor();
    await expectAccessible(page, 'a line without animals');
    await page.goto(`${club.url}/lines/${line.id}/over-time?hatchedFrom=1801&hatchedTo=1802`);
    await page.getByText('There is no animal to draw of these years').waitFor();
    expect(club.faults).toEqual([]);
  });

  it('works on a phone with one hand, by day and by night, down to 320 px', async () => {
    for (const [width, theme] of [
      [390, 'day'],
      [320, 'night'],
    ] as const) {
      const phone = await club.page({ width, height: 700 });
      await phone.addInitScript((name) => localStorage.setItem('linekeeper.theme', name), theme);
      await open('Quebrada Larga', '', phone);
      expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      for (const button of await phone.getByRole('group', { name: 'Move and come closer' }).getByRole('button').all())
        expect((await button.boundingBox())?.height).toBeGreaterThanOrEqual(44);
      await phone.getByRole('button', { name: 'Closer' }).click();
      await stage(phone).click({ position: { x: width / 2, y: 150 } });
      await phone.getByRole('combobox', { name: 'Find' }).fill('OT-4321');
      await phone.getByRole('option').first().click();
      await phone
        .getByText(/OT-4321/)
        .first()
        .waitFor();
      await expectAccessible(phone, `line over time on a phone of ${width}`);
      await phone.waitForTimeout(200);
      await club.look(phone, `over-time-phone-${width}`);
      await phone.getByRole('button', { name: 'Table' }).click();
      await phone.getByRole('combobox', { name: 'Year' }).waitFor();
      expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      await club.look(phone, `over-time-phone-table-${width}`);
      await phone.context().close();
    }
    expect(club.faults).toEqual([]);
  });
});
