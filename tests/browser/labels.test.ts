import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import jsQR from 'jsqr';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();
const run = promisify(execFile);

/** What a decoder of its own reads in a part of a picture. */
async function decoded(picture: Buffer, part: { left: number; top: number; width: number; height: number }) {
  const { data, info } = await sharp(picture).extract(part).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return jsQR.default(new Uint8ClampedArray(data), info.width, info.height)?.data;
}

describe.skipIf(chromium === null)('labels', () => {
  let club: DemoClub;
  let page: Page;
  let clutchId: string;
  let living: { number: string; code: string }[];
  let folder: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'linekeeper-labels-'));
    club = await DemoClub.open(chromium);
    ({ clutchId, living } = await club.clutchOfLiving());
    page = await club.page();
  });

  afterAll(async () => {
    await club.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('are printed for the living young of a clutch, and scanning one opens the animal', async () => {
    await page.goto(`${club.url}/clutches/${clutchId}`);
    await page.getByRole('link', { name: 'Labels for the living' }).click();
    const faces = page.getByRole('list', { name: 'Labels' }).getByRole('listitem');
    await faces.first().waitFor();
    expect(await faces.count()).toBe(living.length);
    for (const [at, { number }] of living.entries()) {
      const picture = await faces.nth(at).screenshot();
      const { width, height } = await sharp(picture).metadata();
      const address = await decoded(picture, { left: 0, top: 0, width, height });
      expect(address).toBe(`${club.url}/n/${number}`);
    }
    await expectAccessible(page, 'labels');
    await club.look(page, 'labels-desk');
    await page.goto(`${club.url}/n/${living[0]?.number ?? ''}`);
    await page
      .getByRole('heading', { name: living[0]?.code ?? '' })
      .first()
      .waitFor();
    expect(page.url()).toContain('/animals/');
  });

  it('tell a slip of the pen from an animal that is not there', async () => {
    await page.goto(`${club.url}/n/1234-5`);
    await page.getByText('is no registry number').waitFor();
    await page.goto(`${club.url}/n/99999999-9`);
    await page.getByText('There is no animal 99999999-9').waitFor();
  });

  it('leave the printer at their true size, and their codes are read from the paper', async () => {
    await page.goto(`${club.url}/labels?clutch=${clutchId}`);
    await page.getByLabel('labels', { exact: true }).selectOption({ label: 'A4, 65 labels of 38.1 × 21.2 mm' });
    await page.getByLabel('labels already used up on the first page').fill('7');
    const file = join(folder, 'labels.pdf');
    writeFileSync(file, await page.pdf({ preferCSSPageSize: true, printBackground: true }));
    const { stdout } = await run('pdfinfo', [file]);
    expect(stdout).toMatch(/Pages:\s+1\n/);
    expect(stdout).toMatch(/Page size:\s+59[45](\.\d+)? x 84[12](\.\d+)? pts/);
    const dots = 300 / 25.4; // in a millimetre
    await run('pdftoppm', ['-r', '300', '-png', '-singlefile', file, join(folder, 'labels')]);
    const picture = readFileSync(join(folder, 'labels.png'));
    for (const [at, { number }] of living.entries()) {
      const place = at + 7;
      const left = Math.round((4.7 + (place % 5) * 40.6) * dots);
      const top = Math.round((10.7 + Math.floor(place / 5) * 21.2) * dots);
      const part = { left, top, width: Math.round(38.1 * dots), height: Math.round(21.2 * dots) };
      expect(await decoded(picture, part)).toBe(`${club.url}/n/${number}`);
    }
    const printed = (await run('pdftotext', ['-layout', file, '-'])).stdout;
    for (const { code } of living) expect(printed).toContain(code);
  });

  it('are cut one by one from a roll, and say what does not fit', async () => {
    await page.getByLabel('labels', { exact: true }).selectOption({ label: 'roll, labels of 40 × 30 mm' });
    await page.getByLabel('copies of each').fill('2');
    const file = join(folder, 'roll.pdf');
    writeFileSync(file, await page.pdf({ preferCSSPageSize: true, printBackground: true }));
    const { stdout } = await run('pdfinfo', [file]);
    expect(stdout).toContain(`Pages:           ${2 * living.length}\n`);
    expect(stdout).toMatch(/Page size:\s+113\.\d+ x 8[45](\.\d+)? pts/);
    await page.getByText('Measures in millimetres').click();
    await page.getByLabel('label width').fill('20');
    await page.getByLabel('label height').fill('10,5');
    await page.getByText(/There is no room for .*species/).waitFor();
    await page.getByText(/many phones want 0.3 mm/).waitFor();
    await page.getByLabel('label height').fill('2');
    await page.getByText('Write a number from 10 to 297.').waitFor();
    await expectAccessible(page, 'labels with a wrong measure');
    await club.look(page, 'labels-wrong');
  });

  it('are chosen on a phone, by day and by night', async () => {
    const phone = await club.page({ width: 320, height: 700 });
    await phone.goto(`${club.url}/labels?clutch=${clutchId}`);
    await phone.getByRole('list', { name: 'Labels' }).waitFor();
    expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await expectAccessible(phone, 'labels on a phone');
    await club.look(phone, 'labels-phone');
    await phone.evaluate(() => (document.documentElement.dataset['theme'] = 'night'));
    await expectAccessible(phone, 'labels at night');
    await club.look(phone, 'labels-phone-night');
  });
});
