import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import { chromium, type Browser, type BrowserContext, type Page, type Request } from 'playwright-core';
import { expect } from 'vitest';

const places = [
  process.env['CHROMIUM'] ?? '',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/** The browser's program, or null where there is none. */
export function findChromium(): string | null {
  const found = places.find((place) => place !== '' && existsSync(place));
  if (found !== undefined) return found;
  const how = 'No Chromium was found. On Debian: apt-get install chromium; elsewhere set CHROMIUM to its program.';
  if (process.env['REQUIRE_BROWSER']) throw new Error(how);
  console.warn(`${how} The browser tests are skipped.`);
  return null;
}

/**
 * What the browser does not do. The list takes the place of the one that Playwright gives, so the first ones are from there; the last is
 * the page behind the address bar, four hundred files that each new window reads while the page in it is to be drawn.
 */
const withoutFeatures = [
  'HttpsUpgrades',
  'HttpsFirstBalancedModeAutoEnable',
  'PaintHolding',
  'AimEnabled',
  'PreconnectToSearch',
  'OptimizationHints',
  'NetworkTimeServiceQuerying',
  'MediaRouter',
  'ThirdPartyStoragePartitioning',
  'DestroyProfileOnBrowserClose',
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'AvoidCorsURLLoaderRestartOnRedirect',
  'WebUIOmniboxPopup',
];

/** Starts the browser so that it speaks to this machine only. */
export async function openBrowser(executablePath: string): Promise<Browser> {
  const quiet = [
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    `--disable-features=${withoutFeatures.join(',')}`,
  ];
  return chromium.launch({ executablePath, args: process.getuid?.() === 0 ? ['--no-sandbox', ...quiet] : quiet });
}

/** A page and what it asked for, the newest last, each with the milliseconds since the page was opened. */
interface OpenPage {
  readonly page: Page;
  readonly requests: string[];
}
const opened: OpenPage[] = [];

/** The pages that are open now. */
export const openPages = (): OpenPage[] => opened.filter(({ page }) => !page.isClosed());

/** Notes what a page asks for and what becomes of it. */
function follow(page: Page): void {
  const requests: string[] = [];
  const from = performance.now();
  const note = (what: string): void => {
    requests.push(`${Math.round(performance.now() - from)} ms ${what}`);
    if (requests.length > 100) requests.shift();
  };
  const name = (request: Request): string =>
    `${request.method()} ${new URL(request.url()).pathname.slice(0, 90)}${request.serviceWorker() ? ' by the service worker' : ''}`;
  page.on('request', (request) => note(`asked ${name(request)}`));
  page.on('response', (response) => note(`${response.status()} for ${name(response.request())}`));
  page.on('requestfailed', (request) => note(`failed ${name(request)}: ${request.failure()?.errorText ?? ''}`));
  page.on('pageerror', (error) => note(`error ${error.message}`));
  page.on('framenavigated', (frame) => note(`is at ${frame.url()}`));
  opened.push({ page, requests });
}

/** A page that fails the test on any error in the console and on any request that leaves this machine. */
export async function openPage(context: BrowserContext, faults: string[]): Promise<Page> {
  const page = await context.newPage();
  follow(page);
  page.on('pageerror', (error) => faults.push(`error: ${error.message}`));
  page.on('console', (message) => {
    // a refused form is a normal answer that Chromium also writes to the console
    if (message.type() === 'error' && !/status of 4\d\d/.test(message.text()))
      faults.push(`console: ${message.text()}`);
  });
  page.on('request', (request) => {
    const { protocol, hostname } = new URL(request.url());
    if (protocol.startsWith('http') && !['127.0.0.1', 'localhost'].includes(hostname))
      faults.push(`request to ${hostname}`);
  });
  return page;
}

/** Signs a browser in: it sends this cookie to the service at `url`. */
export async function bringCookie(context: BrowserContext, url: string, cookie: string): Promise<void> {
  const [name = '', value = ''] = cookie.split(/=(.*)/s);
  await context.addCookies([{ name, value, url, httpOnly: true, sameSite: 'Lax' }]);
}

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Scans the page as it stands for breaches of WCAG 2.2 A and AA. */
export async function expectAccessible(page: Page, name: string): Promise<void> {
  await page.evaluate(axeSource);
  const results = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run: (context: Document, options: object) => Promise<AxeResults> };
    };
    return axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] });
  });
  const breaches = results.violations.map(
    (violation) =>
      `${name}: ${violation.id}: ${violation.nodes
        .map((node) => node.html)
        .slice(0, 3)
        .join(' | ')}`,
  );
  expect(breaches).toEqual([]);
}
