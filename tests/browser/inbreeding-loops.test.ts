import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { InbreedingLoopsView } from '../../api/lineage/inbreeding-loops.view.ts';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

interface Made {
  id: string;
  items: { id: string }[];
}

/** Ten generations of brother with sister, as their keeper would enter them; gives one of the last. */
async function siblingLine(club: DemoClub): Promise<string> {
  const write = (path: string, body: object): Promise<Made> => club.write<Made>(path, body);
  const { id: speciesId } = await write('species', { scientificName: 'Inventus vetus' });
  const founder = (sex: string, code: string): Promise<Made> => write('individuals', { speciesId, sex, code });
  let [sire, dam] = [(await founder('male', 'OLD-M')).id, (await founder('female', 'OLD-F')).id];
  for (let generation = 1; generation <= 10; generation++) {
    const clutch = await write('clutches', { sires: [{ individualId: sire }], dams: [{ individualId: dam }] });
    const { items } = await write(`clutches/${clutch.id}/offspring`, { animals: [{ sex: 'male' }, { sex: 'female' }] });
    [sire, dam] = [items[0]?.id ?? '', items[1]?.id ?? ''];
  }
  return dam;
}

/** On the page of RV-61 of the demo club, whose ancestors meet again on both sides, some of them perhaps. */
describe.skipIf(chromium === null)('the loops of an inbred animal', () => {
  let club: DemoClub;
  let page: Page;
  let id: string;
  let told: InbreedingLoopsView;
  /** The last of ten generations of brother with sister. */
  let old: string;

  const look = (name: string): Promise<void> => club.look(page, name);
  const note = (): Locator => page.getByRole('region', { name: /^Why/ });
  const through = (code: string): Locator => note().getByRole('button', { name: new RegExp(`through ${code}$`) });
  /** Codes of the animals in red pencil. */
  const lit = async (): Promise<string[]> => {
    const names = await page.locator('a.node.lit').evaluateAll((nodes) => nodes.map((node) => node.ariaLabel ?? ''));
    return names.map((name) => name.split(' ')[0] ?? '').sort();
  };
  const codeOf = (animal: string | null): string => told.animals.find((one) => one.id === animal)?.code ?? '?';

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    id = (await club.read<{ items: { id: string }[] }>('individuals?code=RV-61')).items[0]?.id ?? '';
    told = await club.read<InbreedingLoopsView>(`individuals/${id}/lineage/loops?most=200`);
    old = await siblingLine(club);
    page = await club.page();
  });

  afterAll(() => club.close());

  beforeEach(async () => {
    await page.setViewportSize({ width: 1440, height: 1000 });
    await page.goto(`${club.url}/animals/${id}`);
    await page.getByRole('region', { name: 'Ancestor chart' }).waitFor();
    await through('RV-41').waitFor();
    club.faults.length = 0;
  });

  it('open below their common ancestor, step by step, and light exactly what they lead through', async () => {
    await through('RV-41').click();
    const place = told.ancestors.findIndex(({ ancestor }) => ancestor?.code === 'RV-41');
    const own = told.loops.filter(({ commonAncestor }) => commonAncestor === place);
    expect(own).toHaveLength(2);
    const rows = note().getByRole('listitem');
    expect(await rows.count()).toBe(2);
    for (const [at, { first, second }] of own.entries()) {
      const onIt = [...new Set([...first, ...second].map(({ animal }) => codeOf(animal))), 'RV-61'].sort();
      await note()
        .getByRole('button', { name: `Light it in the chart, loop ${at + 1}` })
        .click();
      await expect.poll(lit).toEqual(onIt);
      const words = (await rows.nth(at).innerText()).replaceAll(/\s+/g, ' ');
      for (const { animal } of [...first, ...second]) expect(words).toContain(codeOf(animal));
      await page.getByText(/^A loop of \d steps through RV-41 adds/).waitFor();
    }
    await look('loops-lit-wide');
    await expectAccessible(page, 'a loop that is lit');
    // pressed again it is put away, and the strongest ancestor is lit as before
    await note().getByRole('button', { name: 'Light it in the chart, loop 2' }).click();
    await page.getByText('RV-41 stands behind both parents').waitFor();
    expect(club.faults).toEqual([]);
  });

  it('are walked by keyboard, and those of an unlit part of the chart say that they go on', async () => {
    await through('RV-11').focus();
    await page.keyboard.press('Enter');
    await page.getByText(/^2 loops through RV-11 add/).waitFor();
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent.trim())).toMatch(/^Light it/);
    await page.keyboard.press('Space');
    await page.getByText(/^A loop of 6 steps through RV-11 adds/).waitFor();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('ancestor-chart');
    // with fewer generations the top of it is not drawn
    await page.getByRole('radio', { name: '3' }).check();
    await page.getByText('It goes on above what is drawn; choose more generations.').waitFor();
    expect(club.faults).toEqual([]);
  });

  it('through founders that are kin by base kinship light two ways that do not meet', async () => {
    await note()
      .getByRole('button', { name: /through founders of Purchase/ })
      .click();
    await page.getByText(/^4 loops through founders of Purchase, 2014-05 add/).waitFor();
    await note().getByRole('button', { name: 'Light it in the chart, loop 1' }).click();
    await expect
      .poll(async () => (await lit()).filter((code) => ['RV-41', 'RV-42'].includes(code)))
      .toEqual(['RV-41', 'RV-42']);
    await look('loops-of-founders-wide');
    expect(club.faults).toEqual([]);
  });

  it('are listed up to a bound, and what is left is told by number and part', async () => {
    await page.goto(`${club.url}/animals/${old}`);
    // the founders are ten generations back: 2^8 loops each
    await note()
      .getByRole('button', { name: /^Name \d+ more of them/ })
      .click();
    await through('OLD-F').click();
    await note().getByText('246 more through it, together 0.05\u202f%.').waitFor();
    expect(await note().getByRole('listitem').count()).toBe(10);
    await page.getByText(/It goes on above what is drawn; choose more generations/).waitFor();
    await look('loops-old-wide');
    await note().getByRole('button', { name: 'List more of them' }).click();
    await note().getByText('56 more through it, together 0.01\u202f%.').waitFor();
    expect(await note().getByRole('listitem').count()).toBe(200);
    expect(await note().getByRole('button', { name: 'List more of them' }).count()).toBe(0);
    await expectAccessible(page, 'many loops');
    expect(club.faults).toEqual([]);
  });

  it('go before what the chart points at until it is pointed at again', async () => {
    await page.locator('a.node[aria-label^="RV-31"]').focus();
    await page.getByText('RV-31 stands behind both parents').waitFor();
    await through('RV-42').click();
    await page.getByText(/^2 loops through RV-42 add/).waitFor();
    await page.locator('a.node[aria-label^="RV-31"]').hover();
    await page.getByText('RV-31 stands behind both parents').waitFor();
  });

  it.each(['light', 'dark'] as const)('fit a phone, %s', async (colorScheme) => {
    await page.setViewportSize({ width: 390, height: 844 });
    await page.emulateMedia({ colorScheme });
    await page.reload();
    await page.getByRole('button', { name: 'why? inbreeding F' }).click();
    await through('RV-41').click();
    await note().getByRole('button', { name: 'Light it in the chart, loop 1' }).click();
    await page.getByText(/^A loop of 4 steps through RV-41/).waitFor();
    await look(`loops-phone-${colorScheme}`);
    await expectAccessible(page, `loops on a phone, ${colorScheme}`);
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width).toBeLessThanOrEqual(390);
    await page.setViewportSize({ width: 320, height: 700 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await page.emulateMedia({ colorScheme: 'light' });
    expect(club.faults).toEqual([]);
  });
});
