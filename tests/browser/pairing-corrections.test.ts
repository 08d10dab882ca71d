import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { bringCookie, expectAccessible, findChromium, openBrowser, openPage } from '../support/browser.ts';
import { askAs, setUpClub, startService } from '../support/service.ts';

const chromium = findChromium();

it.skipIf(chromium === null)(
  'a date of joining corrected on the page offers the clutches it touches; taken, it can be undone; so can a new name',
  async () => {
    const folder = mkdtempSync(join(tmpdir(), 'linekeeper-corrections-'));
    const service = await startService({ DATA_DIR: join(folder, 'data') });
    const cookie = await setUpClub(service);
    const browser = await openBrowser(chromium ?? '');
    const post = async <T>(path: string, body: object, headers: Record<string, string> = {}): Promise<T> => {
      const answer = await askAs(cookie, `${service.url}/api/v1/${path}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', ...headers },
        body: JSON.stringify(body),
      });
      expect(answer.status).toBe(201);
      return (await answer.json()) as T;
    };
    try {
      const { id: speciesId } = await post<{ id: string }>('species', { scientificName: 'Epipedobates anthonyi' });
      const animal = (code: string, sex: string): Promise<{ id: string }> =>
        post('individuals', { speciesId, code, sex, hatched: '2018' });
      const [sire, dam, late] = [
        await animal('T-1', 'male'),
        await animal('T-2', 'female'),
        await animal('T-3', 'male'),
      ];
      const members = [sire, dam].map(({ id }) => ({ individualId: id, joined: '2021-01-01' }));
      const pairing = await post<{ id: string }>('pairings', { name: 'tank 3', members });
      const clutch = await post<{ id: string }>('clutches', { pairingId: pairing.id, laid: '2022-05-01', eggs: 6 });
      await post('clutches', { pairingId: pairing.id, laid: '2022-07-01', eggs: 5 });
      await post(`pairings/${pairing.id}/members`, { individualId: late.id, joined: '2022-08' }, { 'if-match': '*' });

      const faults: string[] = [];
      const context = await browser.newContext({ reducedMotion: 'reduce' });
      await bringCookie(context, service.url, cookie);
      const page = await openPage(context, faults);
      await page.goto(`${service.url}/pairings/${pairing.id}`);
      const siresOf = async (): Promise<number> => {
        const { parents } = (await (await askAs(cookie, `${service.url}/api/v1/clutches/${clutch.id}`)).json()) as {
          parents: { sires: unknown[] };
        };
        return parents.sires.length;
      };
      const offer = page.getByRole('region', { name: /clutch(es)? may have other parents now/ });
      await page.getByRole('button', { name: 'Dates of T-3' }).click();
      await page.getByLabel('joined').fill('2021-06');
      await page.getByLabel('joined').press('Enter');
      await offer.getByText('Two clutches').waitFor();
      expect(await offer.innerText()).toContain('T-3 lived here when it was laid, but is not among the candidates.');
      await expectAccessible(page, 'pairing with corrections');
      await offer.getByRole('button', { name: /Leave as recorded.*2022-07-01/ }).press('Enter');
      await offer.getByText('One clutch').waitFor();
      expect(await siresOf()).toBe(1);
      await offer.getByRole('button', { name: /^Take these parents/ }).press('Enter');
      await offer.waitFor({ state: 'detached' });
      expect(await siresOf()).toBe(2);
      await page.getByRole('button', { name: 'Undo' }).click();
      await page.getByText(/^Taken back: The parents of the/).waitFor();
      expect(await siresOf()).toBe(1);
      await offer.getByText('One clutch').waitFor();

      await page.getByRole('button', { name: 'Edit name and notes' }).click();
      await page.getByLabel('name', { exact: true }).fill('tank 3, upper shelf');
      await page.getByLabel('notes', { exact: true }).fill('misted at dusk');
      await expectAccessible(page, 'name and notes of a pairing');
      await page.getByRole('button', { name: 'Write it down' }).click();
      await page.getByRole('heading', { level: 1, name: 'tank 3, upper shelf' }).waitFor();
      await page.getByText('misted at dusk').waitFor();
      await page.getByRole('button', { name: 'Undo' }).click();
      await page.getByRole('heading', { level: 1, name: 'tank 3', exact: true }).waitFor();
      expect(await page.getByText('misted at dusk').count()).toBe(0);

      // somebody else writes meanwhile: nothing typed is lost, and theirs is shown beside it
      await page.getByRole('button', { name: 'Edit name and notes' }).click();
      const theirs = { method: 'PATCH', body: JSON.stringify({ name: 'tank 4' }) };
      const headers = { 'content-type': 'application/json', 'if-match': '*' };
      expect((await askAs(cookie, `${service.url}/api/v1/pairings/${pairing.id}`, { ...theirs, headers })).status).toBe(
        200,
      );
      await page.getByLabel('name', { exact: true }).fill('tank 3a');
      await page.getByRole('button', { name: 'Write it down' }).click();
      await page.getByText('Recorded meanwhile: tank 4').waitFor();
      expect(await page.getByLabel('name', { exact: true }).inputValue()).toBe('tank 3a');
      await page.getByRole('button', { name: 'Write it down' }).click();
      await page.getByRole('heading', { level: 1, name: 'tank 3a' }).waitFor();
      expect(faults).toEqual([]);
    } finally {
      await browser.close();
      service.process.kill('SIGTERM');
      await service.ended;
      rmSync(folder, { recursive: true, force: true });
    }
  },
);
