import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeInbreeding, inbreedingOf } from '../../../api/lineage/kernel/inbreeding.ts';
import { kinshipMatrix } from '../../../api/lineage/kernel/kinship.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { founderShares } from '../../../api/lineage/kernel/shares.ts';
import type { ForecastFigure } from '../../../api/match/forecast/forecast-courses.ts';
import type { Outcome } from '../../../api/match/forecast/outcomes.ts';
import { registers, shuffled, toPedigree } from '../kernel/random-registers.ts';
import { asked, courseOf, forecast, founders, pairsOf, withClutches } from './forecast-sketch.ts';
import { forecastInRegister } from '../../../api/match/forecast/register-forecast.ts';

/** A mean may be off by so many standard errors; and by a rounding where every replicate is the same. */
function expectWithin({ mean, standardError }: Outcome, exact: number, what: string): void {
  expect(Math.abs(mean - exact), `${what}: ${mean} ± ${standardError}, ${exact}`).toBeLessThanOrEqual(
    4 * standardError + 1e-12,
  );
}

/** Mean kinship of some animals, each with itself included, and their mean F, by the kernel of the lineage. */
function exactFigures(pedigree: Pedigree, animals: readonly number[]): { diversity: number; inbreeding: number } {
  const inbreeding = computeInbreeding(pedigree);
  const matrix = kinshipMatrix(pedigree, inbreeding, Int32Array.from(animals));
  const f = animals.map((animal) => inbreedingOf(pedigree, inbreeding, animal).expected);
  return {
    diversity: 1 - matrix.reduce((sum, kinship) => sum + kinship, 0) / matrix.length,
    inbreeding: f.reduce((sum, one) => sum + one, 0) / f.length,
  };
}

/** Registers from which genes can be dropped: no kin sources, founders as inbred as they are kin. */
const droppable = registers({ clutches: 15, pairs: 3 }).map((register) =>
  toPedigree({
    ...register,
    sources: register.sources.map(({ baseKinship }) => ({ baseKinship, founderInbreeding: baseKinship })),
    sourceKinships: [],
  }),
);

