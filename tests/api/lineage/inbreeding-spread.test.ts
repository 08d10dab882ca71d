import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { InbreedingSpreadView } from '../../../api/lineage/inbreeding-spread.view.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import { bodyOf, having, type ProblemBody } from '../../support/answer.ts';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';
import { writeSketch, type RegisterSketch, type SketchIds } from '../../support/register-sketch.ts';
import { vagueHerd } from '../../support/vague-herd.ts';

const odds = (individuals: readonly number[]) =>
  individuals.map((individual) => ({ individual, probability: 1 / individuals.length }));

/** uncertain-parentage.json, group-2x3-unrelated: two clutches of two males and three females, y bred of one young of each. */
const group: RegisterSketch = {
  sources: [{ baseKinship: 0.125 }],
  individuals: [
    { code: 'S1' },
    { code: 'S2' },
    { code: 'D1' },
    { code: 'D2' },
    { code: 'D3' },
    { code: 'a1', clutch: 0 },
    { code: 'b1', clutch: 1 },
    { code: 'y', clutch: 2 },
    { code: 'imported', source: 0 },
    { code: 'certain', clutch: 3 },
  ],
  clutches: [
    { sires: odds([0, 1]), dams: odds([2, 3, 4]) },
    { sires: odds([0, 1]), dams: odds([2, 3, 4]) },
    { sires: odds([5]), dams: odds([6]) },
    { sires: odds([0]), dams: odds([2]) },
  ],
};

describe('the spread of an inbreeding coefficient', () => {
  let api: TestApi;
  let ids: SketchIds;
  let herd: SketchIds;
  const idOf = (code: string): string => ids.individuals[group.individuals.findIndex((one) => one.code === code)] ?? '';
  const spreadOf = async (id: string, query: object = {}, at = api): Promise<InbreedingSpreadView> =>
    bodyOf<InbreedingSpreadView>(
      await at.http.get(`/api/v1/individuals/${id}/lineage/spread`).query(query).expect(200),
    );

  beforeAll(async () => {
    api = await startApi();
    ids = await writeSketch(api.dataSource, group);
    herd = await writeSketch(api.dataSource, vagueHerd(5));
  });
  beforeEach(() => api.dataSource.query('delete from rate_limit'));
  afterAll(() => api.close());

  it('holds only values that the animal can have, each with its odds, where they can all be gone through', async () => {
    const spread = await spreadOf(idOf('y'));
    expect(spread).toMatchObject({
      method: 'enumerated',
      uncertainClutches: 2,
      assignments: 36,
      samples: 36,
      seed: null,
      standardError: 0,
      least: 0,
      greatest: 0.25,
      bins: null,
      current: true,
    });
    expect(spread.values?.map(({ value }) => value)).toEqual([0, 0.125, 0.25]);
    spread.values?.forEach(({ share }, place) => expect(share).toBeCloseTo([1 / 3, 1 / 2, 1 / 6][place] ?? NaN, 12));
    // the expected 5/48 is none of them; parents are certain, so that its own candidates give no range
    expect(spread.mean).toBeCloseTo(5 / 48, 12);
    expect(spread.inbreeding.expected).toBeCloseTo(5 / 48, 12);
    expect(spread.inbreeding.least).toBeCloseTo(5 / 48, 12);
  });

  it('is drawn where there are too many, with its mean near the expected coefficient', async () => {
    const id = herd.individuals.at(-1) ?? '';
    const spread = await spreadOf(id, { samples: 20_000, seed: 11 });
    expect(spread).toMatchObject({ method: 'sampled', samples: 20_000, seed: 11, uncertainClutches: 17 });
    const lineage = bodyOf<LineageView>(await api.http.get(`/api/v1/individuals/${id}/lineage`).expect(200));
    expect(spread.inbreeding).toMatchObject({
      expected: lineage.inbreeding.expected,
      least: lineage.inbreeding.least,
      greatest: lineage.inbreeding.greatest,
    });
    expect(spread.standardError).toBeGreaterThan(0);
    expect(Math.abs(spread.mean - lineage.inbreeding.expected)).toBeLessThan(4 * spread.standardError);
    const parts = spread.values ?? spread.bins ?? [];
    expect(parts.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    const quantiles = spread.quantiles.map(({ value }) => value);
    expect(quantiles).toEqual([...quantiles].sort((one, other) => one - other));
  });

  it('is the same to the last bit for the same seed, also from a copy of the service that read the register later', async () => {
    const id = herd.individuals.at(-2) ?? '';
    const one = await spreadOf(id, { seed: 4294967295 });
    expect(await spreadOf(id, { seed: 4294967295 })).toEqual(one);
    const copy = await startApiOn(api.databaseUrl);
    expect(await spreadOf(id, { seed: 4294967295 }, copy)).toEqual(one);
    await copy.close();
    expect((await spreadOf(id, { seed: 2 })).mean).not.toBe(one.mean);
  });

  it.each([
    ['certain', 0],
    ['imported', 0.125],
    ['S1', 0],
  ])('is one value for %s, whose ancestors are certain', async (code, value) => {
    expect(await spreadOf(idOf(code))).toMatchObject({
      method: 'certain',
      assignments: 1,
      values: [{ value, share: 1 }],
      mean: value,
      standardError: 0,
    });
  });

  it.each([
    ['samples', '99'],
    ['samples', '100001'],
    ['samples', 'many'],
    ['seed', '-1'],
    ['seed', '4294967296'],
  ])('is refused for %s=%s', async (field, value) => {
    const answer = await api.http
      .get(`/api/v1/individuals/${idOf('y')}/lineage/spread`)
      .query({ [field]: value })
      .expect(422);
    expect(bodyOf<ProblemBody>(answer).errors).toEqual([having({ pointer: `/${field}` })]);
  });

  it('knows nobody who is not there', async () => {
    await api.http.get('/api/v1/individuals/1-1/lineage/spread').expect(404);
  });
});
