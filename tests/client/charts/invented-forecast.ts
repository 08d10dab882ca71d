import type { ForecastCourse, ForecastFigure, PlanForecast } from '../../../client/src/lib/api/types.ts';

function figure(mean: number, half: number): ForecastFigure {
  const [from, to] = [Math.max(0, mean - half), Math.min(1, mean + half)];
  return { mean, from, to, least: from, greatest: to, standardError: half / 60, expected: null };
}

/** A course that loses some of its diversity each generation; all figures invented. */
export function inventedCourse(course: ForecastCourse['course'], loss: number, generations = 6): ForecastCourse {
  return {
    course,
    rule: `Invented rule of ${course}.`,
    sires: 8,
    dams: 8,
    clutches: 8,
    generations: Array.from({ length: generations + 1 }, (_, generation) => {
      const diversity = 0.94 * (1 - loss) ** generation;
      return {
        generation,
        animals: generation === 0 ? 16 : 32,
        diversity: figure(diversity, 0.01 * generation),
        inbreeding: figure(Math.max(0, 0.96 - diversity), 0.012 * generation),
        shares: [],
        otherShare: figure(1, 0),
      };
    }),
  };
}

/** A forecast of all three courses; all figures invented. */
export function inventedForecast(generations = 6): PlanForecast {
  return {
    courses: [
      inventedCourse('random', 0.03, generations),
      inventedCourse('plan', 0.015, generations),
      inventedCourse('today', 0.024, generations),
    ],
    missing: [],
    origins: [],
    otherOrigins: 0,
    replicates: 1000,
    loci: 32,
    youngKept: 4,
    seed: 7,
    cautions: ['Founders count as unrelated unless their source states a base kinship.'],
    current: true,
    asOf: { revision: 1, at: '2026-01-01T00:00:00.000Z' },
  };
}
