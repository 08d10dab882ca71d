import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, CDPSession } from 'playwright-core';
import { bringCookie, findChromium, openBrowser } from '../support/browser.ts';
import { signInToDemo, startService } from '../support/service.ts';

/** One line of the bench table: a first visit, nothing kept by the browser yet. */
export interface FirstScreenRow {
  readonly what: string;
  /** What came over the network until then, compressed as it was sent, headers included: scripts, styles, the page and its answers. */
  readonly kilobytes: number;
  /** The fonts beside them; text is drawn in a font of the device until they are there. */
  readonly fontKilobytes: number;
  /** From the request for the page until its content stands and the next touch would be answered, milliseconds: median. */
  readonly interactive: number;
  readonly slowest: number;
}

const program = fileURLToPath(new URL('../../../api/main.js', import.meta.url));
const phone = { width: 390, height: 844 };
const runs = 5;

/** Networks as a phone meets them; with each the processor is slowed down four times. */
const networks = {
  '4G, 9 Mbit/s, 60 ms': { latency: 60, downloadThroughput: 9e6 / 8, uploadThroughput: 3e6 / 8 },
  'slow 4G, 1.6 Mbit/s, 150 ms': { latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 0.75e6 / 8 },
};

/** Measures the first screens on a slowed down phone; a row that says so where there is no Chromium. */
export async function benchFirstScreen(): Promise<FirstScreenRow[]> {
  const chromium = findChromium();
  if (chromium === null)
    return [{ what: 'no Chromium was found', kilobytes: NaN, fontKilobytes: NaN, interactive: NaN, slowest: NaN }];
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-first-'));
  const service = await startService({ DATA_DIR: join(folder, 'data'), SEED_DEMO: 'true' }, { program });
  const browser = await openBrowser(chromium);
  try {
    const cookie = await signInToDemo(service);
    const rows: FirstScreenRow[] = [];
    for (const [network, conditions] of Object.entries(networks))
      for (const [what, path] of [
        ['today', '/'],
        ['register', '/register'],
      ] as const)
        rows.push({
          what: `${what}: ${network}`,
          ...(await visit(browser, { url: service.url, path, cookie }, conditions)),
        });
    return rows;
  } finally {
    await browser.close();
    service.process.kill('SIGTERM');
    await service.ended;
    rmSync(folder, { recursive: true, force: true });
  }
}

type Conditions = (typeof networks)[keyof typeof networks];

async function visit(
  browser: Browser,
  { url, path, cookie }: { url: string; path: string; cookie: string },
  conditions: Conditions,
): Promise<Omit<FirstScreenRow, 'what'>> {
  const times: number[] = [];
  let sent = { kilobytes: NaN, fontKilobytes: NaN };
  for (let run = 0; run < runs; run++) {
    const context = await browser.newContext({
      viewport: phone,
      hasTouch: true,
      isMobile: true,
      serviceWorkers: 'block',
    });
    await bringCookie(context, url, cookie);
    const page = await context.newPage();
    const tools = await context.newCDPSession(page);
    const count = await countBytes(tools);
    await tools.send('Network.emulateNetworkConditions', { offline: false, ...conditions });
    await tools.send('Emulation.setCPUThrottlingRate', { rate: 4 });
    await page.addInitScript(watchContent);
    await page.goto(url + path, { waitUntil: 'commit' });
    await page.waitForFunction(() => 'interactiveAt' in globalThis, undefined, { timeout: 60_000 });
    sent = count();
    times.push(await page.evaluate(() => (globalThis as unknown as { interactiveAt: number }).interactiveAt));
    await context.close();
  }
  times.sort((a, b) => a - b);
  return { ...sent, interactive: times[Math.floor(runs / 2)] ?? NaN, slowest: times[runs - 1] ?? NaN };
}

/** In the page: notes when the heading and what is below it stand, and the main thread is free again. */
function watchContent(): void {
  const watch = new MutationObserver(() => {
    if (document.querySelector('main h1') === null || document.querySelector('main :is(li, tr, p)') === null) return;
    watch.disconnect();
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => ((globalThis as unknown as { interactiveAt?: number }).interactiveAt = performance.now());
      port2.postMessage(null);
    });
  });
  watch.observe(document, { childList: true, subtree: true });
}

/** Counts what the network carries from now on. */
async function countBytes(tools: CDPSession): Promise<() => { kilobytes: number; fontKilobytes: number }> {
  const fonts = new Set<string>();
  let all = 0;
  let ofFonts = 0;
  await tools.send('Network.enable');
  tools.on('Network.responseReceived', ({ requestId, type }) => {
    if (type === 'Font') fonts.add(requestId);
  });
  tools.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    all += encodedDataLength;
    if (fonts.has(requestId)) ofFonts += encodedDataLength;
  });
  return () => ({ kilobytes: (all - ofFonts) / 1000, fontKilobytes: ofFonts / 1000 });
}
