import type { ForecastQuestion } from '../../../api/match/forecast/forecast-courses.ts';
import { forecastInRegister } from '../../../api/match/forecast/register-forecast.ts';
import type { Forecast, CourseForecast, CourseKind } from '../../../api/match/forecast/forecast-courses.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { toPedigree } from '../kernel/random-registers.ts';

/** Unrelated founders of unknown origin, and nobody else. */
export function founders(count: number): Pedigree {
  return toPedigree({ founders: Array<number>(count).fill(-1), sources: [], sourceKinships: [], clutches: [] });
}

/** Pairs of the first so many animals: 0 with 1, 2 with 3, and so on. */
export function pairsOf(count: number): { sire: number; dam: number }[] {
  return Array.from({ length: count }, (_, pair) => ({ sire: 2 * pair, dam: 2 * pair + 1 }));
}

/** A question with usual figures where a test does not say otherwise. */
export function asked(question: Partial<ForecastQuestion>): ForecastQuestion {
  return {
    pairs: [],
    groups: [],
    courses: ['plan'],
    generations: 1,
    youngKept: 4,
    loci: 16,
    replicates: 1000,
    seed: 1,
    originsMost: 24,
    ...question,
  };
}

/** The forecast; registry numbers are the animals' own numbers unless others are given. */
export function forecast(
  pedigree: Pedigree,
  question: Partial<ForecastQuestion>,
  serials = Float64Array.from(pedigree.clutchOf.keys(), (animal) => animal + 1),
): Forecast {
  const outcome = forecastInRegister(pedigree, serials, asked(question), { clutches: Infinity, cost: Infinity });
  if (outcome.kind !== 'forecast') throw new Error(outcome.kind);
  return outcome.forecast;
}

/** One course of a forecast. */
export function courseOf({ courses }: Forecast, kind: CourseKind): CourseForecast {
  const course = courses.find((one) => one.course === kind);
  if (!course) throw new Error(`there is no course ${kind}`);
  return course;
}

/** A register with clutches added below it, each of one pair. */
export function withClutches(
  pedigree: Pedigree,
  pairs: readonly { readonly sire: number; readonly dam: number }[],
  young: number,
): Pedigree {
  const clutches = pedigree.pairStart.length - 1;
  const last = pedigree.pairStart[clutches] ?? 0;
  const own = pairs.flatMap((_, pair) => Array<number>(young).fill(clutches + pair));
  return {
    ...pedigree,
    clutchOf: Int32Array.from([...pedigree.clutchOf, ...own]),
    sourceOf: Int32Array.from([...pedigree.sourceOf, ...own.map(() => -1)]),
    pairStart: Int32Array.from([...pedigree.pairStart, ...pairs.map((_, pair) => last + pair + 1)]),
    pairSire: Int32Array.from([...pedigree.pairSire, ...pairs.map(({ sire }) => sire)]),
    pairDam: Int32Array.from([...pedigree.pairDam, ...pairs.map(({ dam }) => dam)]),
    pairProbability: Float64Array.from([...pedigree.pairProbability, ...pairs.map(() => 1)]),
  };
}
