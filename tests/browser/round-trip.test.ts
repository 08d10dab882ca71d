import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bringCookie, expectAccessible, findChromium, openBrowser, openPage } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { setUpClub, startService, type Service } from '../support/service.ts';

const chromium = findChromium();

/** The whole invented club leaves by the export page, and comes into an empty register by the import page. */
describe.skipIf(chromium === null)('a register sheet there and back', () => {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-round-'));
  const faults: string[] = [];
  let club: DemoClub;
  let empty: Service;
  let browser: Browser;
  let page: Page;
  let sheet: string;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    empty = await startService({ DATA_DIR: join(folder, 'data') });
    browser = await openBrowser(chromium ?? '');
    const context = await browser.newContext({ viewport: { width: 1440, height: 1000 } });
    await bringCookie(context, empty.url, await setUpClub(empty));
    page = await openPage(context, faults);
  });

  afterAll(async () => {
    await browser.close();
    await club.close();
    empty.process.kill('SIGTERM');
    await empty.ended;
    rmSync(folder, { recursive: true, force: true });
    expect([faults, club.faults]).toEqual([[], []]);
  });

  async function saved(from: Page): Promise<string> {
    const saving = from.waitForEvent('download');
    await from.getByRole('button', { name: 'Save the sheet' }).click();
    return readFileSync(await (await saving).path(), 'utf8');
  }

  it('is saved from the page where things go out', async () => {
    const leaving = await club.page();
    await leaving.goto(`${club.url}/export`);
    await leaving.getByText('438 animals, and their ancestors').waitFor();
    await expectAccessible(leaving, 'export');
    await club.look(leaving, 'export');
    sheet = await saved(leaving);
    expect(sheet.trim().split('\r\n').length).toBeGreaterThanOrEqual(439);
  });

  it('is taken by an empty register without a question, and leaves it again as the same sheet', async () => {
    await page.goto(`${empty.url}/import`);
    const file = { name: 'register sheet.csv', mimeType: 'text/csv', buffer: Buffer.from(sheet) };
    await page.locator('input[type=file]').setInputFiles(file);
    await page.getByRole('button', { name: 'Write 438 animals' }).click();
    await page.getByRole('heading', { name: '438 animals written' }).waitFor();
    await page.goto(`${empty.url}/export`);
    await page.getByText('438 animals, and their ancestors').waitFor();
    expect(await saved(page)).toBe(sheet);
  });

  it('holds one line where only that is asked for', async () => {
    await page.getByRole('radio', { name: 'of one line' }).check();
    await page.getByLabel('line', { exact: true }).selectOption({ label: 'Ember Saddle, Epipedobates anthonyi' });
    await page.getByLabel('with all their ancestors').uncheck();
    const line = (await saved(page)).trim().split('\r\n').slice(1);
    expect(line.length).toBeGreaterThan(10);
    expect(line.every((row) => row.includes('Ember Saddle'))).toBe(true);
  });
});
