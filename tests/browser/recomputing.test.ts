import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { migrate } from '../../api/platform/data-source.ts';
import { startEmbeddedDatabase, type EmbeddedDatabase } from '../../api/platform/embedded-database.ts';
import { fillRegister, MILLION, type FilledRegister } from '../bench/million.ts';
import { bringCookie, expectAccessible, findChromium, openBrowser, openPage } from '../support/browser.ts';
import { askAs, setUpClub, startService, type Service } from '../support/service.ts';

const chromium = findChromium();
const shape = { ...MILLION, name: 'a line of 30 000', lines: 1, animalsPerLine: 30_000 };

/** A correction at the root of a line of 30 000, seen by somebody who reads meanwhile. */
describe.skipIf(chromium === null)('figures that are recomputed', () => {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-recomputing-'));
  const faults: string[] = [];
  let database: EmbeddedDatabase;
  let filled: FilledRegister;
  let service: Service;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let cookie: string;

  const read = async <T>(path: string): Promise<T> =>
    (await (await askAs(cookie, `${service.url}/api/v1${path}`)).json()) as T;
  async function untilCurrent(): Promise<void> {
    for (let look = 0; look < 240; look++) {
      if ((await read<{ current: boolean }>('/lineage/progress')).current) return;
      await new Promise((resolve) => setTimeout(resolve, 250));
    }
    throw new Error('the figures did not become current within a minute');
  }
  const notice = () => page.getByRole('status').filter({ hasText: 'Figures are being reckoned' });

  async function correctRoot(baseKinship: number): Promise<void> {
    const { items } = await read<{ items: { id: string }[] }>('/sources');
    const answer = await askAs(cookie, `${service.url}/api/v1/sources/${items[0]?.id}`, {
      method: 'PATCH',
      headers: { 'content-type': 'application/json', 'if-match': '*' },
      body: JSON.stringify({ baseKinship }),
    });
    expect(answer.status).toBe(200);
  }

  beforeAll(async () => {
    database = await startEmbeddedDatabase(folder);
    await migrate(database.url);
    service = await startService({ DATABASE_URL: database.url, DATA_DIR: folder });
    cookie = await setUpClub(service);
    filled = await fillRegister(database.url, shape);
    const client = new pg.Client({ connectionString: database.url });
    await client.connect();
    await client.query(`update keeper set roles = '{registrar,administrator}' where 'administrator' = any(roles)`);
    await client.end();
    await untilCurrent();
    browser = await openBrowser(chromium ?? '');
    context = await browser.newContext({ viewport: { width: 1440, height: 1000 } });
    await bringCookie(context, service.url, cookie);
    page = await openPage(context, faults);
  });

  afterAll(async () => {
    await browser.close();
    service.process.kill('SIGTERM');
    await service.ended;
    await database.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  it('are announced in the margin of the register and counted until they are done; then the list is read again', async () => {
    const figures = page.locator('tbody tr').first();
    await page.goto(`${service.url}/register?sort=inbreeding`);
    // a founder
    await expect.poll(() => figures.textContent(), { timeout: 20_000 }).toMatch(/\D0\s%/);
    await correctRoot(0.25);
    await page.reload();
    await notice().first().waitFor();
    await page.getByText('This list goes by those from before').waitFor();
    await expect.poll(() => notice().first().textContent(), { timeout: 30_000 }).toMatch(/\d+\s?%/);
    await expectAccessible(page, 'register while figures are reckoned');
    await expect.poll(() => notice().count(), { timeout: 60_000 }).toBe(0);
    await expect.poll(() => figures.textContent(), { timeout: 20_000 }).toMatch(/\D25\s%/);
    expect(faults).toEqual([]);
  });

  it('of one animal say that they are from before, and change by themselves once they are done', async () => {
    const id = filled.animalId(22);
    await untilCurrent();
    await correctRoot(0.5);
    await page.goto(`${service.url}/animals/${id}`);
    await notice().first().waitFor();
    await expect.poll(() => notice().count(), { timeout: 60_000 }).toBe(0);
    // young of two founders, who are akin by half now
    const { inbreeding } = await read<{ inbreeding: { expected: number } }>(`/individuals/${id}/lineage`);
    expect(inbreeding.expected).toBeCloseTo(0.5, 12);
    await page
      .getByText(/^50\s%$/)
      .first()
      .waitFor();
    expect(faults).toEqual([]);
  });
});
