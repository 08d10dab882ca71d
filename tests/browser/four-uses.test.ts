import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { pointing, typing, type Hands } from '../support/hands.ts';

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

interface Clutch {
  parents: Record<'sires' | 'dams', { individual: { id: string } | null }[]>;
  young: { id: string }[];
}

/** What Linekeeper is for, each from the beginning to the end, by two keepers of the invented club: at a desk by the keys alone. */
describe.skipIf(chromium === null).each(Object.entries(sizes))('at a %s', (place, size) => {
  let club: DemoClub;
  let keeper: Page;
  let registrar: Page;
  let keepers: Hands = pointing;
  let registrars: Hands = pointing;
  let young: Young;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    young = await lineOfSaskia(club, `Quebrada ${place}`);
  });
  afterAll(() => club.close());

  beforeEach(async () => {
    keeper = await club.page(size, saskia);
    registrar = await club.page(size, tobiah);
    if (place === 'desk') [keepers, registrars] = [typing(keeper), typing(registrar)];
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
    await page.getByRole('dialog').waitFor();
    await page.keyboard.type(code);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: code }).waitFor();
  }

  it('an unrelated pairing is chosen, housed, and its young are as unrelated as it was said', async () => {
    await findAnimal(registrar, 'RV-61');
    await registrars.use(registrar.getByRole('link', { name: 'Who for this one?' }));
    const rows = registrar.getByRole('table', { name: 'Possible mates of RV-61' }).getByRole('row');
    await rows.nth(1).waitFor();
    const [sire] = (await club.read<{ items: { id: string }[] }>('individuals?code=RV-61')).items;
    const { items } = await club.read<{
      items: { animal: { id: string; code: string }; inbreeding: { expected: number } }[];
    }>(`individuals/${sire?.id ?? ''}/mates`);
    const best = items[0];
    expect(await rows.nth(1).innerText()).toContain(best?.animal.code);
    await registrars.use(rows.nth(1).getByRole('link', { name: /^House together/ }));
    await registrars.write(registrar.getByLabel('name', { exact: true }), `Chosen at the ${place}`);
    await registrars.use(registrar.getByRole('button', { name: 'Write it down' }));
    await registrar.getByRole('heading', { name: `Chosen at the ${place}` }).waitFor();
    await expectAccessible(registrar, 'the pairing that was chosen');
    await registrars.use(registrar.getByRole('link', { name: 'Note a clutch' }).first());
    await registrars.write(registrar.getByLabel(/^eggs/).first(), '5');
    await registrars.use(registrar.getByRole('button', { name: 'Write it down' }));
    await registrar
      .getByRole('status')
      .getByText(/clutch/i)
      .first()
      .waitFor();
    await registrars.write(registrar.getByLabel('how many'), '1');
    await registrars.use(registrar.getByRole('button', { name: 'Raise 1 froglet' }));
    await registrar.getByText('1 animal in the register').waitFor();
    const clutch = await club.read<Clutch>(`clutches/${new URL(registrar.url()).pathname.split('/').pop() ?? ''}`);
    const { sires, dams } = clutch.parents;
    expect([...sires, ...dams].map(({ individual }) => individual?.id).toSorted()).toEqual(
      [sire?.id, best?.animal.id].toSorted(),
    );
    const figures = await club.ask<{ items: { inbreeding: { expected: number } }[] }>('lineage/figures', {
      individuals: clutch.young.map(({ id }) => id),
    });
    expect(figures.items).toHaveLength(1);
    expect(figures.items[0]?.inbreeding.expected).toBeCloseTo(best?.inbreeding.expected ?? NaN, 12);
  });

  it('a line is audited: what is missing is asked, the paper brought and reviewed, and the label carried', async () => {
    await keeper.goto(`${club.url}/lines/${young.lineId}/audit`);
    await keeper.getByText(/Papers carry 0\s% of what lives today/).waitFor();
    await keepers.use(
      keeper
        .getByRole('main')
        .getByRole('link', { name: /Import, about 1994/ })
        .first(),
    );
    await keepers.use(keeper.getByRole('button', { name: 'Add a claim' }));
    await keepers.write(keeper.getByLabel('the name'), `Quebrada ${place}`);
    await keepers.write(keeper.getByLabel('who says so'), 'the importer');
    await keepers.use(keeper.getByRole('button', { name: 'Write it down' }));
    await keepers.use(keeper.getByRole('button', { name: /^Bring evidence/ }));
    await keepers.choose(keeper.getByLabel('what it is'), 'collecting permit (primary)');
    await keepers.write(keeper.getByLabel('number, title or first words'), `No. 18-94 ${place}`);
    await keepers.write(keeper.getByLabel('issued by'), 'an invented ministry');
    await keepers.use(keeper.getByRole('button', { name: 'Bring it' }));
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
    await registrars.use(waiting.getByRole('button', { name: /^Review it/ }));
    await registrars.write(waiting.getByLabel('why it counts, or why not'), 'saw the stamped paper');
    await registrars.use(waiting.getByRole('button', { name: 'Accept' }));
    await registrar.getByText(`Accepted: “No. 18-94 ${place}”.`).waitFor();
    await keeper.goto(`${club.url}/lines/${young.lineId}/audit`);
    await keeper.getByText(/Papers carry 100\s% of what lives today/).waitFor();
    await expectAccessible(keeper, 'the audit of a line that papers carry');
  });

  it('froglets are sold with papers, and a stranger reads where they come from', async () => {
    await keeper.goto(`${club.url}/clutches/${young.clutchId}`);
    await keepers.use(keeper.getByRole('link', { name: 'Make a sheet of them' }));
    await keepers.use(keeper.getByRole('button', { name: 'Make and sign' }));
    await keeper.getByRole('heading', { name: 'Valid' }).waitFor();
    const address = keeper.url();
    await keeper.goto(`${club.url}/clutches/${young.clutchId}`);
    await keepers.use(keeper.getByRole('link', { name: 'Give or sell froglets' }));
    await keepers.mark(keeper.getByRole('radio', { name: 'out of the club' }));
    await keepers.write(keeper.getByLabel('to whom, in your own words'), 'a buyer at the market');
    await keepers.use(keeper.getByRole('button', { name: 'Note that they left' }));
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
    await keepers.use(keeper.getByRole('button', { name: 'Edit', exact: true }));
    await keepers.write(keeper.getByLabel('notes'), 'Calls at noon.');
    // meanwhile a registrar corrects the same record
    await registrar.goto(`${club.url}/animals/${father?.id ?? ''}`);
    await registrars.use(registrar.getByRole('button', { name: 'Edit', exact: true }));
    await registrars.write(registrar.getByLabel('notes'), 'Calls at night.');
    await registrars.use(registrar.getByRole('button', { name: 'Write it down' }));
    await registrar.getByRole('region', { name: 'Identity' }).getByText('Calls at night.').waitFor();
    await keepers.use(keeper.getByRole('button', { name: 'Write it down' }));
    await keeper.getByText('Calls at night.').first().waitFor();
    expect(await keeper.getByLabel('notes').inputValue()).toBe('Calls at noon.');
    await expectAccessible(keeper, 'an edit that came late');
    await keeper.goto(`${club.url}/transfers/new?animals=${father?.id ?? ''}`);
    await keepers.choose(keeper.getByLabel('keeper', { exact: true }), tobiah);
    await keepers.use(keeper.getByRole('button', { name: 'Offer', exact: true }));
    await keeper.getByText(`Waits for the answer of ${tobiah}`).waitFor();
    await registrar.goto(`${club.url}/`);
    await registrars.use(registrar.getByRole('link', { name: /One animal from Saskia|the offer of Saskia/ }).first());
    await registrars.use(registrar.getByRole('button', { name: 'Accept' }));
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
