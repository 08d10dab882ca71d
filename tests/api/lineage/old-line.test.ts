import { afterAll, beforeAll, expect, it } from 'vitest';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { writeSketch, type SketchIds } from '../../support/register-sketch.ts';

/** So many generations of brother with sister that their clutches are beyond what is taken apart on the way. */
const GENERATIONS = 1600;

let api: TestApi;
let ids: SketchIds;

beforeAll(async () => {
  api = await startApi();
  const pair = (individual: number) => [{ individual, probability: 1 }];
  ids = await writeSketch(api.dataSource, {
    sources: [{ label: 'First' }, { label: 'Second' }],
    clutches: Array.from({ length: GENERATIONS }, (_, generation) => ({
      sires: pair(2 * generation),
      dams: pair(2 * generation + 1),
    })),
    individuals: [
      { source: 0, sex: 'male' },
      { source: 1, sex: 'female' },
      ...Array.from({ length: 2 * GENERATIONS }, (_, place) => ({
        clutch: place >> 1,
        sex: place % 2 === 0 ? ('male' as const) : ('female' as const),
      })),
    ],
  });
});
afterAll(() => api.close());

it('the F of an animal with thousands of ancestors is taken apart as well, in a thread', async () => {
  const answer = await api.http.get(`/api/v1/individuals/${ids.individuals.at(-1)}/lineage`).expect(200);
  const { inbreeding, partialInbreeding, ancestralInbreeding, depth } = bodyOf<LineageView>(answer);
  expect(depth).toBe(GENERATIONS);
  expect(inbreeding.expected).toBeCloseTo(1, 12);
  expect(partialInbreeding.map(({ source }) => source?.id).sort()).toEqual([...ids.sources].sort());
  for (const { part } of partialInbreeding) expect(part).toBeCloseTo(0.5, 12);
  expect(ancestralInbreeding).toMatchObject({ exact: null, oldInbreeding: null, newInbreeding: null });
});