describe('one generation under given pairs', () => {
  it('has the diversity and F that the kernel computes for these young, uncertain parents and kin founders among their ancestors', () => {
    fc.assert(
      fc.property(
        droppable,
        fc.array(fc.tuple(fc.nat(999), fc.nat(999)), { minLength: 1, maxLength: 6 }),
        (pedigree, drawn) => {
          const animals = pedigree.clutchOf.length;
          const half = animals >> 1;
          const pairs = drawn.map(([a, b]) => ({ sire: a % half, dam: half + (b % (animals - half)) }));
          const youngKept = 3;
          const course = courseOf(forecast(pedigree, { pairs, youngKept, replicates: 600 }), 'plan');
          const after = withClutches(pedigree, pairs, youngKept);
          const young = Array.from({ length: pairs.length * youngKept }, (_, one) => animals + one);
          const breeders = [...new Set(pairs.flatMap(({ sire, dam }) => [sire, dam]))];
          for (const [generation, exact] of [exactFigures(pedigree, breeders), exactFigures(after, young)].entries()) {
            const found = course.generations[generation];
            for (const figure of ['diversity', 'inbreeding'] as const) {
              const value = found?.[figure] as ForecastFigure;
              expect(value.expected).toBeCloseTo(exact[figure], 11);
              expectWithin(value, exact[figure], `${figure} of generation ${generation}`);
            }
          }
        },
      ),
      { numRuns: 50, seed: 5 },
    );
  });

  it('keeps the founders’ shares: they sum to 1, and are half the dam’s and half the sire’s', () => {
    fc.assert(
      fc.property(droppable, (pedigree) => {
        const dam = pedigree.clutchOf.length - 1;
        const found = forecast(pedigree, {
          pairs: [{ sire: 0, dam }],
          generations: 2,
          replicates: 400,
          originsMost: 3,
        });
        const { order } = computeInbreeding(pedigree);
        const halves = [0, dam].flatMap((animal) => founderShares(pedigree, order, animal));
        for (const generation of courseOf(found, 'plan').generations) {
          const told = [...generation.shares, generation.otherShare].reduce((sum, { mean }) => sum + mean, 0);
          expect(told).toBeCloseTo(1, 12);
          found.origins.forEach((origin, place) => {
            const isSame = (one: (typeof halves)[number]): boolean =>
              one.kind === origin.kind &&
              JSON.stringify({ ...one, share: 0 }) === JSON.stringify({ ...origin, share: 0 });
            const exact = halves.filter(isSame).reduce((sum, { share }) => sum + share / 2, 0);
            expect(origin.share).toBeCloseTo(exact, 12);
            expectWithin(generation.shares[place] as Outcome, exact, `share of ${JSON.stringify(origin)}`);
          });
        }
      }),
      { numRuns: 40, seed: 8 },
    );
  });

  it('lets clutch-mates share the parents that nobody is sure of', () => {
    const pedigree = toPedigree({
      founders: [-1, -1, -1, -1],
      sources: [],
      sourceKinships: [],
      clutches: [
        {
          pairs: [0, 1, 2].map((sire) => ({ sire, dam: 3, odds: 1 })),
          young: 2,
        },
      ],
    });
    const { diversity, inbreeding } = courseOf(forecast(pedigree, { pairs: [{ sire: 4, dam: 5 }] }), 'plan')
      .generations[1] as { diversity: Outcome; inbreeding: Outcome };
    // full sibs, whoever the sire is: ¼, where as many half sibs of three sires would have ⅛ + ⅛ · ⅓
    expectWithin(inbreeding, 0.25, 'F');
    expectWithin(diversity, 1 - (0.25 * 0.625 + 0.75 * 0.375), 'diversity');
  });

  it('counts founders of one source as kin where the source says so', () => {
    const pedigree = toPedigree({
      founders: [0, 0],
      sources: [{ baseKinship: 0.2, founderInbreeding: 0.2 }],
      sourceKinships: [],
      clutches: [],
    });
    const generation = courseOf(forecast(pedigree, { pairs: pairsOf(1) }), 'plan').generations[1];
    expectWithin(generation?.inbreeding as Outcome, 0.2, 'F');
    expect(generation?.shares.map(({ mean }) => mean)).toEqual([1]);
  });
});

