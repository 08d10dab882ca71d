import type { Page, Route } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();

interface Animal {
  id: string;
  number: string;
  code: string;
}

interface Home {
  id: string;
  name: string;
}

/** What is typed, chosen or opened while an answer is on its way counts, and stands where it was meant. */
describe.runIf(chromium)('Hands that go on before the answer is there', () => {
  let club: DemoClub;
  let page: Page;
  let clutchId: string;
  let living: [Animal, Animal, Animal];
  let homes: [Home, Home, Home];

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
    const animals = await club.read<{ items: typeof living }>('individuals?status=alive&limit=3');
    living = animals.items;
    homes = (await club.read<{ items: typeof homes }>('pairings?limit=3')).items;
    const found = (await club.read<{ items: { id: string }[] }>('clutches?limit=1')).items[0];
    clutchId = found?.id ?? '';
    await club.write(`clutches/${clutchId}/offspring`, { count: 6 });
  });
  afterAll(async () => club.close());
  beforeEach(async () => {
    page = await club.page();
    page.setDefaultTimeout(15_000);
  });
  afterEach(async ({ task }) => {
    if (task.result?.state === 'fail') await club.look(page, `failed-${task.id}`);
    await page.context().close();
  });

  const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
  /** Lets requests of a kind wait before they go. */
  const hold = (path: string, ms: number, method = 'GET') =>
    page.route(`**/api/v1/${path}`, async (route: Route) => {
      if (route.request().method() === method) await pause(ms);
      await route.fallback().catch(() => undefined);
    });
  /** Opens an address as a link or the palette does: the page stays. */
  const lead = (address: string) =>
    page.evaluate((href) => {
      const link = Object.assign(document.createElement('a'), { href });
      document.body.append(link);
      link.click();
      link.remove();
    }, address);
  const measured = async (animal: { id: string }) =>
    (await club.read<{ observations: { svlMm: number | null }[] }>(`individuals/${animal.id}`)).observations.map(
      ({ svlMm }) => svlMm,
    );
  const length = () => page.getByLabel('length', { exact: true });

  describe('on a round', () => {
    let young: [{ id: string }, { id: string }, { id: string }];

    beforeEach(async () => {
      const clutch = await club.read<{ young: { id: string; status: string }[] }>(`clutches/${clutchId}`);
      young = clutch.young.filter(({ status }) => status === 'alive').slice(-3) as unknown as typeof young;
      await page.goto(`${club.url}/round?animals=${young.map(({ id }) => id).join(',')}&do=measure,remark`);
      await page.getByText('1 of 3').waitFor();
      await expect.poll(() => length().evaluate((field) => field === document.activeElement)).toBe(true);
    });

    it('letters typed while the next animal is read do nothing to the one before', async () => {
      await hold('individuals/*', 900);
      const writes = page.waitForResponse((answer) => answer.request().method() === 'POST');
      await page.keyboard.type('14,5');
      await page.keyboard.press('Enter');
      await writes;
      await pause(150);
      await page.keyboard.type('under the leaf, not eating');
      await page.getByText('2 of 3').waitFor();
      await pause(300);
      expect(new URL(page.url()).pathname).toBe('/round');
      expect(await measured(young[0])).toEqual([14.5]);
      expect(await length().inputValue()).toBe('');
      expect(await length().evaluate((field) => field === document.activeElement)).toBe(true);
    });

    it('the same again is what was written, whatever was typed or pressed until the answer came', async () => {
      await hold('**', 700, 'POST');
      await page.keyboard.type('15');
      await page.keyboard.press('Enter');
      await page.keyboard.type('9');
      await page.keyboard.press('PageDown');
      await page.getByText('2 of 3').waitFor();
      await pause(500);
      expect(await page.getByText('2 of 3').isVisible()).toBe(true);
      await page.keyboard.press('Alt+Enter');
      await page.getByText('3 of 3').waitFor();
      expect((await measured(young[1]))[0]).toBe(15);
    });

    it('another round asked for while an animal is read is the one that is shown', async () => {
      await hold('individuals/*', 700);
      await page.keyboard.press('PageDown');
      await pause(100);
      await lead(`/round?animals=${living[0].id}&do=measure`);
      await page.getByText('1 of 1').waitFor();
      await page.getByRole('heading', { name: living[0].code }).waitFor();
    });

    it('a key that steps waits for no list, and stays away from an open dialog', async () => {
      await hold('pairings?*', 4000);
      await page.reload();
      await page.getByText('1 of 3').waitFor();
      await length().click();
      await page.keyboard.press('PageDown');
      await page.getByText('2 of 3').waitFor({ timeout: 2500 });
      await page.keyboard.press('Control+k');
      await page.getByRole('dialog', { name: /Find or do anything/ }).waitFor();
      await page.keyboard.press('PageDown');
      await page.keyboard.press('Escape');
      await pause(300);
      expect(await page.getByText('2 of 3').isVisible()).toBe(true);
    });
  });

  describe('noting a clutch', () => {
    const where = () => page.getByRole('combobox', { name: 'where' });
    const written = async (): Promise<{ pairingId?: string; pairing?: { id: string } | null }> => {
      await page.getByRole('button', { name: 'Write it down' }).click();
      await page.waitForURL(/\/clutches\/[0-9a-f-]{36}$/);
      return club.read(`clutches/${new URL(page.url()).pathname.split('/').pop()}`);
    };

    it('the place chosen while an animal is read is the place', async () => {
      await hold(`individuals/${living[0].id}`, 900);
      await page.goto(`${club.url}/clutches/new?animals=${living[0].id}`);
      await where().locator('optgroup option').first().waitFor({ state: 'attached' });
      await where().selectOption({ label: homes[1].name });
      const clutch = await written();
      expect(clutch.pairing?.id ?? clutch.pairingId).toBe(homes[1].id);
    });

    it('of two places chosen quickly the last is the place', async () => {
      await page.goto(`${club.url}/clutches/new?animals=${living[0].id}`);
      await where().locator('optgroup option').first().waitFor({ state: 'attached' });
      await page.getByText(living[0].code).first().waitFor();
      await pause(300);
      await hold('pairings/*', 700);
      await where().selectOption({ label: homes[0].name });
      await pause(100);
      await where().selectOption({ label: homes[2].name });
      const clutch = await written();
      expect(clutch.pairing?.id ?? clutch.pairingId).toBe(homes[2].id);
    });

    it('what is typed while a half noted clutch comes back stays', async () => {
      await page.goto(`${club.url}/clutches/new`);
      await page.locator('.eggs input').fill('7');
      await lead('/lines');
      await page.waitForURL(/\/lines$/);
      await hold('pairings?*', 900);
      await page.goBack();
      const eggs = page.locator('.eggs input');
      await eggs.fill('9');
      await pause(1500);
      expect(await eggs.inputValue()).toBe('9');
    });

    it('a clutch of another animal begins anew', async () => {
      await page.goto(`${club.url}/clutches/new?animals=${living[0].id}`);
      await page.getByText(living[0].code).first().waitFor();
      await page.locator('.eggs input').fill('7');
      await lead(`/clutches/new?animals=${living[1].id}`);
      await page.getByText(living[1].code).first().waitFor();
      expect(await page.getByText(living[0].code, { exact: true }).count()).toBe(0);
      expect(await page.locator('.eggs input').inputValue()).toBe('');
    });
  });

  it('other animals asked for on an open form are the animals of the form', async () => {
    const [one, other] = [living[0], living[1]];
    for (const form of ['transfers', 'pairings']) {
      await page.goto(`${club.url}/${form}/new?animals=${one.id}`);
      await page.locator('form').getByText(one.code, { exact: true }).first().waitFor();
      await lead(`/${form}/new?animals=${other.id}`);
      await page.locator('form').getByText(other.code, { exact: true }).first().waitFor();
      expect([form, await page.locator('form').getByText(one.code, { exact: true }).count()]).toEqual([form, 0]);
    }
    const sources = await club.read<{ items: { id: string }[] }>('sources?limit=2');
    const [from, to] = sources.items as [{ id: string }, { id: string }];
    await page.goto(`${club.url}/animals/new?source=${from.id}`);
    const source = page.getByRole('combobox', { name: 'source' });
    await expect.poll(() => source.inputValue(), { timeout: 10_000 }).toBe(from.id);
    await lead(`/animals/new?source=${to.id}`);
    await expect.poll(() => source.inputValue(), { timeout: 10_000 }).toBe(to.id);
  });

  it('an animal picked while the asked ones are read goes too', async () => {
    await hold('keepers?*', 2500);
    await page.goto(`${club.url}/transfers/new?animals=${living[0].id}`);
    await page.getByRole('combobox', { name: 'add an animal of yours' }).click();
    await page.keyboard.type(living[1].code);
    await page.getByRole('option').first().waitFor();
    await page.keyboard.press('Enter');
    const given = page.locator('form ul label');
    await given.getByText(living[1].code, { exact: true }).waitFor();
    await given.getByText(living[0].code, { exact: true }).waitFor();
    expect(await given.getByText(living[1].code, { exact: true }).count()).toBe(1);
  });

  it('the other one goes on, also when that is said while the two are compared', async () => {
    await hold('merges/comparison?*', 700);
    const [one, other] = [living[0], living[1]];
    await page.goto(`${club.url}/merge?kept=${one.id}&duplicate=${other.id}`);
    await page.getByRole('link', { name: 'The other one goes on' }).click();
    await page.getByRole('form', { name: 'Merge' }).waitFor();
  });

  it('a sheet is signed for the animals that were chosen last', async () => {
    const [one, other, third] = living.map(({ id }) => id);
    await page.goto(`${club.url}/sheets/new?animals=${one},${other},${third}`);
    await page.getByRole('button', { name: `Take out ${living[0].code}` }).waitFor();
    await hold('individuals/*', 800);
    let body: { animals?: string[] } = {};
    await page.route('**/api/v1/provenance-sheets', (route) => {
      body = route.request().postDataJSON() as typeof body;
      return route.continue();
    });
    await page.getByRole('button', { name: `Take out ${living[0].code}` }).click();
    await page.getByRole('button', { name: `Take out ${living[1].code}` }).click();
    await page.getByRole('button', { name: 'Make and sign' }).click();
    await expect.poll(() => body.animals, { timeout: 10_000 }).toEqual([third]);
    await page.waitForURL(/\/s\//);
  });

  describe('in the register', () => {
    it('a letter typed while the list for the first letters is read counts', async () => {
      await page.goto(`${club.url}/register`);
      await page.getByRole('table').waitFor();
      let asked = (): void => undefined;
      let answer = (): void => undefined;
      const isAsked = new Promise<void>((resolve) => (asked = resolve));
      const mayAnswer = new Promise<void>((resolve) => (answer = resolve));
      await page.route('**/api/v1/individuals?q=RV-6&*', async (route) => {
        asked();
        await mayAnswer;
        await route.continue().catch(() => undefined);
      });
      await page.getByRole('searchbox').click();
      await page.keyboard.type('RV-6');
      await isAsked;
      await page.keyboard.type('1');
      answer();
      await page.waitForURL(/q=RV-61/, { timeout: 5000 });
      expect(await page.getByRole('searchbox').inputValue()).toBe('RV-61');
    });

    it('two words of the sentence chosen quickly both stand', async () => {
      await page.goto(`${club.url}/register`);
      await page.getByRole('table').waitFor();
      await hold('individuals?*', 900);
      await page.getByRole('button', { name: 'living, dead or gone' }).click();
      await page.getByRole('link', { name: 'alive', exact: true }).click();
      await page.getByRole('button', { name: 'of any sex' }).click();
      await page.getByRole('link', { name: 'female', exact: true }).click();
      await page.waitForURL(/sex=female/);
      expect(new URL(page.url()).searchParams.get('status')).toBe('alive');
    });

    it('a search that was typed does not lead back from the page opened next', async () => {
      const faults: string[] = [];
      page.on('pageerror', ({ message }) => faults.push(message));
      await page.goto(`${club.url}/lines`);
      await page.getByRole('heading', { level: 1 }).waitFor();
      await lead('/register');
      await page.getByRole('searchbox').click();
      await page.keyboard.type('RV');
      await lead('/lines');
      await page.waitForURL(/\/lines$/);
      await pause(600);
      expect(new URL(page.url()).pathname).toBe('/lines');
      expect(faults).toEqual([]);
    });
  });

  it('the next animal is typed while the one before is written down', async () => {
    await page.goto(`${club.url}/animals/new`);
    const code = page.getByLabel('code', { exact: true });
    await page.getByRole('combobox', { name: 'species' }).selectOption({ index: 1 });
    await hold('individuals', 900, 'POST');
    await code.fill('QH-1');
    await code.press('Enter');
    await pause(100);
    await page.keyboard.type('QH-2');
    await page.getByRole('complementary').getByText('QH-1', { exact: true }).waitFor();
    expect(await code.inputValue()).toBe('QH-2');
    await code.press('Enter');
    await page.getByRole('complementary').getByText('QH-2', { exact: true }).waitFor();
  });

  describe('with what waited and is sent', () => {
    beforeEach(async () => {
      await page.goto(`${club.url}/animals/${living[2].id}`);
      await page.getByRole('button', { name: 'Add a note' }).click();
      await page.evaluate(() => navigator.serviceWorker.ready);
      await page.context().setOffline(true);
    });

    it('the page shows it, in the tab that sent it', async () => {
      await page.getByLabel('what was seen').fill('Calls from the bark.');
      await page.getByRole('button', { name: 'Write it down' }).click();
      await page.getByRole('heading', { name: 'Waiting to be sent' }).waitFor();
      await page.context().setOffline(false);
      await page.getByRole('heading', { name: 'Waiting to be sent' }).waitFor({ state: 'detached' });
      await page.getByText('Calls from the bark.').waitFor({ timeout: 5000 });
    });

    it('a form that is half typed stays, and says that it was sent meanwhile', async () => {
      await page.getByLabel('what was seen').fill('Sits in the cup.');
      await page.getByRole('button', { name: 'Write it down' }).click();
      await page.getByRole('link', { name: 'See what waits' }).click();
      await page
        .getByRole('link', { name: /^Change/ })
        .first()
        .click();
      await page.getByLabel('what was seen').fill('Sits in the cup, with one tadpole');
      const sent = page.waitForResponse((answer) => answer.url().endsWith('/observations') && answer.ok());
      await page.context().setOffline(false);
      await sent;
      await pause(1000);
      expect(await page.getByLabel('what was seen').inputValue()).toBe('Sits in the cup, with one tadpole');
      await page.getByRole('button', { name: 'Write it down' }).click();
      await page.getByText('It was sent meanwhile').waitFor();
    });
  });

  it('the animal added last stays in the grid when an older answer comes after its own', async () => {
    const of = async (sex: string) =>
      (await club.read<{ items: Animal[] }>(`individuals?status=alive&sex=${sex}&limit=2`)).items;
    const [females, males] = [await of('female'), await of('male')];
    const first = page.waitForResponse((answer) => answer.url().endsWith('/lineage/kinship'));
    await page.goto(`${club.url}/match?animals=${females[0]?.id}`);
    await first;
    let asked = 0;
    await page.route('**/api/v1/lineage/kinship', async (route) => {
      asked += 1;
      if (asked === 1) await pause(2500);
      await route.continue().catch(() => undefined);
    });
    const picker = page.getByRole('combobox').first();
    for (const { code } of [...males.slice(1), ...females.slice(1)]) {
      await picker.click();
      await page.keyboard.press('Control+A');
      await page.keyboard.type(code);
      await page
        .getByRole('option', { name: new RegExp(code) })
        .first()
        .waitFor();
      await page.keyboard.press('Enter');
    }
    await expect.poll(() => asked).toBe(2);
    await pause(3200);
    const grid = page.getByRole('grid');
    for (const { code } of [...males.slice(1), ...females])
      expect([code, await grid.getByText(code).count()]).not.toEqual([code, 0]);
  });
});
