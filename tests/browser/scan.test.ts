import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium as engine, type Browser, type BrowserContext, type Page } from 'playwright-core';
import sharp, { type Sharp } from 'sharp';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { qrCode, quietZone } from '../../shared/qr-code.ts';
import { bringCookie, expectAccessible, findChromium, openPage } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();
const phone = { width: 390, height: 844 };

/** A picture of a code, as a hand holds it before a camera: small, turned a little, on a grey ground. */
function pictureOf(text: string): Sharp {
  const { size, path } = qrCode(text);
  const side = size + 2 * quietZone;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${-quietZone} ${-quietZone} ${side} ${side}" width="260" height="260"><rect x="${-quietZone}" y="${-quietZone}" width="${side}" height="${side}" fill="#f4f1e8"/><path d="${path}" fill="#222"/></svg>`;
  return sharp(Buffer.from(svg)).rotate(4, { background: '#8a8577' });
}

/** The same as what a camera films: one still picture, as YUV4MPEG2 with 4:2:0 colours. */
async function filmOf(text: string): Promise<Buffer> {
  const [width, height] = [640, 480];
  const code = await pictureOf(text).png().toBuffer();
  const { data } = await sharp({ create: { width, height, channels: 3, background: '#8a8577' } })
    .composite([{ input: code }])
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  // one byte of light a point; grey has no colour
  const light = data.length === width * height ? data : Buffer.from(data.filter((_, at) => at % 3 === 0));
  const colour = Buffer.alloc((width * height) / 2, 128);
  const frame = Buffer.concat([Buffer.from('FRAME\n'), light, colour]);
  return Buffer.concat([Buffer.from(`YUV4MPEG2 W${width} H${height} F5:1 Ip A1:1 C420mpeg2\n`), frame, frame]);
}

describe.skipIf(chromium === null)('scanning a label', () => {
  let club: DemoClub;
  let folder: string;
  let animal: { id: string; number: string; code: string };
  let browser: Browser | null = null;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    folder = mkdtempSync(join(tmpdir(), 'linekeeper-scan-'));
    const { items } = await club.read<{ items: (typeof animal)[] }>('individuals?limit=1&status=alive');
    animal = items[0] as typeof animal;
  });

  afterEach(async () => {
    await browser?.close();
    browser = null;
  });

  afterAll(async () => {
    await club.close();
    rmSync(folder, { recursive: true, force: true });
  });

  /** A phone whose camera sees a code; without one, a device without a camera. */
  async function phoneThatSees(
    text: string | null,
    isAllowed = true,
  ): Promise<{ page: Page; context: BrowserContext }> {
    const args = ['--disable-gpu', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])];
    if (text !== null) {
      const film = join(folder, 'seen.y4m');
      writeFileSync(film, await filmOf(text));
      args.push('--use-fake-device-for-media-stream', `--use-file-for-fake-video-capture=${film}`);
    }
    browser = await engine.launch({ executablePath: chromium ?? '', args });
    const context = await browser.newContext({ viewport: phone });
    if (isAllowed) await context.grantPermissions(['camera'], { origin: club.url });
    await bringCookie(context, club.url, club.cookie);
    return { page: await openPage(context, club.faults), context };
  }

  it('opens the animal, from the bar of the phone', async () => {
    const { page } = await phoneThatSees(`${club.url}/n/${animal.number}`);
    await page.goto(`${club.url}/register`);
    await page.getByRole('navigation', { name: 'Quick ways' }).getByRole('link', { name: 'Scan' }).click();
    await page.getByRole('heading', { name: animal.code }).first().waitFor();
    expect(new URL(page.url()).pathname).toBe(`/animals/${animal.id}`);
  });

  it('of another place opens nothing, and says what it read', async () => {
    const elsewhere = `https://elsewhere.example/n/${animal.number}`;
    const { page } = await phoneThatSees(elsewhere);
    await page.goto(`${club.url}/scan`);
    await page.getByRole('heading', { name: 'Nothing is opened' }).waitFor();
    await page.getByText(elsewhere).waitFor();
    await page.getByText('It is a foreign code').waitFor();
    for (const theme of ['day', 'night']) {
      await page.evaluate((name) => (document.documentElement.dataset['theme'] = name), theme);
      await expectAccessible(page, `a code of another place by ${theme}`);
      await club.look(page, `scan-elsewhere-${theme}`);
    }
    expect(new URL(page.url()).pathname).toBe('/scan');
    // perhaps the register had another address when the label was printed
    await page.getByRole('button', { name: `Look for ${animal.number} here` }).click();
    await page.getByRole('heading', { name: animal.code }).first().waitFor();
  });

  it('says what to do without a camera, and takes a photograph or a number instead', async () => {
    const { page } = await phoneThatSees(null);
    await page.goto(`${club.url}/scan`);
    await page.getByRole('alert').filter({ hasText: 'no camera' }).waitFor();
    await expectAccessible(page, 'no camera');
    await club.look(page, 'scan-no-camera');
    await page.getByLabel('number on the label').fill('1351-6');
    await page.getByRole('button', { name: 'Open it' }).click();
    await page.getByText('its last character does not fit').waitFor();
    const photo = (buffer: Buffer) => ({ name: 'label.png', mimeType: 'image/png', buffer });
    const chooser = page.getByLabel('a photograph of the code');
    const blank = sharp({ create: { width: 400, height: 300, channels: 3, background: '#777' } });
    await chooser.setInputFiles(photo(await blank.png().toBuffer()));
    await page.getByText('There is no code in this photograph').waitFor();
    await chooser.setInputFiles(photo(Buffer.from('no picture')));
    await page.getByText('This file cannot be opened as a photograph').waitFor();
    await chooser.setInputFiles(photo(await pictureOf(`${club.url}/animals/${animal.id}`).png().toBuffer()));
    await page.getByRole('heading', { name: animal.code }).first().waitFor();
    await page.goto(`${club.url}/scan`);
    await page.getByLabel('number on the label').fill(animal.number);
    await page.getByRole('button', { name: 'Open it' }).click();
    await page.getByRole('heading', { name: animal.code }).first().waitFor();
  });

  it('says how the camera is allowed where it was refused', async () => {
    const { page } = await phoneThatSees('a frog', false);
    await page.goto(`${club.url}/scan`);
    await page.getByRole('alert').filter({ hasText: 'The camera was refused.' }).waitFor();
    await page.setViewportSize({ width: 320, height: 700 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await club.look(page, 'scan-refused-320');
  });

  it('met no fault on the way, and no request left this machine', () => {
    expect(club.faults).toEqual([]);
  });
});
