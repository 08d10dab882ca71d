import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LongWork, WAITING_MOST } from '../../../api/platform/long-work.ts';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';

const folder = mkdtempSync(join(tmpdir(), 'long-work-'));
let tasks = 0;
/** A task of its own file, as threads run them. */
const task = (source: string) => {
  const file = join(folder, `${++tasks}.mjs`);
  writeFileSync(file, source);
  return { filename: pathToFileURL(file).href };
};
afterAll(() => rmSync(folder, { recursive: true }));

/** Never ends by itself, and never gives its thread a moment. */
const spinning = task('export default () => { for (;;); };');
/** Gives back what it was given, and tells that it is done. */
const echo = task('export default ({ input, port }) => { port?.postMessage({ done: 1, total: 1 }); return input; };');

describe('long work', () => {
  let api: TestApi;
  beforeAll(async () => {
    api = await startApi();
  });
  afterAll(() => api.close());

  it('that never ends is ended by its signal, and its thread takes other work', async () => {
    const work = api.app.get(LongWork);
    const leaving = new AbortController();
    const spin = work.run(spinning, {}, { signal: leaving.signal });
    setTimeout(() => leaving.abort(), 300);
    await expect(spin).rejects.toMatchObject({ name: 'AbortError' });
    await expect(work.run(echo, { word: 'again' })).resolves.toEqual({ word: 'again' });
  });

  it('that waits behind others begins when these are given up, though nothing else is asked', async () => {
    const work = api.app.get(LongWork);
    const leaving = new AbortController();
    const spins = Array.from({ length: availableParallelism() }, () =>
      work.run(spinning, {}, { signal: leaving.signal }).catch(() => 'given up'),
    );
    await new Promise((resolve) => setTimeout(resolve, 300));
    const waits = work.run(echo, { word: 'at last' });
    leaving.abort();
    await expect(waits).resolves.toEqual({ word: 'at last' });
    expect(await Promise.all(spins)).toEqual(spins.map(() => 'given up'));
  });

  it('tells its progress', async () => {
    const told: unknown[] = [];
    await api.app.get(LongWork).run(echo, { word: 'told' }, { tell: (progress) => told.push(progress) });
    expect(told).toEqual([{ done: 1, total: 1 }]);
  });

  it('lets so many wait and tells the next one to come again', async () => {
    const work = api.app.get(LongWork);
    const leaving: AbortController[] = [];
    const spins: Promise<unknown>[] = [];
    const refusals: unknown[] = [];
    for (let count = 0; count < WAITING_MOST + availableParallelism() + 1; count++) {
      const controller = new AbortController();
      leaving.push(controller);
      spins.push(work.run(spinning, {}, { signal: controller.signal }).catch((error: unknown) => refusals.push(error)));
      // so that a thread takes the first ones
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    const [refusal] = refusals;
    leaving.forEach((controller) => controller.abort());
    await Promise.all(spins);
    expect(refusal).toMatchObject({ status: 503, slug: 'busy', headers: { 'Retry-After': '10' } });
    await expect(work.run(echo, { word: 'free' })).resolves.toEqual({ word: 'free' });
  });

  it('delays no other request', async () => {
    const leaving = new AbortController();
    const spin = api.app.get(LongWork).run(spinning, {}, { signal: leaving.signal });
    spin.catch(() => undefined);
    await new Promise((resolve) => setTimeout(resolve, 200));
    const milliseconds: number[] = [];
    for (let count = 0; count < 40; count++) {
      const start = performance.now();
      await api.stranger.get('/api/health/live').expect(200);
      milliseconds.push(performance.now() - start);
    }
    leaving.abort();
    const [median = Infinity] = milliseconds.sort((one, other) => one - other).slice(20);
    // a loop on the thread of answers would hold all of them up for ever
    expect(median).toBeLessThan(100);
  });

  it('is given up when the service stops', async () => {
    const copy = await startApiOn(api.databaseUrl);
    const spin = copy.app.get(LongWork).run(spinning, {});
    const refused = expect(spin).rejects.toMatchObject({ status: 503, slug: 'unavailable' });
    await new Promise((resolve) => setTimeout(resolve, 200));
    await copy.close();
    await refused;
  });
});
