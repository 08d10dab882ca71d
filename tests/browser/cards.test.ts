import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import jsQR from 'jsqr';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shortId } from '../../shared/short-id.ts';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { readPdf } from '../support/printed.ts';

const chromium = findChromium();
const run = promisify(execFile);
const dots = 300 / 25.4; // in a millimetre

interface Named {
  id: string;
  name: string;
  members: { left: string | null; individual: { code: string | null } }[];
}

/** What a decoder of its own reads in a part of a picture, of which it gets twice the squares that it needs. */
async function decoded(picture: Buffer, part: { left: number; top: number; width: number; height: number }) {
  const { data, info } = await sharp(picture).extract(part).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return jsQR.default(new Uint8ClampedArray(data), info.width, info.height)?.data;
}

describe.skipIf(chromium === null)('cards for tanks and clutches', () => {
  let club: DemoClub;
  let page: Page;
  let folder: string;
  let tanks: Named[];
  let clutches: { id: string; laid: string }[];

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'linekeeper-cards-'));
    club = await DemoClub.open(chromium);
    const pairings = await club.read<{ items: Named[] }>('pairings?limit=200');
    tanks = pairings.items.filter(({ members }) => members.some(({ left }) => left === null)).slice(0, 5);
    clutches = (await club.read<{ items: typeof clutches }>('clutches?limit=3')).items;
    page = await club.page();
  });

  afterAll(async () => {
    await club.close();
    rmSync(folder, { recursive: true, force: true });
  });

  /** The PDF of the page as the printer gets it, one picture of each of its pages, and its text. */
  async function printed(name: string): Promise<{ info: string; text: string; pictures: Buffer[] }> {
    const file = join(folder, `${name}.pdf`);
    writeFileSync(file, await page.pdf({ preferCSSPageSize: true, printBackground: false }));
    const info = (await run('pdfinfo', [file])).stdout;
    await run('pdftoppm', ['-r', '300', '-gray', '-png', file, join(folder, name)]);
    const count = Number(/Pages:\s+(\d+)/.exec(info)?.[1]);
    const pictures = Array.from({ length: count }, (_, at) => readFileSync(join(folder, `${name}-${at + 1}.png`)));
    if (process.env['LOOK_AT'])
      for (const [at, picture] of pictures.entries())
        await sharp(picture)
          .resize(900)
          .toFile(join(process.env['LOOK_AT'], `cards-${name}-${at + 1}.png`));
    return { info, text: (await run('pdftotext', ['-layout', file, '-'])).stdout, pictures };
  }

  /** What was printed has letters that can be read, black ones, and no colour that a printer would have to make grey. */
  async function expectBlackOnWhite(name: string): Promise<void> {
    const { leastLetter, ink } = await readPdf(join(folder, `${name}.pdf`));
    expect(leastLetter).toBeGreaterThanOrEqual(5);
    expect(ink.colour).toBeLessThan(0.5);
    expect(ink.mean).toBeGreaterThan(200);
    expect(ink.darkest).toBeLessThan(90);
  }

  it('tell of each tank who lives there and since when, four to a page in true millimetres', async () => {
    await page.goto(`${club.url}/cards?pairings=${tanks.map(({ id }) => id).join(',')}`);
    await page.getByText('5 cards').waitFor();
    await club.look(page, 'cards-desk');
    await expectAccessible(page, 'cards');
    const { info, text, pictures } = await printed('tanks');
    await expectBlackOnWhite('tanks');
    expect(info).toMatch(/Pages:\s+2\n/);
    expect(info).toMatch(/Page size:\s+59[45](\.\d+)? x 84[12](\.\d+)? pts/);
    for (const { members } of tanks)
      for (const { individual } of members.filter(({ left }) => left === null).slice(0, 10))
        expect(text).toContain(individual.code ?? '');
    for (const [at, { id }] of tanks.entries()) {
      const place = at % 4;
      const corner = {
        left: Math.round((place % 2) * 105 * dots),
        top: Math.round(Math.floor(place / 2) * 148.5 * dots),
      };
      const part = { ...corner, width: Math.floor(104.9 * dots), height: Math.floor(60 * dots) };
      expect(await decoded(pictures[at < 4 ? 0 : 1] ?? Buffer.alloc(0), part)).toBe(`${club.url}/p/${shortId(id)}`);
    }
  });

  it('of clutches have boxes for counts by hand, also on index cards of Letter paper', async () => {
    await page.goto(`${club.url}/clutches`);
    await page.getByRole('link', { name: 'Cards for these' }).waitFor();
    await page.goto(`${club.url}/cards?clutches=${clutches.map(({ id }) => id).join(',')}`);
    await page.getByLabel('paper').selectOption({ label: 'Letter, 3 index cards of 127 × 76.2 mm' });
    const { info, text, pictures } = await printed('clutches');
    await expectBlackOnWhite('clutches');
    expect(info).toMatch(/Pages:\s+1\n/);
    expect(info).toMatch(/Page size:\s+61[12](\.\d+)? x 79[12](\.\d+)? pts/);
    for (const { laid } of clutches) expect(text).toContain(laid);
    for (const word of ['hatched', 'out of water', 'tadpoles', 'dam', 'sire']) expect(text).toContain(word);
    for (const [at, { id }] of clutches.entries()) {
      const part = {
        left: Math.round(44.4 * dots),
        top: Math.round((25.4 + at * 76.2) * dots),
        width: Math.round(127 * dots),
        height: Math.floor(76 * dots),
      };
      expect(await decoded(pictures[0] ?? Buffer.alloc(0), part)).toBe(`${club.url}/c/${shortId(id)}`);
    }
    await page.getByLabel('paper').selectOption({ label: 'A4, 8 cards of A7 (105 × 74.2 mm)' });
    expect((await printed('small')).info).toMatch(/Pages:\s+1\n/);
  });

  it('lead back by their codes, and say where one is misread', async () => {
    await page.goto(`${club.url}/c/${shortId(clutches[0]?.id ?? '')}`);
    await page.waitForURL(new RegExp(`/clutches/${clutches[0]?.id ?? ''}$`));
    await page.getByRole('link', { name: 'Clutch card' }).waitFor();
    await page.goto(`${club.url}/p/${shortId(tanks[0]?.id ?? '')}`);
    await page.getByRole('heading', { level: 1, name: tanks[0]?.name ?? '' }).waitFor();
    await page.goto(`${club.url}/p/nothing`);
    await page.getByText('a character is missing or wrong').waitFor();
  });

  it('are chosen on a narrow phone as well', async () => {
    const phone = await club.page({ width: 320, height: 700 });
    await phone.goto(`${club.url}/cards?pairings=${tanks[0]?.id ?? ''}`);
    await phone.getByText('1 card', { exact: true }).waitFor();
    expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await expectAccessible(phone, 'cards on a phone');
  });
});
