import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { KinshipView } from '../../../api/lineage/kinship.view.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { writeSketch, type RegisterSketch, type SketchClutch } from '../../support/register-sketch.ts';
import { fraction, readCases, type ReferenceCase } from '../../unit/kernel/reference-cases.ts';

/** Cases that a register can hold: it knows no kinship between two sources yet, and its sources are pools of gametes. */
const cases = [...readCases('uncertain-parentage'), ...readCases('founder-groups')].filter(
  ({ convention = 'gamete-pool', betweenGroups = [] }) => convention === 'gamete-pool' && betweenGroups.length === 0,
);

/** Lays a case out as a register: each row with a parent is a clutch of its own, groups are sources. */
function toSketch(reference: ReferenceCase): { sketch: RegisterSketch; ids: string[] } {
  const rows = reference.pedigree ?? reference.animals ?? [];
  const written = reference.clutches ?? [];
  const ids = [...new Set([...rows.map(({ id }) => id), ...written.flatMap(({ members }) => members)])];
  const at = (id: string | null): number => (id === null ? -1 : ids.indexOf(id));
  const clutches: SketchClutch[] = [];
  const clutchOf = new Map<string, number>();
  const candidates = (list: readonly { id: string | null; probability: string }[] = []) =>
    list.map(({ id, probability }) => ({ individual: at(id), probability: fraction(probability) }));
  for (const { members, candidateSires, candidateDams, candidatePairs } of written) {
    for (const member of members) clutchOf.set(member, clutches.length);
    clutches.push(
      candidatePairs
        ? {
            pairs: candidatePairs.map(({ a, b, probability }) => ({
              a: at(a),
              b: at(b),
              probability: fraction(probability),
            })),
          }
        : { sires: candidates(candidateSires), dams: candidates(candidateDams) },
    );
  }
  for (const { id, sire, dam } of rows) {
    if ((sire === null && dam === null) || clutchOf.has(id)) continue;
    clutchOf.set(id, clutches.length);
    const certain = (parent: string | null) => (parent === null ? [] : [{ individual: at(parent), probability: 1 }]);
    clutches.push({ sires: certain(sire), dams: certain(dam) });
  }
  const groups = reference.groups ?? [];
  const individuals = ids.map((id) => {
    const clutch = clutchOf.get(id);
    const source = groups.findIndex(({ members }) => members.includes(id));
    return { ...(clutch === undefined ? {} : { clutch }), ...(clutch === undefined && source >= 0 ? { source } : {}) };
  });
  return {
    ids,
    sketch: {
      clutches,
      individuals,
      sources: groups.map(({ baseKinship }) => ({ baseKinship: fraction(baseKinship) })),
    },
  };
}

interface Matrix {
  readonly ids: readonly string[];
  readonly decimals: readonly (readonly number[])[];
}

describe('published and enumerated cases, written into the register and read through the API', () => {
  let api: TestApi;
  beforeAll(async () => {
    api = await startApi();
  });
  afterAll(() => api.close());

  it.each(cases.map((reference) => [reference.name, reference] as const))('%s', async (_, reference) => {
    const { sketch, ids } = toSketch(reference);
    const made = await writeSketch(api.dataSource, sketch);
    const recordOf = (id: string): string => made.individuals[ids.indexOf(id)] ?? '';

    const inbreeding = (reference.expected['expectedInbreeding'] ?? reference.expected['inbreeding']) as Record<
      string,
      { decimal: number }
    >;
    for (const [id, { decimal }] of Object.entries(inbreeding)) {
      const answer = await api.http.get(`/api/v1/individuals/${recordOf(id)}/lineage`).expect(200);
      expect(bodyOf<LineageView>(answer).inbreeding.expected, `F of ${id}`).toBeCloseTo(decimal, 12);
    }

    const matrix = (reference.expected['expectedKinshipMatrix'] ?? reference.expected['kinshipMatrix']) as Matrix;
    const answer = await api.http
      .post('/api/v1/lineage/kinship')
      .send({ individuals: matrix.ids.map(recordOf) })
      .expect(200);
    const kinship = bodyOf<KinshipView>(answer).kinship;
    matrix.decimals.forEach((row, i) =>
      row.forEach((decimal, j) =>
        expect(kinship[i]?.[j], `kinship of ${matrix.ids[i]} and ${matrix.ids[j]}`).toBeCloseTo(decimal, 12),
      ),
    );
  });

  it('covers uncertain lists, joint pairs, unknown candidates and shipments with a base kinship', () => {
    expect(cases.map(({ name }) => name)).toEqual(
      expect.arrayContaining([
        'group-2x3-weighted',
        'unsexed-group-with-sibs',
        'outside-frog-possible',
        'two-shipments-unrelated',
        'uncertain-parents-in-one-shipment',
      ]),
    );
  });
});
