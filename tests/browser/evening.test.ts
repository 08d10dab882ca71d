import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { picture } from '../support/made-pictures.ts';

const chromium = findChromium();

const patience = { timeout: 15_000 };

/** A whole evening's entry as a keeper types it: no mouse, no click. */
describe.runIf(chromium)('An evening at the keyboard', () => {
  let club: DemoClub;
  let page: Page;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    page = await club.page();
    page.setDefaultTimeout(20_000);
    await page.goto(`${club.url}/register`);
    await page.getByRole('heading', { level: 1 }).waitFor();
  });
  afterAll(async () => club.close());
  afterEach(async ({ task }) => {
    if (task.result?.state === 'fail') await club.look(page, `failed-${task.id}`);
  });

  const press = (...keys: string[]) =>
    keys.reduce<Promise<void>>((before, key) => before.then(() => page.keyboard.press(key)), Promise.resolve());
  const palette = () => page.getByRole('dialog', { name: /Find or do anything|What with/ });
  const undoBar = (text: string | RegExp) => page.locator('[role=status]').getByText(text).first();

  /** What has the focus, by its name; the focus is in sight, and on no body. */
  async function focused(): Promise<string> {
    const found = await page.evaluate(() => {
      const element = document.activeElement as HTMLElement | null;
      if (!element || element === document.body) return { name: 'nothing', inSight: false };
      const box = element.getBoundingClientRect();
      const label = (element as HTMLInputElement).labels?.[0]?.textContent ?? '';
      const legend = element.closest('fieldset')?.querySelector('legend')?.textContent ?? '';
      const inSight = box.bottom > 0 && box.top < innerHeight && box.width > 0;
      return { name: (legend || label || element.textContent || '').trim(), inSight };
    });
    expect(found).toMatchObject({ inSight: true });
    return found.name;
  }

  async function say(what: string): Promise<void> {
    await press('Control+k');
    await palette().waitFor();
    await page.keyboard.type(what);
  }
  /** Walks by Tab until a control of this name has the focus. */
  async function tabTo(name: string | RegExp, most = 60): Promise<void> {
    for (let step = 0; step < most; step++) {
      await press('Tab');
      const here = await page.evaluate(() => {
        const element = document.activeElement as HTMLInputElement | null;
        return `${element?.getAttribute('aria-label') ?? ''} ${element?.labels?.[0]?.textContent ?? ''} ${element?.textContent ?? ''}`;
      });
      if (here.match(name)) return;
    }
    throw new Error(`no control ${String(name)} within ${most} steps of Tab`);
  }

  let clutch = '';

  it('notes a clutch and raises its young from it', async () => {
    await press('n');
    await page.getByRole('heading', { name: 'Note a clutch' }).waitFor();
    await page.locator('select optgroup option').first().waitFor({ state: 'attached' });
    await tabTo('where');
    await press('ArrowDown');
    await page
      .getByText(/^\d+\.\d+\.\d+$/)
      .first()
      .waitFor();
    await press('Control+Enter');
    await page.waitForURL(/\/clutches\/[0-9a-f-]{36}$/);
    clutch = new URL(page.url()).pathname;
    await undoBar(/is written down/).waitFor();
    await press('y');
    await page.keyboard.type('3');
    expect(await focused()).toBe('how many');
    await press('Enter');
    await undoBar(/3 froglets/).waitFor();
    await page.getByText('3 animals in the register').waitFor();
  });

  it('goes through them: sexes one, measures the next, writes the same again, and each has its undo', async () => {
    await page.getByRole('heading', { level: 1 }).focus();
    await press('g');
    await page.waitForURL(/\/round\?clutch=/);
    await page.getByText('1 of 3').waitFor();
    await expect.poll(focused, patience).toBe('sex');
    await club.look(page, 'round');
    await expectAccessible(page, 'round');
    await press('ArrowDown');
    await tabTo('length');
    await page.keyboard.type('14,5');
    await press('Enter');
    await page.getByText('2 of 3').waitFor();
    await undoBar(/^Written down for /).waitFor();
    await expect.poll(focused, patience).toBe('sex');
    expect(await page.getByLabel('length', { exact: true }).inputValue()).toBe('');
    await press('Alt+Enter');
    await page.getByText('3 of 3').waitFor();
    await expect.poll(focused, patience).toBe('sex');
    await tabTo('length');
    await page.keyboard.type('long');
    await press('Enter');
    await page.getByText('Write millimetres as a number').waitFor();
    expect(await focused()).toBe('length');
    await press('Control+A');
    await page.keyboard.type('13');
    await press('Enter');
    await page.getByText('Through. Which animal next?').waitFor();
    await expect.poll(focused, patience).toBe('animal');
    const { young } = await club.read<{ young: { id: string }[] }>(`clutches/${clutch.split('/').pop()}`);
    const animals = await Promise.all(
      young.map(({ id }) => club.read<{ sex: string; observations: { svlMm: number }[] }>(`individuals/${id}`)),
    );
    expect(animals.map(({ sex, observations }) => [sex, observations[0]?.svlMm])).toEqual([
      ['male', 14.5],
      ['male', 14.5],
      ['unsexed', 13],
    ]);
  });

  it('takes the last one back by U, named', async () => {
    await page.getByRole('heading', { level: 1 }).focus();
    await press('u');
    await undoBar(/^Taken back: Written down for /).waitFor();
    const { young } = await club.read<{ young: { id: string }[] }>(`clutches/${clutch.split('/').pop()}`);
    const last = await club.read<{ observations: unknown[] }>(`individuals/${young.at(-1)?.id}`);
    expect(last.observations).toEqual([]);
  });

  it('moves an animal to another group, found by the palette', async () => {
    await say('RV-61');
    await palette().locator('[aria-selected=true]').getByText('RV-61').waitFor();
    await press('ArrowRight');
    await page.keyboard.type('move');
    await press('Enter');
    await page.waitForURL(/do=move/);
    await expect.poll(focused, patience).toBe('lives in');
    await press('ArrowDown');
    await press('Control+Enter');
    await undoBar('Written down for RV-61.').waitFor();
    await page.getByText('Through. Which animal next?').waitFor();
    const [rv] = (await club.read<{ items: { id: string }[] }>('individuals?code=RV-61')).items;
    const moved = await club.read<{ pairings: { left: string | null }[] }>(`individuals/${rv?.id}`);
    expect(moved.pairings.filter(({ left }) => left === null)).toHaveLength(1);
  });

  it('photographs the next one that it is told', async () => {
    await say('RV-61');
    await palette().locator('[aria-selected=true]').getByText('RV-61').waitFor();
    await press('ArrowRight');
    await page.keyboard.type('photograph');
    await press('Enter');
    await page.waitForURL(/do=photograph/);
    await expect.poll(focused, patience).toContain('picture');
    const chooser = page.waitForEvent('filechooser');
    await press('Space');
    await (
      await chooser
    ).setFiles({ name: 'back.jpg', mimeType: 'image/jpeg', buffer: await picture().jpeg().toBuffer() });
    await page.getByRole('group', { name: 'side' }).waitFor();
    await press('Control+Enter');
    await page.getByText('Through. Which animal next?').waitFor();
    const [rv] = (await club.read<{ items: { id: string }[] }>('individuals?code=RV-61')).items;
    expect((await club.read<{ items: unknown[] }>(`photographs?individualId=${rv?.id}`)).items).toHaveLength(1);
  });

  it('edits a choice of the register together, after a look at what would change', async () => {
    await press('Escape');
    await page.getByRole('heading', { level: 1 }).focus();
    await press('r');
    await page.waitForURL(/\/register$/);
    await page.getByRole('table').waitFor();
    await press('j', 'x', 'j', 'x', 'j', 'x');
    await page.getByText('3 chosen').waitFor();
    await club.look(page, 'chosen-bar');
    await press('e');
    await page.getByRole('heading', { name: 'Edit 3 animals together' }).waitFor();
    expect(await focused()).toBe('Edit 3 animals together');
    await tabTo('seen by');
    await press('ArrowDown', 'ArrowDown', 'ArrowDown');
    await press('Control+Enter');
    await page.getByRole('button', { name: 'Change 3 animals' }).waitFor();
    expect(await focused()).toBe('What would change');
    await club.look(page, 'together-preview');
    await expectAccessible(page, 'together-preview');
    await page.setViewportSize({ width: 320, height: 700 });
    await club.look(page, 'together-preview-phone');
    await page.setViewportSize({ width: 1440, height: 1000 });
    await tabTo('Change 3 animals');
    await press('Enter');
    await undoBar('3 animals changed together.').waitFor();
    expect(await focused()).toBe('Register');
    await press('u');
    await undoBar('Taken back: 3 animals changed together.').waitFor();
  });

  it('and leaves no error behind', () => {
    expect(club.faults).toEqual([]);
  });
});
