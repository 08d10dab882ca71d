import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formatRegistryNumber } from '../../shared/registry-number.ts';
import { signSheet } from '../../shared/sheet/sheet-file.ts';
import { publishedKeys } from '../../shared/sheet/sheet-keys.ts';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { madeKey, madeSheet } from '../support/made-sheet.ts';

const chromium = findChromium();

describe.skipIf(chromium === null)('animals come from another club with their sheet', () => {
  let club: DemoClub;
  let page: Page;
  let folder: string;
  const at = (name: string): string => join(folder, name);

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'linekeeper-foreign-'));
    const key = await madeKey();
    writeFileSync(at('keys.json'), JSON.stringify(publishedKeys([key])));
    writeFileSync(at('sheet.json'), await signSheet(madeSheet(), key));
    club = await DemoClub.open(chromium);
    page = await club.page();
  });

  afterAll(async () => {
    await club.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('whose register is not known yet, until a registrar vouches for its keys', async () => {
    await page.goto(`${club.url}/import`);
    await page.getByRole('link', { name: 'Take that in' }).click();
    await page.getByLabel('signed file').setInputFiles(at('sheet.json'));
    await page.getByText('A registrar can add the register').waitFor();
    await expectAccessible(page, 'a sheet that is not believed');
    await page.goto(`${club.url}/club`);
    await page.getByRole('button', { name: 'Add a register' }).click();
    await page.getByRole('button', { name: 'Believe its sheets' }).click();
    await page.getByText('Write what it is called.').first().waitFor();
    await page.getByLabel('name', { exact: true }).fill('Circle of Frogs');
    await page.getByLabel('file of its keys').setInputFiles(at('keys.json'));
    await page.getByRole('button', { name: 'Believe its sheets' }).click();
    await page.getByText('vouched for by Orla Venndrick').waitFor();
    await expectAccessible(page, 'registers of other clubs');
    await club.look(page, 'other-registers');
  });

  it('are shown before anything is written, come in with their ancestors, and are known again', async () => {
    await page.goto(`${club.url}/import/sheet`);
    await page.getByLabel('signed file').setInputFiles(at('sheet.json'));
    await page.getByRole('heading', { name: 'This would come in' }).waitFor();
    await page.getByLabel('put before their numbers').fill('CF');
    await page.getByLabel('put before their numbers').blur();
    await page.getByRole('cell', { name: `CF ${formatRegistryNumber(1002)}` }).waitFor();
    await club.look(page, 'foreign-sheet');
    await page.setViewportSize({ width: 320, height: 700 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await expectAccessible(page, 'a foreign sheet on a phone');
    await club.look(page, 'foreign-sheet-phone');
    await page.setViewportSize({ width: 1440, height: 1000 });
    await page.getByRole('button', { name: 'Take in 3 animals' }).click();
    await page.getByRole('heading', { name: '3 animals taken in' }).waitFor();
    await page.getByRole('link', { name: `CF ${formatRegistryNumber(1002)}` }).click();
    await page.getByText('Taken in from the provenance sheet PS-1001-2 of Circle of Frogs').waitFor();
    await page.goBack();
    await page.goto(`${club.url}/import/sheet`);
    await page.getByLabel('signed file').setInputFiles(at('sheet.json'));
    await page.getByRole('button', { name: 'Nothing new is on it' }).waitFor();
  });
});
