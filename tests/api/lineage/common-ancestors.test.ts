import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CommonAncestorsView } from '../../../api/lineage/common-ancestors.view.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { writeSketch, type SketchIds } from '../../support/register-sketch.ts';

describe('why F of an animal is what it is', () => {
  let api: TestApi;
  let ids: SketchIds;

  beforeAll(async () => {
    api = await startApi();
    const one = (individual: number) => [{ individual, probability: 1 }];
    ids = await writeSketch(api.dataSource, {
      sources: [{ baseKinship: 0.1 }],
      individuals: [
        { source: 0, code: 'G0' },
        { source: 0, code: 'G1' },
        { code: 'U2' },
        { clutch: 0, code: 'S3' },
        { clutch: 0, code: 'D4' },
        { clutch: 1, code: 'X5' },
        { clutch: 2, code: 'M6' },
        { clutch: 2, code: 'N7' },
        { clutch: 3, code: 'Y8' },
      ],
      clutches: [
        { sires: one(0), dams: one(1) },
        { sires: one(3), dams: one(4) },
        { sires: one(2), dams: one(-1) },
        { sires: one(6), dams: one(7) },
      ],
    });
  });
  afterAll(() => api.close());

  const of = async (animal: number, query = ''): Promise<CommonAncestorsView> =>
    bodyOf<CommonAncestorsView>(
      await api.http
        .get(`/api/v1/individuals/${ids.individuals[animal] ?? ''}/lineage/common-ancestors${query}`)
        .expect(200),
    );

  it('is told by its common ancestors: full siblings of two founders of one source', async () => {
    const view = await of(5);
    // two founders with F = 0.1 each give 1/4 of 1/2(1+F); their kinship of 0.1 gives two loops of a quarter of it (Wright 1922)
    expect(view.inbreeding).toBeCloseTo(0.325, 12);
    expect(view.ancestors.reduce((sum, { part }) => sum + part, 0)).toBeCloseTo(view.inbreeding, 12);
    const founders = view.ancestors.filter(({ ancestor }) => ancestor);
    expect(founders.map(({ ancestor }) => ancestor?.code).sort()).toEqual(['G0', 'G1']);
    for (const founder of founders) {
      expect(founder.part).toBeCloseTo(0.1375, 12);
      expect(founder).toMatchObject({ loops: 1, shortest: 2, longest: 2 });
    }
    const [through] = view.ancestors.filter(({ sources }) => sources);
    expect(through?.part).toBeCloseTo(0.05, 12);
    expect(through).toMatchObject({ loops: 2, shortest: 2, longest: 2, sources: [{ id: ids.sources[0] }] });
    expect(view).toMatchObject({ isTakenApart: true, others: 0, othersPart: 0, current: true });
  });

  it('names a parent that nobody knows where clutch-mates share it', async () => {
    const view = await of(8);
    expect(view.inbreeding).toBe(0.25);
    expect(view.ancestors.map(({ part }) => part)).toEqual([0.125, 0.125]);
    expect(view.ancestors.find(({ unknownParentOf }) => unknownParentOf)?.unknownParentOf?.id).toBe(ids.clutches[2]);
  });

  it('is nothing where nothing makes it inbred, and the source where a founder is', async () => {
    expect(await of(3)).toMatchObject({ inbreeding: 0.1, ancestors: [{ part: 0.1, loops: 1, shortest: 0 }] });
    expect(await of(2)).toMatchObject({ inbreeding: 0, ancestors: [] });
    expect(await of(0)).toMatchObject({
      inbreeding: 0.1,
      ancestors: [{ part: 0.1, sources: [{ id: ids.sources[0] }] }],
    });
  });

  it('names no more than is asked for and tells the rest as a sum', async () => {
    const view = await of(5, '?most=1');
    expect(view.ancestors).toHaveLength(1);
    expect(view.others).toBe(2);
    expect((view.ancestors[0]?.part ?? 0) + view.othersPart).toBeCloseTo(view.inbreeding, 12);
    await api.http.get(`/api/v1/individuals/${ids.individuals[5]}/lineage/common-ancestors?most=0`).expect(422);
  });
});