describe('generation after generation', () => {
  it('of brother with sister follow 0, ¼, ⅜, ½, 19/32 (Wright 1921; Falconer & Mackay 1996, ch. 5)', () => {
    const series = [0, 0, 0.25, 0.375, 0.5, 0.59375, 0.671875];
    const question = { pairs: pairsOf(1), generations: 6, courses: ['plan', 'random'] as const, replicates: 2000 };
    const found = forecast(founders(2), question);
    series.forEach((exact, generation) => {
      const planned = courseOf(found, 'plan').generations[generation]?.inbreeding;
      expect(planned?.expected).toBe(exact);
      expectWithin(planned as Outcome, exact, `plan, generation ${generation}`);
      const random = courseOf(found, 'random').generations[generation]?.inbreeding as Outcome;
      expectWithin(random, exact, `random, generation ${generation}`);
    });
  });

  it('of a plan have the diversity and F that kinship expects of the pedigree that was planned', () => {
    for (const youngKept of [2, 3, 6]) {
      const found = courseOf(forecast(founders(16), { pairs: pairsOf(8), generations: 5, youngKept }), 'plan');
      for (const { generation, diversity, inbreeding } of found.generations) {
        expect(diversity.expected).not.toBeNull();
        expectWithin(diversity, diversity.expected ?? 0, `diversity of generation ${generation}`);
        expectWithin(inbreeding, inbreeding.expected ?? 0, `F of generation ${generation}`);
      }
    }
  });

  it('by random pairs follow the recursion of kinship within and between clutches', () => {
    const question = {
      pairs: pairsOf(6),
      generations: 6,
      courses: ['random'] as const,
      youngKept: 4,
      replicates: 3000,
    };
    const { generations } = courseOf(forecast(founders(12), question), 'random');
    randomPairs(6, 4, 6).forEach(({ inbreeding, diversity }, place) => {
      expectWithin(generations[place + 1]?.inbreeding as Outcome, inbreeding, `F of generation ${place + 1}`);
      expectWithin(generations[place + 1]?.diversity as Outcome, diversity, `diversity of generation ${place + 1}`);
    });
  });

  it('by random pairs lose 1/(2Ne) of the diversity each time, Ne = N + ½ where none mates with itself and families are as large as chance makes them (Wright 1931; Falconer & Mackay 1996, ch. 4)', () => {
    const pairs = 10;
    // of very many young, who breeds is drawn from all families alike
    const many = randomPairs(pairs, 100_000, 40);
    const [before, after] = [many[38], many[39]].map((one) => one?.diversity ?? 0) as [number, number];
    expect(1 - after / before).toBeCloseTo(1 / (2 * (2 * pairs + 0.5)), 4);
    const question = {
      pairs: pairsOf(pairs),
      generations: 10,
      courses: ['random'] as const,
      youngKept: 20,
      replicates: 800,
    };
    const { generations } = courseOf(forecast(founders(2 * pairs), question), 'random');
    const exact = randomPairs(pairs, 20, 10);
    exact.forEach(({ diversity }, place) =>
      expectWithin(generations[place + 1]?.diversity as Outcome, diversity, `diversity of generation ${place + 1}`),
    );
    const [third, tenth] = [generations[3], generations[10]].map((one) => one?.diversity.mean ?? 0) as [number, number];
    // families of twenty are a little more even than chance makes them: the loss is a little less
    const lossEach = 1 - (tenth / third) ** (1 / 7);
    expect(lossEach).toBeGreaterThan(0.85 / (2 * (2 * pairs + 0.5)));
    expect(lossEach).toBeLessThan(1.05 / (2 * (2 * pairs + 0.5)));
  });

  it('by few sires lose as many times more as Ne = 4MF/(M + F) says (Wright 1931)', () => {
    const pairs = Array.from({ length: 16 }, (_, dam) => ({ sire: dam % 2, dam: 2 + dam }));
    const question = { pairs, generations: 10, courses: ['random'] as const, youngKept: 20, replicates: 800 };
    const { generations } = courseOf(forecast(founders(18), question), 'random');
    const [third, tenth] = [generations[3], generations[10]].map((one) => one?.diversity.mean ?? 0) as [number, number];
    const effectiveSize = (4 * 2 * 16) / (2 + 16);
    const lossEach = 1 - (tenth / third) ** (1 / 7);
    expect(lossEach * 2 * effectiveSize).toBeGreaterThan(0.85);
    expect(lossEach * 2 * effectiveSize).toBeLessThan(1.1);
  });

  it('of a plan avoid inbreeding as long as sixteen unrelated animals can, and lose 1/(4N) each (maximum avoidance: Wright 1921; Kimura & Crow 1963)', () => {
    const question = { pairs: pairsOf(8), generations: 6, courses: ['plan', 'random'] as const };
    const found = forecast(founders(16), question);
    const plan = courseOf(found, 'plan').generations;
    // 2⁴ animals: nobody can have an ancestor twice before the fifth generation
    expect(plan.map(({ inbreeding }) => inbreeding.expected === 0)).toEqual([
      true,
      true,
      true,
      true,
      true,
      false,
      false,
    ]);
    for (let generation = 2; generation <= 5; generation++) {
      const [before, after] = [generation - 1, generation].map((one) => plan[one]?.diversity.expected ?? 0);
      expect((before ?? 0) - (after ?? 0)).toBeCloseTo(1 / 64, 12);
    }
    const [planned, random] = (['plan', 'random'] as const).map(
      (kind) => courseOf(found, kind).generations[6]?.diversity,
    );
    const gap = (planned?.mean ?? 0) - (random?.mean ?? 0);
    expect(gap).toBeGreaterThan(10 * (random?.standardError ?? 0));
  });
});

