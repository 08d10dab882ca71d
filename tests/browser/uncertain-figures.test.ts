import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

/** On the page of GT-41 of the demo club, whose parents are one of three pairs. */
describe.skipIf(chromium === null)('on the page of an animal with uncertain ancestors', () => {
  let club: DemoClub;
  let page: Page;
  let id: string;

  const look = (name: string): Promise<void> => club.look(page, name);
  const revision = async (): Promise<unknown> => (await club.read<{ asOf: unknown }>(`individuals/${id}/lineage`)).asOf;
  const spread = () => page.getByRole('region', { name: 'What F can be' });
  const whatIf = () => page.getByRole('region', { name: 'What if' });

  const write = <Answer>(path: string, body: object): Promise<Answer> => club.write<Answer>(path, body);
  /** Thirty generations of a group in which any of four males and four females may be the parents of a clutch. */
  const vagueAnimal = async (): Promise<string> => {
    const species = await write<{ id: string }>('species', { scientificName: 'Inventus vagus' });
    const sexes = ['male', 'female', 'male', 'female'];
    const animals = { male: [] as string[], female: [] as string[] };
    for (const sex of [...sexes, ...sexes])
      animals[sex as 'male'].push((await write<{ id: string }>('individuals', { speciesId: species.id, sex })).id);
    const candidates = (side: readonly string[]) => side.map((individualId) => ({ individualId }));
    let last = '';
    for (let generation = 0; generation < 30; generation++) {
      const young: { id: string; sex: string }[] = [];
      for (let laid = 0; laid < 2; laid++) {
        const clutch = await write<{ id: string }>('clutches', {
          sires: candidates(animals.male),
          dams: candidates(animals.female),
        });
        const raised = { animals: sexes.map((sex) => ({ sex })) };
        young.push(...(await write<{ items: typeof young }>(`clutches/${clutch.id}/offspring`, raised)).items);
      }
      animals.male = young.filter(({ sex }) => sex === 'male').map((one) => one.id);
      animals.female = young.filter(({ sex }) => sex === 'female').map((one) => one.id);
      last = animals.female.at(-1) ?? '';
    }
    return last;
  };

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    id = (await club.read<{ items: { id: string }[] }>('individuals?code=GT-41')).items[0]?.id ?? '';
    page = await club.page();
  });

  afterAll(() => club.close());

  beforeEach(async () => {
    await page.setViewportSize({ width: 1440, height: 1000 });
    await page.goto(`${club.url}/animals/${id}`);
    await spread()
      .getByRole('img', { name: /^Distribution of F/ })
      .waitFor();
    club.faults.length = 0;
  });

  it('what F can be is drawn and told in words and in a table', async () => {
    await expectAccessible(page, 'spread');
    await look('spread-wide');
    await spread().getByRole('button', { name: 'Table' }).click();
    await spread().getByRole('table', { name: 'What F can be, and how often' }).waitFor();
    expect(
      await spread()
        .getByText(/with uncertain parents can be read in/)
        .count(),
    ).toBe(1);
    await look('spread-table');
    expect(club.faults).toEqual([]);
  });

  it('other parents and another base kinship are assumed, worked out in words and figures, and written nowhere', async () => {
    const before = await revision();
    await whatIf().getByRole('button', { name: 'Assume something else' }).click();
    const sources = whatIf().getByLabel('Purchase, 2009-03');
    await sources.fill('2');
    await whatIf().getByRole('button', { name: 'Work it out' }).click();
    await whatIf().getByText('Write a kinship from 0 to 1').waitFor();
    await expectAccessible(page, 'what if, refused');
    await sources.fill('0');
    await whatIf().getByRole('button', { name: 'Assume other parents of the clutch of 2025-05-11' }).click();
    const assumed = whatIf().getByRole('group', { name: 'Assumed parents of the clutch of 2025-05-11' });
    await assumed.getByLabel('odds of GT-38 and GT-39').fill('0');
    await whatIf().getByRole('button', { name: 'Work it out' }).click();
    await assumed.getByText('Write odds above 0').waitFor();
    await assumed.getByLabel('odds of GT-38 and GT-39').fill('8');
    await whatIf().getByRole('button', { name: 'Work it out' }).click();
    await whatIf()
      .getByText(/^F would be [\d.]+\s%.* instead of 34.1\s%/u)
      .waitFor();
    const table = whatIf().getByRole('table', { name: /as recorded and as assumed/ });
    expect(await table.getByRole('row', { name: /^inbreeding F, expected 34\.1/ }).count()).toBe(1);
    await expectAccessible(page, 'what if, worked out');
    await look('what-if-wide');
    expect(await revision()).toEqual(before);
    await page.reload();
    await whatIf().getByRole('button', { name: 'Assume something else' }).click();
    expect(await sources.inputValue()).toBe('0.25');
    expect(club.faults).toEqual([]);
  });

  it('a clutch is not given to parents younger than itself', async () => {
    await whatIf().getByRole('button', { name: 'Assume something else' }).click();
    await whatIf().getByRole('button', { name: 'Assume other parents of the clutch of 2010-05-23' }).click();
    const assumed = whatIf().getByRole('group', { name: 'Assumed parents of the clutch of 2010-05-23' });
    await assumed.getByRole('combobox', { name: /add/ }).first().fill('GT-38');
    await assumed.getByRole('option', { name: /GT-38/ }).click();
    await whatIf().getByRole('button', { name: 'Work it out' }).click();
    await whatIf()
      .getByText(/laid before its possible parent .* hatched/)
      .waitFor();
    await look('what-if-refused');
    expect(club.faults).toEqual([]);
  });

  it('a distribution is drawn, drawn again with another seed, enlarged, and stopped', async () => {
    await page.goto(`${club.url}/animals/${await vagueAnimal()}`);
    const basis = spread().getByText(/ways; [\d\u202f]+ of them were drawn, seed/u);
    await basis.waitFor();
    expect(await basis.textContent()).toMatch(/× 10[⁰¹²³⁴⁵⁶⁷⁸⁹]+ ways; 2\u202f000 of them were drawn, seed 1\./u);
    expect(await basis.textContent()).toMatch(/Mean of the drawn .* ± .*standard error.*expected F, exact/);
    await look('spread-sampled');
    const first = await basis.textContent();
    await spread().getByRole('button', { name: 'Draw again' }).click();
    await expect.poll(() => basis.textContent()).not.toBe(first);
    await spread()
      .getByRole('button', { name: /^Draw 20/ })
      .click();
    await expect.poll(() => basis.textContent()).toMatch(/20\u202f000 of them/u);
    const drawn = await basis.textContent();
    await spread()
      .getByRole('button', { name: /^Draw 100/ })
      .click();
    await spread()
      .getByText(/^Drawing: \d+ per cent/)
      .waitFor();
    await expectAccessible(page, 'while it is drawn');
    await spread().getByRole('button', { name: 'Stop drawing' }).click();
    await spread().getByText('Stopped. The drawing is the one before.').waitFor();
    expect(await basis.textContent()).toBe(drawn);
    expect(club.faults).toEqual([]);
  });

  it.each([
    ['phone', 320, 'day'],
    ['phone', 390, 'night'],
    ['wide', 1440, 'night'],
  ])('it is told on a %s of %i px by %s', async (size, width, theme) => {
    await page.setViewportSize({ width, height: 900 });
    await page.evaluate(
      (to) => document.documentElement.setAttribute('data-theme', to),
      theme === 'night' ? 'night' : '',
    );
    await whatIf().getByRole('button', { name: 'Assume something else' }).click();
    await whatIf().getByRole('button', { name: 'Assume other parents of the clutch of 2025-05-11' }).click();
    await whatIf().getByLabel('Purchase, 2009-03').fill('0.2');
    await whatIf().getByRole('button', { name: 'Work it out' }).click();
    await whatIf()
      .getByText(/^F would be/)
      .waitFor();
    await expectAccessible(page, `${size} ${theme}`);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    await look(`uncertain-${size}-${theme}-${width}`);
    expect(club.faults).toEqual([]);
  });
});
