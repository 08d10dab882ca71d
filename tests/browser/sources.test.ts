import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

interface Source {
  id: string;
  title: string;
  version: number;
  receivedBy: string | null;
  permitReferences: string[];
  labelAsReceived: string | null;
}

describe.skipIf(chromium === null)('the page of a source', () => {
  let club: DemoClub;
  let page: Page;
  let source: Source;
  const now = () => club.read<Source>(`sources/${source.id}`);

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    source = (await club.read<{ items: Source[] }>('sources?limit=1')).items[0] as Source;
    page = await club.page();
  }, 120_000);

  afterAll(async () => {
    await club.close();
    expect(club.faults).toEqual([]);
  });

  it('tells what of it is alive', async () => {
    const living = await club.read<{ founders: number; descendants: number }>(`sources/${source.id}/living`);
    expect(living.descendants).toBeGreaterThan(0);
    await page.goto(`${club.url}/sources/${source.id}`);
    const part = page.getByRole('region', { name: 'Alive today' });
    await part.getByText(`${living.founders + living.descendants} animals`).waitFor();
    await part.getByText('their expected shares added up').waitFor();
  });

  it('is corrected in place, on the version that was read, with an undo', async () => {
    await page.getByRole('button', { name: 'Edit', exact: true }).click();
    await page.getByLabel('received by').fill('Wendel Ostrava-Lind');
    await page.getByLabel('permits').fill('EX-77/3, EX-78/1');
    await expectAccessible(page, 'a source that is corrected');
    await club.look(page, 'source-edit');
    // somebody else writes meanwhile: it is told, and what was typed goes on top of theirs when it is written once more
    await club.change(`sources/${source.id}`, { labelAsReceived: 'Quebrada Falsa' });
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.locator('[data-form-summary]').waitFor();
    expect((await now()).receivedBy).toBe(source.receivedBy);
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText(/is corrected\.$/).waitFor();
    expect(await now()).toMatchObject({
      receivedBy: 'Wendel Ostrava-Lind',
      permitReferences: ['EX-77/3', 'EX-78/1'],
      labelAsReceived: 'Quebrada Falsa',
    });
    await page.getByText('EX-77/3, EX-78/1').first().waitFor();
    await club.look(page, 'source-desk');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText(/^Taken back: /).waitFor();
    expect(await now()).toMatchObject({ receivedBy: source.receivedBy, permitReferences: source.permitReferences });
  });

  it('is not offered to whom it is not', async () => {
    const other = await club.page({ width: 390, height: 844 }, 'Noor Elstavik');
    const { items } = await club.read<{ items: (Source & { keeper: string })[] }>('sources?limit=50');
    const strange = items.find(({ keeper }) => keeper !== 'Noor Elstavik');
    await other.goto(`${club.url}/sources/${strange?.id ?? ''}`);
    await other.getByRole('region', { name: 'Alive today' }).waitFor();
    expect(await other.getByRole('button', { name: 'Edit', exact: true }).count()).toBe(0);
    await club.look(other, 'source-phone');
  });
});
