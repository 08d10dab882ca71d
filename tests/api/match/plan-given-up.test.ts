import { availableParallelism } from 'node:os';
import { performance } from 'node:perf_hooks';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { writeSketch, type RegisterSketch, type SketchIds } from '../../support/register-sketch.ts';
import { seededRandom } from '../../bench/kernel-shapes.ts';

const random = seededRandom(11);
const founders = 24;
const clutches = 40;
const youngEach = 5;

/** A line whose 200 living are related in every way. */
function tangled(): RegisterSketch {
  const sexOf = (place: number) => (place % 2 === 0 ? ('male' as const) : ('female' as const));
  const individuals: RegisterSketch['individuals'][number][] = Array.from({ length: founders }, (_, place) => ({
    line: 0,
    sex: sexOf(place),
    status: 'died',
  }));
  const sketched: RegisterSketch['clutches'][number][] = [];
  for (let clutch = 0; clutch < clutches; clutch++) {
    const pick = (parity: number) => 2 * Math.floor((random() * individuals.length) / 2) + parity;
    const certain = (individual: number) => [{ individual, probability: 1 }];
    sketched.push({ sires: certain(pick(0)), dams: certain(pick(1)) });
    for (let young = 0; young < youngEach + 1; young++)
      individuals.push({ clutch, line: 0, sex: sexOf(individuals.length) });
  }
  return { lines: [{ name: 'Rio Enredado' }], clutches: sketched, individuals };
}

describe('a plan that nobody waits for any more', () => {
  let api: TestApi;
  let ids: SketchIds;
  let keeper: TestKeeper;

  beforeAll(async () => {
    api = await startApi();
    keeper = await api.addKeeper('Who leaves');
    ids = await writeSketch(api.dataSource, tangled());
  });
  afterAll(() => api.close());

  const plan = (signal?: AbortSignal): Promise<Response> =>
    fetch(`${api.url}/api/v1/lines/${ids.lines[0]}/plan`, {
      method: 'POST',
      headers: { Authorization: `Bearer ${keeper.token}`, 'Content-Type': 'application/json' },
      body: JSON.stringify({ pairings: 60, inbreedingTo: 0.3 }),
      ...(signal ? { signal } : {}),
    });

  it('is ended, however many leave, and the next one is made at once', async () => {
    const started = performance.now();
    const first = await plan();
    expect(first.status).toBe(200);
    const whole = performance.now() - started;
    const leaving = new AbortController();
    const left = Array.from({ length: 3 * availableParallelism() }, () => plan(leaving.signal));
    setTimeout(() => leaving.abort(), whole / 4);
    for (const one of await Promise.allSettled(left)) expect(one.status).toBe('rejected');
    const again = performance.now();
    expect((await plan()).status).toBe(200);
    // behind those that left it would have waited for three of them
    expect(performance.now() - again).toBeLessThan(2 * whole);
  }, 120_000);
});
