import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();
const sizes = { desk: { width: 1440, height: 1000 }, phone: { width: 390, height: 844 } };
const [saskia, tobiah] = ['Saskia Brunmoor', 'Tobiah Quillmere'];

interface Young {
  speciesId: string;
  lineId: string;
  sourceId: string;
  clutchId: string;
  codes: string[];
}

/** What Linekeeper is for, each from the beginning to the end, by two keepers of the invented club. */
describe.skipIf(chromium === null).each(Object.entries(sizes))('at a %s', (place, size) => {
  let club: DemoClub;
  let keeper: Page;
  let registrar: Page;
  let young: Young;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    young = await lineOfSaskia(club, `Quebrada ${place}`);
  });
  afterAll(() => club.close());

  beforeEach(async () => {
    keeper = await club.page(size, saskia);
    registrar = await club.page(size, tobiah);
  });
  afterEach(async () => {
    for (const page of [keeper, registrar]) {
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
      await page.context().close();
    }
    expect(club.faults).toEqual([]);
  });

  /** Opens an animal as a keeper finds it: by the palette, with some letters of its code. */
  async function findAnimal(page: Page, code: string): Promise<void> {
    await page.goto(`${club.url}/`);
    await page.locator('h1').first().waitFor();
    if (place === 'phone') await page.getByRole('button', { name: 'Find', exact: true }).click();
    else await page.keyboard.press('Control+K');
    await page.getByRole('dialog').getByRole('combobox').fill(code);
    await page.getByRole('dialog').getByRole('option').filter({ hasText: code }).first().waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: code }).waitFor();
  }

  it('an unrelated pairing is chosen, housed, and its clutch expected to be as unrelated as it was said', async () => {
    await findAnimal(registrar, 'RV-61');
    await registrar.getByRole('link', { name: 'Who for this one?' }).click();
    const rows = registrar.getByRole('table', { name: 'Possible mates of RV-61' }).getByRole('row');
    await rows.nth(1).waitFor();
    const [sire] = (await club.read<{ items: { id: string }[] }>('individuals?code=RV-61')).items;
    const { items } = await club.read<{
      items: { animal: { id: string; code: string }; inbreeding: { expected: number } }[];
    }>(`individuals/${sire?.id ?? ''}/mates`);
    const best = items[0];
    expect(await rows.nth(1).innerText()).toContain(best?.animal.code);
    await rows
      .nth(1)
      .getByRole('link', { name: /^House together/ })
      .click();
    await registrar.getByLabel('name', { exact: true }).fill(`Chosen at the ${place}`);
    await registrar.getByRole('button', { name: 'Write it down' }).click();
    await registrar.getByRole('heading', { name: `Chosen at the ${place}` }).waitFor();
    await expectAccessible(registrar, 'the pairing that was chosen');
    await registrar.getByRole('link', { name: 'Note a clutch' }).first().click();
    await registrar.getByLabel(/^eggs/).first().fill('5');
    await registrar.getByRole('button', { name: 'Write it down' }).click();
    await registrar
      .getByRole('status')
      .getByText(/clutch/i)
      .first()
      .waitFor();
    const { items: clutches } = await club
      .read<{ items: { id: string }[] }>(`clutches?limit=1&parentId=${best?.animal.id ?? ''}`)
      .catch(() => ({ items: [] }));
    expect(clutches.length).toBeLessThanOrEqual(1);
    const forecast = await club.ask<{ inbreeding: { expected: number } }>('lineage/forecast', {
      sires: [sire?.id],
      dams: [best?.animal.id],
    });
    expect(forecast.inbreeding.expected).toBeCloseTo(best?.inbreeding.expected ?? NaN, 12);
  });

  it('a line is audited: what is missing is asked, the paper brought and reviewed, and the label carried', async () => {
    await keeper.goto(`${club.url}/lines/${young.lineId}/audit`);
    await keeper.getByText(/Papers carry 0\s% of what lives today/).waitFor();
    await keeper
      .getByRole('main')
      .getByRole('link', { name: /Import, about 1994/ })
      .first()
      .click();
    await keeper.getByRole('button', { name: 'Add a claim' }).click();
    await keeper.getByLabel('the name').fill(`Quebrada ${place}`);
    await keeper.getByLabel('who says so').fill('the importer');
    await keeper.getByRole('button', { name: 'Write it down' }).click();
    await keeper.getByRole('button', { name: /^Bring evidence/ }).click();
    await keeper.getByLabel('what it is').selectOption('collecting-permit');
    await keeper.getByLabel('number, title or first words').fill(`No. 18-94 ${place}`);
    await keeper.getByLabel('issued by').fill('an invented ministry');
    await keeper.getByRole('button', { name: 'Bring it' }).click();
    await keeper
      .getByText(/waits for a review/)
      .first()
      .waitFor();
    await registrar.goto(`${club.url}/`);
    await registrar.goto(`${club.url}/review`);
    const waiting = registrar
      .getByRole('listitem')
      .filter({ hasText: `No. 18-94 ${place}` })
      .first();
    await waiting.getByRole('button', { name: /^Review it/ }).click();
    await waiting.getByLabel('why it counts, or why not').fill('saw the stamped paper');
    await waiting.getByRole('button', { name: 'Accept' }).click();
    await registrar.getByText(`Accepted: “No. 18-94 ${place}”.`).waitFor();
    await keeper.goto(`${club.url}/lines/${young.lineId}/audit`);
    await keeper.getByText(/Papers carry 100\s% of what lives today/).waitFor();
    await expectAccessible(keeper, 'the audit of a line that papers carry');
  });

  it('froglets are sold with papers, and a stranger reads where they come from', async () => {
    await keeper.goto(`${club.url}/clutches/${young.clutchId}`);
    await keeper.getByRole('link', { name: 'Make a sheet of them' }).click();
    await keeper.getByRole('button', { name: 'Make and sign' }).click();
    await keeper.getByRole('heading', { name: 'Valid' }).waitFor();
    const address = keeper.url();
    await keeper.goto(`${club.url}/clutches/${young.clutchId}`);
    await keeper.getByRole('link', { name: 'Give or sell froglets' }).click();
    await keeper.getByRole('radio', { name: 'out of the club' }).check();
    await keeper.getByLabel('to whom, in your own words').fill('a buyer at the market');
    await keeper.getByRole('button', { name: 'Note that they left' }).click();
    await keeper.getByRole('heading', { name: /left the club/ }).waitFor();
    const buyer = await club.strangersPage(size);
    await buyer.goto(address);
    await buyer.getByRole('heading', { name: 'Valid' }).waitFor();
    await buyer
      .getByText(/100\s% of .+ comes from animals whose papers name/)
      .first()
      .waitFor();
    await buyer.getByText('This sheet is no permit').waitFor();
    await expectAccessible(buyer, 'what the buyer reads');
    await buyer.context().close();
  });

  it('two keepers share the register: animals change hands, and who is late with an edit loses nothing', async () => {
    const [father] = (await club.read<{ items: { id: string; code: string }[] }>(`individuals?code=QF-${place}`)).items;
    await keeper.goto(`${club.url}/animals/${father?.id ?? ''}`);
    await keeper.getByRole('button', { name: 'Edit', exact: true }).click();
    await keeper.getByLabel('notes').fill('Calls at noon.');
    // meanwhile a registrar corrects the same record
    await registrar.goto(`${club.url}/animals/${father?.id ?? ''}`);
    await registrar.getByRole('button', { name: 'Edit', exact: true }).click();
    await registrar.getByLabel('notes').fill('Calls at night.');
    await registrar.getByRole('button', { name: 'Write it down' }).click();
    await registrar.getByRole('region', { name: 'Identity' }).getByText('Calls at night.').waitFor();
    await keeper.getByRole('button', { name: 'Write it down' }).click();
    await keeper.getByText('Calls at night.').first().waitFor();
    expect(await keeper.getByLabel('notes').inputValue()).toBe('Calls at noon.');
    await expectAccessible(keeper, 'an edit that came late');
    await keeper.goto(`${club.url}/transfers/new?animals=${father?.id ?? ''}`);
    await keeper.getByLabel('keeper', { exact: true }).selectOption({ label: tobiah });
    await keeper.getByRole('button', { name: 'Offer', exact: true }).click();
    await keeper.getByText(`Waits for the answer of ${tobiah}`).waitFor();
    await registrar.goto(`${club.url}/`);
    await registrar
      .getByRole('link', { name: /One animal from Saskia|the offer of Saskia/ })
      .first()
      .click();
    await registrar.getByRole('button', { name: 'Accept' }).click();
    await registrar.getByText(`1 animal from ${saskia}: you keep it now.`).waitFor();
    const now = await club.read<{ keeper: string }>(`individuals/${father?.id ?? ''}`);
    expect(now.keeper).toBe(tobiah);
  });
});

