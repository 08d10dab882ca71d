import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { InbreedingSpreadView } from '../../../api/lineage/inbreeding-spread.view.ts';
import type { KinshipView } from '../../../api/lineage/kinship.view.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import type { WhatIfView } from '../../../api/lineage/what-if.view.ts';
import { bodyOf, type ProblemBody } from '../../support/answer.ts';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';
import { writeSketch } from '../../support/register-sketch.ts';
import { vagueHerd } from '../../support/vague-herd.ts';

/** FIGURES_MEMORY_MB in bytes: far less than a setting may say, so that no matrix of this register fits. */
const TINY = 64;

describe('a service that may take next to no memory', () => {
  let usual: TestApi;
  let tiny: TestApi;
  let animals: readonly string[];
  let certain: readonly string[];

  beforeAll(async () => {
    usual = await startApi();
    // from a pair, brother and sister for twelve clutches of three
    const herd = await writeSketch(usual.dataSource, vagueHerd(12));
    const line = await writeSketch(usual.dataSource, {
      individuals: Array.from({ length: 38 }, (_, place) => (place < 2 ? {} : { clutch: Math.floor((place - 2) / 3) })),
      clutches: Array.from({ length: 12 }, (_, clutch) => ({
        sires: [{ individual: Math.max(0, 3 * clutch - 1), probability: 1 }],
        dams: [{ individual: Math.max(1, 3 * clutch), probability: 1 }],
      })),
    });
    animals = [...herd.individuals, ...line.individuals];
    certain = line.individuals;
    tiny = await startApiOn(usual.databaseUrl, { figuresMemory: TINY });
  });
  afterAll(async () => {
    await tiny.close();
    await usual.close();
  });

  const ofBoth = async <View>(ask: (api: TestApi) => Promise<View>): Promise<[View, View]> => [
    await ask(usual),
    await ask(tiny),
  ];

  it('gives the same inbreeding of every animal', async () => {
    for (const id of animals) {
      const [one, other] = await ofBoth(async ({ http }) =>
        bodyOf<LineageView>(await http.get(`/api/v1/individuals/${id}/lineage`).expect(200)),
      );
      for (const figure of ['expected', 'least', 'greatest'] as const)
        expect(other.inbreeding[figure]).toBeCloseTo(one.inbreeding[figure], 12);
      expect(other.ancestralInbreeding.recursion).toBeCloseTo(one.ancestralInbreeding.recursion, 12);
    }
  });

  it('gives the same kinships', async () => {
    const [one, other] = await ofBoth(async ({ http }) =>
      bodyOf<KinshipView>(await http.post('/api/v1/lineage/kinship').send({ individuals: animals }).expect(200)),
    );
    expect(one.kinship.flat().some((kinship) => kinship > 0.5)).toBe(true);
    one.kinship.forEach((row, at) =>
      row.forEach((kinship, column) => expect(other.kinship[at]?.[column]).toBeCloseTo(kinship, 12)),
    );
  });

  it('gives the same figures under assumptions', async () => {
    const [clutch] = await usual.dataSource.query<{ id: string }[]>(
      'select clutch_id as id from individual where id = $1',
      [certain.at(-1)],
    );
    const parents = { sires: [{ individualId: certain[2] }], dams: [{ individualId: certain[4] }] };
    const assumed = { clutches: [{ id: clutch?.id, ...parents }] };
    const [one, other] = await ofBoth(async ({ http }) =>
      bodyOf<WhatIfView>(
        await http
          .post(`/api/v1/individuals/${certain.at(-1)}/lineage/what-if`)
          .send(assumed)
          .expect(200),
      ),
    );
    expect(one.assumed.inbreeding.expected).not.toBeCloseTo(one.recorded.inbreeding.expected, 3);
    for (const side of ['recorded', 'assumed'] as const)
      expect(other[side].inbreeding.expected).toBeCloseTo(one[side].inbreeding.expected, 12);
  });

  it('draws no spread whose matrix would not fit, and says so', async () => {
    const spread = `/api/v1/individuals/${animals[103]}/lineage/spread?samples=200&seed=1`;
    const drawn = bodyOf<InbreedingSpreadView>(await usual.http.get(spread).expect(200));
    expect(drawn.samples).toBe(200);
    const problem = bodyOf<ProblemBody>(await tiny.http.get(spread).expect(422));
    expect(problem.detail).toContain('no distribution can be drawn');
  });
});
