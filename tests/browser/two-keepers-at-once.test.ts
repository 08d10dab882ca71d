import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { PlainRecords } from '../support/plain-records.ts';

const chromium = findChromium();
const keeper = 'Tobiah Quillmere';

interface Clutch {
  readonly losses: readonly { readonly cause: string; readonly count: number }[];
  readonly parents: { readonly sires: readonly { readonly individual: { readonly code: string } | null }[] };
}
interface Members {
  readonly members: readonly {
    readonly individual: { readonly id: string };
    readonly joined: string | null;
    readonly left: string | null;
  }[];
}

/** A form that was opened before somebody else wrote, on a page that was read again since: nothing of theirs is written over unseen. */
describe.skipIf(chromium === null)('Two keepers at once', () => {
  let club: DemoClub;
  let page: Page;
  let made: PlainRecords;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    made = await PlainRecords.of(club, keeper, 'Inventus communis');
  });
  beforeEach(async () => {
    page = await club.page(undefined, keeper);
  });
  afterEach(() => page.context().close());
  afterAll(async () => {
    await club.close();
    expect(club.faults).toEqual([]);
  });

  const press = (name: string): Promise<void> => page.getByRole('button', { name, exact: true }).click();
  const refused = 'Somebody changed this record after you read it. Look at it again, then decide.';

  it('two keepers correct the parents of one clutch: what the other one wrote is shown before it is written over', async () => {
    const [one, other] = [await made.pair('PA'), await made.pair('PB')];
    const clutchId = await made.clutch('PAR', one);
    await page.goto(`${club.url}/clutches/${clutchId}`);
    await press('Correct the parents');
    const parents = page.locator('section', { has: page.getByRole('heading', { name: 'Parents', exact: true }) });
    await parents.getByRole('button', { name: 'or some other animal' }).first().click();
    await club.change(`clutches/${clutchId}`, { sires: [{ individualId: other[0] }] });
    // something else is written on this page, so that it is read again
    await page.getByLabel('how many').fill('1');
    await press('Raise 1 froglet');
    await page.getByText('1 froglet written down.').waitFor();
    await parents.getByRole('button', { name: 'Write it down' }).click();
    await parents.getByText(refused).waitFor();
    expect((await club.read<Clutch>(`clutches/${clutchId}`)).parents.sires.map((s) => s.individual?.code)).toEqual([
      'PB1',
    ]);
    await parents.getByText('Recorded meanwhile').waitFor();
    await parents.getByRole('link', { name: 'PB1' }).waitFor();
    await club.look(page, 'parents-recorded-meanwhile');
    await parents.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('The parents of the', { exact: false }).waitFor();
    expect((await club.read<Clutch>(`clutches/${clutchId}`)).parents.sires.map((s) => s.individual?.code)).toEqual([
      'PA1',
      undefined,
    ]);
  });

  it('two keepers count one clutch: the losses of neither are written over', async () => {
    const day = new Date(Date.now() - 12 * 86_400_000).toISOString().slice(0, 10);
    const [parents, others] = [await made.pair('CA'), await made.pair('CB')];
    const counted = await made.clutch('CNT', parents, { laid: day, eggs: 13 });
    await made.clutch('CNT-2', others, { laid: day, eggs: 17 });
    await page.goto(club.url);
    const row = (eggs: number) => page.getByRole('listitem').filter({ hasText: `${eggs} eggs of` });
    await row(13)
      .getByRole('button', { name: /^Count/ })
      .click();
    await row(13).getByLabel('hatched').fill('5');
    await row(13).getByText('some were lost').click();
    await row(13).getByLabel('how many').fill('2');
    await club.change(`clutches/${counted}`, { losses: [{ cause: 'mould', count: 3 }] });
    // the other clutch is counted, so that the page is read again
    await row(17)
      .getByRole('button', { name: /^Count/ })
      .click();
    await row(17).getByLabel('hatched').fill('17');
    await row(17).getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('17 tadpoles hatched.').waitFor();
    await row(17).waitFor({ state: 'detached' });
    await row(13).getByRole('button', { name: 'Write it down' }).click();
    await row(13).getByText(refused).waitFor();
    expect(await row(13).getByLabel('hatched').inputValue()).toBe('5');
    expect((await club.read<Clutch>(`clutches/${counted}`)).losses).toEqual([{ cause: 'mould', count: 3 }]);
    await club.look(page, 'count-overtaken');
    // left and opened again it begins with what stands there now
    await row(13).getByRole('button', { name: 'Leave' }).click();
    await row(13)
      .getByRole('button', { name: /^Count/ })
      .click();
    await row(13).getByText('of 10', { exact: true }).waitFor();
    await row(13).getByLabel('hatched').fill('5');
    await row(13).getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('5 tadpoles hatched.').waitFor();
    expect(await club.read<Clutch>(`clutches/${counted}`)).toMatchObject({
      hatched: 5,
      losses: [{ cause: 'mould', count: 3 }],
    });
  });

  it('two keepers date one stay: each date is written by who typed it', async () => {
    const [sire, dam] = await made.pair('MA');
    const id = await made.group('Dated tank', [sire, dam]);
    const stay = async () =>
      (await club.read<Members>(`pairings/${id}`)).members.find(({ individual }) => individual.id === sire);
    const memberId = (
      await club.read<{ members: { id: string; individual: { id: string } }[] }>(`pairings/${id}`)
    ).members.find(({ individual }) => individual.id === sire)?.id;
    await page.goto(`${club.url}/pairings/${id}`);
    await press('Dates of MA1');
    await page.getByLabel('left').fill('2024-05');
    // what is written here of another animal stands in nobody's way
    await press('Left today for MA2');
    await page.getByText('MA2 left today.').waitFor();
    await club.change(`pairings/${id}/members/${memberId}`, { joined: '2020-03' });
    await press('Write it down');
    await page.getByText(refused).waitFor();
    await page.getByText('Recorded meanwhile: 2020-03').waitFor();
    await club.look(page, 'stay-recorded-meanwhile');
    await press('Write it down');
    await page.getByText('The dates of MA1 are corrected.').waitFor();
    expect(await stay()).toMatchObject({ joined: '2020-03', left: '2024-05' });

    await press('Dates of MA1');
    await page.getByLabel('left').fill('2024-06');
    await club.change(`pairings/${id}`, { notes: 'moved to the other shelf' });
    await press('Write it down');
    await page.getByText(refused).waitFor();
    await press('Write it down');
    await expect.poll(async () => (await stay())?.left).toBe('2024-06');
  });

  it('notes of a plan stay as they are typed while a pair is declined', async () => {
    const orla = await club.page();
    const { items } = await club.read<{ items: { id: string; name: string }[] }>('lines?limit=200');
    await orla.goto(`${club.url}/lines/${items.find(({ name }) => name === 'Río Zancaval')?.id}/plan`);
    await orla.getByLabel('pairs wanted').fill('2');
    await orla.getByRole('button', { name: 'Make a plan' }).click();
    await orla.getByRole('button', { name: 'Keep this plan' }).click();
    await orla.getByLabel('what it is called').fill('Autumn');
    await orla.getByRole('button', { name: 'Keep it', exact: true }).click();
    await orla.getByRole('heading', { name: 'Autumn', level: 1 }).waitFor();
    await orla.getByRole('button', { name: 'Rename, note, share' }).click();
    await orla.getByRole('textbox', { name: 'notes' }).fill('Ask about the tubs');
    await orla
      .getByRole('button', { name: /^Decline/ })
      .first()
      .click();
    await orla.getByRole('button', { name: /^Put back/ }).waitFor();
    expect(await orla.getByRole('textbox', { name: 'notes' }).inputValue()).toBe('Ask about the tubs');
    await orla.getByRole('button', { name: 'Write it down' }).click();
    await orla.getByText('Autumn is changed.').waitFor();
    await orla.getByText('Ask about the tubs').waitFor();

    // somebody else names it meanwhile
    const planId = new URL(orla.url()).pathname.split('/').pop();
    await orla.getByRole('button', { name: 'Rename, note, share' }).click();
    await orla.getByRole('textbox', { name: 'notes' }).fill('Ask about the tubs and the lamp');
    await club.change(`kept-plans/${planId}`, { name: 'Autumn of the long tank' });
    await orla.getByRole('button', { name: 'Write it down' }).click();
    await orla.getByText('Recorded meanwhile: Autumn of the long tank').waitFor();
    await club.look(orla, 'plan-recorded-meanwhile');
    await orla.getByRole('button', { name: 'Write it down' }).click();
    await orla.getByText('Autumn of the long tank is changed.').waitFor();
    expect(await club.read(`kept-plans/${planId}`)).toMatchObject({
      name: 'Autumn of the long tank',
      notes: 'Ask about the tubs and the lamp',
    });
    await orla.context().close();
  });

  it('a sexing that is refused in part says so, beside what is left to do', async () => {
    const clutchId = await made.clutch('SEX', await made.pair('SA'), { laid: '2022-04-01' });
    const [, second] = await made.young(clutchId, ['SX-1', 'SX-2'], { hatched: '2022-04-15' });
    await page.goto(`${club.url}/?show=all`);
    const row = page.getByRole('listitem').filter({ hasText: 'SX-2' });
    await row.getByRole('button', { name: /^Note/ }).click();
    await row.getByRole('group', { name: 'SX-1' }).getByRole('radio', { name: 'female' }).check();
    await row.getByRole('group', { name: 'SX-2' }).getByRole('radio', { name: 'female' }).check();
    await club.change(`individuals/${second}`, { notes: 'fat' });
    await row.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('The sex of 1 animal is noted.').waitFor();
    await row.getByText('SX-1', { exact: true }).first().waitFor({ state: 'detached' });
    await row.getByText(refused).waitFor();
    await club.look(page, 'sexing-in-part');
    await row.getByRole('button', { name: 'Write it down' }).click();
    await row.waitFor({ state: 'detached' });
    expect(await club.read(`individuals/${second}`)).toMatchObject({ sex: 'female', notes: 'fat' });
  });
});
