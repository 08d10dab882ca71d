import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LineageView } from '../../api/lineage/lineage.view.ts';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

/** In the demo club: a registrar acknowledges marks, and everybody reads it. */
describe.skipIf(chromium === null)('a mark that a registrar acknowledges', () => {
  let club: DemoClub;
  let registrar: Page;
  let animal: { id: string; number: string };
  let lineId: string;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    registrar = await club.page(undefined, 'Tobiah Quillmere');
    const lines = await club.read<{ items: { id: string; name: string }[] }>('lines?limit=200');
    lineId = lines.items.find(({ name }) => name === 'Río Zancaval')?.id ?? '';
    const listed = await club.read<{ items: { id: string; number: string; line: string | null }[] }>(
      'individuals?limit=200&status=alive',
    );
    for (const one of listed.items.filter(({ line }) => line === 'Río Zancaval')) {
      const { label } = await club.read<LineageView>(`individuals/${one.id}/lineage`);
      if (label.flags.some(({ code }) => code === 'label-beyond-evidence')) animal = one;
    }
  });

  afterAll(() => club.close());

  const night = (page: Page, isNight: boolean): Promise<void> =>
    page.evaluate(
      (theme) => {
        if (theme === '') delete document.documentElement.dataset['theme'];
        else document.documentElement.dataset['theme'] = theme;
      },
      isNight ? 'night' : '',
    );
  const mark = (page: Page) => page.getByRole('listitem').filter({ hasText: 'beyond papers' });

  it('of an animal, by the keyboard alone: without a reason it is not taken, with one it stands beside the mark', async () => {
    await registrar.goto(`${club.url}/animals/${animal.id}`);
    const own = mark(registrar);
    await own.getByRole('button', { name: /^Acknowledge ….*beyond papers/ }).focus();
    await registrar.keyboard.press('Enter');
    const why = own.getByLabel('why the mark may stay');
    await expect.poll(() => why.evaluate((field) => field === document.activeElement)).toBe(true);
    await expectAccessible(registrar, 'a mark about to be acknowledged');
    await club.look(registrar, 'acknowledge-form-wide');
    await registrar.keyboard.press('Enter');
    await own.getByText('Say why the mark may stay.').waitFor();
    await registrar.keyboard.type('The importer died in 2003, and his papers went with him.');
    await registrar.keyboard.press('Enter');
    await own.getByText(/Acknowledged by Tobiah Quillmere on \d+ \w+ \d{4}: “The importer died/).waitFor();
    await registrar.getByRole('heading', { name: /marks?, 1 acknowledged$/ }).waitFor();
    await registrar.getByRole('status').getByText('Acknowledged: beyond papers. The mark stays.').waitFor();
    await expect
      .poll(() => registrar.evaluate(() => document.activeElement?.textContent))
      .toBe('No longer acknowledge it: beyond papers');
    await club.look(registrar, 'acknowledged-wide');
    await night(registrar, true);
    await expectAccessible(registrar, 'an acknowledged mark at night');
    await club.look(registrar, 'acknowledged-night');
    await night(registrar, false);
  });

  it('is read by every keeper, who is offered nothing, also on paper', async () => {
    const keepers = await club.read<{ items: { name: string; roles: string[] }[] }>('keepers?limit=200');
    const other = keepers.items.find(({ roles }) => roles.length === 0)?.name ?? '';
    const page = await club.page(undefined, other);
    await page.goto(`${club.url}/animals/${animal.id}`);
    const own = mark(page);
    await own.getByText('Acknowledged by Tobiah Quillmere').waitFor();
    expect(await page.getByRole('button', { name: /cknowledge/ }).count()).toBe(0);
    await page.emulateMedia({ media: 'print' });
    expect(await own.getByText('his papers went with him').isVisible()).toBe(true);
    await page.emulateMedia({ media: 'screen' });
    await page.context().close();
  });

  it('of a line stands in its audit, at a desk and on a phone, and is counted there', async () => {
    await registrar.goto(`${club.url}/lines/${lineId}/audit`);
    const flags = registrar.getByRole('region', { name: 'Flags' });
    await flags.getByRole('button', { name: /^Acknowledge ….*beyond papers/ }).click();
    await flags.getByLabel('why the mark may stay').fill('Nobody is left who could be asked.');
    await flags.getByRole('button', { name: 'Acknowledge', exact: true }).click();
    await flags.getByText(/Acknowledged by Tobiah Quillmere on .+: “Nobody is left who could be asked.”/).waitFor();
    await flags.getByText(/\d+ flags?, 1 of them acknowledged\./).waitFor();
    await flags.getByText('1 acknowledged', { exact: true }).waitFor();
    await expectAccessible(registrar, 'an audit with an acknowledged flag');
    await club.look(registrar, 'acknowledged-audit-wide');
    await registrar.setViewportSize({ width: 320, height: 700 });
    expect(await registrar.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await expectAccessible(registrar, 'an audit with an acknowledged flag on a phone');
    await club.look(registrar, 'acknowledged-audit-phone');
  });

  it('is no longer acknowledged once a registrar says why, and again when that is taken back', async () => {
    await registrar.goto(`${club.url}/animals/${animal.id}`);
    const own = mark(registrar);
    await own.getByRole('button', { name: 'No longer acknowledge it' }).click();
    await club.look(registrar, 'acknowledged-phone');
    await own.getByLabel('why it no longer holds').fill('His list was found.');
    await own.getByRole('button', { name: 'Withdraw' }).click();
    await registrar.getByText('“beyond papers” is no longer acknowledged.').waitFor();
    await own.getByText('Acknowledged by').waitFor({ state: 'detached' });
    await registrar.getByRole('status').getByRole('button', { name: 'Undo' }).click();
    await own.getByText('Acknowledged by Tobiah Quillmere').waitFor();
    expect(club.faults).toEqual([]);
  });
});