describe('groups as they stand', () => {
  it('give young of any sire of the group', () => {
    // 0 and 1 are brothers of 2: the dam’s mates are her brother with ½, and an unrelated animal with ½
    const pedigree = toPedigree({
      founders: [-1, -1, -1],
      sources: [],
      sourceKinships: [],
      clutches: [{ pairs: [{ sire: 0, dam: 1, odds: 1 }], young: 2 }],
    });
    const groups = [{ sires: [3, 2], dams: [4], unsexed: [] }];
    const { generations, sires, dams } = courseOf(
      forecast(pedigree, { groups, courses: ['today'], generations: 2 }),
      'today',
    );
    expect([sires, dams]).toEqual([2, 1]);
    expectWithin(generations[1]?.inbreeding as Outcome, 0.125, 'F');
    expect(generations[1]?.inbreeding.expected).toBeNull();
  });

  it('of unsexed animals let any two be the pair', () => {
    const pedigree = toPedigree({
      founders: [-1, -1, -1],
      sources: [],
      sourceKinships: [],
      clutches: [{ pairs: [{ sire: 0, dam: 1, odds: 1 }], young: 2 }],
    });
    // of three, one is the sire and two are dams: a third of the matings is brother with sister
    const groups = [{ sires: [], dams: [], unsexed: [2, 3, 4] }];
    const { generations, clutches } = courseOf(forecast(pedigree, { groups, courses: ['today'] }), 'today');
    expect(clutches).toBe(2);
    expectWithin(generations[1]?.inbreeding as Outcome, 0.25 / 3, 'F');
  });

  it('are filled anew without putting together what was born in one group', () => {
    const groups = pairsOf(2).map(({ sire, dam }) => ({ sires: [sire], dams: [dam], unsexed: [] }));
    const question = { groups, pairs: pairsOf(2), courses: ['today', 'random'] as const, generations: 2 };
    const found = forecast(founders(4), question);
    expect(courseOf(found, 'today').generations[2]?.inbreeding.greatest).toBe(0);
    expectWithin(courseOf(found, 'random').generations[2]?.inbreeding as Outcome, 0.125, 'F at random');
  });
});

