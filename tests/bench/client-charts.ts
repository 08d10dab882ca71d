import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { BrowserContext, Page } from 'playwright-core';
import { bringCookie, findChromium, openBrowser } from '../support/browser.ts';
import { askAs, signInToDemo, startService } from '../support/service.ts';
import { animalsOfBroadLine, sheetOfBroadLine, youngestOfBroadLine } from './broad-line.ts';
import { benchLineOverTime } from './line-over-time.ts';

/** One line of the bench table, in milliseconds. */
export interface ChartRow {
  readonly what: string;
  readonly p50: number | string;
  readonly slowest: number | string;
  readonly mustReach: number;
}

/** The built service with the broad line in it, and a browser signed in to it. */
export interface ChartBench {
  readonly url: string;
  readonly context: BrowserContext;
  /** Reads from the API. */
  read<Answer>(path: string): Promise<Answer>;
  /** Takes a register sheet (CSV) in. */
  importSheet(sheet: string): Promise<void>;
}

/**
 * A chart to measure: opened `runs` times on a page of its own, each time from the end of the answer that it is drawn from to the
 * paint after its last mark stands in the page. Frames, panning and the like are measured by a function beside `measureFirstPaint`.
 */
export interface MeasuredChart {
  readonly what: string;
  /** Path of the page in the client. */
  readonly path: string;
  /** Part of the address of the answer that the chart waits for. */
  readonly answer: string;
  /** What is drawn, as a CSS selector, and how many of it there are when the chart is complete. */
  readonly marks: string;
  readonly count: number;
  /** Budget in milliseconds. */
  readonly mustReach: number;
  readonly runs: number;
}

const program = fileURLToPath(new URL('../../../api/main.js', import.meta.url));

/** Measures the charts of the client in Chromium; a row that says so where there is no Chromium. */
export async function benchClientCharts(): Promise<ChartRow[]> {
  const chromium = findChromium();
  if (chromium === null) return [{ what: 'no Chromium was found', p50: '', slowest: '', mustReach: 0 }];
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-charts-'));
  const service = await startService({ DATA_DIR: join(folder, 'data'), SEED_DEMO: 'true' }, { program });
  const browser = await openBrowser(chromium);
  try {
    const cookie = await signInToDemo(service);
    const context = await browser.newContext({ viewport: { width: 1440, height: 1000 } });
    await bringCookie(context, service.url, cookie);
    const bench: ChartBench = {
      url: service.url,
      context,
      read: async <Answer>(path: string) =>
        (await (await askAs(cookie, `${service.url}/api/v1/${path}`)).json()) as Answer,
      importSheet: (sheet) => importSheet(cookie, service.url, sheet),
    };
    // Another chart is a function of its own here, given `bench`: it brings its animals, and gives its rows.
    return [...(await benchAncestors(bench)), ...(await benchLineOverTime(bench))];
  } finally {
    await browser.close();
    service.process.kill('SIGTERM');
    await service.ended;
    rmSync(folder, { recursive: true, force: true });
  }
}

async function benchAncestors(bench: ChartBench): Promise<ChartRow[]> {
  await bench.importSheet(sheetOfBroadLine());
  const found = await bench.read<{ items: { id: string }[] }>(`individuals?code=${youngestOfBroadLine}`);
  const path = `/animals/${found.items[0]?.id ?? ''}?generations=8`;
  const what = `ancestor chart, 8 generations, ${animalsOfBroadLine} animals: answer to first paint`;
  const chart = { what, path, answer: '/pedigree', marks: 'a[data-animal]', count: animalsOfBroadLine };
  return [
    await measureFirstPaint(bench, { ...chart, mustReach: 200, runs: 9 }),
    await measureChoosing(bench, { ...chart, path: path.replace(/\?.*/, ''), mustReach: 250, runs: 9 }),
  ];
}

/** Eight generations chosen on a page that stands: from the touch, so that asking is within, to the paint after the last mark. */
async function measureChoosing({ url, context }: ChartBench, chart: MeasuredChart): Promise<ChartRow> {
  const times: number[] = [];
  for (let run = 0; run < chart.runs; run++) {
    const page = await context.newPage();
    await page.goto(url + chart.path, { waitUntil: 'networkidle' });
    await page.evaluate(watchMarks, { marks: chart.marks, count: chart.count });
    await page.evaluate(() => {
      document.addEventListener('pointerdown', ({ timeStamp }) =>
        performance.mark('touched', { startTime: timeStamp }),
      );
    });
    const choice = page.locator('#ancestor-chart label', { hasText: '8' });
    await choice.hover();
    // a hand that comes to the choice stays this long before it presses
    await page.waitForTimeout(150);
    await choice.click();
    await page.waitForFunction(() => 'paintedAt' in globalThis, undefined, { timeout: 30_000 });
    times.push(
      await page.evaluate(() => {
        const { paintedAt = NaN } = globalThis as unknown as { paintedAt?: number };
        return paintedAt - (performance.getEntriesByName('touched')[0]?.startTime ?? NaN);
      }),
    );
    await page.close();
  }
  times.sort((a, b) => a - b);
  const what = 'the same chosen on a page that stands: touch to paint, asking the service within';
  return {
    what,
    p50: times[Math.floor(times.length / 2)] ?? NaN,
    slowest: times.at(-1) ?? NaN,
    mustReach: chart.mustReach,
  };
}

async function importSheet(cookie: string, url: string, sheet: string): Promise<void> {
  const headers = { 'Content-Type': 'text/csv' };
  const answer = await askAs(cookie, `${url}/api/v1/imports`, { method: 'POST', headers, body: sheet });
  if (answer.status !== 201) throw new Error(`the sheet was refused: ${(await answer.text()).slice(0, 500)}`);
}

/** Opens a chart again and again, and gives its row. Throws if it is not complete within half a minute. */
export async function measureFirstPaint({ url, context }: ChartBench, chart: MeasuredChart): Promise<ChartRow> {
  const times: number[] = [];
  for (let run = 0; run < chart.runs; run++) {
    const page = await context.newPage();
    await page.addInitScript(watchMarks, { marks: chart.marks, count: chart.count });
    await page.goto(url + chart.path);
    times.push(await firstPaint(page, chart.answer));
    await page.close();
  }
  times.sort((a, b) => a - b);
  const p50 = times[Math.floor(times.length / 2)] ?? NaN;
  return { what: chart.what, p50, slowest: times[times.length - 1] ?? NaN, mustReach: chart.mustReach };
}

/** In the page: notes when the frame with the last mark has been painted. */
function watchMarks({ marks, count }: { marks: string; count: number }): void {
  const page = globalThis as unknown as { paintedAt?: number };
  const watch = new MutationObserver(() => {
    if (document.querySelectorAll(marks).length < count) return;
    watch.disconnect();
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => (page.paintedAt = performance.now());
      port2.postMessage(null);
    });
  });
  watch.observe(document, { childList: true, subtree: true });
}

async function firstPaint(page: Page, answer: string): Promise<number> {
  await page.waitForFunction(() => 'paintedAt' in globalThis, undefined, { timeout: 30_000 });
  return page.evaluate((part) => {
    const { paintedAt = NaN } = globalThis as unknown as { paintedAt?: number };
    const answers = performance.getEntriesByType('resource') as PerformanceResourceTiming[];
    const last = answers.filter(({ name }) => new URL(name).pathname.endsWith(part)).at(-1);
    return paintedAt - (last?.responseEnd ?? NaN);
  }, answer);
}