/** An invented line of Saskia: two founders that arrived together, and a clutch of theirs out of the water. */
async function lineOfSaskia(club: DemoClub, name: string): Promise<Young> {
  const write = <Answer = { id: string }>(path: string, body: object): Promise<Answer> =>
    club.write<Answer>(path, body, saskia);
  const place = name.split(' ')[1] ?? '';
  const { id: speciesId } = await write('species', { scientificName: `Inventus ${place}ensis` });
  const { id: lineId } = await write('lines', { speciesId, name, labelKind: 'locality' });
  const { id: sourceId } = await write('sources', { kind: 'import', date: '1994~', labelAsReceived: name });
  const founder = (sex: string, code: string): Promise<{ id: string }> =>
    write('individuals', { speciesId, lineId, sourceId, sex, code, hatched: '2020' });
  const [sire, dam] = [await founder('male', `QF-${place}`), await founder('female', `QM-${place}`)];
  const parents = { sires: [{ individualId: sire.id }], dams: [{ individualId: dam.id }] };
  const { id: clutchId } = await write('clutches', { laid: '2026-06-01', ...parents });
  const animals = [1, 2, 3].map((at) => ({ sex: 'unsexed', code: `QY-${place}-${at}`, hatched: '2026-06-15' }));
  await write(`clutches/${clutchId}/offspring`, { animals });
  return { speciesId, lineId, sourceId, clutchId, codes: animals.map(({ code }) => code) };
}