describe('a forecast', () => {
  const pedigree = founders(8);
  const question = { pairs: pairsOf(4), generations: 3, replicates: 200, courses: ['plan', 'random'] as const };

  it('is the same for the same seed, and another for another', () => {
    expect(forecast(pedigree, question)).toEqual(forecast(pedigree, question));
    expect(forecast(pedigree, { ...question, seed: 2 })).not.toEqual(forecast(pedigree, question));
  });

  it('gives a course the same numbers whether or not others are asked for', () => {
    const alone = forecast(pedigree, { ...question, courses: ['random'] });
    expect(courseOf(alone, 'random')).toEqual(courseOf(forecast(pedigree, question), 'random'));
  });

  it('is the same to the last digit however the register is numbered', () => {
    fc.assert(
      fc.property(droppable, fc.nat(1000), (register, mix) => {
        const count = register.clutchOf.length;
        const other = shuffled(register, (row) => (row * 7919 + mix) % 101);
        const serials = Float64Array.from({ length: count }, (_, animal) => 1000 - animal);
        const otherSerials = new Float64Array(count);
        other.newIndividual.forEach((place, animal) => (otherSerials[place] = serials[animal] ?? 0));
        const pair = { sire: 0, dam: count - 1 };
        const renamed = { sire: other.newIndividual[0] ?? -1, dam: other.newIndividual[count - 1] ?? -1 };
        const asked = { generations: 2, replicates: 20, courses: ['plan', 'random'] as const };
        const one = forecast(register, { ...asked, pairs: [pair] }, serials);
        const two = forecast(other.pedigree, { ...asked, pairs: [renamed] }, otherSerials);
        expect(two.courses).toEqual(one.courses);
      }),
      { numRuns: 40, seed: 2 },
    );
  });

  it('names interval and standard error of what was drawn', () => {
    const { generations } = courseOf(forecast(pedigree, { ...question, loci: 1, replicates: 4000 }), 'random');
    const { least, from, mean, to, greatest, standardError } = generations[3]?.diversity as Outcome;
    expect([least, from, mean, to, greatest]).toEqual([least, from, mean, to, greatest].sort((a, b) => a - b));
    expect(from).toBeLessThan(to);
    // one gene can meet much in three generations; the mean of four thousand is known well
    expect(to - from).toBeGreaterThan(20 * standardError);
    expect(standardError).toBeLessThan(0.004);
  });

  it('comes nearer to the whole genome with more loci, and keeps its mean', () => {
    const after = (loci: number): Outcome =>
      courseOf(forecast(pedigree, { ...question, loci, replicates: 1500 }), 'random').generations[3]
        ?.diversity as ForecastFigure;
    const one = after(1);
    const many = after(64);
    expect(many.to - many.from).toBeLessThan(0.6 * (one.to - one.from));
    expect(Math.abs(one.mean - many.mean)).toBeLessThan(4 * Math.hypot(one.standardError, many.standardError));
  });

  it('tells what stands against it: too many ancestors, too many replicates', () => {
    const serials = Float64Array.from(pedigree.clutchOf.keys());
    const ask = (limits: { clutches: number; cost: number }): unknown =>
      forecastInRegister(pedigree, serials, asked(question), limits);
    expect(ask({ clutches: 10, cost: 1e5 })).toMatchObject({ kind: 'too many replicates' });
    const below = withClutches(pedigree, pairsOf(4), 1);
    const ofYoung = asked({ pairs: [{ sire: 8, dam: 9 }] });
    expect(
      forecastInRegister(below, Float64Array.from(below.clutchOf.keys()), ofYoung, { clutches: 1, cost: 1e12 }),
    ).toEqual({ kind: 'too many ancestors' });
  });

  it('tells how far it has come', () => {
    const told: number[] = [];
    const limits = { clutches: Infinity, cost: Infinity };
    const serials = Float64Array.from(pedigree.clutchOf.keys());
    forecastInRegister(pedigree, serials, asked(question), limits, (done) => told.push(done));
    expect(told.length).toBeGreaterThan(40);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(told.at(-1)).toBe(200);
  });
});

/**
 * Exact expectations for pairs of one sire and one dam mated at random, each with as many young kept, half of either sex, of whom as many as
 * before are drawn: kinship of clutch-mates (within) and of others (between), a male and a female being clutch-mates with probability 1/P,
 * two of one sex with q = (y/2 − 1)/(P · y/2 − 1).
 */
function randomPairs(
  pairs: number,
  youngKept: number,
  generations: number,
): { inbreeding: number; diversity: number }[] {
  const young = pairs * youngKept;
  const q = (youngKept / 2 - 1) / (young / 2 - 1);
  let within = 0;
  let between = 0;
  let inbreeding = 0;
  const found = [];
  for (let generation = 1; generation <= generations; generation++) {
    const isFirst = generation === 1;
    const mates = isFirst ? 0 : within / pairs + (1 - 1 / pairs) * between;
    const sameSex = isFirst ? 0 : q * within + (1 - q) * between;
    const self = 0.5 * (1 + inbreeding);
    within = 0.5 * (self + mates);
    between = 0.5 * (mates + sameSex);
    inbreeding = mates;
    const others = (youngKept - 1) / (young - 1);
    const kinship = (0.5 * (1 + inbreeding)) / young + (1 - 1 / young) * (others * within + (1 - others) * between);
    found.push({ inbreeding, diversity: 1 - kinship });
  }
  return found;
}
