import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { madePdf } from '../support/made-pdf.ts';
import { picture } from '../support/made-pictures.ts';

const chromium = findChromium();

/** The beginning of an HEIC, as phones write it. */
const heic = Buffer.concat([Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1'), Buffer.alloc(200)]);
const withScript = madePdf({ catalogue: '/OpenAction 4 0 R', objects: ['<</S/JavaScript/JS(app.alert(1))>>'] });

describe.skipIf(chromium === null)('a keeper who brings the paper itself', () => {
  let club: DemoClub;
  let keeper: Page;
  let registrar: Page;
  let lineId: string;
  let sourceId: string;
  const saskia = 'Saskia Brunmoor';
  const pdf = madePdf();

  const form = (): Locator => keeper.getByRole('form', { name: 'The paper “invoice 17”' });
  const send = async (name: string, mimeType: string, buffer: Buffer): Promise<void> => {
    await form().getByLabel('the paper', { exact: true }).setInputFiles({ name, mimeType, buffer });
    await form().getByRole('button', { name: 'Send it' }).click();
  };

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const { id: speciesId } = await club.write('species', { scientificName: 'Inventus papyrus' }, saskia);
    const name = 'Quebrada Sonora';
    lineId = (await club.write('lines', { speciesId, name, labelKind: 'locality' }, saskia)).id;
    sourceId = (await club.write('sources', { kind: 'import', date: '1994~', labelAsReceived: name }, saskia)).id;
    await club.write('individuals', { speciesId, lineId, sourceId }, saskia);
    await club.write('claims', { sourceId, aspect: 'locality', value: name }, saskia);
    keeper = await club.page({ width: 390, height: 844 }, saskia);
    registrar = await club.page();
  });

  afterAll(() => club.close());

  it('is asked for it once the evidence is written down, and told what is taken', async () => {
    await keeper.goto(`${club.url}/sources/${sourceId}`);
    await keeper.getByRole('button', { name: 'Bring evidence on Quebrada Sonora' }).click();
    await keeper.getByLabel('number, title or first words').fill('invoice 17');
    await keeper.getByRole('button', { name: 'Bring it' }).click();
    await form()
      .getByText(/A PDF, at most 20 MB, or a picture of it .* at most 25 MB/)
      .waitFor();
    await form().getByRole('button', { name: 'Send it' }).click();
    await form().getByText('Choose a file, or take a picture of the paper.').first().waitFor();
    await club.look(keeper, 'paper-form-phone');
    await expectAccessible(keeper, 'the form of a paper');
  });

  it('is told why a file is not taken, and what to do', async () => {
    await send('big.pdf', 'application/pdf', Buffer.alloc(21_000_000));
    await form()
      .getByText(/has 21 MB, and a PDF may have 20 MB at most/)
      .first()
      .waitFor();
    await send('IMG_2041.HEIC', 'image/heic', heic);
    await form()
      .getByText(/Save the picture as JPEG/)
      .first()
      .waitFor();
    await club.look(keeper, 'paper-refused-phone');
    await send('invoice.pdf', 'application/pdf', withScript);
    await form()
      .getByText(/script/)
      .first()
      .waitFor();
    await expectAccessible(keeper, 'a refused paper');
  });

  it('sends a picture, which opens in a new tab, and a PDF in its place, which is saved as it was', async () => {
    await send('invoice.jpg', 'image/jpeg', await picture(600, 800, 3).jpeg().toBuffer());
    const [opened] = await Promise.all([
      keeper.waitForEvent('popup'),
      keeper.getByRole('link', { name: /^Open the paper/ }).click(),
    ]);
    await opened.waitForLoadState();
    expect(await opened.evaluate(() => document.images[0]?.naturalWidth)).toBe(600);
    await opened.close();
    await keeper.getByRole('button', { name: /^Put another paper/ }).click();
    await send('../../invoice 17.pdf', 'application/pdf', pdf);
    const [saved] = await Promise.all([
      keeper.waitForEvent('download'),
      keeper.getByRole('link', { name: /^Save the paper/ }).click(),
    ]);
    expect(saved.suggestedFilename()).toMatch(/^evidence-[0-9a-f]{12}\.pdf$/);
    expect(readFileSync(await saved.path()).equals(pdf)).toBe(true);
    await club.look(keeper, 'paper-there-phone');
  });

  it('takes it back by undo, so that the registrar judges the picture that is there, seen beside the verdict', async () => {
    await keeper.getByRole('button', { name: 'Undo' }).click();
    await keeper.getByRole('link', { name: /^Open the paper/ }).waitFor();
    await registrar.goto(`${club.url}/review`);
    const row = registrar.getByRole('listitem').filter({ hasText: 'invoice 17' }).last();
    await row.getByRole('link', { name: /^Open the paper/ }).waitFor();
    await row.getByRole('button', { name: /^Review it/ }).click();
    const image = row.getByRole('img', { name: 'The paper “invoice 17”' });
    await image.waitFor();
    await registrar.waitForFunction(() => [...document.images].some(({ naturalWidth }) => naturalWidth === 600));
    await club.look(registrar, 'review-with-paper');
    await expectAccessible(registrar, 'a review with its paper');
    await row.getByLabel('why it counts, or why not').fill('the importer and the label are named');
    await row.getByRole('button', { name: 'Accept' }).click();
    await registrar.getByText(/^Accepted: “invoice 17”/).waitFor();
    await keeper.reload();
    await keeper.getByRole('link', { name: /^Open the paper/ }).waitFor();
    expect(await keeper.getByRole('button', { name: /^Put/ }).count()).toBe(0);
  });

  it('finds on the page of the line what it was called, and when', async () => {
    await registrar.goto(`${club.url}/lines/${lineId}`);
    await registrar.getByText('What it was called, and when').click();
    await registrar
      .getByText(/invoice 17/)
      .first()
      .waitFor();
    await club.look(registrar, 'line-label-history');
    await registrar.getByRole('button', { name: 'Night theme' }).click();
    await club.look(registrar, 'line-label-history-dark');
    await expectAccessible(registrar, 'the history of the label of a line');
    expect(club.faults.filter((fault) => !/41[35]|422/.test(fault))).toEqual([]);
  });
});
