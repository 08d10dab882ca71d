import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';
import { inventedLine, sheetOfLine } from '../support/invented-line.ts';

const chromium = findChromium();

type Chart = 'ancestors' | 'descendants' | 'a line over time';
const charts: Chart[] = ['ancestors', 'descendants', 'a line over time'];

interface Listed {
  items: { id: string }[];
}

/** A sheet of an animal whose ancestors fill every place: number n has the parents 2n and 2n + 1. */
function filledPedigree(animals: number): string {
  const rows = Array.from({ length: animals }, (_, at) => {
    const n = animals - at;
    const laid = `${2020 - 2 * Math.floor(Math.log2(n))}-05-01`;
    const origin =
      2 * n < animals ? `FP-${2 * n},FP-${2 * n + 1},FC-${n},${laid},,,,` : ',,,,FP-S,import,2005,Quebrada Larga';
    return `FP-${n},Epipedobates anthonyi,Quebrada Larga,${n % 2 === 0 ? 'm' : 'f'},${origin},alive`;
  });
  return ['code,species,line,sex,sire,dam,clutch,laid,source,source kind,source date,label,status', ...rows, ''].join(
    '\n',
  );
}

/** Charts of the small club and of a line of 800 animals. */
describe.skipIf(chromium === null)('the layout of a chart', () => {
  let club: DemoClub;
  const large = new Map<Chart, string>();
  const small = new Map<Chart, string>();

  const idOf = async (code: string): Promise<string> =>
    (await club.read<Listed>(`individuals?code=${code}`)).items[0]?.id ?? '';

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const line = inventedLine(800);
    await club.sheet(sheetOfLine(line, 'Quebrada Larga'));
    const lines = (await club.read<{ items: { id: string; name: string }[] }>('lines?limit=200')).items;
    const lineOf = (name: string): string => lines.find((one) => one.name === name)?.id ?? '';
    const sire = line.clutches[0]?.sires[0]?.animal ?? 0;
    await club.sheet(filledPedigree(127));
    large.set('ancestors', `/animals/${await idOf('FP-1')}?generations=8`);
    large.set('descendants', `/animals/${await idOf(line.animals[sire]?.code ?? '')}/descendants?generations=3`);
    large.set('a line over time', `/lines/${lineOf('Quebrada Larga')}/over-time`);
    const few = inventedLine(30, 3);
    await club.sheet(sheetOfLine(few, 'Quebrada Corta').replaceAll('OT-', 'QC-'));
    small.set('ancestors', `/animals/${await idOf('RV-61')}`);
    small.set('descendants', `/animals/${await idOf('RV-41')}/descendants`);
    const after = (await club.read<{ items: { id: string; name: string }[] }>('lines?limit=200')).items;
    const short = after.find(({ name }) => name === 'Quebrada Corta')?.id ?? '';
    small.set('a line over time', `/lines/${short}/over-time`);
  });

  afterAll(() => club.close());

  /** Opens a chart on a page of its own; gives its drawing as a file, how many workers it started and what it asked them. */
  async function drawn(
    address: string,
    change?: (page: Page) => Promise<unknown>,
  ): Promise<{ svg: string; workers: number; asked: number }> {
    const page = await club.page();
    await page.addInitScript(() => {
      globalThis.Worker = class extends Worker {
        override postMessage(message: unknown): void {
          performance.mark('asked-a-worker');
          super.postMessage(message);
        }
      };
    });
    await change?.(page);
    let workers = 0;
    page.on('worker', () => workers++);
    await page.goto(`${club.url}${address}`);
    const save = page.getByRole('button', { name: /^SVG/ }).first();
    await save.waitFor();
    if (address.includes('over-time'))
      await page.waitForFunction(() => performance.getEntriesByName('line-painted').length > 0);
    const [file] = await Promise.all([page.waitForEvent('download'), save.click()]);
    const svg = await readFile(await file.path(), 'utf8');
    const asked = await page.evaluate(() => performance.getEntriesByName('asked-a-worker').length);
    await page.context().close();
    return { svg, workers, asked };
  }

  it.each(charts)('of %s with more than a hundred nodes is made by a worker', async (chart) => {
    const { workers, asked } = await drawn(large.get(chart) ?? '');
    expect(workers).toBe(1);
    expect(asked).toBeGreaterThan(0);
  });

  it.each(charts)('of %s with fewer is made in the page', async (chart) => {
    expect(await drawn(small.get(chart) ?? '')).toMatchObject({ workers: 0, asked: 0 });
  });

  it.each(charts)('of %s is the same where the browser starts no worker', async (chart) => {
    const address = large.get(chart) ?? '';
    const without = await drawn(address, (page) =>
      page.addInitScript(() => {
        Object.defineProperty(globalThis, 'Worker', {
          value: function () {
            throw new Error('no workers here');
          },
        });
      }),
    );
    expect([without.workers, without.asked]).toEqual([0, 0]);
    expect(without.svg).toBe((await drawn(address)).svg);
    expect(club.faults).toEqual([]);
  });
});
