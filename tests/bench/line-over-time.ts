import type { Page } from 'playwright-core';
import { inventedLine, sheetOfLine } from '../support/invented-line.ts';
import type { ChartBench, ChartRow } from './client-charts.ts';

const ANIMALS = 5000;
const RUNS = 7;

/** A line of 5000 animals over time: the answer, the first paint, and frames while one looks around by wheel and keys. */
export async function benchLineOverTime(bench: ChartBench): Promise<ChartRow[]> {
  await bench.importSheet(sheetOfLine(inventedLine(ANIMALS), 'Bench Larga'));
  const { items } = await bench.read<{ items: { id: string; name: string }[] }>('lines?limit=200');
  const line = items.find(({ name }) => name === 'Bench Larga')?.id ?? '';
  const [answers, paints, frames]: [number[], number[], number[]] = [[], [], []];
  for (let run = 0; run < RUNS; run++) {
    const start = performance.now();
    await bench.read(`lines/${line}/over-time`);
    answers.push(performance.now() - start);
    const page = await bench.context.newPage();
    await page.goto(`${bench.url}/lines/${line}/over-time`);
    paints.push(await firstPaint(page));
    frames.push(...(await lookAround(page)));
    await page.close();
  }
  const row = (what: string, times: number[], mustReach: number): ChartRow => {
    const sorted = [...times].sort((one, other) => one - other);
    return { what, p50: part(sorted, 0.5), slowest: sorted.at(-1) ?? NaN, mustReach };
  };
  const sorted = [...frames].sort((one, other) => one - other);
  return [
    row(`line over time, ${ANIMALS} animals: the answer, read and parsed`, answers, 300),
    row(`line over time, ${ANIMALS} animals: answer to first paint`, paints, 500),
    row(`line over time, ${ANIMALS} animals: a frame while zooming and panning`, frames, 40),
    {
      what: `line over time, ${ANIMALS} animals: p95 of ${frames.length} frames`,
      p50: part(sorted, 0.95),
      slowest: part(sorted, 0.99),
      mustReach: 40,
    },
  ];
}

const part = (sorted: readonly number[], at: number): number => sorted[Math.floor(sorted.length * at)] ?? NaN;

/** Milliseconds from the end of the answer to the first paint of the drawing. */
async function firstPaint(page: Page): Promise<number> {
  await page.waitForFunction(() => performance.getEntriesByName('line-painted').length > 0, null, { timeout: 60_000 });
  return page.evaluate(() => {
    const answers = performance.getEntriesByType('resource') as PerformanceResourceTiming[];
    const answer = answers.find(({ name }) => /\/api\/v1\/lines\/[^/]+\/over-time/.test(name));
    return (performance.getEntriesByName('line-painted')[0]?.startTime ?? NaN) - (answer?.responseEnd ?? NaN);
  });
}

/**
 * Times between frames while the view comes closer, pans, shows the whole again and lights an animal; a frame is asked for only once the
 * one before was painted, so each carries its painting.
 */
async function lookAround(page: Page): Promise<number[]> {
  await page.waitForTimeout(300);
  return page.evaluate(async () => {
    const stage = document.querySelector<HTMLElement>('[role=application]');
    if (!stage) throw new Error('there is no drawing');
    const box = stage.getBoundingClientRect();
    const wheel = (deltaY: number, ctrlKey: boolean, deltaX = 0): unknown =>
      stage.dispatchEvent(
        new WheelEvent('wheel', {
          ...{ deltaX, deltaY, ctrlKey, bubbles: true, cancelable: true },
          ...{ clientX: box.left + box.width / 2, clientY: box.top + box.height / 2 },
        }),
      );
    const press = (key: string): unknown =>
      stage.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    const times: number[] = [];
    const frames = (count: number, act: (at: number) => unknown): Promise<void> =>
      new Promise((done) => {
        let [at, last] = [0, 0];
        const step = (now: number): void => {
          if (last > 0) times.push(now - last);
          last = now;
          if (at++ >= count) {
            done();
            return;
          }
          act(at);
          requestAnimationFrame(step);
        };
        requestAnimationFrame(step);
      });
    const sway = (at: number): number => (at % 30 < 15 ? 16 : -16);
    await frames(12, () => wheel(-10, true));
    await frames(40, (at) => wheel(sway(at), false, sway(at)));
    await frames(40, () => wheel(-12, true));
    await frames(40, (at) => wheel(sway(at), false, sway(at)));
    press('ArrowDown');
    await frames(40, (at) => wheel(sway(at), false, sway(at)));
    await frames(60, () => wheel(14, true));
    return times;
  });
}
