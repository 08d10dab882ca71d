import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bringCookie, expectAccessible, findChromium, openBrowser, openPage } from '../support/browser.ts';
import { picture } from '../support/made-pictures.ts';
import { askAs, signInToDemo, startService, type Service } from '../support/service.ts';

const chromium = findChromium();
const seen = process.env['LOOK_AT'];

/** Two records of one invented animal, each with a photograph of its pattern. */
describe.skipIf(chromium === null)('a keeper who photographs the backs of frogs', () => {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-photographs-'));
  const faults: string[] = [];
  let service: Service;
  let browser: Browser;
  let phone: Page;
  let desk: Page;
  let one: string;
  let other: string;

  const look = async (page: Page, name: string): Promise<void> => {
    if (seen) await page.screenshot({ path: join(seen, `${name}.png`), fullPage: true });
  };
  const pageOf = async (name: string, size: { width: number; height: number }): Promise<Page> => {
    const context = await browser.newContext({ viewport: size });
    await bringCookie(context, service.url, await signInToDemo(service, name));
    return openPage(context, faults);
  };
  const write = async (cookie: string, path: string, body: object): Promise<{ id: string }> => {
    const headers = { 'Content-Type': 'application/json' };
    const answer = await askAs(cookie, `${service.url}/api/v1/${path}`, {
      method: 'POST',
      headers,
      body: JSON.stringify(body),
    });
    expect([path, answer.status]).toEqual([path, 201]);
    return (await answer.json()) as { id: string };
  };
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
    service = await startService({ DATA_DIR: join(folder, 'data'), SEED_DEMO: 'true' });
    const cookie = await signInToDemo(service, 'Saskia Brunmoor');
    const { id: speciesId } = await write(cookie, 'species', { scientificName: 'Inventus pictus' });
    one = (await write(cookie, 'individuals', { speciesId, code: 'PX-1' })).id;
    other = (await write(cookie, 'individuals', { speciesId, code: 'PX-2' })).id;
    browser = await openBrowser(chromium ?? '');
    phone = await pageOf('Saskia Brunmoor', { width: 390, height: 844 });
    desk = await pageOf('Orla Venndrick', { width: 1440, height: 1000 });
  });

  afterAll(async () => {
    await browser.close();
    service.process.kill('SIGTERM');
    await service.ended;
    rmSync(folder, { recursive: true, force: true });
  });

  it('is told what cannot be taken, and adds a picture by phone', async () => {
    await phone.goto(`${service.url}/animals/${one}`);
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
    await look(phone, 'photograph-form-phone');
    await expectAccessible(phone, 'the form of a photograph');
    await form.getByRole('button', { name: 'Add it' }).click();
    await phone.getByRole('img', { name: 'Photograph of the back of PX-1, 2024-05' }).scrollIntoViewIfNeeded();
    await phone.waitForFunction(() =>
      [...document.querySelectorAll<HTMLImageElement>('.photographs img')].every((image) => image.naturalWidth > 0),
    );
    expect(await areDrawn(phone, '.photographs')).toEqual([true]);
    await look(phone, 'photograph-strip-phone');
    await expectAccessible(phone, 'the photographs of an animal');
  });

  it('enlarges it, and finds in it nothing that the file did not show', async () => {
    await phone.getByRole('button', { name: /Enlarge/ }).click();
    const dialog = phone.getByRole('dialog');
    await dialog.getByRole('img').waitFor();
    await look(phone, 'photograph-large-phone');
    await expectAccessible(phone, 'a photograph enlarged');
    await dialog.getByRole('button', { name: 'Close' }).click();
    await dialog.waitFor({ state: 'hidden' });
  });

  it('lays two records beside each other, before a registrar merges them; afterwards both photographs are of one animal', async () => {
    await phone.goto(`${service.url}/animals/${other}`);
    await phone.getByRole('button', { name: 'Add a photograph' }).click();
    await phone.getByLabel('picture', { exact: true }).setInputFiles(await chosen(5));
    await phone.getByRole('button', { name: 'Add it' }).click();
    await phone.getByRole('img', { name: /^Photograph of the back of PX-2/ }).waitFor();
    await desk.goto(`${service.url}/merge?kept=${one}&duplicate=${other}`);
    await desk.getByRole('heading', { name: 'Is it the same animal?' }).waitFor();
    await desk.getByRole('img', { name: /^Photograph of the back of PX-2/ }).waitFor();
    await desk.waitForFunction(() =>
      [...document.querySelectorAll<HTMLImageElement>('.beside img')].every((image) => image.naturalWidth > 0),
    );
    expect(await areDrawn(desk, '.beside')).toEqual([true, true]);
    await look(desk, 'photographs-beside-desk');
    await expectAccessible(desk, 'photographs beside each other');
    await desk.getByLabel(/how it is known/).fill('the same spots');
    await desk.getByRole('button', { name: 'Merge', exact: true }).click();
    await desk.waitForURL(`**/animals/${one}`);
    await desk
      .getByRole('img', { name: /^Photograph of the back of PX-1/ })
      .nth(1)
      .waitFor();
    await look(desk, 'photographs-merged-desk');
    await desk.getByRole('button', { name: 'Night theme' }).click();
    await look(desk, 'photographs-merged-desk-dark');
    expect(faults.filter((fault) => !/415/.test(fault))).toEqual([]);
  });
});
