import { availableParallelism, tmpdir } from 'node:os';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LongWork } from '../../../api/platform/long-work.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { writeSketch, type RegisterSketch, type SketchIds } from '../../support/register-sketch.ts';

const folder = mkdtempSync(join(tmpdir(), 'given-up-'));
const task = (name: string, source: string) => {
  const file = join(folder, `${name}.mjs`);
  writeFileSync(file, source);
  return { filename: pathToFileURL(file).href };
};
/** Never ends by itself. */
const spinning = task('spinning', 'export default () => { for (;;); };');
const echo = task('echo', 'export default ({ input }) => input;');

/** A few animals that take long to audit: clutches each with very many candidate pairs, one a year. */
const breeders = 2 * 110;
const clutches = 80;
const side = (from: number) =>
  Array.from({ length: breeders / 2 }, (_, at) => ({ individual: from + at, probability: 2 / breeders }));
const sketch: RegisterSketch = {
  lines: [{ name: 'Rio Largo' }],
  sources: [{ label: 'Rio Largo' }],
  clutches: Array.from({ length: clutches }, () => ({ sires: side(0), dams: side(breeders / 2) })),
  individuals: [
    ...Array.from({ length: breeders }, () => ({ source: 0, line: 0 })),
    ...Array.from({ length: clutches }, (_, clutch) => ({ clutch, line: 0 })),
  ],
};

describe('an audit that nobody waits for any more', () => {
  let api: TestApi;
  let ids: SketchIds;
  let keeper: TestKeeper;
  /** Leaves one thread for questions. */
  const others = new AbortController();

  beforeAll(async () => {
    api = await startApi();
    keeper = await api.addKeeper('Who leaves');
    ids = await writeSketch(api.dataSource, sketch);
    await api.dataSource.query(
      `update individual i set hatched = d, hatched_earliest = d::date, hatched_latest = d::date
       from (select id, (1900 + row_number() over (order by id))::text || '-05-01' as d from individual where clutch_id is not null) t
       where t.id = i.id`,
    );
    const work = api.app.get(LongWork);
    for (let thread = 0; thread < availableParallelism() - 2; thread++)
      work.run(spinning, {}, { signal: others.signal }).catch(() => undefined);
  });
  afterAll(async () => {
    others.abort();
    await api.close();
    rmSync(folder, { recursive: true });
  });

  const ask = (path: string, signal?: AbortSignal): Promise<Response> =>
    fetch(`${api.url}/api/v1/lines/${ids.lines[0]}/${path}`, {
      headers: { Authorization: `Bearer ${keeper.token}` },
      ...(signal ? { signal } : {}),
    });

  it.each(['audit', 'audit.csv', 'audit.pdf'])('is ended, and its thread takes the next question: %s', async (path) => {
    await ask('audit'); // the register is read
    const started = performance.now();
    expect((await ask(path)).status).toBe(200);
    const whole = performance.now() - started;
    const leaving = new AbortController();
    const left = ask(path, leaving.signal);
    setTimeout(() => leaving.abort(), whole / 5);
    await expect(left).rejects.toMatchObject({ name: 'AbortError' });
    const waiting = performance.now();
    await api.app.get(LongWork).run(echo, { word: 'next' });
    const waited = performance.now() - waiting;
    // it would have gone on for four fifths
    expect(waited).toBeLessThan(whole / 2);
  });
});
