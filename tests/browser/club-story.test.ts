import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, findChromium, openBrowser, openPage } from '../support/browser.ts';
import { startService, type Service } from '../support/service.ts';

const chromium = findChromium();

/** An invented sheet: a pair and their daughter. */
const sheet = `code,species,sex,sire,dam,hatched,status
AN-01,Epipedobates anthonyi,m,,,2019,alive
AN-02,Epipedobates anthonyi,f,,,2019,alive
AN-03,Epipedobates anthonyi,f,AN-01,AN-02,2022-05-01,alive
`;
const words = { anna: 'moss under the third lamp', ben: 'a bucket of springtails' };

/** Two people share one register: Anna, who starts it, and Ben, whom she invites. */
describe.skipIf(chromium === null)('a club of two', () => {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-club-'));
  const faults: string[] = [];
  let service: Service;
  let browser: Browser;
  let anna: Page;
  let ben: Page;
  let invitation = '';

  beforeAll(async () => {
    service = await startService({ DATA_DIR: join(folder, 'data') });
    browser = await openBrowser(chromium ?? '');
    const open = async (): Promise<Page> =>
      openPage(await browser.newContext({ viewport: { width: 1440, height: 1000 }, reducedMotion: 'reduce' }), faults);
    [anna, ben] = [await open(), await open()];
  });

  afterAll(async () => {
    await browser.close();
    service.process.kill('SIGTERM');
    await service.ended;
    rmSync(folder, { recursive: true, force: true });
  });

  const heading = (page: Page, name: string | RegExp): Locator => page.getByRole('heading', { name, level: 1 });
  const openAnimal = async (page: Page, code: string): Promise<void> => {
    await page.goto(`${service.url}/register?q=${code}`);
    await page.getByRole('link', { name: code }).first().click();
    await heading(page, code).waitFor();
  };
  const taken = (page: Page): Locator => page.getByRole('status').getByText(/^Taken back: /);

  it('begins with the code from the terminal; a wrong one is told at its field', async () => {
    await anna.goto(`${service.url}/pairings`);
    await heading(anna, 'A new register').waitFor();
    await expectAccessible(anna, 'set up');
    await anna.getByLabel('code from the terminal').fill('AAAA-AAAA-AAAA');
    await anna.getByLabel('name of the club').fill('Two tanks');
    await anna.getByLabel('your name').fill('Anna');
    await anna.getByLabel('passphrase', { exact: true }).fill(words.anna);
    await anna.getByText('strong', { exact: true }).waitFor();
    await anna.getByRole('button', { name: 'Open the register' }).click();
    await anna.getByRole('alert').filter({ hasText: /code/i }).waitFor();
    const code = /with this code: (\S+)/.exec(service.output())?.[1] ?? '';
    await anna.getByLabel('code from the terminal').fill(code);
    await anna.getByRole('button', { name: 'Open the register' }).click();
    await anna.getByText('This register is empty').waitFor();
    await anna.getByRole('banner').getByText('Anna').waitFor();
    expect(faults).toEqual([]);
  });

  it('asks a stranger to sign in, and keeps the address that was wanted; by keyboard alone', async () => {
    await anna.getByRole('button', { name: 'Sign out' }).click();
    await heading(anna, 'Sign in').waitFor();
    await anna.goto(`${service.url}/journal?action=set-up`);
    await heading(anna, 'Sign in').waitFor();
    await expectAccessible(anna, 'sign in');
    await anna.getByLabel('your name in the club').focus();
    await anna.keyboard.type('anna');
    await anna.keyboard.press('Tab');
    await anna.keyboard.type('not the words');
    await anna.keyboard.press('Enter');
    await anna.getByRole('alert').filter({ hasText: /\S/ }).waitFor();
    await expectAccessible(anna, 'sign in refused');
    await anna.getByLabel('passphrase', { exact: true }).focus();
    await anna.keyboard.press('Control+A');
    await anna.keyboard.type(words.anna);
    await anna.keyboard.press('Enter');
    await heading(anna, 'Journal').waitFor();
    expect(new URL(anna.url()).searchParams.get('action')).toBe('set-up');
    await anna.getByText('set up the club').first().waitFor();
    expect(faults).toEqual([]);
  });

  it('takes a sheet that only its keeper and registrars see', async () => {
    await anna.goto(`${service.url}/import`);
    await anna.getByText('No sheet was taken yet.').waitFor();
    await anna
      .locator('input[type=file]')
      .setInputFiles({ name: 'frogs.csv', mimeType: 'text/csv', buffer: Buffer.from(sheet) });
    await anna.getByRole('button', { name: 'Write 3 animals' }).click();
    await anna.getByRole('heading', { name: '3 animals written' }).waitFor();
    await openAnimal(anna, 'AN-02');
    await anna.getByRole('button', { name: 'Edit', exact: true }).click();
    await anna.getByRole('radio', { name: 'private' }).check();
    await expectAccessible(anna, 'edit with visibility');
    await anna.getByRole('button', { name: 'Write it down' }).click();
    await anna.getByText('its keeper and registrars').waitFor();
    expect(faults).toEqual([]);
  });

  it('invites by a link that is shown once', async () => {
    await anna.goto(`${service.url}/club`);
    await heading(anna, 'Two tanks').waitFor();
    await anna.getByRole('button', { name: 'Invite somebody' }).click();
    await anna.getByLabel('for whom').fill('Ben from the other town');
    await anna.getByRole('button', { name: 'Make the link' }).click();
    invitation = await anna.locator('output').innerText();
    expect(invitation).toContain(`${service.url}/join/`);
    await anna.getByText('Ben from the other town').first().waitFor();
    await expectAccessible(anna, 'club');
    await anna.reload();
    await anna.getByText('Ben from the other town').first().waitFor();
    expect(await anna.getByText(invitation).count()).toBe(0);
    await anna.getByRole('link', { name: 'My account' }).click();
    await heading(anna, 'Anna').waitFor();
    await expectAccessible(anna, 'my account');
    expect(faults).toEqual([]);
  });

  it('lets the invited one in, once', async () => {
    await ben.goto(invitation);
    await heading(ben, 'Join the club').waitFor();
    await expectAccessible(ben, 'join');
    await ben.getByLabel('your name').fill('Anna');
    await ben.getByLabel('passphrase', { exact: true }).fill(words.ben);
    await ben.getByRole('button', { name: 'Join' }).click();
    await ben.locator('[aria-invalid=true]').waitFor();
    await ben.getByLabel('your name').fill('Ben');
    await ben.getByRole('button', { name: 'Join' }).click();
    await heading(ben, 'Register').waitFor();
    await ben.getByRole('link', { name: 'AN-03' }).waitFor();
    const third = await openPage(await browser.newContext(), faults);
    await third.goto(invitation);
    await heading(third, 'This link is closed').waitFor();
    await expectAccessible(third, 'closed link');
    await third.context().close();
    expect(faults).toEqual([]);
  });

  it('shows to each what is theirs to see and to change', async () => {
    await ben.goto(`${service.url}/register`);
    await ben.getByRole('link', { name: 'AN-01' }).waitFor();
    expect(await ben.getByRole('link', { name: 'AN-02' }).count()).toBe(0);
    await openAnimal(ben, 'AN-03');
    await ben.getByRole('heading', { name: 'Ancestors' }).waitFor();
    await ben.getByRole('img', { name: /^private, private animal/ }).waitFor();
    expect(await ben.getByRole('button', { name: 'Edit', exact: true }).count()).toBe(0);
    expect(await ben.getByRole('button', { name: 'Withdraw this record' }).count()).toBe(0);
    expect(await ben.locator('main').innerText()).not.toContain('AN-02');
    await expectAccessible(ben, 'animal of another keeper');
    await ben.goto(`${service.url}/club`);
    await ben.getByText('this is you').waitFor();
    expect(await ben.getByRole('button', { name: 'Invite somebody' }).count()).toBe(0);
    expect(faults).toEqual([]);
  });

  it('undoes an edit, and the undo', async () => {
    await openAnimal(anna, 'AN-03');
    await anna.getByRole('button', { name: 'Edit', exact: true }).click();
    await anna.getByLabel('notes').fill('Calls at noon.');
    await anna.getByRole('button', { name: 'Write it down' }).click();
    await anna.getByRole('region', { name: 'Identity' }).getByText('Calls at noon.').waitFor();
    await anna.getByRole('button', { name: 'Undo', exact: true }).click();
    await taken(anna).waitFor();
    await anna.getByRole('region', { name: 'Identity' }).getByText('Calls at noon.').waitFor({ state: 'detached' });
    await anna.keyboard.press('u');
    await anna.getByRole('region', { name: 'Identity' }).getByText('Calls at noon.').waitFor();
    await anna.getByText('Who wrote what on this record').click();
    await anna
      .getByRole('button', { name: /^Undo this/ })
      .first()
      .waitFor();
    await expectAccessible(anna, 'history of a record');
    expect(faults).toEqual([]);
  });

  it('keeps a half-written form when the session ends, and goes on after signing in again', async () => {
    await ben.goto(`${service.url}/animals/new`);
    await ben.getByLabel('code', { exact: true }).fill('BE-01');
    await ben.getByLabel('species', { exact: true }).selectOption({ label: 'Epipedobates anthonyi' });
    // ended at the service: a cookie that is only dropped comes back with an answer under way
    expect(await ben.evaluate(async () => (await fetch('/api/v1/session', { method: 'DELETE' })).ok)).toBe(true);
    await ben.context().clearCookies();
    await ben.getByRole('button', { name: 'Write it down' }).click();
    const dialog = ben.getByRole('dialog', { name: 'Sign in again' });
    await dialog.waitFor();
    await expectAccessible(ben, 'sign in again');
    await dialog.getByLabel('passphrase', { exact: true }).fill(words.ben);
    await dialog.getByRole('button', { name: 'Sign in', exact: true }).click();
    await ben.getByRole('status').getByText('BE-01 written down.').waitFor();
    expect(faults).toEqual([]);
  });

  it('tells all of it in the journal, without what is private', async () => {
    await anna.goto(`${service.url}/journal`);
    await anna.getByText('Calls at noon.').first().waitFor();
    await anna.getByRole('link', { name: /BE-01/ }).first().waitFor();
    await expectAccessible(anna, 'journal');
    await anna.getByRole('button', { name: 'anyone', exact: true }).click();
    await anna.getByRole('link', { name: 'Ben', exact: true }).click();
    await anna.waitForURL(/keeper=/);
    await anna.getByText('Calls at noon.').first().waitFor({ state: 'detached' });
    await ben.goto(`${service.url}/journal`);
    await ben.getByRole('link', { name: /AN-03/ }).first().waitFor();
    expect(await ben.locator('main').innerText()).not.toContain('AN-02');
    expect(faults).toEqual([]);
  });

  it('takes the whole sheet back once nothing depends on it, and brings it back', async () => {
    await anna.goto(`${service.url}/import`);
    await anna.getByRole('button', { name: /^Undo this import/ }).click();
    await anna.getByLabel('why').fill('The wrong sheet');
    await anna.getByRole('button', { name: 'Take all of it back' }).click();
    // Ben's animal is of a species that the sheet brought
    await anna.getByRole('link', { name: 'BE-01' }).waitFor();
    await expectAccessible(anna, 'import that others depend on');
    await openAnimal(ben, 'BE-01');
    await ben.getByRole('button', { name: 'Withdraw this record' }).click();
    await ben.getByLabel('why this record is withdrawn').fill('Written twice');
    await ben.getByRole('button', { name: 'Withdraw', exact: true }).click();
    await ben.getByText('Withdrawn: Written twice').first().waitFor();
    await anna.getByRole('button', { name: 'Take all of it back' }).click();
    await anna.getByText('Taken back: The wrong sheet').waitFor();
    await ben.goto(`${service.url}/register`);
    await ben.getByText('This register is empty').waitFor();
    await anna.getByRole('button', { name: /^Bring it back/ }).click();
    await anna.getByRole('button', { name: /^Undo this import/ }).waitFor();
    await ben.reload();
    await ben.getByRole('link', { name: 'AN-03' }).waitFor();
    expect(faults).toEqual([]);
  });
});
