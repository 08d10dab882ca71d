import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bringCookie, expectAccessible, findChromium, openBrowser, openPage } from '../support/browser.ts';
import { askAs, setUpClub, startService, type Service } from '../support/service.ts';

const chromium = findChromium();
const seen = process.env['LOOK_AT'];

/** The page of a group: every sire with every dam in a grid, and an animal that moves to another group. */
describe.skipIf(chromium === null)('the page of a group', () => {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-pairings-'));
  const faults: string[] = [];
  let service: Service;
  let cookie: string;
  let browser: Browser;
  let page: Page;
  let speciesId: string;

  const post = async <T = { id: string }>(path: string, body: object): Promise<T> => {
    const answer = await askAs(cookie, `${service.url}/api/v1/${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    expect([path, answer.status]).toEqual([path, 201]);
    return (await answer.json()) as T;
  };
  const read = async <T>(path: string): Promise<T> =>
    (await (await askAs(cookie, `${service.url}/api/v1/${path}`)).json()) as T;
  const staysIn = async (id: string) => {
    type Stay = { individual: { code: string }; joined: string | null; left: string | null };
    const { members } = await read<{ members: Stay[] }>(`pairings/${id}`);
    return members.map(({ individual, joined, left }) => `${individual.code} ${joined ?? '?'} ${left ?? ''}`.trim());
  };
  const animal = (code: string, sex: string, origin: object = {}) =>
    post('individuals', { speciesId, code, sex, ...('clutchId' in origin ? {} : { hatched: '2018' }), ...origin });
  const group = async (name: string, ids: readonly string[]) =>
    (
      await post('pairings', {
        name,
        members: ids.map((individualId) => ({ individualId, joined: '2021-01-01' })),
      })
    ).id;

  beforeAll(async () => {
    service = await startService({ DATA_DIR: join(folder, 'data') });
    cookie = await setUpClub(service);
    browser = await openBrowser(chromium ?? '');
    ({ id: speciesId } = await post('species', { scientificName: 'Epipedobates anthonyi' }));
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, reducedMotion: 'reduce' });
    await bringCookie(context, service.url, cookie);
    page = await openPage(context, faults);
  }, 120_000);

  afterAll(async () => {
    await browser.close();
    service.process.kill('SIGTERM');
    await service.ended;
    rmSync(folder, { recursive: true, force: true });
    expect(faults).toEqual([]);
  });

  it('moves an animal to another group by the keyboard, on a day as vague as it is known, and takes both back at once', async () => {
    const [sire, dam, other] = [
      await animal('M-1', 'male'),
      await animal('M-2', 'female'),
      await animal('M-3', 'male'),
    ];
    const [from, to] = [await group('tank 1', [sire.id, dam.id]), await group('tank 2', [other.id])];
    await page.goto(`${service.url}/pairings/${from}`);
    await page.getByRole('heading', { level: 1, name: 'tank 1' }).waitFor();
    await page.keyboard.press('h');
    const form = page.getByRole('form', { name: 'Move an animal to another group' });
    await form.waitFor();
    await expectAccessible(page, 'moving an animal');
    if (seen) await page.screenshot({ path: join(seen, 'pairing-move.png'), fullPage: true });
    await page.keyboard.type('M-2'); // the focus is on who moves
    await page.keyboard.press('Tab');
    await page.waitForFunction(() => document.querySelectorAll('#where-to option').length > 1);
    await page.keyboard.type('tank 2');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('2020-06');
    await page.keyboard.press('Enter');
    // it did not join tank 1 before 2021: the register says so, and nothing was written
    await form.getByText('Not written', { exact: false }).or(form.locator('[data-form-summary]')).first().waitFor();
    expect(await staysIn(from)).toEqual(['M-1 2021-01-01', 'M-2 2021-01-01']);
    await form.getByLabel('when').fill('2024-06~');
    await form.getByLabel('when').press('Enter');
    await page.getByText('M-2 moved to tank 2.').waitFor();
    expect(await staysIn(from)).toEqual(['M-1 2021-01-01', 'M-2 2021-01-01 2024-06~']);
    expect(await staysIn(to)).toEqual(['M-3 2021-01-01', 'M-2 2024-06~']);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText(/^Taken back: M-2 moved/).waitFor();
    expect(await staysIn(from)).toEqual(['M-1 2021-01-01', 'M-2 2021-01-01']);
    expect(await staysIn(to)).toEqual(['M-3 2021-01-01']);

    await page.getByRole('button', { name: 'Move M-1 to another group' }).click();
    expect(await form.getByLabel('who moves').inputValue()).toBe(sire.id);
    await form.getByRole('button', { name: 'Leave it here' }).click();
    expect(await form.count()).toBe(0);
  }, 60_000);

  it('shows every sire with every dam, from one couple to twelve by twelve, and lets a small screen pan the grid only', async () => {
    const founders = { sire: (await animal('F-1', 'male')).id, dam: (await animal('F-2', 'female')).id };
    const clutch = await post('clutches', {
      laid: '2020-01-01',
      eggs: 30,
      sires: [{ individualId: founders.sire }],
      dams: [{ individualId: founders.dam }],
    });
    const young = async (sex: string, from: number, count: number): Promise<string[]> => {
      const made: string[] = [];
      for (let at = from; at < from + count; at++)
        made.push((await animal(`G-${sex.charAt(0)}${at}`, sex, { clutchId: clutch.id })).id);
      return made;
    };
    const [males, females, unsexed] = [
      await young('male', 1, 12),
      await young('female', 1, 12),
      await young('unsexed', 1, 1),
    ];
    const strangers = [(await animal('X-1', 'female')).id, (await animal('X-2', 'female')).id];
    const cellsOf = async (id: string): Promise<string[]> => {
      await page.goto(`${service.url}/pairings/${id}`);
      const grid = page.getByRole('grid');
      await grid.waitFor();
      return grid.locator('td[role=gridcell] .unseen').allInnerTexts();
    };
    // one stay at a time: each group is looked at, then emptied
    const empty = async (id: string) => {
      type Member = { id: string };
      const { members } = await read<{ members: Member[] }>(`pairings/${id}`);
      for (const member of members)
        await askAs(cookie, `${service.url}/api/v1/pairings/${id}/members/${member.id}`, {
          method: 'DELETE',
          headers: { 'if-match': '*' },
        });
    };

    const one = await group('one couple', [males[0] ?? '', strangers[0] ?? '']);
    expect(await cellsOf(one)).toEqual(['G-m1 and X-1: nothing known, depth 1 of 2']);
    await empty(one);

    const some = await group('a trio and more', [
      ...males.slice(0, 2),
      ...unsexed,
      ...females.slice(0, 2),
      ...strangers,
    ]);
    const told = await cellsOf(some);
    expect(told).toHaveLength(3 * 5);
    expect(told.filter((text) => text.endsWith('young 25\u202f% inbred, depth 2 of 2, over the limit'))).toHaveLength(
      8,
    );
    expect(told.filter((text) => text.includes(': nothing known, depth 1 of 2'))).toHaveLength(6);
    expect(told.filter((text) => text.endsWith('the same animal'))).toEqual(['G-u1: the same animal']);
    await expectAccessible(page, 'a grid of three by five');
    // the arrow keys walk it, and stop at its edge
    await page.locator('td[role=gridcell]').first().focus();
    for (const key of ['ArrowRight', 'ArrowDown', 'ArrowDown', 'ArrowDown']) await page.keyboard.press(key);
    expect(await page.evaluate(() => (document.activeElement as HTMLElement).dataset['cell'])).toBe('2-1');
    await lookAt('pairing-3x5');
    await empty(some);

    const many = await group('twelve by twelve', [...males, ...females]);
    expect(await cellsOf(many)).toHaveLength(144);
    await lookAt('pairing-12x12');
  }, 120_000);

  /** The page itself is never wider than the screen, and its text is legible; with LOOK_AT it is kept as a picture. */
  async function lookAt(name: string): Promise<void> {
    for (const width of [1280, 390, 320]) {
      await page.setViewportSize({ width, height: 900 });
      await page.waitForTimeout(100);
      const { spill, least } = await page.evaluate(() => ({
        spill: Math.max(0, document.documentElement.scrollWidth - window.innerWidth),
        least: Math.min(
          ...[...document.querySelectorAll('[role=grid] :is(a, b, small, span)')].map((one) =>
            parseFloat(getComputedStyle(one).fontSize),
          ),
        ),
      }));
      expect([name, width, spill, least >= 12]).toEqual([name, width, 0, true]);
      if (!seen) continue;
      for (const theme of ['day', 'night']) {
        await page.evaluate((to) => document.documentElement.setAttribute('data-theme', to), theme);
        await page.screenshot({ path: join(seen, `${name}-${width}-${theme}.png`), fullPage: true });
      }
      await page.evaluate(() => document.documentElement.removeAttribute('data-theme'));
    }
    await page.setViewportSize({ width: 1280, height: 900 });
  }
});
