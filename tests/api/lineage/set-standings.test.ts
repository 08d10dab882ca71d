import { afterAll, beforeAll, expect, it } from 'vitest';
import type { LineageSetView } from '../../../api/lineage/lineage-set.view.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { writeSketch } from '../../support/register-sketch.ts';

let api: TestApi;
const sources = 40;

/** More sources than an answer names, one founder each: three of four came under a label; and ten animals nobody knows anything of. */
beforeAll(async () => {
  api = await startApi();
  await writeSketch(api.dataSource, {
    lines: [{ name: 'Many founders' }],
    sources: Array.from({ length: sources }, (_, at) => (at % 4 === 3 ? {} : { label: 'Many founders' })),
    clutches: [],
    individuals: [
      ...Array.from({ length: sources }, (_, source) => ({ source, line: 0 })),
      ...Array.from({ length: 10 }, () => ({ line: 0 })),
    ],
  });
});
afterAll(() => api.close());

it('parts of a gene pool are told by standing, also those of origins that the answer does not name', async () => {
  const { contributions } = bodyOf<LineageSetView>(
    await api.http.get('/api/v1/lineage/set').query({ line: 'Many founders' }).expect(200),
  );
  expect(contributions.items).toHaveLength(24);
  expect(contributions.others).toBe(sources + 10 - 24);
  expect(contributions.standings.map(({ standing }) => standing)).toEqual(['stated', 'unknown']);
  expect(contributions.standings[0]?.share).toBeCloseTo(30 / 50, 12);
  expect(contributions.standings[1]?.share).toBeCloseTo(20 / 50, 12);
});

it('no part is told for a set without animals', async () => {
  const { contributions } = bodyOf<LineageSetView>(
    await api.http.get('/api/v1/lineage/set').query({ line: 'Many founders', sex: 'male' }).expect(200),
  );
  expect(contributions.standings).toEqual([]);
});
