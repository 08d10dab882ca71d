import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { TransferView } from '../../api/selling/transfers/transfer.view.ts';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();
const [giver, receiver] = ['Saskia Brunmoor', 'Emeric Dahlhaven'];

/** Froglets of one invented clutch pass from one keeper's phone to another's. */
describe.skipIf(chromium === null)('froglets that change hands', () => {
  let club: DemoClub;
  let phone: Page;
  let small: Page;
  let desk: Page;
  let clutch: string;
  let given: { id: string; number: string }[];

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const { id: speciesId } = await club.write('species', { scientificName: 'Inventus migrans' }, giver);
    const parent = (sex: string, code: string) =>
      club.write('individuals', { speciesId, sex, code, hatched: '2020' }, giver);
    const [sire, dam] = [await parent('male', 'MG-1'), await parent('female', 'MG-2')];
    const parents = { sires: [{ individualId: sire.id }], dams: [{ individualId: dam.id }] };
    clutch = (await club.write('clutches', { laid: '2024-02-03', ...parents }, giver)).id;
    const animals = [1, 2, 3, 4].map((at) => ({ code: `MG-1${at}`, hatched: '2024-02-17' }));
    const young = await club.write<{ items: { id: string; number: string }[] }>(
      `clutches/${clutch}/offspring`,
      { animals },
      giver,
    );
    given = young.items.slice(0, 3);
    phone = await club.page({ width: 390, height: 844 }, giver);
    small = await club.page({ width: 320, height: 640 }, receiver);
    desk = await club.page(undefined, giver);
  });

  afterAll(() => club.close());

  const expectNoSideways = async (page: Page): Promise<void> =>
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);

  it('are chosen from their clutch by phone, and offered in one go', async () => {
    await phone.goto(`${club.url}/clutches/${clutch}`);
    await phone.getByRole('link', { name: 'Give or sell froglets' }).click();
    await phone.getByText('4 of 4 animals chosen').waitFor();
    await phone.getByRole('button', { name: 'Offer', exact: true }).click();
    await phone.getByText('Choose the keeper who gets them.').waitFor();
    await phone.getByRole('checkbox', { name: /MG-14/ }).uncheck();
    await phone.getByLabel('keeper', { exact: true }).selectOption({ label: receiver });
    await phone.getByLabel('note').fill('three of four, the fourth stays');
    await expectNoSideways(phone);
    await club.look(phone, 'transfer-new-phone');
    await expectAccessible(phone, 'offering froglets');
    await phone.getByRole('button', { name: 'Offer', exact: true }).click();
    await phone.getByRole('heading', { name: `Three animals for ${receiver}`, level: 1 }).waitFor();
    await phone.getByText(`Waits for the answer of ${receiver}, since today`).waitFor();
    await expectNoSideways(phone);
    await club.look(phone, 'transfer-waiting-phone');
    await expectAccessible(phone, 'an offer that waits');
  });

  it('are accepted by the other keeper on the smallest phone, who may take it back', async () => {
    await small.goto(`${club.url}/transfers`);
    await small.getByRole('heading', { name: 'Offered to you' }).waitFor();
    await expectNoSideways(small);
    await club.look(small, 'transfers-small');
    await expectAccessible(small, 'transfers that wait');
    await small.getByRole('link', { name: `Three animals from ${giver}` }).click();
    await small.getByText('three of four, the fourth stays').waitFor();
    await small.getByText('Codes of your own').click();
    await small.getByLabel(`your code for ${given[0]?.number ?? ''}`).fill('TE-90');
    await expectNoSideways(small);
    await club.look(small, 'transfer-answer-small');
    await expectAccessible(small, 'an offer to answer');
    await small.getByRole('button', { name: 'Accept' }).click();
    await small.getByText(`3 animals from ${giver}: you keep them now.`).waitFor();
    await small.getByRole('status').getByText('You accepted').waitFor();
    await expectNoSideways(small);
    await club.look(small, 'transfer-accepted-small');
    await small.getByRole('button', { name: 'Undo' }).click();
    await small.getByText(/^Taken back: 3 animals/).waitFor();
    await small.getByRole('button', { name: 'Accept' }).waitFor();
    await small.getByRole('button', { name: 'Undo' }).click();
    await small.getByRole('link', { name: 'TE-90', exact: true }).waitFor();
    const now = await club.read<{ keeper: string; code: string }>(`individuals/${given[0]?.id ?? ''}`);
    expect(now).toMatchObject({ keeper: receiver, code: 'TE-90' });
  });

  it('are still seen by the giver, with their way', async () => {
    await desk.goto(`${club.url}/transfers`);
    await desk.getByRole('heading', { name: 'Given, and gone from the club' }).waitFor();
    await desk.getByRole('link', { name: `Three animals for ${receiver}` }).click();
    await desk.getByText(`${receiver} accepted`).waitFor();
    await club.look(desk, 'transfer-given-desk');
    await desk.getByRole('link', { name: 'TE-90', exact: true }).click();
    await desk.getByText(`Passed from you to ${receiver}`).waitFor();
    await club.look(desk, 'animal-passed-desk');
    await expectAccessible(desk, 'an animal that was given');
  });

  it('who is late is told what happened meanwhile', async () => {
    const { id: to } = (await club.read<{ items: { id: string; name: string }[] }>('keepers?limit=200')).items.find(
      ({ name }) => name === receiver,
    ) ?? { id: '' };
    const one = await club.write('individuals', { speciesId: await speciesId(), code: 'MG-30' }, giver);
    const offer = await club.write<TransferView>('transfers', { to, animals: [one.id] }, giver);
    await small.goto(`${club.url}/transfers/${offer.id}`);
    await small.getByRole('button', { name: 'Accept' }).waitFor();
    await desk.goto(`${club.url}/transfers/${offer.id}`);
    await desk.getByRole('button', { name: 'Withdraw the offer' }).click();
    await desk.getByLabel('why, if you like to say').fill('it is ill');
    await desk.getByRole('button', { name: 'Withdraw the offer' }).click();
    await desk.getByText('You withdrew it').waitFor();
    await small.getByRole('button', { name: 'Accept' }).click();
    await small.getByText(new RegExp(`${giver} withdrew this offer on .*Nothing more can be done`)).waitFor();
    await small.getByText('it is ill').waitFor();
    await club.look(small, 'transfer-late-small');
    await expectAccessible(small, 'an answer that came too late');
  });

  const speciesId = async (): Promise<string> =>
    (await club.read<{ speciesId: string }>(`individuals/${given[0]?.id ?? ''}`)).speciesId;

  it('leave the club from the register, and are put back', async () => {
    await desk.goto(
      `${club.url}/animals/${(await club.write('individuals', { speciesId: await speciesId(), code: 'MG-40' }, giver)).id}`,
    );
    await desk.getByRole('link', { name: 'Give or sell' }).click();
    await desk.getByRole('radio', { name: 'out of the club' }).check();
    await desk.getByLabel('to whom, in your own words').fill('a school terrarium');
    await desk.getByRole('button', { name: 'Night theme' }).click();
    await club.look(desk, 'transfer-away-desk-dark');
    await expectAccessible(desk, 'animals that leave, by night');
    await desk.getByRole('button', { name: 'Note that they left' }).click();
    await desk.getByRole('heading', { name: 'One animal that left the club' }).waitFor();
    await desk.getByText('a school terrarium, out of the club').waitFor();
    await desk.getByText('gone', { exact: true }).waitFor();
    await club.look(desk, 'transfer-left-desk-dark');
    await expectAccessible(desk, 'a departure, by night');
    await desk.getByRole('button', { name: 'Put it back: a mistake' }).click();
    await desk.getByRole('button', { name: 'Put it back', exact: true }).click();
    await desk.getByText('Put back: had not left').waitFor();
    await desk.getByText('Who wrote what on this record').click();
    await desk.getByText(/put back animals that had not left/).waitFor();
    await club.look(desk, 'transfer-put-back-desk-dark');
    expect(club.faults).toEqual([]);
  });
});
