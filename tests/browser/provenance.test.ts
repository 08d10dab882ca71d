import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

/** An invented line that came from one source, kept by full sibs for four generations. */
describe.skipIf(chromium === null)('a keeper who writes down where a source came from', () => {
  let club: DemoClub;
  let keeper: Page;
  let registrar: Page;
  let sourceId: string;
  let froglet: string;

  const saskia = 'Saskia Brunmoor';
  const write = <Answer>(path: string, body: object): Promise<Answer> => club.write<Answer>(path, body, saskia);

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const { id: speciesId } = await write<{ id: string }>('species', { scientificName: 'Inventus viator' });
    const line = { speciesId, name: 'Quebrada Nublada', labelKind: 'locality' };
    const { id: lineId } = await write<{ id: string }>('lines', line);
    sourceId = (await write<{ id: string }>('sources', { kind: 'import', date: '1994~', labelAsReceived: line.name }))
      .id;
    const animal = (sex: string) => write<{ id: string }>('individuals', { speciesId, lineId, sourceId, sex });
    let [sire, dam] = [(await animal('male')).id, (await animal('female')).id];
    for (let generation = 0; generation < 4; generation++) {
      const parents = { sires: [{ individualId: sire }], dams: [{ individualId: dam }] };
      const { id } = await write<{ id: string }>('clutches', parents);
      const raised = { animals: [{ sex: 'male' }, { sex: 'female' }] };
      const { items } = await write<{ items: { id: string }[] }>(`clutches/${id}/offspring`, raised);
      [sire, dam] = [items[0]?.id ?? '', items[1]?.id ?? ''];
    }
    froglet = dam;
    keeper = await club.page({ width: 390, height: 844 }, saskia);
    registrar = await club.page();
  });

  afterAll(() => club.close());

  it('finds the young of the source resting on somebody’s word', async () => {
    await registrar.goto(`${club.url}/animals/${froglet}`);
    await registrar.getByText(/rests on somebody’s word/).waitFor();
    expect(club.faults).toEqual([]);
  });

  it('writes a claim on a phone, and is told at once what is missing', async () => {
    await keeper.goto(`${club.url}/sources/${sourceId}`);
    await keeper.getByRole('heading', { level: 1, name: /Import/ }).waitFor();
    await club.look(keeper, 'source-phone-empty');
    await keeper.getByRole('button', { name: 'Add a claim' }).click();
    await keeper.getByRole('button', { name: 'Write it down' }).click();
    await keeper.getByText('Write the name that is claimed, as it stood on the label.').waitFor();
    await keeper.getByLabel('the name').fill('Quebrada Nublada');
    await keeper.getByLabel('who says so').fill('the importer');
    await keeper.getByLabel('the words of the label or list').fill('Q. Nublada, 17 pcs');
    await keeper.getByText('The place on the map').click();
    await keeper.getByLabel('country').fill('ec');
    await club.look(keeper, 'claim-form-phone');
    await expectAccessible(keeper, 'the form of a claim on a phone');
    await keeper.getByRole('button', { name: 'Write it down' }).click();
    await keeper.getByText(/^Stated, because it is somebody’s word/).waitFor();
    await keeper.getByText('“Q. Nublada, 17 pcs”').waitFor();
  });

  it('brings a paper, which waits', async () => {
    await keeper.getByRole('button', { name: /^Bring evidence/ }).click();
    await keeper.getByLabel('what it is').selectOption('collecting-permit');
    await keeper.getByLabel('number, title or first words').fill('No. 17-94');
    await keeper.getByLabel('issued by').fill('an invented ministry');
    await keeper.getByLabel('dated').fill('1994');
    await club.look(keeper, 'evidence-form-phone');
    await keeper.getByRole('button', { name: 'Bring it' }).click();
    await keeper.getByText(/waits for a review, and does not count yet/).waitFor();
    expect(await keeper.getByRole('button', { name: /^Review it/ }).count()).toBe(0);
    await club.look(keeper, 'source-phone');
    await expectAccessible(keeper, 'a source on a phone');
  });

  it('is reviewed by a registrar, with a reason', async () => {
    await registrar.goto(`${club.url}/sources`);
    await registrar
      .getByRole('link', { name: 'Quebrada Nublada' })
      .or(registrar.getByText('Quebrada Nublada'))
      .first()
      .waitFor();
    await club.look(registrar, 'sources-wide');
    await expectAccessible(registrar, 'the sources');
    await registrar.getByRole('link', { name: 'Evidence to review' }).click();
    const waiting = registrar.getByRole('listitem').filter({ hasText: 'No. 17-94' }).first();
    await waiting.getByRole('button', { name: /^Review it/ }).click();
    await waiting.getByRole('button', { name: 'Accept' }).click();
    await waiting.getByText('Say why, for whoever reads it later.').waitFor();
    await waiting.getByLabel('why it counts, or why not').fill('saw the stamped paper');
    await club.look(registrar, 'review-wide');
    await expectAccessible(registrar, 'evidence to review');
    await waiting.getByRole('button', { name: 'Accept' }).click();
    await registrar.getByText('Accepted: “No. 17-94”.').waitFor();
    await registrar.goto(`${club.url}/sources/${sourceId}`);
    await registrar.getByText('Documented, because a collecting permit names it.').waitFor();
    await registrar.getByText(/accepted by Orla Venndrick: saw the stamped paper/).waitFor();
    await club.look(registrar, 'source-wide');
    await registrar.evaluate(() => (document.documentElement.dataset['theme'] = 'night'));
    await club.look(registrar, 'source-wide-night');
    await expectAccessible(registrar, 'a source at night');
  });

  it('finds a froglet four generations on documented', async () => {
    await registrar.goto(`${club.url}/animals/${froglet}`);
    await registrar.getByText(/100\s% of its genome traces to papers that name it/).waitFor();
    await club.look(registrar, 'froglet-documented');
    expect(club.faults).toEqual([]);
  });
});
