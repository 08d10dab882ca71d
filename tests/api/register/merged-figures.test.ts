import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { KinshipView } from '../../../api/lineage/kinship.view.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import {
  writeSketch,
  type RegisterSketch,
  type SketchCandidate,
  type SketchClutch,
} from '../../support/register-sketch.ts';
import { Registrar } from './registrar.ts';

let api: TestApi;
let registrar: Registrar;
beforeAll(async () => {
  api = await startApi();
  registrar = new Registrar(api);
});
afterAll(() => api.close());

const picks = fc.array(fc.record({ pick: fc.nat(99), odds: fc.integer({ min: 1, max: 9 }) }), { maxLength: 3 });

/** Draws of a small register, of the animal in it that is recorded twice, and of how its records share what names it. */
const draws = fc.record({
  founders: fc.array(fc.constantFrom(-1, 0, 1), { minLength: 3, maxLength: 5 }),
  clutches: fc.array(
    fc.record({ isJoint: fc.boolean(), sires: picks, dams: picks, young: fc.integer({ min: 1, max: 2 }) }),
    {
      minLength: 2,
      maxLength: 6,
    },
  ),
  twice: fc.nat(99),
  /** Of each clutch that names the animal: 0 the first record, 1 the second, 2 both. */
  shares: fc.array(fc.constantFrom(0, 1, 2), { minLength: 6, maxLength: 6 }),
  isOriginOfDuplicate: fc.boolean(),
  isShuffled: fc.boolean(),
});
type Draws = typeof draws extends fc.Arbitrary<infer Drawn> ? Drawn : never;

/** The register with one record an animal. */
function once({ founders, clutches }: Draws): RegisterSketch {
  const individuals: { clutch?: number; source?: number }[] = founders.map((source) => (source < 0 ? {} : { source }));
  const written = clutches.map((drawn, clutch): SketchClutch => {
    const parents = individuals.length;
    for (let young = 0; young < drawn.young; young++) individuals.push({ clutch });
    const sires = side(drawn.sires, parents, new Set());
    const dams = side(drawn.dams, parents, new Set(sires.map(({ individual }) => individual)));
    if (!drawn.isJoint || sires.length === 0 || dams.length === 0) return { sires, dams };
    return {
      pairs: sires.flatMap((one) =>
        dams.map((other) => ({
          a: Math.min(one.individual, other.individual),
          b: Math.max(one.individual, other.individual),
          probability: one.probability * other.probability,
        })),
      ),
    };
  });
  return { sources: [{ baseKinship: 0.125 }, {}], clutches: written, individuals };
}

function side(
  drawn: readonly { pick: number; odds: number }[],
  parents: number,
  taken: ReadonlySet<number>,
): SketchCandidate[] {
  const odds = new Map(drawn.map(({ pick, odds: part }) => [pick % parents, part]));
  for (const animal of taken) odds.delete(animal);
  const total = [...odds.values()].reduce((sum, part) => sum + part, 0);
  return [...odds].map(([individual, part]) => ({ individual, probability: part / total }));
}

/** The same register with two records of one animal, the second of them last. */
function recordedTwice(
  sketch: RegisterSketch,
  { twice, shares, isOriginOfDuplicate }: Draws,
): RegisterSketch & { kept: number } {
  const kept = twice % sketch.individuals.length;
  const duplicate = sketch.individuals.length;
  const split = <Row extends { readonly probability: number }>(
    row: Row,
    share: number | undefined,
    isOfAnimal: boolean,
    other: Row,
  ): Row[] => {
    if (!isOfAnimal || share === 0) return [row];
    if (share === 1) return [other];
    return [
      { ...row, probability: row.probability * 0.25 },
      { ...other, probability: row.probability * 0.75 },
    ];
  };
  const renamed = (individual: number): number => (individual === kept ? duplicate : individual);
  const clutches = sketch.clutches.map((clutch, place): SketchClutch => {
    const share = shares[place % shares.length];
    if ('pairs' in clutch)
      return {
        pairs: clutch.pairs.flatMap((row) =>
          split(row, share, row.a === kept || row.b === kept, { ...row, a: renamed(row.a), b: renamed(row.b) }),
        ),
      };
    const both = (rows: readonly SketchCandidate[]): SketchCandidate[] =>
      rows.flatMap((row) =>
        split(row, share, row.individual === kept, { ...row, individual: renamed(row.individual) }),
      );
    return { sires: both(clutch.sires), dams: both(clutch.dams) };
  });
  const origin = sketch.individuals[kept] ?? {};
  const individuals = sketch.individuals.map((animal, place) => (place === kept && isOriginOfDuplicate ? {} : animal));
  return { ...sketch, clutches, individuals: [...individuals, isOriginOfDuplicate ? origin : {}], kept };
}

async function kinships(individuals: readonly string[]): Promise<number[][]> {
  const answer = await api.http.post('/api/v1/lineage/kinship').send({ individuals }).expect(200);
  return bodyOf<KinshipView>(answer).kinship;
}

async function inbreedings(individuals: readonly string[]): Promise<LineageView['inbreeding'][]> {
  const answers: LineageView['inbreeding'][] = [];
  for (const id of individuals)
    answers.push(
      ((await api.http.get(`/api/v1/individuals/${id}/lineage`).expect(200)).body as LineageView).inbreeding,
    );
  return answers;
}

it('merged records have the figures of a register that had one record from the start, and parted ones are as they were', async () => {
  let merged = 0;
  await fc.assert(
    fc.asyncProperty(draws, async (drawn) => {
      const single = once(drawn);
      const makeId = drawn.isShuffled ? () => crypto.randomUUID() : undefined;
      const wanted = await writeSketch(api.dataSource, single, makeId);
      const { kept, ...double } = recordedTwice(single, drawn);
      const { individuals } = await writeSketch(api.dataSource, double, makeId);
      const [keptId = '', duplicateId = ''] = [individuals[kept], individuals.at(-1)];
      const before = await registrar.wholeRegister();
      const take = drawn.isOriginOfDuplicate ? ['origin'] : [];
      const { id } = await registrar.merge({ id: keptId }, { id: duplicateId }, { take });
      merged++;

      const standing = individuals.slice(0, -1);
      const [is, should] = [await kinships(standing), await kinships(wanted.individuals)];
      should.forEach((row, a) => row.forEach((value, b) => expect(is[a]?.[b]).toBeCloseTo(value, 12)));
      const [inbred, shouldBe] = [await inbreedings(standing), await inbreedings(wanted.individuals)];
      shouldBe.forEach(({ expected, least, greatest, nothingKnown }, place) => {
        expect(inbred[place]?.expected).toBeCloseTo(expected, 12);
        expect(inbred[place]?.least).toBeCloseTo(least, 12);
        expect(inbred[place]?.greatest).toBeCloseTo(greatest, 12);
        expect(inbred[place]?.nothingKnown).toBe(nothingKnown);
      });

      await registrar.undo(id).expect(200);
      expect(await registrar.wholeRegister()).toEqual(before);
    }),
    { numRuns: 30 },
  );
  expect(merged).toBeGreaterThanOrEqual(30);
}, 120_000);
