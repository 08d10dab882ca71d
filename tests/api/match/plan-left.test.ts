import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { computeInbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import { makePlanTask } from '../../../api/match/tasks/make-plan.task.ts';
import { LongWork } from '../../../api/platform/long-work.ts';
import { buildShape } from '../../bench/kernel-shapes.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';

describe('a plan that nobody waits for', () => {
  let api: TestApi;
  let keeper: TestKeeper;
  let lineId: string;

  beforeAll(async () => {
    api = await startApi();
    keeper = await api.addKeeper('Asker');
    const make = new Factory(api.http);
    const { id: speciesId } = await make.species();
    ({ id: lineId } = await make.line({ speciesId }));
    for (const sex of ['male', 'female']) await make.individual({ speciesId, lineId, sex });
  });
  afterAll(() => api.close());

  const ask = (): Promise<Response> =>
    fetch(`${api.url}/api/v1/lines/${lineId}/plan`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', Authorization: `Bearer ${keeper.token}` },
      body: JSON.stringify({ pairings: 1 }),
    });

  it('is ended in the middle of the solver', async () => {
    const work = api.app.get(LongWork);
    const ending = new AbortController();
    const pedigree = buildShape({
      name: 'line',
      lines: 1,
      animalsPerLine: 3000,
      breeders: 60,
      clutchSize: 4,
      crosses: 0,
    });
    const candidate = (animal: number) => ({ animal, keeper: animal % 7, usesMost: 1, isReserve: false });
    const input = {
      pedigree,
      inbreeding: computeInbreeding(pedigree),
      matrixBytes: undefined,
      living: Int32Array.from({ length: 400 }, (_, place) => 2600 + place),
      males: Array.from({ length: 200 }, (_, place) => candidate(2600 + 2 * place)),
      females: Array.from({ length: 200 }, (_, place) => candidate(2601 + 2 * place)),
      conditions: {
        pairings: 150,
        weight: 1,
        inbreedingMost: 1,
        fixedMayExceed: false,
        fixed: [],
        forbidden: [],
        keptTogether: [],
        movesMost: 20,
        reserveLeast: 0,
      },
      seconds: 40,
      otherWeights: Array.from({ length: 60 }, (_, place) => place / 7),
    };
    const computing = work.run(makePlanTask, input, { signal: ending.signal });
    setTimeout(() => ending.abort(), 500);
    await expect(computing).rejects.toMatchObject({ name: 'AbortError' });
    expect((await ask()).status).toBe(200);
  }, 60_000);
});
