import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

interface Scored {
  score: { inbreeding: { expected: number }; pairs: number };
  best: { males: { id: string; code: string }[]; females: { id: string; code: string }[] };
}

interface Housed {
  left: string | null;
  individual: { sex: string };
}

describe.skipIf(chromium === null)('a group of animals', () => {
  let club: DemoClub;
  let page: Page;
  let lineId: string;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const { items } = await club.read<{ items: { id: string; name: string }[] }>('lines?limit=200');
    lineId = items.find(({ name }) => name === 'Río Zancaval')?.id ?? '';
    page = await club.page();
  });

  afterAll(() => club.close());

  const grid = () => page.getByRole('grid', { name: /every sire with every dam/ });
  const animals = () => new URL(page.url()).searchParams.get('animals')?.split(',') ?? [];

  it('is found for a whole line: the best 1.2, as the service says it', async () => {
    await page.goto(`${club.url}/lines/${lineId}`);
    await page.getByRole('link', { name: 'Find a group' }).click();
    await page.getByRole('heading', { name: 'The best 1.2' }).waitFor();
    await page.waitForURL(/animals=/);
    const answer = await club.ask<Scored>('match/group', { individuals: animals(), males: 1, females: 2 });
    const best = page.getByRole('region', { name: 'The best 1.2' });
    const named = await best.getByRole('listitem').allInnerTexts();
    expect(named.map((text) => text.trim()).sort()).toEqual(
      [...answer.best.males, ...answer.best.females].map(({ code }) => code).sort(),
    );
    expect(
      await grid()
        .getByRole('gridcell', { name: /in the best group$/ })
        .count(),
    ).toBe(2);
    await expectAccessible(page, 'group of a line');
    await club.look(page, 'group-line');
  });

  it('is looked at alone, and told whom to take out and whom to add', async () => {
    await page.getByRole('button', { name: 'Show these alone' }).click();
    await page.getByText(/^1\.2, 2 pairs: the young would be/).waitFor();
    expect(animals()).toHaveLength(3);
    const add = page.getByRole('region', { name: 'Whom to add' });
    await add.getByRole('button', { name: /^Add / }).first().click();
    await page.getByText(/pairs: the young would be/).waitFor();
    await page.waitForFunction(() => new URL(location.href).searchParams.get('animals')?.split(',').length === 4);
    await page.getByText(/^(2\.2, 4|1\.3, 3) pairs/).waitFor();
    const out = page.getByRole('region', { name: 'Whom to take out' });
    await out
      .getByRole('button', { name: /^Take out / })
      .first()
      .click();
    await page.waitForFunction(() => new URL(location.href).searchParams.get('animals')?.split(',').length === 3);
    await club.look(page, 'group-alone');
  });

  it('says in plain words what is wrong with a size, and why there is no group', async () => {
    await page.getByLabel('best group of').fill('many');
    await page.getByLabel('best group of').press('Enter');
    await page.getByText('Write males.females, 1 to 6 of each, such as 1.2.').waitFor();
    await page.getByLabel('best group of').fill('4.4');
    await page.getByLabel('best group of').press('Enter');
    await page.getByText(/may breed\. Name more, or ask for a smaller group\./).waitFor();
    await page.getByLabel('weight of inbreeding').fill('8');
    await page.getByLabel('weight of inbreeding').press('Enter');
    await page.waitForURL(/weight=8/);
    expect(page.url()).toContain('size=4.4');
  });

  it('is scored from the page of a pairing, and leads to a pairing', async () => {
    const { items } = await club.read<{ items: { id: string; members: Housed[] }[] }>('pairings?limit=200');
    const lives = (housed: readonly Housed[], sex: string) =>
      housed.some(({ left, individual }) => left === null && individual.sex === sex);
    const pairing = items.find(({ members }) => lives(members, 'male') && lives(members, 'female'));
    await page.goto(`${club.url}/pairings/${pairing?.id}`);
    await page.getByRole('link', { name: 'Score this group' }).click();
    await page.getByText(/pairs?: the young would be/).waitFor();
    const answer = await club.ask<Scored>('match/group', { individuals: animals() });
    expect(await grid().locator('tbody td').count()).toBe(answer.score.pairs);
    await page.getByLabel('best group of').fill('1.1');
    await page.getByLabel('related').selectOption({ label: 'whoever it is' });
    await page.getByLabel('best group of').fill('1.1');
    await page.getByLabel('best group of').press('Enter');
    await page.getByRole('link', { name: 'House together the best 1.1' }).click();
    await page.getByRole('heading', { name: 'House animals together' }).waitFor();
    await page.getByText('1.1').first().waitFor();
  });

  it('warns of who may not breed by name, and lets them be taken out', async () => {
    const of = async (status: string, sex: string) => {
      const query = `individuals?line=${encodeURIComponent('Río Zancaval')}&status=${status}&sex=${sex}&limit=1`;
      return (await club.read<{ items: { number: string; code: string }[] }>(query)).items[0];
    };
    const [dead, male, female] = [await of('died', 'male'), await of('alive', 'male'), await of('alive', 'female')];
    await page.goto(`${club.url}/match/group?animals=${[dead, male, female].map((one) => one?.number).join(',')}`);
    await page.getByText(`${dead?.code} (${dead?.number}) died, left the club`).waitFor();
    await page.getByRole('button', { name: 'Take out 1 animal that may not breed' }).click();
    await page.getByText(/^1\.1, 1 pair: the young would be/).waitFor();
    expect(animals()).toEqual([male?.number, female?.number]);
  });

  it('refuses several lines unless a cross is asked for, and then warns', async () => {
    const { items } = await club.read<{ items: { number: string; line: string; sex: string }[] }>(
      'individuals?status=alive&limit=200',
    );
    const male = items.find(({ line, sex }) => line === 'Río Zancaval' && sex === 'male');
    const female = items.find(({ line, sex }) => line !== 'Río Zancaval' && sex === 'female');
    await page.goto(`${club.url}/match/group?animals=${male?.number},${female?.number}`);
    await page.getByText('The animals belong to several lines.').waitFor();
    await page.getByLabel('animals of several lines, for a cross').check();
    await page.getByText(/Young of this group may be crosses of/).waitFor();
    expect(page.url()).toContain('crossLines=true');
  });

  it.each([1440, 320])('reads at %i pixels by day and by night', async (width) => {
    await page.setViewportSize({ width, height: 900 });
    await page.goto(`${club.url}/match/group?line=${lineId}&size=2.3`);
    await page.getByRole('heading', { name: 'The best 2.3' }).waitFor();
    await page.getByRole('heading', { name: 'Whom to take out' }).waitFor();
    for (const theme of ['day', 'night']) {
      await page.evaluate((name) => (document.documentElement.dataset['theme'] = name), theme);
      await expectAccessible(page, `group at ${width}, ${theme}`);
      await club.look(page, `group-${width}-${theme}`);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    // the refusal of several lines is told by the console of the browser, too
    expect(club.faults.filter((fault) => !fault.includes('422'))).toEqual([]);
  });
});
