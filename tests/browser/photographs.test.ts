import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { picture } from '../support/made-pictures.ts';

const chromium = findChromium();

/** Two records of one invented animal, each with a photograph of its pattern. */
describe.skipIf(chromium === null)('a keeper who photographs the backs of frogs', () => {
  let club: DemoClub;
  let phone: Page;
  let desk: Page;
  let one: string;
  let other: string;

  const chosen = async (seed: number) => ({
    name: 'IMG_2041.jpg',
    mimeType: 'image/jpeg',
    buffer: await picture(900, 700, seed).jpeg().toBuffer(),
  });
  /** Whether the browser could draw all pictures of a part of a page. */
  const areDrawn = (page: Page, within: string): Promise<boolean[]> =>
    page
      .locator(`${within} img`)
      .evaluateAll((images) => images.map((image) => (image as HTMLImageElement).naturalWidth > 0));

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const keeper = 'Saskia Brunmoor';
    const { id: speciesId } = await club.write('species', { scientificName: 'Inventus pictus' }, keeper);
    one = (await club.write('individuals', { speciesId, code: 'PX-1' }, keeper)).id;
    other = (await club.write('individuals', { speciesId, code: 'PX-2' }, keeper)).id;
    phone = await club.page({ width: 390, height: 844 }, keeper);
    desk = await club.page();
  });

  afterAll(() => club.close());

  it('is told what cannot be taken, and adds a picture by phone', async () => {
    await phone.goto(`${club.url}/animals/${one}`);
    await phone.getByRole('button', { name: 'Add a photograph' }).click();
    const form = phone.getByRole('form', { name: 'A photograph' });
    await form.getByRole('button', { name: 'Add it' }).click();
    await form.getByText('Choose a picture, or take one.').waitFor();
    const file = form.getByLabel('picture', { exact: true });
    await file.setInputFiles({ name: 'back.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture') });
    await form.getByRole('button', { name: 'Add it' }).click();
    await form
      .getByText(/no picture that can be taken/)
      .first()
      .waitFor();
    await file.setInputFiles(await chosen(1));
    await form.getByLabel('taken').fill('2024-05');
    await club.look(phone, 'photograph-form-phone');
    await expectAccessible(phone, 'the form of a photograph');
    await form.getByRole('button', { name: 'Add it' }).click();
    await phone.getByRole('img', { name: 'Photograph of the back of PX-1, 2024-05' }).scrollIntoViewIfNeeded();
    await phone.waitForFunction(() =>
      [...document.querySelectorAll<HTMLImageElement>('.photographs img')].every((image) => image.naturalWidth > 0),
    );
    expect(await areDrawn(phone, '.photographs')).toEqual([true]);
    await club.look(phone, 'photograph-strip-phone');
    await expectAccessible(phone, 'the photographs of an animal');
  });

  it('enlarges it, and finds in it nothing that the file did not show', async () => {
    await phone.getByRole('button', { name: /Enlarge/ }).click();
    const dialog = phone.getByRole('dialog');
    await dialog.getByRole('img').waitFor();
    await club.look(phone, 'photograph-large-phone');
    await expectAccessible(phone, 'a photograph enlarged');
    await dialog.getByRole('button', { name: 'Close' }).click();
    await dialog.waitFor({ state: 'hidden' });
  });

  it('lays two records beside each other, before a registrar merges them; afterwards both photographs are of one animal', async () => {
    await phone.goto(`${club.url}/animals/${other}`);
    await phone.getByRole('button', { name: 'Add a photograph' }).click();
    await phone.getByLabel('picture', { exact: true }).setInputFiles(await chosen(5));
    await phone.getByRole('button', { name: 'Add it' }).click();
    await phone.getByRole('img', { name: /^Photograph of the back of PX-2/ }).waitFor();
    await desk.goto(`${club.url}/merge?kept=${one}&duplicate=${other}`);
    await desk.getByRole('heading', { name: 'Is it the same animal?' }).waitFor();
    await desk.getByRole('img', { name: /^Photograph of the back of PX-2/ }).waitFor();
    await desk.waitForFunction(() =>
      [...document.querySelectorAll<HTMLImageElement>('.beside img')].every((image) => image.naturalWidth > 0),
    );
    expect(await areDrawn(desk, '.beside')).toEqual([true, true]);
    await club.look(desk, 'photographs-beside-desk');
    await expectAccessible(desk, 'photographs beside each other');
    await desk.getByLabel(/how it is known/).fill('the same spots');
    await desk.getByRole('button', { name: 'Merge', exact: true }).click();
    await desk.waitForURL(`**/animals/${one}`);
    await desk
      .getByRole('img', { name: /^Photograph of the back of PX-1/ })
      .nth(1)
      .waitFor();
    await club.look(desk, 'photographs-merged-desk');
    await desk.getByRole('button', { name: 'Night theme' }).click();
    await club.look(desk, 'photographs-merged-desk-dark');
    expect(club.faults.filter((fault) => !/415/.test(fault))).toEqual([]);
  });
});
