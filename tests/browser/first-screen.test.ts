import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../support/browser.ts';
import { DemoClub } from '../support/demo-club.ts';

const chromium = findChromium();
const phone = { width: 390, height: 844 };

/** What a phone fetches before the first screen stands: each thing once, and nothing that another keeper would see. */
describe.skipIf(chromium === null)('the first screen', () => {
  let club: DemoClub;

  beforeAll(async () => {
    club = await DemoClub.open(chromium);
  });
  afterAll(() => club.close());

  it.each(['/', '/register'])(
    'at %s asks the register nothing twice, and most of it before its scripts run, on the first visit and on the next',
    async (path) => {
      const page = await club.page(phone, 'Orla Venndrick');
      let asked: string[] = [];
      page.on('request', (request) => asked.push(new URL(request.url()).pathname + new URL(request.url()).search));
      for (const visit of ['first', 'next']) {
        asked = [];
        await page.goto(club.url + path);
        await page.locator('main h1').waitFor();
        await page.waitForLoadState('networkidle');
        const ofApi = asked.filter((address) => address.startsWith('/api/'));
        expect(ofApi[0], visit).toBe('/api/v1/session');
        expect(ofApi[1], visit).toMatch(/^\/api\/v1\/(today|individuals)\?/);
        // how far the figures are is asked again until they are settled
        const asksOnce = ofApi.filter((address) => address !== '/api/v1/lineage/progress');
        expect(asksOnce.filter((address, at) => asksOnce.indexOf(address) !== at)).toEqual([]);
      }
    },
  );

  it.each(['/', '/register', '/animals/new'])('of %s is told with the page by which files it begins', async (path) => {
    const answer = await fetch(club.url + path);
    const named = [...(answer.headers.get('link') ?? '').matchAll(/<([^>]+)>; rel=(modulepreload|preload; as=style)/g)];
    expect(named.length).toBeGreaterThan(0);
    const html = await answer.text();
    for (const [, file = ''] of named) {
      expect(html).not.toContain(file);
      expect((await fetch(club.url + file)).status).toBe(200);
    }
  });

  it.each([
    ['gzip, deflate, br, zstd', 'br'],
    ['gzip, deflate', 'gzip'],
    ['identity', null],
  ])('comes as small as a browser that takes %s can read it', async (taken, sent) => {
    const html = await (await fetch(club.url)).text();
    const [file = ''] = /\/_app\/immutable\/[^"]+\.js/.exec(html) ?? [];
    for (const path of ['/', file]) {
      const as = (encoding: string) => fetch(club.url + path, { headers: { 'Accept-Encoding': encoding } });
      const [answer, plain] = [await as(taken), await as('identity')];
      expect(answer.headers.get('content-encoding'), path).toBe(sent);
      expect(await answer.text(), path).toBe(await plain.text());
    }
  });

  it('shows nothing that was asked for in the name of a keeper who is not signed in any more', async () => {
    const page = await club.page(phone, 'Tobiah Quillmere');
    await page.goto(club.url);
    await page.locator('main h1').waitFor();
    const shown = await page.locator('main').innerText();
    const gone = '00000000-0000-4000-8000-000000000000';
    await page.evaluate((id) => localStorage.setItem('linekeeper.keeper', id), gone);
    await page.goto(club.url);
    await page.locator('main h1').waitFor();
    expect(await page.locator('main').innerText()).toBe(shown);
    expect(await page.evaluate(() => localStorage.getItem('linekeeper.keeper'))).not.toBe(gone);
  });
});
