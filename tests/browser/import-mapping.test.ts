import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub, desk } from '../support/demo-club.ts';

const chromium = findChromium();

describe.skipIf(chromium === null)('a sheet with its keeper’s own columns', () => {
  let club: DemoClub;
  let page: Page;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    page = await club.page(desk, 'Tobiah Quillmere');
  });

  afterAll(async () => {
    expect(club.faults).toEqual([]);
    await club.close();
  });

  /** Takes a sheet as an older spreadsheet program saves it: a byte a letter, semicolons. */
  async function take(rows: string[]): Promise<void> {
    await page.goto(`${club.url}/import`);
    const buffer = Buffer.from(rows.join('\r\n'), 'latin1');
    await page.locator('input[type=file]').setInputFiles({ name: 'Bestand.csv', mimeType: 'text/csv', buffer });
  }

  const head = 'Tiernummer;Zuchtlinie;Geschlecht;Vatertier;Muttertier;Geschlüpft;Verbleib;Tank;Preis';

  it('is understood by its words, asked about where it can be read in two ways, and written', async () => {
    await take([
      head,
      'MZ-1;Große Schlucht;Männchen;;;;lebt;7;12',
      'MZ-2;Große Schlucht;Weibchen;;;;lebt;7;12',
      'MZ-3;Große Schlucht;unbekannt;MZ-1;MZ-2;03/04/25;lebt;8;',
    ]);
    await page.getByRole('heading', { name: 'Which column of “Bestand.csv” is what?' }).waitFor();
    await page.getByText('3 rows, divided by semicolons, letters as Windows-1252.').waitFor();
    await page.getByLabel('Preis').selectOption('left out');
    await expectAccessible(page, 'columns of a sheet');
    await club.look(page, 'import-columns');
    await page.getByRole('button', { name: 'Check these rows' }).click();
    await page.getByText('Say in which order “Geschlüpft” writes its dates.').waitFor();
    await expectAccessible(page, 'columns of a sheet, asked');
    await page.getByRole('radio', { name: 'day first' }).check();
    await page.getByLabel('species of all rows').fill('Epipedobates anthonyi');
    await page.getByRole('button', { name: 'Check these rows' }).click();
    await page.getByRole('heading', { name: '“Bestand.csv” can be written' }).waitFor();
    await club.look(page, 'import-ready');
    await page.getByRole('button', { name: 'Write 3 animals' }).click();
    await page.getByRole('heading', { name: '3 animals written' }).waitFor();
    const { items } = await club.read<{ items: { id: string }[] }>('individuals?code=MZ-3');
    const young = await club.read<Record<string, unknown>>(`individuals/${items[0]?.id ?? ''}`);
    expect([young['hatched'], young['status'], young['notes']]).toEqual(['2025-04-03', 'alive', 'Tank: 8']);
  });

  it('is known again, and its refused rows can be saved and left out', async () => {
    await take([
      head,
      'MZ-4;Große Schlucht;Männchen;MZ-1;MZ-2;05/06/25;lebt;7;12',
      'MZ-5;Große Schlucht;halb;MZ-1;MZ-2;05/06/25;lebt;7;12',
    ]);
    const because = page.getByRole('row', { name: /Preis/ });
    await because.getByText('as you chose').waitFor();
    expect(await page.getByLabel('Preis').inputValue()).toBe('out');
    await page.getByLabel('species of all rows').fill('Epipedobates anthonyi');
    await page.getByRole('button', { name: 'Check these rows' }).click();
    await page.getByRole('heading', { name: 'Nothing was written' }).waitFor();
    await page.getByText('Geschlecht (sex)').first().waitFor();
    await expectAccessible(page, 'refused rows');
    await club.look(page, 'import-refused');
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save 1 row as CSV' }).click();
    const saved = readFileSync(await (await saving).path(), 'utf8');
    expect(saved).toContain('MZ-5,Große Schlucht,halb,MZ-1,MZ-2,05/06/25,lebt,7,12,"sex: ""halb"" is no sex.');
    expect(saved).not.toContain('MZ-4');
    await page.getByRole('button', { name: 'Leave 1 row out and check the rest' }).click();
    await page.getByText('1 row left out, as you wished.').waitFor();
    await page.getByRole('button', { name: 'Write 1 animal' }).waitFor();
  });
});
