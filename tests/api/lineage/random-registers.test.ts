import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import type { KinshipView } from '../../../api/lineage/kinship.view.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import {
  writeSketch,
  type RegisterSketch,
  type SketchCandidate,
  type SketchClutch,
} from '../../support/register-sketch.ts';
import { SlowRecursion } from '../../unit/kernel/slow-recursion.ts';

const choice = fc.record({ pick: fc.nat(99), odds: fc.integer({ min: 1, max: 9 }) });

/** Draws of a random register; `toSketch` makes a valid one of any. */
const draws = fc.record({
  sources: fc.array(fc.constantFrom(0, 0.05, 0.125, 0.25), { minLength: 2, maxLength: 2 }),
  founders: fc.array(fc.integer({ min: -1, max: 1 }), { minLength: 3, maxLength: 6 }),
  clutches: fc.array(
    fc.record({
      isJoint: fc.boolean(),
      first: fc.array(choice, { maxLength: 3 }),
      second: fc.array(choice, { maxLength: 3 }),
      unknownOdds: fc.integer({ min: 0, max: 3 }),
      young: fc.integer({ min: 1, max: 3 }),
    }),
    { minLength: 1, maxLength: 7 },
  ),
});
type Draws = typeof draws extends fc.Arbitrary<infer Drawn> ? Drawn : never;

function toSketch({ sources, founders, clutches }: Draws): RegisterSketch {
  const individuals: { clutch?: number; source?: number }[] = founders.map((source) => (source < 0 ? {} : { source }));
  const written = clutches.map((drawn, clutch): SketchClutch => {
    const parents = individuals.length;
    for (let young = 0; young < drawn.young; young++) individuals.push({ clutch });
    return drawn.isJoint && drawn.first.length > 0 ? jointPairs(drawn, parents) : lists(drawn, parents);
  });
  return { sources: sources.map((baseKinship) => ({ baseKinship })), clutches: written, individuals };
}

function lists({ first, second, unknownOdds }: Draws['clutches'][number], parents: number): SketchClutch {
  const sires = side(
    first.map(({ pick, odds }) => [pick % parents, odds]),
    unknownOdds,
  );
  const taken = new Set(sires.map(({ individual }) => individual));
  const dams = side(
    second.map(({ pick, odds }): [number, number] => [pick % parents, odds]).filter(([dam]) => !taken.has(dam)),
    0,
  );
  return { sires, dams };
}

/** Candidates once each, with odds that sum to 1; a frog nobody knows among them where it has odds. */
function side(drawn: [number, number][], unknownOdds: number): SketchCandidate[] {
  const odds = new Map(drawn);
  if (odds.size === 0) return [];
  if (unknownOdds > 0) odds.set(-1, unknownOdds);
  const total = [...odds.values()].reduce((sum, part) => sum + part, 0);
  return [...odds].map(([individual, part]) => ({ individual, probability: part / total }));
}

function jointPairs({ first, second }: Draws['clutches'][number], parents: number): SketchClutch {
  const odds = new Map<string, { a: number; b: number; odds: number }>();
  for (const one of first)
    for (const other of [...second, { pick: one.pick + 1, odds: 1 }]) {
      const [a, b] = [one.pick % parents, other.pick % parents].sort((x, y) => x - y) as [number, number];
      if (a !== b) odds.set(`${a} ${b}`, { a, b, odds: one.odds * other.odds });
    }
  const total = [...odds.values()].reduce((sum, pair) => sum + pair.odds, 0);
  return { pairs: [...odds.values()].map(({ a, b, odds: part }) => ({ a, b, probability: part / total })) };
}

/** The sketch as the plain recursion reads it, made without any of the service's own reading. */
function toPedigree({ sources = [], clutches, individuals }: RegisterSketch): Pedigree {
  const unknown = [{ individual: -1, probability: 1 }];
  const pairs = clutches.map((clutch) => {
    if ('pairs' in clutch) return clutch.pairs;
    const [sires, dams] = [clutch.sires, clutch.dams].map((list) => (list.length === 0 ? unknown : list));
    return (sires ?? []).flatMap((sire) =>
      (dams ?? []).map((dam) => ({
        a: sire.individual,
        b: dam.individual,
        probability: sire.probability * dam.probability,
      })),
    );
  });
  const flat = pairs.flat();
  return {
    clutchOf: Int32Array.from(individuals, ({ clutch }) => clutch ?? -1),
    sourceOf: Int32Array.from(individuals, ({ source }) => source ?? -1),
    baseKinship: Float64Array.from(sources, ({ baseKinship }) => baseKinship ?? 0),
    pairStart: Int32Array.from([0, ...pairs.map((_, last) => pairs.slice(0, last + 1).flat().length)]),
    pairSire: Int32Array.from(flat, ({ a }) => a),
    pairDam: Int32Array.from(flat, ({ b }) => b),
    pairProbability: Float64Array.from(flat, ({ probability }) => probability),
  };
}

describe('random registers, written by SQL and read through the API', () => {
  let api: TestApi;
  beforeAll(async () => {
    api = await startApi();
  });
  afterAll(() => api.close());

  it('have the kinships, the inbreeding and the ranges of the plain recursion', async () => {
    await fc.assert(
      fc.asyncProperty(draws, fc.boolean(), async (drawn, isShuffled) => {
        const sketch = toSketch(drawn);
        // random ids put the records of the register in any order: parents after their young, clutches before theirs
        const made = await writeSketch(api.dataSource, sketch, isShuffled ? () => crypto.randomUUID() : undefined);
        const slow = new SlowRecursion(toPedigree(sketch));
        const answer = await api.http
          .post('/api/v1/lineage/kinship')
          .send({ individuals: made.individuals })
          .expect(200);
        const kinship = bodyOf<KinshipView>(answer).kinship;
        kinship.forEach((row, a) =>
          row.forEach((value, b) => {
            expect(value).toBeCloseTo(slow.kinship(a, b), 12);
            expect(value).toBe(kinship[b]?.[a]);
          }),
        );
        for (const [individual, id] of made.individuals.entries()) await checkLineage(id, individual, sketch, slow);
      }),
      { numRuns: 25 },
    );
  });

  async function checkLineage(
    id: string,
    individual: number,
    sketch: RegisterSketch,
    slow: SlowRecursion,
  ): Promise<void> {
    const { inbreeding, shares, label } = (await api.http.get(`/api/v1/individuals/${id}/lineage`).expect(200))
      .body as LineageView;
    expect(inbreeding.expected).toBeCloseTo(slow.inbreeding(individual), 12);
    const clutch = sketch.individuals[individual]?.clutch;
    if (clutch !== undefined) {
      const kinships = slow.pairsOf(clutch).map(({ sire, dam }) => slow.kinship(sire, dam));
      expect(inbreeding.least).toBeCloseTo(Math.min(...kinships), 12);
      expect(inbreeding.greatest).toBeCloseTo(Math.max(...kinships), 12);
      expect(inbreeding.nothingKnown).toBe(!slow.pairsOf(clutch).some(({ sire, dam }) => sire >= 0 || dam >= 0));
    }
    expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(label.shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  }
});
