import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import jsQR from 'jsqr';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium, openPage } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();
const phone = { width: 390, height: 844 };

describe.skipIf(chromium === null)('a froglet is sold with a sheet', () => {
  let club: DemoClub;
  let keeper: Page;
  let buyer: Page;
  let folder: string;
  let clutchId: string;
  let living: { number: string; code: string }[];
  let address: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'linekeeper-sheets-'));
    club = await DemoClub.open(chromium);
    ({ clutchId, living } = await club.clutchOfLiving());
    keeper = await club.page(phone);
    const stranger = await keeper.context().browser()?.newContext({ viewport: phone });
    if (!stranger) throw new Error('the browser is gone');
    buyer = await openPage(stranger, club.faults);
  });

  afterAll(async () => {
    await club.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('made on a phone from its clutch, in under two minutes', async () => {
    const started = performance.now();
    await keeper.goto(`${club.url}/clutches/${clutchId}`);
    await keeper.getByRole('link', { name: 'Make a sheet of them' }).click();
    await keeper.getByRole('heading', { name: 'Make a provenance sheet' }).waitFor();
    await expectAccessible(keeper, 'making a sheet');
    await club.look(keeper, 'sheet-new-phone');
    await keeper.getByRole('button', { name: 'Make and sign' }).click();
    await keeper.getByRole('heading', { name: 'Valid' }).waitFor();
    expect(performance.now() - started).toBeLessThan(120_000);
    address = keeper.url();
    expect(address).toMatch(/\/s\/[\w-]{16,}$/);
  });

  it('whose code a buyer scans, to read without an account what is known, and what today is', async () => {
    const picture = await keeper.getByRole('img', { name: 'Code that leads to this page' }).screenshot();
    const { data, info } = await sharp(picture).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
    expect(jsQR.default(new Uint8ClampedArray(data), info.width, info.height)?.data).toBe(address);
    await buyer.goto(address);
    await buyer.getByRole('heading', { name: 'Valid' }).waitFor();
    for (const { code } of living) expect(await buyer.getByText(code, { exact: false }).count()).toBeGreaterThan(0);
    await buyer.getByText('The register says the same today.').waitFor();
    await buyer.getByRole('heading', { name: 'Parents and ancestors' }).waitFor();
    expect(await buyer.getByText('This sheet is no permit').count()).toBe(1);
    expect(await buyer.getByRole('navigation').count()).toBe(0);
    expect(await buyer.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(phone.width);
    await expectAccessible(buyer, 'a sheet as the buyer sees it');
    await club.look(buyer, 'sheet-buyer-phone');
    await buyer.evaluate(() => (document.documentElement.dataset['theme'] = 'night'));
    await expectAccessible(buyer, 'a sheet at night');
    await club.look(buyer, 'sheet-buyer-night');
    await buyer.setViewportSize({ width: 1280, height: 900 });
    await club.look(buyer, 'sheet-buyer-desk-night');
    await buyer.setViewportSize({ width: 320, height: 700 });
    expect(await buyer.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await buyer.setViewportSize(phone);
  });

  it('whose file is checked in the browser, to its last byte, with nothing sent, and by a page that needs no site', async () => {
    const [download] = await Promise.all([
      buyer.waitForEvent('download'),
      buyer.getByRole('link', { name: 'Keep the signed file' }).click(),
    ]);
    const file = join(folder, 'sheet.json');
    await download.saveAs(file);
    await buyer.getByRole('link', { name: 'Check a file' }).click();
    await buyer.getByText('Checked with the keys of this register.').waitFor();
    const asked: string[] = [];
    buyer.on('request', (request) => asked.push(request.url()));
    await buyer.context().setOffline(true);
    await buyer.getByLabel('signed file').setInputFiles(file);
    await buyer.getByText('Genuine', { exact: true }).waitFor();
    await expectAccessible(buyer, 'a checked file');
    await club.look(buyer, 'sheet-check');
    const changed = join(folder, 'changed.json');
    writeFileSync(
      changed,
      readFileSync(file, 'utf8').replace('"sex":"unsexed"', '"sex":"female"').replace('"sex":"male"', '"sex":"female"'),
    );
    await buyer.getByLabel('signed file').setInputFiles(changed);
    await buyer.getByText('Not to be relied on', { exact: true }).waitFor();
    expect(asked.filter((url) => !url.startsWith('data:'))).toEqual([]);
    await buyer.context().setOffline(false);
    const [kept] = await Promise.all([
      buyer.waitForEvent('download'),
      buyer.getByRole('button', { name: 'Keep this check as a file' }).click(),
    ]);
    const page = join(folder, 'check-sheet.html');
    await kept.saveAs(page);
    const alone = await buyer.context().newPage();
    await buyer.context().setOffline(true);
    await alone.goto(pathToFileURL(page).href);
    await alone.getByText('Keys at hand').waitFor();
    await alone.getByLabel('signed file').setInputFiles(file);
    await alone.getByText('Genuine', { exact: true }).waitFor();
    await alone.getByLabel('signed file').setInputFiles(changed);
    await alone.getByText('Not to be relied on', { exact: true }).waitFor();
    await expectAccessible(alone, 'the check that needs no site');
    await buyer.context().setOffline(false);
    await alone.close();
  });

  it('and is sold: what the register says today follows', async () => {
    await keeper.goto(`${club.url}/clutches/${clutchId}`);
    await keeper.getByRole('link', { name: 'Give or sell froglets' }).click();
    await keeper.getByRole('radio', { name: 'out of the club' }).check();
    await keeper.getByLabel('to whom, in your own words').fill('a buyer at the market');
    await keeper.getByRole('button', { name: 'Note that they left' }).click();
    await keeper.getByRole('heading', { name: /left the club/ }).waitFor();
    expect(await keeper.getByRole('link', { name: 'Make a sheet' }).count()).toBe(1);
    await buyer.goto(address);
    await buyer.getByRole('heading', { name: 'What the register says today' }).waitFor();
    expect(await buyer.getByRole('row', { name: /status/ }).count()).toBe(living.length);
    expect(await buyer.getByText('a buyer at the market').count()).toBe(0);
    await club.look(buyer, 'sheet-buyer-sold');
  });

  it('and is revoked with a reason that the buyer reads', async () => {
    await keeper.goto(`${club.url}/sheets`);
    await keeper.getByRole('list', { name: 'Provenance sheets' }).waitFor();
    await expectAccessible(keeper, 'sheets');
    await club.look(keeper, 'sheets-phone');
    await keeper
      .getByRole('button', { name: /^Revoke sheet/ })
      .first()
      .click();
    await keeper.getByRole('button', { name: 'Revoke for good' }).click();
    await keeper.getByText('Write why').first().waitFor();
    await keeper.getByLabel('why it is not to be relied on').fill('The froglets were mixed up.');
    await keeper.getByRole('button', { name: 'Revoke for good' }).click();
    await keeper.getByText('The froglets were mixed up.').waitFor();
    await buyer.goto(address);
    await buyer.getByRole('heading', { name: 'Revoked' }).waitFor();
    expect(await buyer.getByText('The froglets were mixed up.').count()).toBeGreaterThan(0);
    expect(await buyer.getByRole('heading', { name: 'Parents and ancestors' }).count()).toBe(0);
    await club.look(buyer, 'sheet-revoked');
    await buyer.goto(`${club.url}/s/nosuchsheetnosuchsheet00`);
    await buyer.getByText('No provenance sheet stands at this address').waitFor();
  });
});
