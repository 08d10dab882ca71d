import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, CDPSession } from 'playwright-core';
import { bringCookie, findChromium, openBrowser } from '../support/browser.ts';
import { openHttpsFront } from '../support/https-front.ts';
import { askAs, signInToDemo, startService } from '../support/service.ts';

/** One line of the bench table: a first visit, nothing kept by the browser yet. */
export interface FirstScreenRow {
  readonly what: string;
  /**
   * What was asked for before the content stood, compressed as it was sent, headers included: the page, scripts, styles, answers. By https
   * files come in Brotli; by http, but for this machine's own address, in gzip, which is an eighth more.
   */
  readonly kilobytes: number;
  /** The fonts that it is drawn in; text stands in a font of the device until they are there. */
  readonly fontKilobytes: number;
  /** Both. */
  readonly inAll: number;
  /** How many requests that were. */
  readonly requests: number;
  /** From the request for the page until its content stands and the next touch would be answered, milliseconds: median. */
  readonly interactive: number;
  readonly slowest: number;
  readonly mustReach: string;
}

const program = fileURLToPath(new URL('../../../api/main.js', import.meta.url));
const phone = { width: 390, height: 844 };
const runs = 5;
/** The throttled phone of the budget is the faster of the two; on the other the weight counts alone. */
const budgets = { '4G, 9 Mbit/s, 60 ms': '150 kB in all, 1500 ms', 'slow 4G, 1.6 Mbit/s, 150 ms': '150 kB in all' };
const nothing = { kilobytes: NaN, fontKilobytes: NaN, inAll: NaN, requests: NaN };

/**
 * Networks as a phone meets them; with each the processor is slowed down four times. The browser delays requests, not the opening of a
 * connection: a first visit by https takes two of these delays more than is measured.
 */
const networks = {
  '4G, 9 Mbit/s, 60 ms': { latency: 60, downloadThroughput: 9e6 / 8, uploadThroughput: 3e6 / 8 },
  'slow 4G, 1.6 Mbit/s, 150 ms': { latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 0.75e6 / 8 },
};

/** Measures the first screens on a slowed down phone; a row that says so where there is no Chromium. */
export async function benchFirstScreen(): Promise<FirstScreenRow[]> {
  const chromium = findChromium();
  if (chromium === null)
    return [{ what: 'no Chromium was found', ...nothing, interactive: NaN, slowest: NaN, mustReach: '' }];
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-first-'));
  const service = await startService({ DATA_DIR: join(folder, 'data'), SEED_DEMO: 'true' }, { program });
  const browser = await openBrowser(chromium);
  const front = await openHttpsFront(service.url);
  try {
    const cookie = await signInToDemo(service);
    const session = (await (await askAs(cookie, `${service.url}/api/v1/session`)).json()) as { keeper: { id: string } };
    const visitor = { url: front?.url ?? service.url, cookie, keeperId: session.keeper.id };
    const how = front ? 'https' : 'http, since no openssl was found';
    const rows: FirstScreenRow[] = [];
    for (const [network, conditions] of Object.entries(networks))
      for (const [page, path] of [
        ['today', '/'],
        ['register', '/register'],
      ] as const)
        rows.push({
          what: `${page} by ${how}: ${network}`,
          ...(await visit(browser, { ...visitor, path }, conditions)),
          mustReach: budgets[network as keyof typeof networks],
        });
    return rows;
  } finally {
    await browser.close();
    await front?.end();
    service.process.kill('SIGTERM');
    await service.ended;
    rmSync(folder, { recursive: true, force: true });
  }
}

type Conditions = (typeof networks)[keyof typeof networks];

async function visit(
  browser: Browser,
  { url, path, cookie, keeperId }: { url: string; path: string; cookie: string; keeperId: string },
  conditions: Conditions,
): Promise<Omit<FirstScreenRow, 'what' | 'mustReach'>> {
  const times: number[] = [];
  let sent = nothing;
  for (let run = 0; run < runs; run++) {
    const context = await browser.newContext({
      viewport: phone,
      hasTouch: true,
      isMobile: true,
      serviceWorkers: 'block',
      ignoreHTTPSErrors: true,
    });
    await bringCookie(context, url, cookie);
    const page = await context.newPage();
    const tools = await context.newCDPSession(page);
    const count = await countBytes(tools);
    await tools.send('Network.emulateNetworkConditions', { offline: false, ...conditions });
    await tools.send('Emulation.setCPUThrottlingRate', { rate: 4 });
    // a browser that is signed in knows whose pages it showed
    await page.addInitScript((id) => localStorage.setItem('linekeeper.keeper', id), keeperId);
    await page.addInitScript(watchContent);
    await page.goto(url + path, { waitUntil: 'commit' });
    await page.waitForFunction(() => 'interactiveAt' in globalThis, undefined, { timeout: 60_000 });
    times.push(await page.evaluate(() => (globalThis as unknown as Watched).interactiveAt));
    await page.waitForFunction(() => document.fonts.status === 'loaded');
    await page.waitForLoadState('networkidle');
    sent = count(await page.evaluate(() => performance.timeOrigin + (globalThis as unknown as Watched).stoodAt));
    await context.close();
  }
  times.sort((a, b) => a - b);
  return { ...sent, interactive: times[Math.floor(runs / 2)] ?? NaN, slowest: times[runs - 1] ?? NaN };
}

interface Watched {
  stoodAt: number;
  interactiveAt: number;
}

/** In the page: notes when the heading and what is below it stand, and the main thread is free again. */
function watchContent(): void {
  const watch = new MutationObserver(() => {
    if (document.querySelector('main h1') === null || document.querySelector('main :is(li, tr, p)') === null) return;
    watch.disconnect();
    const watched = globalThis as unknown as Partial<Watched>;
    watched.stoodAt = performance.now();
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => (watched.interactiveAt = performance.now());
      port2.postMessage(null);
    });
  });
  watch.observe(document, { childList: true, subtree: true });
}

/** Counts what the network carries from now on: what is asked for until a moment (ms since 1970), and all fonts. */
async function countBytes(tools: CDPSession): Promise<(until: number) => typeof nothing> {
  const asked = new Map<string, { at: number; isFont: boolean; bytes: number }>();
  await tools.send('Network.enable');
  tools.on('Network.requestWillBeSent', ({ requestId, wallTime, request }) =>
    asked.set(requestId, { at: wallTime * 1000, isFont: request.url.endsWith('.woff2'), bytes: 0 }),
  );
  tools.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    const request = asked.get(requestId);
    if (request) request.bytes = encodedDataLength;
  });
  return (until) => {
    const counted = [...asked.values()].filter(({ at, isFont }) => isFont || at <= until);
    const sum = (isFont: boolean): number =>
      counted.filter((request) => request.isFont === isFont).reduce((bytes, request) => bytes + request.bytes, 0) /
      1000;
    const [kilobytes, fontKilobytes] = [sum(false), sum(true)];
    return { kilobytes, fontKilobytes, inAll: kilobytes + fontKilobytes, requests: counted.length };
  };
}
