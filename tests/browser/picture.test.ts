import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { bringCookie, findChromium, openBrowser } from '../support/browser.ts';
import { askAs, signInToDemo, startService } from '../support/service.ts';

const picture = fileURLToPath(new URL('../../seed-demo/animal-page.png', import.meta.url));
const taken = fileURLToPath(new URL('../output/animal-page.png', import.meta.url));
const chromium = findChromium();

/** Width and height of a PNG, from its header. */
const sizeOf = (png: Buffer): [number, number] => [png.readUInt32BE(16), png.readUInt32BE(20)];

it.skipIf(chromium === null)(
  'the picture in the README is of the animal page as it is (npm run picture takes it anew)',
  async () => {
    const folder = mkdtempSync(join(tmpdir(), 'linekeeper-picture-'));
    const service = await startService({ DATA_DIR: join(folder, 'data'), SEED_DEMO: 'true' });
    const browser = await openBrowser(chromium ?? '');
    try {
      const cookie = await signInToDemo(service);
      const context = await browser.newContext({
        viewport: { width: 1440, height: 1000 },
        colorScheme: 'light',
        reducedMotion: 'reduce',
      });
      await bringCookie(context, service.url, cookie);
      const page = await context.newPage();
      const { items } = (await (await askAs(cookie, `${service.url}/api/v1/individuals?code=RV-61`)).json()) as {
        items: { id: string }[];
      };
      await page.goto(`${service.url}/animals/${items[0]?.id}`);
      await page.getByRole('heading', { name: 'Ancestors' }).waitFor();
      await page
        .getByRole('radio', { name: '6', exact: true })
        .or(page.getByRole('button', { name: '6', exact: true }))
        .first()
        .click({ force: true });
      await page.waitForLoadState('networkidle');
      await page.waitForTimeout(500);
      const png = await page.screenshot({ fullPage: true });
      mkdirSync(fileURLToPath(new URL('../output', import.meta.url)), { recursive: true });
      writeFileSync(taken, png);
      if (process.env['UPDATE_PICTURE']) writeFileSync(picture, png);
      expect(existsSync(picture)).toBe(true);
      const [width, height] = sizeOf(png);
      const [committedWidth, committedHeight] = sizeOf(readFileSync(picture));
      expect(committedWidth).toBe(width);
      // a page that grew or shrank by a fifth is another page
      expect(Math.abs(committedHeight - height) / height).toBeLessThan(0.2);
    } finally {
      await browser.close();
      service.process.kill('SIGTERM');
      await service.ended;
      rmSync(folder, { recursive: true, force: true });
    }
  },
);
