import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { bringCookie, expectAccessible, findChromium, openBrowser, openPage } from '../support/browser.ts';
import { askAs, signInToDemo, startService, type Service } from '../support/service.ts';

const chromium = findChromium();

interface Animal {
  id: string;
  version: number;
  notes: string | null;
  outOfWater: string | null;
  withdrawn: { reason: string } | null;
  observations: unknown[];
}

/** On the page of GT-41 of the demo club: its parents are one of three pairs, its ancestors loop. */
describe.skipIf(chromium === null)('on the page of an animal', () => {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-animal-'));
  const faults: string[] = [];
  let service: Service;
  let browser: Browser;
  let page: Page;
  let cookie: string;
  let path: string;

  const read = async (): Promise<Animal> =>
    (await (await askAs(cookie, `${service.url}/api/v1${path}`)).json()) as Animal;
  /** Another person changes the record meanwhile. */
  const changeElsewhere = async (fields: object): Promise<void> => {
    const { version } = await read();
    const headers = { 'Content-Type': 'application/json', 'If-Match': `"${version}"` };
    const answer = await askAs(cookie, `${service.url}/api/v1${path}`, {
      method: 'PATCH',
      headers,
      body: JSON.stringify(fields),
    });
    expect(answer.status).toBe(200);
  };
  const press = (name: string): Promise<void> => page.getByRole('button', { name, exact: true }).click();
  const save = (kind: string): Promise<void> =>
    page.locator('#ancestor-chart').getByRole('button', { name: kind }).click();
  const write = (): Promise<void> => press('Write it down');

  beforeAll(async () => {
    service = await startService({ DATA_DIR: join(folder, 'data'), SEED_DEMO: 'true' });
    cookie = await signInToDemo(service);
    const answer = await askAs(cookie, `${service.url}/api/v1/individuals?code=GT-41`);
    const { items } = (await answer.json()) as { items: { id: string }[] };
    path = `/individuals/${items[0]?.id}`;
    browser = await openBrowser(chromium ?? '');
    const context = await browser.newContext({ viewport: { width: 1440, height: 1000 }, acceptDownloads: true });
    await bringCookie(context, service.url, cookie);
    page = await openPage(context, faults);
  });

  afterAll(async () => {
    await browser.close();
    service.process.kill('SIGTERM');
    await service.ended;
    rmSync(folder, { recursive: true, force: true });
  });

  beforeEach(async () => {
    await page.goto(`${service.url}${path.replace('individuals', 'animals')}`);
    await page.getByRole('region', { name: 'Ancestor chart' }).waitFor();
    faults.length = 0;
  });

  it('a field is edited in place, and the old value comes back with undo', async () => {
    await page.keyboard.press('e');
    await page.getByLabel('notes').fill('Seen under the leaf litter');
    await write();
    await page.getByText('GT-41 changed: notes.').waitFor();
    expect((await read()).notes).toBe('Seen under the leaf litter');
    await press('Undo');
    await page.getByText(/^Taken back: GT-41 changed/).waitFor();
    expect((await read()).notes).toBeNull();
    expect(faults).toEqual([]);
  });

  it('two people who changed the same field are shown both values and choose', async () => {
    await press('Edit');
    await page.getByLabel('notes').fill('mine');
    await changeElsewhere({ notes: 'theirs', outOfWater: '2025-08-02' });
    await write();
    await page.getByText('Changed meanwhile').waitFor();
    await expectAccessible(page, 'two edits');
    await page.getByRole('radio', { name: /theirs$/ }).check();
    await press('Write these');
    await page.getByRole('region', { name: 'Identity' }).waitFor();
    expect(await read()).toMatchObject({ notes: 'theirs', outOfWater: '2025-08-02' });
  });

  it('two people who changed different fields both keep theirs', async () => {
    await press('Edit');
    await page.getByLabel('notes').fill('mine again');
    await changeElsewhere({ outOfWater: '2025-08-03' });
    await write();
    await page.getByText('GT-41 changed: notes.').waitFor();
    expect(await read()).toMatchObject({ notes: 'mine again', outOfWater: '2025-08-03' });
  });

  it('dates that cannot be right together are refused at their field, and what was typed stays', async () => {
    await press('Edit');
    await page.getByLabel('hatched').fill('1990');
    await write();
    await page.getByText('hatched before its clutch was laid').waitFor();
    expect(await page.getByLabel('hatched').inputValue()).toBe('1990');
  });

  it('a measurement is noted and taken back', async () => {
    await press('Add a note');
    await page.getByLabel('what was seen').fill('called twice');
    await page.getByLabel('length').fill('19,5');
    await write();
    await page.getByText('19.5 mm called twice').waitFor();
    expect((await read()).observations).toHaveLength(1);
    await press('Undo');
    await page.getByText('Taken back: Noted for GT-41.').waitFor();
    expect((await read()).observations).toHaveLength(0);
  });

  it('the record is withdrawn with a reason and brought back', async () => {
    await press('Withdraw this record');
    await page.getByLabel('why this record is withdrawn').fill('written twice');
    await press('Withdraw');
    await page.getByText('GT-41 withdrawn.').waitFor();
    expect((await read()).withdrawn?.reason).toBe('written twice');
    await press('Undo');
    await page.getByText('Taken back: GT-41 withdrawn.').waitFor();
    expect((await read()).withdrawn).toBeNull();
  });

  it('the chart is walked by arrow keys, lights the loop it stands on, and says the same as a table', async () => {
    await page.locator('a.node[aria-current]').focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowDown');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-current'))).toBe('page');
    await page.locator('a.node[aria-label^="GT-22"]').focus();
    await page.getByText('GT-22 stands behind both parents').waitFor();
    await press('Table');
    await page.getByRole('rowgroup').filter({ hasText: 'great-grandparents' }).getByText('GT-22').waitFor();
    await expectAccessible(page, 'table of ancestors');
  });

  it('the chart is saved as an SVG that stands alone, and as a picture of twice its size', async () => {
    const [download] = await Promise.all([page.waitForEvent('download'), save('SVG')]);
    const file = join(folder, 'chart.svg');
    await download.saveAs(file);
    const svg = readFileSync(file, 'utf8');
    expect(svg).toContain('GT-22');
    expect(svg).toContain('<pattern id="p-stated"');
    expect(svg).not.toMatch(/var\(|class=|<a |color\(|rgba\(|url\(&quot;\/|https?:\/\/(?!www\.w3\.org)/);
    expect(svg.match(/@font-face/g)?.length).toBeGreaterThanOrEqual(2);
    const [picture] = await Promise.all([page.waitForEvent('download'), save('PNG')]);
    await picture.saveAs(join(folder, 'chart.png'));
    const { width, height } = await sharp(join(folder, 'chart.png')).metadata();
    const [, shownWidth = '', shownHeight = ''] = /<svg[^>]* width="([\d.]+)" height="([\d.]+)"/.exec(svg) ?? [];
    expect([width, height]).toEqual([Math.round(2 * Number(shownWidth)), Math.round(2 * Number(shownHeight))]);
    // on a page of its own the file brings its fonts
    const alone = await browser.newPage({ viewport: { width: 1000, height: 1000 } });
    await alone.setContent(svg);
    const fonts = await alone.evaluate(async () => {
      await document.fonts.ready;
      return [...document.fonts].filter(({ status }) => status === 'loaded').map(({ family }) => family);
    });
    expect(fonts.join()).toContain('Atkinson Hyperlegible Next Variable');
    await alone.close();
  });

  it('every figure says why in the margin, F as an addition over the candidate pairs', async () => {
    const note = page.locator('.why-note');
    await note.getByRole('table', { name: 'Addition over the candidate parents' }).waitFor();
    expect(await note.getByRole('table').first().locator('tr').count()).toBe(4);
    const shared = note.getByRole('table', { name: 'Parts of F by common ancestor' });
    expect(await shared.locator('tr').first().innerText()).toMatch(/^GT-\d+\s+\d+ loops? of \d/);
    const parts = note.getByRole('table', { name: 'Parts of F by founder or source' });
    expect(await parts.locator('tr').last().innerText()).toContain('F expected');
    expect(await note.getByText('Lacy, Alaks & Walsh 1996').count()).toBe(1);
    await page.getByRole('button', { name: 'why? pedigree depth' }).click();
    await note.getByText('every ancestor known back to').waitFor();
    await expectAccessible(page, 'animal page');
    await page.getByRole('button', { name: 'why? mean kinship' }).click();
    await note.getByText('rank, the rarest genes first').waitFor();
    await page.getByRole('button', { name: 'why? ancestral F' }).click();
    await note.getByText('by Ballou’s recursion').waitFor();
    await expectAccessible(page, 'ancestral inbreeding');
  });
});
